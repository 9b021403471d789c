/** The three strategies side by side, what would reverse them, and why the others lost or were excluded. */
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { Block, Cell, Section, Table } from '../document.ts';
import { cell, lineBreak, paragraph, verdictRun } from '../document.ts';
import type { CompareCell } from '../compareTable.ts';
import { compareTable } from '../compareTable.ts';
import { criterionName } from '../../catalog/criterionNames.ts';
import { factTexts, points, valueText } from '../figures.ts';
import { filled } from '../inline.ts';
import { capital, spaced, strategyNames, variantName } from '../names.ts';
import { strategies } from '../../catalog/sets.ts';
import type { Context } from './context.ts';
import { section } from './context.ts';
import { sureBlocks } from './sure.ts';

/** The normalized weight after a change of the raw one by so many percent, the others kept as they were. */
function weightThen(weight: number, change_pct: number): number {
  const raw = weight * (1 + change_pct / PERCENT);
  return raw / (1 - weight + raw);
}
const PERCENT = 100;

/** Differences smaller than this many points are not worth a row. */
const LEAST_DIFFERENCE = 0.005;
const MOST_ROWS = 6;

function compareCell(part: CompareCell | undefined): Cell {
  if (part === undefined) return cell('not computed');
  const { limit } = part;
  return cell([
    { text: part.text, strong: true },
    ...(limit === undefined
      ? []
      : [
          { text: ' ' },
          verdictRun(limit.meets ? 'meets' : 'misses'),
          lineBreak,
          { text: `${limit.text}; ${limit.margin}` },
        ]),
    lineBreak,
    { text: `value ${valueText(part.value)}, adds ${points(part.contribution)}` },
  ]);
}

export function comparisonBlock(context: Context): Table {
  const compared = compareTable(context.evaluation, context.system);
  const rows = compared.rows.map((row): Cell[] => [
    cell([
      { text: row.name, strong: true },
      { text: `, weight ${points(row.weight)}` },
      lineBreak,
      { text: row.measure },
    ]),
    ...compared.columns.map((column) =>
      compareCell(row.cells.find((part) => part.candidate === column.candidate)),
    ),
  ]);
  const totals: Cell[] = [
    cell('Total'),
    ...compared.columns.map((column) =>
      cell(`${points(column.total)} of 100${column.isRecommended ? ', recommended' : ''}`),
    ),
  ];
  return {
    kind: 'table',
    id: 'comparison-table',
    caption: 'Criterion by criterion, heaviest weight first',
    columns: [
      { id: 'criterion', title: 'Criterion', align: 'left', width: 2 },
      ...compared.columns.map((column) => ({
        id: column.candidate,
        title: column.name,
        align: 'left' as const,
        width: 2,
      })),
    ],
    rows: [...rows, totals],
    strongRows: [rows.length],
    note: 'Weights add up to 100. “Adds” is weight times value; the column adds up to the total. Values come from value functions of our own judgement, with their anchors in the workings.',
  };
}

export function comparisonSection(context: Context): Section {
  return section(context, 'comparison', [
    ...context.leaders.map((leader) =>
      paragraph([
        { text: `${strategyNames[leader.strategy]}: `, strong: true },
        { text: `${variantName(leader)}.` },
        ...oneLine(context, leader),
      ]),
    ),
    comparisonBlock(context),
  ]);
}

function oneLine(context: Context, leader: Candidate): { text: string }[] {
  const words = context.words.strategies[leader.strategy];
  return words === undefined ? [] : [{ text: ` ${words.oneLine}` }];
}

