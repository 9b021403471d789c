/** The interview's statechart as text, made from the machine itself, for reviewers. */
import { interviewChart } from '../interview/chart.ts';
import { dependenciesOf } from '../interview/dependencies.ts';
import { pathsOf, stateIds, type StateId } from '../interview/questions.ts';
import { fieldRelevance } from '../interview/relevance.ts';

type Node = (typeof interviewChart)['root'];

/** `applies(snow)`, `isStopped`; empty when nothing guards the way. */
function named(part: unknown): string {
  if (typeof part === 'string') return part;
  if (typeof part !== 'object' || part === null) return '';
  const { type, params } = part as { type?: string; params?: { question?: string } };
  return params?.question === undefined ? (type ?? '') : `${type}(${params.question})`;
}

const targetOf = (node: { key: string } | undefined): string => (node === undefined ? 'stays' : node.key);

/** `go.next -> review [isStopped] / markPassed(deck)`, one line for each way. */
function ways(node: Node): string[] {
  return [...node.transitions.values()].flat().map((way) => {
    const guard = way.guard === undefined ? '' : ` [${named(way.guard)}]`;
    const actions = way.actions.length === 0 ? '' : ` / ${way.actions.map(named).join(', ')}`;
    return `${way.eventType} -> ${targetOf(way.target?.[0])}${guard}${actions}`;
  });
}

function page(id: StateId): string[] {
  const node = interviewChart.states[id] as unknown as Node;
  const depends = dependenciesOf(id);
  const maySkip = fieldRelevance
    .map((row) => row.path as string)
    .filter((path) => pathsOf[id].some((own) => own === path));
  return [
    `${stateIds.indexOf(id) + 1}. ${id}`,
    `   asks ${pathsOf[id].join(', ')}`,
    ...(maySkip.length === 0 ? [] : [`   may skip ${maySkip.join(', ')}`]),
    ...(depends.length === 0 ? [] : [`   hangs on ${depends.join(', ')}`]),
    ...ways(node).map((way) => `   ${way}`),
    '',
  ];
}

/** The whole diagram: what holds on every page, then each page with its ways on and back. */
export function interviewDiagram(): string {
  const everywhere = ways(interviewChart.root);
  const jumps = everywhere.filter((way) => way.startsWith('go.to'));
  const others = everywhere.filter((way) => !way.startsWith('go.to'));
  return [
    'The interview: one state for each question, then the review.',
    '',
    'On every page',
    ...others.map((way) => `   ${way}`),
    `   go.to -> any of ${jumps.length} pages [isFor(page): only one that is asked]`,
    '',
    ...stateIds.flatMap(page),
  ].join('\n');
}
