/** Which step of the work puts which body of a detail in its place: the roof as it is built up. */
import type { CompleteCase } from '../case/complete.ts';
import { stepsFor, type StepRow, type WorkFacts } from '../catalog/sequence.ts';
import type { Candidate, Evaluation, Layer } from '../evaluation/evaluation.ts';
import type { Anchor, DetailModel } from './edge-model.ts';

/** In place of a step's id: what stands before the roof work begins. */
export const STANDING = 'standing';

/** A part or a line of a detail, as far as its step depends on it. */
export interface Body {
  readonly id: string;
  readonly layerId: string | null;
}

/** What the conditions of the steps are asked about. */
export const workFacts = (given: CompleteCase, candidate: Candidate | null): WorkFacts => ({
  kind: given.project.kind,
  strategy: candidate?.strategy,
  ventilation: candidate?.ventilation.kind,
  carrier: candidate?.carrier,
  hasBaseBoard: candidate !== null && candidate.baseBoard !== null,
});

interface Work {
  readonly candidate: Candidate;
  readonly isNew: boolean;
  readonly hasTails: boolean;
  /** Ids of the steps that this work has. */
  readonly ids: ReadonlySet<string>;
}

/** Steps that may set a layer, the first that the work has counts; none means that it stands already. */
function stepsOfRole({ role, id }: Layer, work: Work): readonly string[] {
  switch (role) {
    case 'deck':
      return work.isNew ? ['deck'] : [];
    case 'air-barrier':
      return ['membrane'];
    case 'insulation':
      return isBaseBoard(id, work) ? ['panel-base'] : ['boards', 'panels'];
    case 'vent-gap':
      return ['furring', 'panels'];
    case 'upper-deck':
      return ['upper-deck', 'panels'];
    case 'underlayment':
      return ['edges'];
    case 'drainage-mat':
      return ['mat'];
    case 'covering':
      return ['covering'];
    case 'cavity':
    case 'ceiling':
    case 'interior-retarder':
      return work.isNew ? ['inside'] : [];
  }
}

/** The board on the deck that a panel is set upon. */
function isBaseBoard(layerId: string, { candidate }: Work): boolean {
  const first = candidate.layers.find(({ role }) => role === 'insulation');
  return candidate.baseBoard !== null && first?.id === layerId;
}

interface Rule {
  readonly of: RegExp;
  readonly steps: (work: Work) => readonly string[];
}

const always =
  (...steps: string[]) =>
  (): readonly string[] =>
    steps;

/** Bodies that are no layer, or that another step sets than their layer's; the first rule that fits counts. */
const rules: readonly Rule[] = [
  { of: /^nailer-/, steps: always('nailers', 'nailers-flush') },
  { of: /^outrigger/, steps: always('outriggers') },
  { of: /^(long-screw)-/, steps: always('panel-screws', 'furring', 'upper-deck') },
  { of: /^(blocking$|seal-)/, steps: always('tails', 'cut') },
  { of: /^removed-tail$/, steps: always('cut') },
  {
    of: /^sub-fascia$/,
    steps: ({ hasTails, isNew }) => (hasTails ? (isNew ? ['deck'] : []) : ['outriggers']),
  },
  { of: /^(fascia|soffit|gutter)$/, steps: always('trim') },
  { of: /^(drip-edge|ice-barrier)$/, steps: always('edges') },
  { of: /^mat-screen$/, steps: always('mat') },
  { of: /^ridge-(vent|cap)/, steps: always('covering') },
  { of: /^wall-gypsum$/, steps: ({ isNew }) => (isNew ? ['inside'] : []) },
  {
    of: /^(rafter|end-rafter|lookout|ridge-member|bottom-chord|stud|plate-|sheathing|cladding|wall-insulation|wall-barrier)/,
    steps: always(),
  },
];

/** A screen closes the intake at the edge, or hangs in the vent that is set upon the ridge. */
const screenSteps = (detail: DetailModel['kind']): readonly string[] =>
  detail === 'ridge' ? ['covering'] : ['vent', 'mat', 'edges'];

function wantedSteps(body: Body, detail: DetailModel['kind'], work: Work): readonly string[] {
  if (/^screen(-right)?$/.test(body.id)) return screenSteps(detail);
  const rule = rules.find(({ of }) => of.test(body.id));
  if (rule !== undefined) return rule.steps(work);
  // The foam in a ridge joint comes with the boards beside it.
  const layerId = body.layerId ?? /^joint-(.+)$/.exec(body.id)?.[1];
  const layer = work.candidate.layers.find(({ id }) => id === layerId);
  if (layer === undefined) throw new RangeError(`no step of the work is known for the body ${body.id}`);
  return stepsOfRole(layer, work);
}