export function overturnsSection(context: Context): Section {
  const { overturns, weights } = context.evaluation.ranking;
  const name = (id: string): string => {
    const candidate = context.evaluation.candidates.find((one) => one.id === id);
    return candidate === undefined ? id : strategyNames[candidate.strategy];
  };
  if (overturns.length === 0) {
    return section(context, 'overturns', [
      paragraph(
        'No change of a single weight alone, from nothing to everything, puts another strategy first.',
      ),
      ...sureBlocks(context),
    ]);
  }
  const rows = [...overturns]
    .sort((a, b) => Math.abs(a.change_pct) - Math.abs(b.change_pct))
    .slice(0, MOST_ROWS)
    .map((turn): Cell[] => [
      cell(criterionName(turn.criterion)),
      cell(`${points(weights[turn.criterion] ?? 0)} of 100`),
      cell(`${points(weightThen(weights[turn.criterion] ?? 0, turn.change_pct))} of 100`),
      cell(`${turn.change_pct > 0 ? '+' : ''}${context.say('share', turn.change_pct)}`),
      cell(`${name(turn.to)} instead of ${name(turn.from)}`),
    ]);
  return section(context, 'overturns', [
    {
      kind: 'table',
      id: 'overturns-table',
      caption: 'Smallest change of one weight that reverses the order',
      columns: [
        { id: 'criterion', title: 'Criterion', align: 'left', width: 2.4 },
        { id: 'now', title: 'Weight now', align: 'left', width: 1.4 },
        { id: 'then', title: 'Weight then', align: 'left', width: 1.4 },
        { id: 'change', title: 'Change', align: 'right', width: 1 },
        { id: 'first', title: 'First then', align: 'left', width: 3.6 },
      ],
      rows,
    },
    ...sureBlocks(context),
  ]);
}

/** Where a leader gives away points against the recommended variant, largest loss first. */
function losses(context: Context, best: Candidate, other: Candidate): { criterion: string; lost: number }[] {
  const { contributions } = context.evaluation.ranking;
  const mine = contributions[best.id] ?? {};
  const theirs = contributions[other.id] ?? {};
  return Object.keys(mine)
    .map((criterion) => ({ criterion, lost: (mine[criterion] ?? 0) - (theirs[criterion] ?? 0) }))
    .sort((a, b) => b.lost - a.lost);
}

function otherBlocks(context: Context, best: Candidate, other: Candidate): Block[] {
  const { scores } = context.evaluation.ranking;
  const all = losses(context, best, other);
  const lost = all.filter((one) => one.lost > LEAST_DIFFERENCE).slice(0, MOST_ROWS);
  const won = all.filter((one) => one.lost < -LEAST_DIFFERENCE).reverse();
  const measure = (candidate: Candidate, criterion: string): string =>
    compareTable(context.evaluation, context.system)
      .rows.find((row) => row.criterion === criterion)
      ?.cells.find((part) => part.candidate === candidate.id)?.text ?? '–';
  const behind = (scores[best.id] ?? 0) - (scores[other.id] ?? 0);
  const better =
    won.length === 0
      ? ''
      : ` It is better at ${won
          .slice(0, MOST_ROWS)
          .map((one) => `${criterionName(one.criterion).toLowerCase()} (+${points(-one.lost)})`)
          .join(', ')}.`;
  return [
    paragraph([
      { text: `${strategyNames[other.strategy]}: `, strong: true },
      {
        text: `${points(scores[other.id] ?? 0)} of 100, ${points(behind)} points behind.${better}`,
      },
    ]),
    ...(lost.length === 0
      ? []
      : [
          {
            kind: 'table' as const,
            id: `lost-${other.strategy}`,
            caption: `Where ${strategyNames[other.strategy]} loses points`,
            columns: [
              { id: 'criterion', title: 'Criterion', align: 'left' as const, width: 2.4 },
              { id: 'best', title: strategyNames[best.strategy], align: 'left' as const, width: 2.6 },
              { id: 'other', title: strategyNames[other.strategy], align: 'left' as const, width: 2.6 },
              { id: 'lost', title: 'Lost', align: 'right' as const, width: 1.2 },
            ],
            rows: lost.map((one) => [
              cell(criterionName(one.criterion)),
              cell(measure(best, one.criterion)),
              cell(measure(other, one.criterion)),
              cell(`${points(one.lost)} points`),
            ]),
          },
        ]),
  ];
}

