/** Assumptions, cautions, deferrals, workings, terms, sources and limits. */
import { citation, hasSource, source } from '../../catalog/sources.ts';
import { recordWords } from '../../catalog/record.ts';
import type { Assumption, Caution, Evaluation } from '../../evaluation/evaluation.ts';
import { measureKinds, type MeasureKind } from '../../measures.ts';
import type { Block, Callout, Cell, Section, SourceEntry, WorkedNumber } from '../document.ts';
import { cell, paragraph, plain } from '../document.ts';
import { factTexts, kindOfName } from '../figures.ts';
import { blocksOf, filled, inlineOf } from '../inline.ts';
import { capital, roleNames, spaced, strategyNames } from '../names.ts';
import type { Context } from './context.ts';
import { cited, section } from './context.ts';
import { citationsIn } from './walk.ts';

const order: readonly Caution['level'][] = ['stop', 'strong', 'engineer', 'caution'];
export const sortedCautions = (evaluation: Evaluation): Caution[] =>
  [...evaluation.cautions].sort((a, b) => order.indexOf(a.level) - order.indexOf(b.level));

const titleOf = (context: Context, caution: Caution): string =>
  context.words.cautions[caution.id]?.title ?? capital(spaced(caution.id));

/** One line that leads from a section to the cautions that belong to its decisions. */
export function cautionLinks(context: Context, questions: readonly string[]): Block[] {
  const here = sortedCautions(context.evaluation).filter((one) => questions.includes(one.question));
  if (here.length === 0) return [];
  return [
    {
      kind: 'list',
      ordered: false,
      items: here.map((caution) => [
        { text: 'Caution: ', strong: true as const },
        { text: titleOf(context, caution), href: `#${anchorOf(caution, context)}` },
        { text: `. ${caution.text}` },
      ]),
    },
  ];
}

/** Cautions of the same id may be raised twice, for two strategies: the place in the list tells them apart. */
function anchorOf(caution: Caution, context: Context): string {
  const same = context.evaluation.cautions.filter((one) => one.id === caution.id);
  const place = same.indexOf(caution);
  return `caution-${caution.id}${place > 0 ? `-${place + 1}` : ''}`;
}

function calloutOf(context: Context, caution: Caution): Callout {
  const words = context.words.cautions[caution.id];
  const facts = factTexts(caution.facts, context.system);
  const forReader = { builder: words?.forBuilder, designer: words?.forDesigner, trainer: words?.forTrainer }[
    context.role
  ];
  const concerns =
    caution.strategies.length === 0 || caution.strategies.length === Object.keys(strategyNames).length
      ? []
      : [paragraph(`Concerns ${caution.strategies.map((one) => strategyNames[one]).join(', ')}.`, 'small')];
  const from = cited({ source: caution.source, known: howKnown(context, caution.source) });
  const rule = paragraph(
    [{ text: context.role === 'builder' ? 'Source: ' : `Raised by the rule ${caution.rule}; source ` }, from],
    'small',
  );
  return {
    kind: 'callout',
    id: anchorOf(caution, context),
    level: caution.level,
    title: titleOf(context, caution),
    body: [
      paragraph(filled(caution.text, facts)),
      ...(words === undefined ? [] : blocksOf(filled(words.body, facts))),
      ...(forReader === undefined ? [] : [paragraph(inlineOf(filled(forReader, facts)))]),
      ...concerns,
      rule,
    ],
    ...(words?.deferTo === undefined ? {} : { deferTo: `ask the ${roleNames[words.deferTo]}` }),
  };
}

export function cautionsSection(context: Context, levels: readonly Caution['level'][] = order): Section {
  const all = sortedCautions(context.evaluation).filter((one) => levels.includes(one.level));
  const blocks: Block[] =
    all.length === 0
      ? [paragraph('No caution was raised by these answers. That is no promise that there is none.')]
      : all.map((one) => calloutOf(context, one));
  return section(context, 'cautions', blocks);
}

export const stopCallouts = (context: Context): Callout[] =>
  sortedCautions(context.evaluation)
    .filter((one) => one.level === 'stop')
    .map((one) => ({ ...calloutOf(context, one), id: `why-${anchorOf(one, context)}` }));

const isKind = (kind: string): kind is MeasureKind => (measureKinds as readonly string[]).includes(kind);

/** An answer as a person would say it: with the label of its option, or with its unit. */
export function answerText(context: Context, path: string, question: string, value: unknown): string {
  const field = context.words.questions[question]?.fields.find((one) => one.path === path);
  const label = (one: unknown): string => {
    const option = field?.options?.find((each) => each.value === one);
    return option?.label ?? spaced(String(one));
  };
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') {
    const kind = field !== undefined && isKind(field.kind) ? field.kind : kindOfName(path);
    return context.say(kind ?? 'ratio', value);
  }
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(label).join(', ');
  return typeof value === 'string' ? label(value) : JSON.stringify(value ?? null);
}

/** What an assumption is about, in the words of its question. */
export function assumptionLabel(context: Context, assumption: Assumption): string {
  const field = context.words.questions[assumption.question]?.fields.find(
    (one) => one.path === assumption.path,
  );
  if (field !== undefined) return field.label;
  // A path that no page asks, such as `loads.thermalFactor`, in plain words.
  const name = assumption.path.split('.').at(-1)?.replace(/_.*$/, '') ?? assumption.path;
  return capital(spaced(name.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase()));
}

