/** The order of work with its hold points, and the question cards. */
import type { Caution, Deferral } from '../../evaluation/evaluation.ts';
import { recordWords, type CardRow } from '../../catalog/record.ts';
import { workFacts } from '../../drawing/sequence.ts';
import type { Card, Inline, Section } from '../document.ts';
import { plain } from '../document.ts';
import { filled } from '../inline.ts';
import { roleNames, strategyNames } from '../names.ts';
import { cautionLinks } from './closing.ts';
import type { Context } from './context.ts';
import { applies, section } from './context.ts';
import { workSteps } from './steps.ts';

export function sequenceSection(context: Context): Section {
  const items = workSteps(workFacts(context.given, context.best), context.slots).map(({ step }) => step);
  return section(
    context,
    'sequence',
    [{ kind: 'steps', items }, ...cautionLinks(context, ['job', 'crew', 'budget'])],
    { newPage: true },
  );
}

/** Cautions whose person is on the card become questions too. */
function cautionQuestions(context: Context, to: Deferral['to']): Inline[] {
  const of = (caution: Caution): boolean => context.words.cautions[caution.id]?.deferTo === to;
  return context.evaluation.cautions
    .filter(of)
    .map((caution) => plain(`${caution.text} What do you ask for here?`));
}

function deferralQuestions(context: Context, to: Deferral['to']): Inline[] {
  return context.evaluation.deferrals
    .filter((deferral) => deferral.to === to)
    .map((deferral) => [{ text: `${deferral.item}: `, strong: true }, { text: deferral.reason }]);
}

function facts(context: Context): Card['facts'] {
  const { given, best, say, slots } = context;
  return [
    {
      label: 'Roof',
      value: `${slots['pitch'] ?? ''}, ${given.framing.kind} framing at ${say('length', given.framing.spacing_m)}`,
    },
    ...(best === null
      ? []
      : [
          {
            label: 'Proposed',
            value: `${strategyNames[best.strategy]}, ${slots['aboveDeckR'] ?? ''} above the deck, ${say('load', best.structure.addedDeadLoad_Pa)} added weight`,
          },
        ]),
    {
      label: 'Answers used',
      value: `ground snow ${say('load', given.loads.groundSnow_Pa)}, wind ${say('speed', given.loads.basicWindSpeed_m_s)}, overhang ${slots['overhang'] ?? ''}`,
    },
  ];
}

function cardOf(context: Context, row: CardRow): Card {
  const fixed = row.questions
    .filter((question) => applies(question.when, context))
    .map((question) => plain(filled(question.text, context.slots)));
  return {
    id: `card-${row.id}`,
    title: row.title,
    facts: facts(context),
    questions: [...fixed, ...deferralQuestions(context, row.id), ...cautionQuestions(context, row.id)],
  };
}

/** One card for each of the three usual people, and one for everyone else to whom something is deferred. */
export function questionsSection(context: Context): Section {
  const fixed = recordWords.cards.map((row) => cardOf(context, row));
  const usual = new Set<string>(recordWords.cards.map((row) => row.id));
  const rest = [...new Set(context.evaluation.deferrals.map((deferral) => deferral.to))]
    .filter((to) => !usual.has(to))
    .map((to): Card => ({
      id: `card-${to}`,
      title: `Questions for the ${roleNames[to]}`,
      facts: facts(context),
      questions: [...deferralQuestions(context, to), ...cautionQuestions(context, to)],
    }));
  return section(context, 'questions', [{ kind: 'cards', items: [...fixed, ...rest] }], { newPage: true });
}
