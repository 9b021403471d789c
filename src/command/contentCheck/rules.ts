/** Rules: names that occur, values that can be, slots that are filled, a question, a source, and words for each caution. */
import * as v from 'valibot';
import type { Case } from '../../case/case.ts';
import type { CompleteCase } from '../../case/complete.ts';
import { parseWords } from '../../catalog/words.ts';
import { evaluate } from '../../evaluate.ts';
import { candidateFacts, type Setting } from '../../judgement/judge.ts';
import { rulesTable, type Rule } from '../../catalog/rules.ts';
import type { Facts } from '../../judgement/rules.ts';
import { buildCandidate, strategies } from '../../strategies/index.ts';
import { idsIn, type Content, type Fault } from './content.ts';
import { partsOf } from './logic.ts';
import { conditionFaults, idFaults, schemaFaults } from './parts.ts';
import { sourceIds } from './tables.ts';

const file = 'content/rules/rules.json';

/** A case that answers also what may stay open, so that every name a rule may use is there. */
const probe: Case = {
  overdeck: 1,
  place: { zone: '6A' },
  codes: { edition: '2021', localCeiling_m2K_W: 9, localAboveDeck_m2K_W: 5 },
  framing: { deckMoisture_pct: 12 },
  belowDeck: { fillDepth_m: 0.1397, fillResistance_m2K_W: 3.3 },
  profile: { fasciaLimit_m: 0.5, ridgeRiseLimit_m: 0.5 },
};

/** What the rules are asked about in a real evaluation: one object for each strategy. */
export function realFacts(given: Case = probe): Facts[] {
  const { case: completed, climate, requirements } = evaluate(given);
  const setting: Setting = { given: completed as unknown as CompleteCase, climate, requirements };
  return strategies.flatMap((strategy) =>
    strategy
      .variants(setting.given)
      .slice(0, 1)
      .map((variant) =>
        candidateFacts(setting, buildCandidate(setting.given, variant, climate, requirements)),
      ),
  );
}

/** The values at a name; empty when no object has it. */
function valuesAt(facts: readonly Facts[], path: string): unknown[] {
  return facts
    .map((each) =>
      path
        .split('.')
        .reduce<unknown>((value, key) => (value as Record<string, unknown> | null | undefined)?.[key], each),
    )
    .filter((value) => value !== undefined);
}

/** Kinds that fit the unit at the end of a name, longest ending first. */
const kindsOfUnit: readonly (readonly [ending: string, kinds: readonly string[]])[] = [
  ['_W_m2K', ['transmittance']],
  ['_m2K_W', ['resistance']],
  ['_kg_m2', ['waterPerArea', 'carbonPerArea']],
  ['_rise_per_12', ['pitch']],
  ['_m_s', ['speed']],
  ['_pct', ['humidity', 'share']],
  ['_Pa', ['load', 'pressure']],
  ['_C', ['temperature']],
  ['_K', ['temperatureDifference']],
  ['_m', ['length', 'roofLength']],
];

function kindFault(path: string, kind: string, values: readonly unknown[]): string | undefined {
  if (kind === 'text') {
    return values.some((value) => typeof value === 'object' && value !== null)
      ? `${path} is no text`
      : undefined;
  }
  if (values.some((value) => value !== null && typeof value !== 'number')) return `${path} is no number`;
  const unit = kindsOfUnit.find(([ending]) => path.endsWith(ending));
  if (unit === undefined || unit[1].includes(kind)) return undefined;
  return `${path} is shown as ${unit[1].join(' or ')}, not as ${kind}`;
}

const slotsIn = (text: string): string[] => [...text.matchAll(/\{(\w+)\}/g)].map((found) => found[1] ?? '');

function ruleFaults(rule: Rule, facts: readonly Facts[], questions: readonly string[]): Fault[] {
  const faults: Fault[] = conditionFaults(file, rule.id, rule.when);
  const report = (name: string, hint: string): void => {
    faults.push({ file, path: rule.id, rule: name, hint });
  };
  const parts = partsOf(rule.when);
  for (const path of parts.paths) {
    const ofCase = /^(case|climate|requirements)\./.test(path);
    if (rule.scope === 'case' && !ofCase)
      report('name-in-scope', `${path} is not there for a rule of the case`);
    if (valuesAt(facts, path).length === 0) report('name-occurs', `no evaluation has ${path}`);
  }
  for (const [name, { path, kind }] of Object.entries(rule.facts)) {
    const values = valuesAt(facts, path);
    if (values.length === 0) report('name-occurs', `{${name}}: no evaluation has ${path}`);
    const wrong = kindFault(path, kind, values);
    if (wrong !== undefined) report('kind-fits', `{${name}}: ${wrong}`);
    if (!slotsIn(rule.text).includes(name)) report('slot-used', `{${name}} is nowhere in the text`);
  }
  for (const slot of slotsIn(rule.text)) {
    if (!Object.hasOwn(rule.facts, slot)) report('slot-filled', `no fact fills {${slot}}`);
  }
  if (!questions.includes(rule.question)) {
    report('question-exists', `write content/questions/${rule.question}.md or correct it`);
  }
  return faults;
}

/** A rule that stops or warns has its words, with the same level and source; words have their rule. */
function cautionFaults(content: Content, rules: readonly Rule[]): Fault[] {
  const here = Object.entries(content.markdown).filter(([path]) => path.startsWith('content/cautions/'));
  const reading = parseWords(Object.fromEntries(here));
  const words = reading.ok ? reading.words.cautions : {};
  const shown = rules.filter((rule) => rule.effect === 'stop' || rule.effect === 'caution');
  const ids = idsIn(content, 'cautions');
  const faults: Fault[] = ids
    .filter((id) => !shown.some((rule) => rule.id === id))
    .map((id) => ({
      file: `content/cautions/${id}.md`,
      path: 'id',
      rule: 'rule-exists',
      hint: `no rule ${id} stops or warns: remove the file or add the rule`,
    }));
  for (const rule of shown) {
    const path = `content/cautions/${rule.id}.md`;
    const report = (where: string, name: string, hint: string): void => {
      faults.push({ file: path, path: where, rule: name, hint });
    };
    if (!ids.includes(rule.id)) report('', 'words-exist', `rule ${rule.id} needs this file`);
    const word = words[rule.id];
    if (word === undefined) continue;
    const level = rule.effect === 'stop' ? 'stop' : rule.level;
    if (word.level !== level)
      report('level', 'level-equal', `the rule says ${level}, the file ${word.level}`);
    if (!word.sources.includes(rule.source)) {
      report('sources', 'source-equal', `the rule rests on ${rule.source}; list it`);
    }
  }
  return faults;
}

/** Every fault of the rules and of the words that belong to them. */
export function rulesFaults(content: Content, facts: readonly Facts[] = realFacts()): Fault[] {
  const shape = schemaFaults(file, rulesTable, content.rules);
  if (shape.length > 0) return shape;
  const { rows } = v.parse(rulesTable, content.rules);
  const sources = sourceIds(content);
  const questions = idsIn(content, 'questions');
  return [
    ...idFaults(
      file,
      rows.map(({ id }) => id),
    ),
    ...rows.flatMap((rule) => ruleFaults(rule, facts, questions)),
    ...rows
      .filter(({ source }) => !sources.has(source))
      .map(({ id, source }) => ({
        file,
        path: id,
        rule: 'source-exists',
        hint: `add ${source} to sources.json or correct it`,
      })),
    ...cautionFaults(content, rows),
  ];
}
