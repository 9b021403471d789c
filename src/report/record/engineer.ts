/** The engineer's sheet of each strategy on one page, and the builder's short card. They approve nothing. */
import { recordWords, sectionWords } from '../../catalog/record.ts';
import type { Candidate } from '../../evaluation/evaluation.ts';
import type { Card, Cell, Inline, Section, Table } from '../document.ts';
import { cell, paragraph, plain, strong } from '../document.ts';
import { filled } from '../inline.ts';
import { carrierNames, spaced, strategyNames } from '../names.ts';
import { assumptionLabel } from './closing.ts';
import type { Context } from './context.ts';
import { section } from './context.ts';
import {
  checksTable,
  combinationsBlock,
  geometryTable,
  isRobust,
  isWithin,
  loadsTable,
} from './engineerTables.ts';

const words = recordWords.engineer;
/** Questions whose assumed answers an engineer wants to know of; their values stand in the tables of the sheet. */
const asked = ['roof-shape', 'framing', 'deck', 'overhang', 'snow', 'wind', 'hazards'];

const isOnOutriggers = ({ carrier }: Candidate): boolean => carrier === 'outriggers';

/** Questions that were not answered, by their labels, and what the method takes for granted. */
function assumed(context: Context, candidate: Candidate): string {
  const questions = isOnOutriggers(candidate) ? [...asked, 'outriggers'] : asked;
  const labels = context.evaluation.assumptions
    .filter((one) => questions.includes(one.question))
    .filter((one) => context.words.questions[one.question]?.fields.some((field) => field.path === one.path))
    .map((one) => assumptionLabel(context, one).replace(/\?$/, ''));
  return [
    ...(labels.length === 0 ? [] : [`${words.notAnswered} ${labels.join('; ')}.`]),
    ...words.assumed,
    ...(isOnOutriggers(candidate) ? words.assumedOutriggers : words.assumedTails),
  ].join(' ');
}

const openQuestions = (context: Context, candidate: Candidate): string[] => [
  ...context.evaluation.siteLoads.open,
  ...words.open,
  ...(isOnOutriggers(candidate) ? words.openOutriggers : words.openTails),
];

/** What is left to others: gaps of the tables, gates, assumptions, questions, and who decides. */
function closingTable(context: Context, candidate: Candidate): Table {
  const { siteLoads } = context.evaluation;
  const gaps = siteLoads.notCovered.map((gap) => `${gap.what}: ${gap.reason} ${gap.todo}`);
  const gates = candidate.structure.plan?.gates ?? [];
  const rows: readonly (readonly [string, string])[] = [
    ...(gaps.length === 0 ? [] : [['Not covered', gaps.join(' ')] as const]),
    ...(gates.length === 0 ? [] : [['Needs design', gates.join(' ')] as const]),
    ['Assumed', assumed(context, candidate)],
    ['Open questions', openQuestions(context, candidate).join(' ')],
    ['Who decides', words.decides],
  ];
  return {
    kind: 'table',
    id: `engineer-open-${candidate.strategy}`,
    caption: 'What is open',
    dense: true,
    columns: [
      { id: 'what', title: 'What', align: 'left', width: 1 },
      { id: 'text', title: 'In words', align: 'left', width: 9 },
    ],
    rows: rows.map(([what, text]): Cell[] => [cell(what), cell(text)]),
    strongRows: [rows.length - 1],
  };
}

function sheetOf(context: Context, candidate: Candidate): Section {
  const row = sectionWords('engineer');
  const lead = filled(row.lead[context.role], context.slots);
  return {
    id: `engineer-${candidate.strategy}`,
    title: `${row.title[context.role]}: ${strategyNames[candidate.strategy]}`,
    level: 2,
    newPage: true,
    blocks: [
      paragraph([strong(words.stamp), { text: ` ${lead}` }], 'small'),
      geometryTable(context, candidate),
      loadsTable(context, candidate),
      combinationsBlock(context, candidate),
      checksTable(context, candidate),
      closingTable(context, candidate),
    ],
  };
}

/** What the builder hands to the engineer: the figures that are asked for first, and what is open. */
function cardOf(context: Context, best: Candidate): Card {
  const { say, given, evaluation } = context;
  const { structure } = best;
  const { loads, roof, overhang } = given;
  const wind = evaluation.siteLoads.windZones.find((zone) => zone.id === 'eave-overhang');
  const uplift_Pa = wind?.uplift_Pa ?? null;
  const past = structure.checks
    .filter((check) => check.ratio !== null && !isRobust(check.id) && !isWithin(check.ratio))
    .map((check): Inline => [
      { text: 'Past the limit of this screening: ', strong: true },
      { text: `${check.what}. What works instead?` },
    ]);
  return {
    id: 'card-engineer-brief',
    title: words.cardTitle,
    facts: [
      { label: 'Way', value: `${strategyNames[best.strategy]}, eave on ${carrierNames[best.carrier]}` },
      {
        label: 'Roof',
        value: `${spaced(roof.shape)}, ${say('pitch', roof.pitch_rise_per_12)}, ${say('span', roof.length_m)} by ${say('span', roof.width_m)}`,
      },
      {
        label: 'Overhang',
        value: `${say('length', structure.overhang_m)} at the eave, ${say('length', overhang.rake_m)} at the rake`,
      },
      {
        label: 'Deepest eave here',
        value:
          structure.screeningLimit_m > 0
            ? `${say('length', structure.screeningLimit_m)}, the most that this screening lets the carrier reach`
            : 'none that this screening passes',
      },
      { label: 'Weight above the framing', value: say('load', structure.addedDeadLoad_Pa) },
      { label: 'Ground snow used', value: say('load', loads.groundSnow_Pa) },
      {
        label: 'Wind used',
        value: `${say('speed', loads.basicWindSpeed_m_s)}, exposure ${loads.exposure}; ${
          uplift_Pa === null
            ? 'no table here covers this roof'
            : `${say('load', uplift_Pa)} on the eave at strength level`
        }`,
      },
      ...(structure.plan === null
        ? []
        : [
            {
              label: 'Member looked at',
              value: `${structure.plan.member}, ${say('length', structure.plan.spacing_m)} apart`,
            },
            ...(structure.plan.screws === null
              ? []
              : [
                  {
                    label: 'Smallest that would work',
                    value: structure.plan.smallest ?? 'none of the sizes tried',
                  },
                ]),
          ]),
    ],
    questions: [...past, ...openQuestions(context, best).map(plain)],
  };
}

/**
 * The engineer's part of the record: a card for the builder, a sheet for each strategy that has a leader for the others.
 *
 * @param context  of the record
 * @param best     the recommended candidate
 * @returns        [-] sections; each sheet starts a page and is laid out to fill one
 */
export function engineerSections(context: Context, best: Candidate): Section[] {
  if (context.role === 'builder')
    return [
      section(context, 'engineer', [
        paragraph([strong(words.stamp)], 'small'),
        { kind: 'cards', items: [cardOf(context, best)] },
        paragraph(words.decides, 'small'),
      ]),
    ];
  return context.leaders.map((leader) => sheetOf(context, leader));
}
