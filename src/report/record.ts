/** The record of one evaluation: the tree that every rendering draws from. */
import type { Words } from '../catalog/words.ts';
import { covering } from '../catalog/coverings.ts';
import type { Evaluation } from '../evaluation/evaluation.ts';
import type { ReportDocument, Section } from './document.ts';
import { capital } from './names.ts';
import {
  comparisonSection,
  exclusionBlocks,
  nearestBlocks,
  othersSection,
  overturnsSection,
} from './record/alternatives.ts';
import { edgeSection, layersSection, quantitiesSection } from './record/assembly.ts';
import {
  answerText,
  assumptionsSection,
  cautionsSection,
  deferralsSection,
  limitsSection,
  sourcesSection,
  stopCallouts,
  termsSection,
  workingsSection,
} from './record/closing.ts';
import { contextOf, section, type Context, type RecordOptions } from './record/context.ts';
import { engineerSections } from './record/engineer.ts';
import { geometrySections } from './record/geometry.ts';
import { heatMoistureSections } from './record/heatMoisture.ts';
import { fasteningSection } from './record/fastening.ts';
import { requirementsSection } from './record/requirements.ts';
import { summarySection } from './record/summary.ts';
import { textOf, withoutDeadLinks } from './record/walk.ts';
import { questionsSection, sequenceSection } from './record/work.ts';
import { recordWords } from '../catalog/record.ts';
import { plain } from './document.ts';

export type { RecordOptions, RecordSize } from './record/context.ts';

function facts(context: Context): ReportDocument['facts'] {
  const { given, evaluation, say, slots, options } = context;
  const { project, roof } = given;
  const date = options.date ?? project.date;
  const optional = (label: string, value: string | undefined): ReportDocument['facts'] =>
    value === undefined || value.trim() === '' ? [] : [{ label, value }];
  return [
    ...optional('Project', project.name),
    ...optional('Client', project.client),
    ...optional('Author', project.author),
    ...optional('Revision', project.revision),
    ...optional('Date', date),
    { label: 'Place', value: evaluation.climate.placeName },
    { label: 'Climate zone', value: evaluation.climate.zone },
    { label: 'Code edition', value: evaluation.requirements.edition },
    { label: 'Work', value: capital(answerText(context, 'project.kind', 'job', project.kind)) },
    {
      label: 'Roof',
      value: `${capital(answerText(context, 'roof.shape', 'roof-shape', roof.shape))}, ${slots['pitch'] ?? ''}, ${say('span', roof.length_m)} by ${say('span', roof.width_m)}`,
    },
    { label: 'Covering', value: covering(given.covering.kind).name },
  ];
}

function stoppedSections(context: Context): Section[] {
  const { level } = context.evaluation.ranking.confidence;
  const first =
    level === 'stop'
      ? section(context, 'stopped', stopCallouts(context))
      : section(context, 'none-feasible', [...exclusionBlocks(context), ...nearestBlocks(context)]);
  const instead =
    level === 'stop'
      ? [
          section(context, 'instead', [
            { kind: 'list', ordered: true, items: recordWords.instead.map(plain) },
          ]),
        ]
      : [];
  return [
    first,
    ...instead,
    cautionsSection(context),
    deferralsSection(context),
    assumptionsSection(context),
    limitsSection(context),
  ];
}

function recommendedSections(context: Context): Section[] {
  const { best, options } = context;
  if (best === null) return stoppedSections(context);
  const size = options.size ?? 'full';
  if (size === 'summary') return [summarySection(context, best)];
  if (size === 'site') {
    return [
      layersSection(context, best),
      edgeSection(context, best),
      ...geometrySections(context, best),
      quantitiesSection(context, best),
      fasteningSection(context, best),
      sequenceSection(context),
      cautionsSection(context, ['stop', 'strong', 'engineer']),
    ];
  }
  return [
    summarySection(context, best),
    requirementsSection(context),
    comparisonSection(context),
    overturnsSection(context),
    othersSection(context, best),
    ...(context.role === 'trainer' ? workingsSection(context) : []),
    assumptionsSection(context),
    layersSection(context, best),
    ...heatMoistureSections(context, best),
    edgeSection(context, best),
    ...geometrySections(context, best),
    quantitiesSection(context, best),
    fasteningSection(context, best),
    sequenceSection(context),
    questionsSection(context),
    ...engineerSections(context, best),
    // The sheets before it stand alone on their pages.
    { ...cautionsSection(context), newPage: true },
    deferralsSection(context),
    ...(context.role === 'designer' ? workingsSection(context) : []),
    limitsSection(context),
  ];
}

const subtitles: Readonly<Record<RecordOptions['role'], string>> = {
  builder:
    'How to insulate on top of this roof deck: what we suggest, why, and whom to ask. Nothing here is an approval.',
  designer:
    'Decision record for continuous insulation above the roof deck. Screening values; not a stamped design.',
  trainer: 'Worked decision for continuous insulation above the roof deck, with every number to check.',
};

/**
 * The record of an evaluation for one reader.
 *
 * @param evaluation  of `evaluate(case)`
 * @param words       texts of content/, from `parseWords`
 * @param options     reader, units, size, date, workings
 * @returns           [-] the document tree; the same input gives the same tree
 */
export function record(evaluation: Evaluation, words: Words, options: RecordOptions): ReportDocument {
  const context = contextOf(evaluation, words, options);
  const { project } = context.given;
  const main = recommendedSections(context);
  const size = options.size ?? 'full';
  const terms = options.role === 'designer' || size !== 'full' ? [] : termsSection(context, textOf(main));
  const withTerms = [...main, ...terms];
  const sections = withoutDeadLinks([...withTerms, sourcesSection(context, withTerms)]);
  const name = project.name?.trim() ?? '';
  const date = options.date ?? project.date;
  return {
    title: name === '' ? 'Record of a roof without a name' : `Record: ${name}`,
    subtitle: subtitles[options.role],
    language: 'en-US',
    role: options.role,
    system: options.system,
    ...(project.revision === undefined ? {} : { revision: project.revision }),
    ...(date === undefined ? {} : { date }),
    ...(project.author === undefined ? {} : { author: project.author }),
    project: name === '' ? evaluation.climate.placeName : name,
    facts: facts(context),
    sections,
  };
}
