/** How sure the ranking is, where the evaluation holds it: chances, answers that would change the pick, what to find out. */
import type { Sure } from '../../evaluation/sure.ts';
import type { Block } from '../document.ts';
import { paragraph, plain } from '../document.ts';
import { capital } from '../names.ts';
import { changeWords, chancesInWords, findings, thenWords, turningChanges } from '../sureWords.ts';
import type { Context } from './context.ts';

/** How many answers and unknowns a list names. */
const SHOWN = 6;

function flipBlocks(context: Context, sure: Sure): Block[] {
  const turning = turningChanges(sure);
  const tried = `${sure.changes.length} other answers, changed one at a time`;
  if (turning.length === 0) return [paragraph(`None of ${tried}, changes the first place.`)];
  return [
    paragraph(`Of ${tried}, ${turning.length} would change the first place; the likeliest are:`),
    {
      kind: 'list',
      ordered: false,
      items: turning
        .slice(0, SHOWN)
        .map((change) =>
          plain(`${changeWords(context.words.questions, change, context.system)}: ${thenWords(change)}.`),
        ),
    },
  ];
}

function worthBlocks(context: Context, sure: Sure): Block[] {
  const found = findings(context.words.questions, sure, SHOWN);
  if (found.length === 0)
    return [
      paragraph(
        'No single thing is worth finding out first: whatever it turned out to be, the pick would stay.',
      ),
    ];
  return [
    paragraph('Worth finding out before deciding, with what knowing it is expected to gain, of 100 points:'),
    {
      kind: 'list',
      ordered: false,
      items: found.map(({ name, how, gain }) => plain(`${capital(name)}: ${how}; ${gain}.`)),
    },
  ];
}

/** Nothing where the evaluation was not asked how sure it is. */
export function sureBlocks(context: Context): Block[] {
  const { sure } = context.evaluation;
  if (sure === undefined) return [];
  const { fixed, answered } = sure;
  return [
    paragraph([
      { text: 'How sure. ', strong: true },
      {
        text: `With measures, prices and weights uncertain, in ${fixed.samples} samples the best is: ${chancesInWords(fixed)}.`,
      },
    ]),
    ...(answered === null
      ? []
      : [
          paragraph(
            `With the answers uncertain as well, in ${answered.evaluations} cases evaluated again: ${chancesInWords(answered)}.`,
          ),
        ]),
    ...flipBlocks(context, sure),
    ...worthBlocks(context, sure),
  ];
}
