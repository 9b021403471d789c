/** The cautious defaults: each value fits the case, has a question that asks for it, and is reached. */
import type { InferOutput } from 'valibot';
import { caseSchema, type Case } from '../../case/case.ts';
import type { DefaultRow, defaultsTable } from '../../catalog/defaults.ts';
import { withValueAt } from '../../case/paths.ts';
import { zones } from '../../catalog/sets.ts';
import { readWith } from '../../faults.ts';
import { neverAsked } from '../../interview/questions.ts';
import { idsIn, type Content, type Fault } from './content.ts';
import { tablePath } from './parts.ts';

const blank: Case = { overdeck: 1, place: { zone: '5A' } };

/** Why the case schema refuses a value at a path, or undefined when it takes it. */
function refusal(path: string, value: unknown): string | undefined {
  const reading = readWith(caseSchema, withValueAt(blank, path, value));
  return reading.ok ? undefined : reading.faults.map(({ message }) => message).join('; ');
}

/** Paths that each question asks for, by question id. */
function askedBy(content: Content): Map<string, string> {
  return new Map(
    idsIn(content, 'questions').map((id) => [id, content.markdown[`content/questions/${id}.md`] ?? '']),
  );
}

export function defaultFaults(content: Content, { rows }: InferOutput<typeof defaultsTable>): Fault[] {
  const questions = askedBy(content);
  const faults: Fault[] = [];
  const report = (index: number, rule: string, hint: string): void => {
    faults.push({ file: tablePath('defaults.json'), path: `rows[${index}]`, rule, hint });
  };
  rows.forEach(({ path, question, when = {}, value }, index) => {
    const refused = refusal(path, value);
    if (refused !== undefined) report(index, 'value-possible', `${path}: ${refused}`);
    const words = questions.get(question);
    if (words === undefined) report(index, 'question-exists', `write content/questions/${question}.md`);
    else if (!words.includes(`path: ${path}\n`) && neverAsked[path] === undefined) {
      report(index, 'question-asks', `${question} does not ask for ${path}`);
    }
    for (const [name, allowed] of Object.entries(when)) {
      if (name === 'zone') {
        const strange = allowed.filter((zone) => !(zones as readonly unknown[]).includes(zone));
        if (strange.length > 0) report(index, 'value-possible', `no zone is called ${strange.join(', ')}`);
        continue;
      }
      if (!rows.slice(0, index).some((row) => row.path === name)) {
        report(index, 'default-order', `${name} must have its default above this row`);
      }
      for (const each of allowed) {
        const wrong = refusal(name, each);
        if (wrong !== undefined) report(index, 'value-possible', `${name}: ${wrong}`);
      }
    }
    if (!isReached(rows, index)) report(index, 'default-reached', `a row above always answers ${path}`);
  });
  for (const path of new Set(rows.map((row) => row.path))) {
    const last = rows.map((row) => row.path).lastIndexOf(path);
    if (!isWhole(rows.filter((row) => row.path === path))) {
      report(
        last,
        'default-whole',
        `${path} has no default in some cases: end with a row without conditions`,
      );
    }
  }
  return faults;
}

type DefaultRows = readonly DefaultRow[];

const isReached = (rows: DefaultRows, index: number): boolean =>
  !rows.slice(0, index).some((row) => row.path === rows[index]?.path && row.when === undefined);

/** A path has a default whatever is known: a row without conditions, or rows for every zone. */
function isWhole(rows: DefaultRows): boolean {
  const byZone = rows
    .filter(({ when }) => when !== undefined && Object.keys(when).every((name) => name === 'zone'))
    .flatMap(({ when }) => when?.['zone'] ?? []);
  return rows.some(({ when }) => when === undefined) || zones.every((zone) => byZone.includes(zone));
}