export function assumptionsSection(context: Context): Section {
  const { assumptions } = context.evaluation;
  if (assumptions.length === 0) {
    return section(context, 'assumptions', [paragraph('Every question was answered; nothing was assumed.')]);
  }
  return section(context, 'assumptions', [
    {
      kind: 'table',
      id: 'assumptions-table',
      caption: 'Cautious defaults in use',
      columns: [
        { id: 'what', title: 'Assumed', align: 'left', width: 2.3 },
        { id: 'value', title: 'Value', align: 'left', width: 1.5 },
        { id: 'reason', title: 'Why this value', align: 'left', width: 2.5 },
        { id: 'cost', title: 'What the caution costs', align: 'left', width: 2.5 },
        { id: 'question', title: 'Settled by the question', align: 'left', width: 2.5 },
      ],
      rows: assumptions.map((one): Cell[] => [
        cell(assumptionLabel(context, one)),
        cell(answerText(context, one.path, one.question, one.value)),
        cell([
          { text: one.reason },
          ...(context.role === 'builder'
            ? []
            : [{ text: ' ' }, cited({ source: one.source, known: howKnown(context, one.source) })]),
        ]),
        cell(one.cost),
        cell(context.words.questions[one.question]?.title ?? capital(spaced(one.question))),
      ]),
    },
  ]);
}

export function deferralsSection(context: Context): Section {
  const rows = context.evaluation.deferrals.map((one): Cell[] => [
    cell(one.item),
    cell(capital(roleNames[one.to])),
    cell(one.reason),
  ]);
  return section(context, 'deferrals', [
    ...(rows.length === 0
      ? [paragraph('Structure, permit and workmanship are always settled by others.')]
      : [
          {
            kind: 'table' as const,
            id: 'deferrals-table',
            caption: 'Who settles what',
            columns: [
              { id: 'item', title: 'Item', align: 'left' as const, width: 3 },
              { id: 'who', title: 'Who', align: 'left' as const, width: 1.6 },
              { id: 'reason', title: 'Why', align: 'left' as const, width: 4 },
            ],
            rows,
          },
        ]),
  ]);
}

/** Longer inputs are not worth a page of print; the case file gives them again. */
const LONGEST_CALL = 500;
/** The call that reproduces a number. */
function calculationText(call: { readonly name: string; readonly input: unknown }): string {
  const input = JSON.stringify(call.input);
  return input.length > LONGEST_CALL
    ? `calc ${call.name}, with the inputs of the table above`
    : `calc ${call.name} ${input}`;
}

export function workingsSection(context: Context): Section[] {
  const { workings } = context.options;
  if (workings === undefined || workings.length === 0) return [];
  const { say } = context;
  const items = workings.map((one): WorkedNumber => ({
    id: one.id,
    title: one.title,
    formula: one.formula,
    formulaTex: one.formulaTex,
    inputs: one.inputs.map((input) => ({
      symbol: input.symbol,
      meaning: input.meaning,
      value: say(input.kind, input.value),
    })),
    result: {
      symbol: one.result.symbol,
      meaning: one.result.meaning,
      value: say(one.result.kind, one.result.value),
    },
    ...(one.limit === undefined
      ? {}
      : {
          limit: {
            meaning: one.limit.meaning,
            value: say(one.limit.kind, one.limit.value),
            meets: one.limit.meets,
          },
        }),
    source: { source: one.source, clause: one.clause, known: one.known },
    ...(one.calculation === undefined ? {} : { calculation: calculationText(one.calculation) }),
    ...(one.note === undefined ? {} : { note: one.note }),
  }));
  return [section(context, 'workings', [{ kind: 'workings', items }], { newPage: true })];
}

/** Glossary terms whose words appear in the record. */
export function termsSection(context: Context, text: string): Section[] {
  const low = text.toLowerCase();
  const terms = Object.values(context.words.glossary)
    .filter((one) => new RegExp(`(^|[^a-z])${escapedPattern(one.term.toLowerCase())}($|[^a-z])`).test(low))
    .sort((a, b) => a.term.localeCompare(b.term, 'en'));
  if (terms.length === 0) return [];
  return [
    section(context, 'terms', [
      {
        kind: 'list',
        ordered: false,
        items: terms.map((one) => [{ text: `${one.term}: `, strong: true as const }, { text: one.short }]),
      },
    ]),
  ];
}

const escapedPattern = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

function sourceText(context: Context, id: string): { text: string; known: string } {
  const own = context.evaluation.sources.find((one) => one.id === id);
  if (own !== undefined) {
    const edition = own.edition === undefined ? '' : `, ${own.edition} edition`;
    return { text: `${own.publisher}: ${own.title}${edition}`, known: own.known };
  }
  return hasSource(id) ? { text: citation(id), known: source(id).how } : { text: id, known: 'as cited' };
}

const howKnown = (context: Context, id: string): string => sourceText(context, id).known;

/** Every source that the sections cite, and every one that the evaluation lists. */
export function sourcesSection(context: Context, sections: readonly Section[]): Section {
  const citations = citationsIn(sections);
  const cautions = context.evaluation.cautions.map((one) => one.source);
  const ids = new Set([
    ...citations.map((one) => one.source),
    ...context.evaluation.sources.map((one) => one.id),
    ...cautions,
  ]);
  const items = [...ids].sort().map((id): SourceEntry => {
    const { text, known } = sourceText(context, id);
    const clauses = citations.filter((one) => one.source === id).flatMap((one) => one.clause ?? []);
    return { id, text, known, clauses: [...new Set(clauses)] };
  });
  return section(context, 'sources', [{ kind: 'sourceList', items }]);
}

export const limitsSection = (context: Context): Section =>
  section(context, 'limits', [{ kind: 'list', ordered: false, items: recordWords.limits.map(plain) }]);
