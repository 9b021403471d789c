/** The computed measure behind each criterion. */
import type { CompleteCase } from '../case/complete.ts';
import type { Attribute, Requirements } from '../evaluation/evaluation.ts';
import type { Draft } from '../roof/draft.ts';
import { criteria, valueOfMeasure } from './criteria.ts';

/** [-] a trade counts as this many steps: handover, waiting, blame (our judgement). */
const STEPS_A_TRADE = 3;
const MM_PER_M = 1000;
/** [days] waiting for loose board from stock, for panels by freight, for an engineer, for a first crew (our judgement). */
const WAIT_D = { board: 7, panelAtHand: 5, panelOrdered: 35, engineerToHire: 21, newToTheCrew: 10 } as const;
/** [-] finished edge opened for each unit of eave (our judgement): soffit to block the bays; soffit and fascia; wall top too. */
const OPENED = { soffit: 0.5, edge: 1, wall: 2 } as const;

type Measure = (draft: Draft, given: CompleteCase, requirements: Requirements) => number;

/** Whether the crew named can build it: outriggers are framer's work, panels a panel crew's, or an owner's with time. */
function hasSkill({ strategy, carrier }: Draft['candidate'], { work }: CompleteCase): boolean {
  const isPanel = strategy === 'prebonded-panel';
  if (carrier === 'outriggers' && work.crew !== 'framer' && work.crew !== 'framer-and-roofer') return false;
  return work.crew === 'panel-crew' ? isPanel : !isPanel || work.crew === 'self-build';
}

function waiting_d({ candidate }: Draft, given: CompleteCase): number {
  const isPanel = candidate.strategy === 'prebonded-panel';
  const material = !isPanel
    ? WAIT_D.board
    : given.work.panelSupply === 'at-hand'
      ? WAIT_D.panelAtHand
      : WAIT_D.panelOrdered;
  const engineer =
    candidate.carrier === 'outriggers' && given.work.engineer !== 'engaged' ? WAIT_D.engineerToHire : 0;
  return Math.max(material, engineer) + (hasSkill(candidate, given) ? 0 : WAIT_D.newToTheCrew);
}

function opened({ candidate }: Draft, given: CompleteCase): number {
  if (given.project.kind !== 're-roof') return 0;
  if (candidate.carrier !== 'outriggers') return OPENED.soffit;
  if (given.wall.cladding === 'stays') return OPENED.wall;
  return given.overhang.tails === 'must-cut' ? 0 : OPENED.edge;
}

/** Foam is what ants and termites nest in; they tunnel in wood fiber too, and leave stone wool alone (our judgement). */
const NESTS = { foam: 1, woodFiber: 0.6, stoneWool: 0 } as const;

function nests({ candidate }: Draft): number {
  const of = (board: string | null): number => {
    if (board === null || board === 'stone-wool') return NESTS.stoneWool;
    return board === 'wood-fiber' ? NESTS.woodFiber : NESTS.foam;
  };
  return Math.max(of(candidate.board), of(candidate.baseBoard));
}

/** Ways in for embers at the edge: a vented gap open at the eave, and bays between tails behind the soffit. */
const emberWays = ({ candidate }: Draft): number =>
  (candidate.ventilation.gap_m > 0 ? 1 : 0) + (candidate.carrier === 'outriggers' ? 0 : 1);

/** To the millimeter: nobody builds closer, and a thinner sheet must not decide a rank. */
const toMillimeter = (length_m: number): number => Math.round(length_m * MM_PER_M) / MM_PER_M;

const measures: Readonly<Record<string, Measure>> = {
  deckWarmth: ({ candidate }) => candidate.condensationControl.temperature.margin_K,
  airBarrier: ({ candidate }) => candidate.airBarrier.jointLengthPerEave_m_m,
  // The two ways out work side by side.
  drying: ({ candidate }) => candidate.drying.outwardPermeance_ng + candidate.drying.inwardPermeance_ng,
  heatLoss: ({ candidate }, _, { ceiling }) =>
    candidate.thermal.transmittance_W_m2K / ceiling.transmittance_W_m2K,
  edgeThickness: ({ candidate }) => toMillimeter(candidate.edge.fascia_m),
  roofRise: ({ candidate }) => toMillimeter(candidate.edge.ridgeRise_m),
  overhangStrength: ({ candidate }) => candidate.structure.use,
  slopeLoadPath: ({ candidate }) => candidate.fasteners.slopeUse,
  windHold: ({ windUse }) => windUse ?? 1,
  snowService: ({ candidate }) => candidate.ventilation.gap_m,
  cost: ({ candidate }) => candidate.takeoff.cost_USD_m2,
  labor: ({ candidate }) => candidate.takeoff.labor_h_m2,
  trades: ({ candidate }) => candidate.takeoff.steps + STEPS_A_TRADE * candidate.takeoff.trades,
  weatherExposure: ({ candidate }) => candidate.takeoff.daysOpen,
  roofFit: ({ waste_pct }) => waste_pct,
  availability: waiting_d,
  carbon: ({ candidate }) => candidate.takeoff.carbon_kg_m2,
  wallDisturbance: opened,
  fireEdges: emberWays,
  insectNests: nests,
  deckHold: ({ candidate }) => (candidate.fasteners.into === 'deck' ? 1 : 0),
  futureFeet: ({ candidate }) => toMillimeter(candidate.edge.buildUp_m),
};

/** A wind that stands in still tells the ways apart; it says nothing about whether one of them holds. */
function windNote({ windUse, candidate }: Draft): { note?: string } {
  if (windUse === null) return { note: 'The wind tables here do not reach this slope: 1 is taken.' };
  const standIn = candidate.fasteners.windGap?.standIn ?? null;
  return standIn === null
    ? {}
    : { note: `Wind of a stand-in (${standIn}), to compare the ways only; not covered by the table.` };
}

/** The criteria that have a measure. */
export const measuredIds: readonly string[] = Object.keys(measures);

/**
 * Measure and value of every criterion for one candidate.
 *
 * value = value function of the criterion at its measure
 *
 * @param draft         [-] the computed candidate
 * @param given         [-] the complete case
 * @param requirements  [-] what code and climate ask
 * @returns             [unit of each criterion, 0 to 1] in the order of criteria.json
 * @throws              RangeError when a criterion has no measure
 * @source              OUR-JUDGEMENT anchors of criteria.json; the measures carry their own sources
 */
export function attributesOf(draft: Draft, given: CompleteCase, requirements: Requirements): Attribute[] {
  return criteria.map((row) => {
    const measure = measures[row.id];
    if (measure === undefined) throw new RangeError(`no measure for criterion ${row.id}`);
    const value = measure(draft, given, requirements);
    return {
      criterion: row.id,
      measure: value,
      unit: row.kind,
      value: valueOfMeasure(value, row.anchors),
      ...(row.id === 'windHold' ? windNote(draft) : {}),
    };
  });
}
