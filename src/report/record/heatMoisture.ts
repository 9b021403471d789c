/** Heat and moisture: a page in plain words for the builder, every method with its plots for the others. */
import type { Candidate } from '../../evaluation/evaluation.ts';
import type { Section } from '../document.ts';
import type { Context } from './context.ts';
import { section } from './context.ts';
import { heatSection, heatSentence } from './heat.ts';
import {
  controlSection,
  dryingSection,
  leakageSection,
  monthlySection,
  permeanceSection,
} from './moisture.ts';
import { plotBlocks } from './plots.ts';

export function heatMoistureSections(context: Context, best: Candidate): Section[] {
  if (context.role === 'builder') {
    return [
      section(context, 'heat-moisture', [
        heatSentence(context, best),
        ...plotBlocks(context, best, 'deck-months'),
        ...plotBlocks(context, best, 'air-leak'),
        ...plotBlocks(context, best, 'drying'),
      ]),
    ];
  }
  return [
    section(context, 'heat-moisture', [heatSentence(context, best)]),
    heatSection(context, best),
    controlSection(context, best),
    monthlySection(context, best),
    dryingSection(context, best),
    ...leakageSection(context, best),
    ...permeanceSection(context, best),
  ];
}