/** The excluded variants grouped by rule; a variant counts once under each of its rules. */
export function exclusionBlocks(context: Context): Block[] {
  const { candidates } = context.evaluation;
  const out = candidates.filter((one) => !one.feasible);
  if (out.length === 0) return [paragraph('No variant was excluded by a rule.')];
  const groups = new Map<string, { count: number; strategies: Set<string>; reason: string }>();
  for (const one of out) {
    for (const { rule, reason, facts } of one.excludedBy) {
      const group = groups.get(rule) ?? {
        count: 0,
        strategies: new Set(),
        reason: filled(reason, factTexts(facts, context.system)),
      };
      group.count += 1;
      group.strategies.add(strategyNames[one.strategy]);
      groups.set(rule, group);
    }
  }
  const rows = [...groups.entries()]
    .sort(([a, one], [b, two]) => two.count - one.count || a.localeCompare(b, 'en'))
    .map(([rule, group]): Cell[] => [
      cell(capital(spaced(rule))),
      cell(`${group.count} of ${candidates.length}`),
      cell([...group.strategies].join(', ')),
      cell(group.reason),
    ]);
  return [
    paragraph(
      `${out.length} of ${candidates.length} variants were excluded. A variant may break more than one rule, so the counts overlap.`,
    ),
    {
      kind: 'table',
      id: 'exclusions-table',
      caption: 'Excluded variants by rule',
      columns: [
        { id: 'rule', title: 'Rule', align: 'left', width: 2 },
        { id: 'count', title: 'Variants', align: 'left', width: 1.2 },
        { id: 'strategies', title: 'Of', align: 'left', width: 2.2 },
        { id: 'reason', title: 'Reason (first case)', align: 'left', width: 4 },
      ],
      rows,
    },
  ];
}

const NEAREST = 5;
/** When nothing is feasible: the variants that break the fewest rules. */
export function nearestBlocks(context: Context): Block[] {
  const rows = context.evaluation.candidates
    .filter((one) => !one.feasible)
    .map((one) => ({ one, rules: one.excludedBy.map((by) => by.rule) }))
    .sort((a, b) => a.rules.length - b.rules.length || a.one.id.localeCompare(b.one.id, 'en'))
    .slice(0, NEAREST)
    .map(({ one, rules }): Cell[] => [
      cell(`${strategyNames[one.strategy]}: ${variantName(one)}`),
      cell(rules.map((rule) => capital(spaced(rule))).join('; ')),
    ]);
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'nearest-table',
      caption: 'Variants that break the fewest rules',
      columns: [
        { id: 'variant', title: 'Variant', align: 'left', width: 4 },
        { id: 'rules', title: 'Rules in the way', align: 'left', width: 3 },
      ],
      rows,
    },
  ];
}

/** Strategies without any feasible variant. */
function shutOut(evaluation: Evaluation): Block[] {
  return strategies.flatMap((strategy) => {
    const all = evaluation.candidates.filter((one) => one.strategy === strategy);
    if (all.length === 0 || all.some((one) => one.feasible)) return [];
    const reasons = [...new Set(all.flatMap((one) => one.excludedBy.map((by) => spaced(by.rule))))];
    return [
      paragraph([
        { text: `${strategyNames[strategy]}: `, strong: true },
        { text: `none of its ${all.length} variants is feasible here. Rules: ${reasons.join(', ')}.` },
      ]),
    ];
  });
}

/** The next best variants of the recommended strategy itself. */
function siblings(context: Context, best: Candidate): Block[] {
  const { ranking, candidates } = context.evaluation;
  const rows = ranking.order
    .filter((id) => id !== best.id)
    .flatMap((id) => candidates.find((one) => one.id === id && one.strategy === best.strategy) ?? [])
    .slice(0, MOST_ROWS)
    .map((one): Cell[] => [
      cell(capital(variantName(one))),
      cell(`${points(ranking.scores[one.id] ?? 0)} of 100`),
    ]);
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'siblings-table',
      caption: `Other variants of ${strategyNames[best.strategy]}`,
      columns: [
        { id: 'variant', title: 'Variant', align: 'left', width: 5 },
        { id: 'score', title: 'Total', align: 'right', width: 1 },
      ],
      rows,
    },
  ];
}

export function othersSection(context: Context, best: Candidate): Section {
  const others = context.leaders.filter((one) => one.id !== best.id);
  const said = context.evaluation.rationale[context.role];
  return section(context, 'others', [
    ...(said.length === 0 ? [] : [paragraph(said.join(' '))]),
    ...others.flatMap((other) => otherBlocks(context, best, other)),
    ...shutOut(context.evaluation),
    ...(context.role === 'builder' ? [] : siblings(context, best)),
    ...exclusionBlocks(context),
  ]);
}