/** Where a note points to a place instead of a body: the body that makes the place. */
const anchored: Readonly<Record<string, string>> = {
  tail: 'rafter',
  removed: 'removed-tail',
  nailer: 'nailer-',
  cap: 'ridge-cap',
  vent: 'ridge-vent',
};

/** The work on one candidate: its steps, and the step of every body of its details. */
export interface Sequence {
  /** The steps that apply, in order. */
  readonly steps: readonly StepRow[];
  /**
   * The step that sets a body in its place.
   *
   * @throws RangeError for a body that no rule knows
   */
  readonly stepOf: (body: Body, detail: DetailModel['kind']) => string;
  /** The step from which on a note has something to point to. */
  readonly stepOfNote: (anchor: Pick<Anchor, 'id' | 'layerId'>, detail: DetailModel['kind']) => string;
}

/**
 * Says in which step of the work each body of a detail comes into its place.
 *
 * @param evaluation  the evaluation, its case with every answer filled in
 * @param candidate   what is built
 * @returns           the steps that apply and the step of each body; `standing` for what is there before
 */
export function sequenceOf(evaluation: Evaluation, candidate: Candidate): Sequence {
  const given = evaluation.case as unknown as CompleteCase;
  const steps = stepsFor(workFacts(given, candidate));
  const work: Work = {
    candidate,
    isNew: given.project.kind === 'new-roof',
    hasTails: candidate.carrier !== 'outriggers',
    ids: new Set(steps.map(({ id }) => id)),
  };
  const chosen = (wanted: readonly string[]): string => wanted.find((id) => work.ids.has(id)) ?? STANDING;
  const stepOf: Sequence['stepOf'] = (body, detail) => chosen(wantedSteps(body, detail, work));
  const stepOfNote: Sequence['stepOfNote'] = ({ id, layerId }, detail) => {
    if (layerId !== null) return stepOf({ id: layerId, layerId }, detail);
    const name = id.replace(/^part-/, '');
    if (name === 'lap') return chosen(['membrane']);
    if (name === 'slot') return chosen(['vent', 'upper-deck', 'panels']);
    if (name === 'joint') return chosen(['boards', 'panels']);
    if (name === 'rake-furring') return chosen(['furring', 'panels']);
    return stepOf({ id: anchored[name] ?? name, layerId: null }, detail);
  };
  return { steps, stepOf, stepOfNote };
}

/** Where a body stands at one step: not yet there, there, or just set. */
export type Standing = 'absent' | 'there' | 'new';

/** The roof at one step: what is there, and what this step adds. */
export interface Stage {
  readonly step: string;
  readonly ofBody: (body: Body) => Standing;
  readonly ofNote: (anchor: Pick<Anchor, 'id' | 'layerId'>) => Standing;
  /** The covering of today still lies on the deck. */
  readonly isOldCovered: boolean;
  /** Every body is in its place, so that the dimensions have their ends. */
  readonly isWhole: boolean;
}

/**
 * The roof as it stands when one step is done.
 *
 * @param sequence  the work
 * @param edge      the detail
 * @param step      id of the step, or `standing`
 * @returns         what is there and what is new
 * @throws          RangeError when the work has no such step
 */
export function stageAt(sequence: Sequence, edge: DetailModel, step: string): Stage {
  const order = [STANDING, ...sequence.steps.map(({ id }) => id)];
  const now = order.indexOf(step);
  if (now < 0) throw new RangeError(`this work has no step ${step}`);
  const standing = (id: string): Standing => {
    const at = order.indexOf(id);
    return at > now ? 'absent' : at === now && step !== STANDING ? 'new' : 'there';
  };
  const bodies: readonly Body[] = [...edge.parts, ...edge.lines];
  const ofBody = (body: Body): Standing => standing(sequence.stepOf(body, edge.kind));
  return {
    step,
    isOldCovered: now < order.indexOf('strip'),
    ofBody,
    ofNote: (anchor) => standing(sequence.stepOfNote(anchor, edge.kind)),
    isWhole: bodies.every((body) => ofBody(body) !== 'absent'),
  };
}

/** A name inside a sentence: `Fascia` becomes `fascia`, initials stay. */
const inSentence = (name: string): string => name.replace(/^[A-Z](?=[a-z])/, (first) => first.toLowerCase());

/** Names of what one step adds to a detail, each once, in drawing order. */
export function addedBy(sequence: Sequence, edge: DetailModel, step: string): string[] {
  const bodies = [...edge.parts, ...edge.lines];
  return [
    ...new Set(
      bodies.filter((body) => sequence.stepOf(body, edge.kind) === step).map(({ name }) => inSentence(name)),
    ),
  ];
}
