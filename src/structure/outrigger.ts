/** Outriggers laid on the deck: a cantilever with a back span, seated at the wall line and held at the heel. */
import { lumberOf } from '../catalog/lumber.ts';
import { demandPositive, demandRange } from './guards.ts';
import { outriggerCases, screwHold, type Outrigger, type OutriggerCase } from './outriggerCases.ts';
import { engineerGates, GATE_NOISE_M, REPETITIVE_SPACING_M, type Gate } from './outriggerGates.ts';
import { SAG_DIVISOR } from './rafterTail.ts';
import {
  CONFIRM_IN_STANDARD,
  ENGINEER,
  standingOf,
  type Screening,
  type ScreeningCheck,
} from './screening.ts';
import { allowableStress, sectionOf, shearStress } from './timber.ts';

export type { Outrigger, OutriggerCase, OutriggerScrew, Seat } from './outriggerCases.ts';
export {
  BACK_SPAN_RATIO,
  engineerGates,
  ENGINEER_OVERHANG_M,
  FLAT_2X4_OVERHANG_M,
  type Gate,
} from './outriggerGates.ts';

/** [-] share of the rated (10 % strain) strength that board may carry for good (memory rule). */
const BOARD_SHARE = 1 / 3;

export interface ScrewsNeeded {
  /** Screws at the heel and at the wall line that would hold, of the kind given; 0 where nothing pulls. */
  readonly heel: number;
  readonly wall: number;
}

export interface OutriggerScreening extends Screening {
  readonly bending: ScreeningCheck;
  readonly shear: ScreeningCheck;
  readonly deflection: ScreeningCheck;
  readonly heelScrews: ScreeningCheck;
  readonly wallTie: ScreeningCheck;
  readonly seat?: ScreeningCheck;
  /** Pressure at the edge of a seat on board that turns, against the rated strength. */
  readonly seatEdge?: ScreeningCheck;
  /** Greatest use under the case that is shown and never counted. */
  readonly robust?: ScreeningCheck;
  readonly screwsNeeded: ScrewsNeeded;
  readonly cases: readonly (OutriggerCase & { readonly ratio: number })[];
  readonly gates: readonly Gate[];
  readonly governing: ScreeningCheck;
}

type CheckText = Pick<ScreeningCheck, 'id' | 'what' | 'unit' | 'source' | 'clause' | 'known'>;
/** One limit: its words, and demand and capacity in a load case. */
interface Limit {
  readonly text: CheckText;
  readonly of: (load: OutriggerCase) => readonly [demand: number, capacity: number];
}

const NDS = { source: 'NDS-2018', known: 'seen-transcription' } as const;

const checkOf = ({ text, of }: Limit, load: OutriggerCase): ScreeningCheck => {
  const [demand, capacity] = of(load);
  return { ...text, demand, capacity, ratio: demand / capacity, governingCase: load.id, who: ENGINEER };
};
const greater = (most: ScreeningCheck, next: ScreeningCheck): ScreeningCheck =>
  next.ratio > most.ratio ? next : most;

const ratioOf = ({ of }: Limit, load: OutriggerCase): number => {
  const [demand, capacity] = of(load);
  return demand / capacity;
};

/** The case with the greatest ratio of demand to capacity. */
function worst(limit: Limit, cases: readonly OutriggerCase[]): ScreeningCheck {
  const most = cases.reduce((best, next) => (ratioOf(limit, next) > ratioOf(limit, best) ? next : best));
  return checkOf(limit, most);
}

/** A value for each load duration, worked out once. */
function byDuration<T>(make: (loadDuration: number) => T): (load: OutriggerCase) => T {
  const known = new Map<number, T>();
  return ({ loadDuration }) => {
    const found = known.get(loadDuration);
    if (found !== undefined) return found;
    const made = make(loadDuration);
    known.set(loadDuration, made);
    return made;
  };
}

/** Every limit of this outrigger. */
function limitsOf(outrigger: Outrigger) {
  const { member, screw, seat } = outrigger;
  const section = sectionOf(member);
  const lumber = lumberOf(member.species, member.size, member.grade);
  const isRepetitive = outrigger.spacing_m <= REPETITIVE_SPACING_M + GATE_NOISE_M;
  const allowed = byDuration((duration) => allowableStress(member, duration, isRepetitive));
  const pulled =
    screw.reportWithdrawal_N === undefined
      ? { clause: '12.2', ...NDS }
      : { source: 'USER', clause: 'report of the screw', known: 'seen-secondary' };
  const hold = byDuration((duration) => screwHold(outrigger, duration));
  const always = {
    bending: {
      text: {
        id: 'outrigger-bending',
        what: 'Bending at the wall line',
        unit: 'Pa',
        source: 'NDS-2018',
        clause: '3.3, Table 4.3.1',
        known: lumber.known,
      },
      of: (load) => [Math.abs(load.moment_Nm) / section.modulus_m3, allowed(load).bending_Pa],
    },
    shear: {
      text: { id: 'outrigger-shear', what: 'Shear at the wall line', unit: 'Pa', clause: '3.4.2', ...NDS },
      of: (load) => [shearStress(load.shear_N, section.area_m2), allowed(load).shear_Pa],
    },
    deflection: {
      text: {
        id: 'outrigger-deflection',
        what: 'Sag of the tip against twice the overhang over 120',
        unit: 'm',
        source: 'IBC-2018',
        clause: 'Table 1604.3',
        known: 'memory',
      },
      of: (load) => [
        Math.abs(load.memberDeflection_m) + load.seatDeflection_m,
        (2 * outrigger.overhang_m) / SAG_DIVISOR,
      ],
    },
    heelScrews: {
      text: { id: 'outrigger-heel', what: 'Pull on the heel screws', unit: 'N', ...pulled },
      of: (load) => [Math.max(0, load.heelHoldDown_N), screw.heelCount * hold(load)],
    },
    wallTie: {
      text: {
        id: 'outrigger-wall-tie',
        what: 'Uplift on the tie at the wall line',
        unit: 'N',
        ...pulled,
      },
      of: (load) => [Math.max(0, -load.wallReaction_N), screw.wallCount * hold(load)],
    },
  } satisfies Record<string, Limit>;
  if (seat === undefined) return { always };
  const isBoard = seat.on === 'board';
  const seatLimit: Limit = {
    text: {
      id: 'outrigger-seat',
      what: isBoard ? 'Squeeze of the board under the seat' : 'Bearing of the seat on wood',
      unit: 'Pa',
      source: isBoard ? 'OUR-JUDGEMENT' : 'NDS-2018-SUPPLEMENT',
      clause: isBoard ? 'a third of the rated strength' : 'Tables 4A, 4B',
      known: isBoard ? 'memory' : 'seen-transcription',
    },
    of: (load) => [
      Math.max(0, load.wallReaction_N) / (section.width_m * seat.bearingLength_m),
      isBoard ? BOARD_SHARE * seat.boardStrength_Pa : lumber.bearing_Pa,
    ],
  };
  if (!isBoard) return { always, seat: seatLimit };
  const edge: Limit = {
    text: {
      id: 'outrigger-seat-edge',
      what: 'Pressure at the edge of the seat that turns on the board',
      unit: 'Pa',
      source: 'OUR-JUDGEMENT',
      clause: 'elastic bed against the rated strength at 10 % strain',
      known: 'our judgement',
    },
    of: (load) => [load.pressure.edge_Pa, seat.boardStrength_Pa],
  };
  return { always, seat: seatLimit, edge };
}

/** Greatest ratio of a load case. */
const useOf = (limits: readonly Limit[], load: OutriggerCase): number =>
  limits.reduce((most, limit) => Math.max(most, ratioOf(limit, load)), 0);

/** The number of screws that would bring a check to its limit. */
const screwsFor = (check: ScreeningCheck, count: number): number =>
  Math.max(0, Math.ceil(count * check.ratio - GATE_NOISE_M));

function notesOf(outrigger: Outrigger, gates: readonly Gate[], lifts: boolean): string[] {
  const notes = [CONFIRM_IN_STANDARD];
  if (outrigger.loads.windUplift_Pa === undefined)
    notes.push('No wind was given: the wall tie is not screened.');
  if (outrigger.screw.headDiameter_m === undefined)
    notes.push('Pull of the head or washer through the outrigger is not screened.');
  if (lifts) notes.push('The seat turns so far on the board that its inner edge lifts: it needs design.');
  return [...notes, ...gates.map((gate) => gate.text)];
}

/**
 * Screening of an outrigger: bending, shear, sag, heel screws under gravity, wall tie under uplift, seat.
 *
 * statics of an overhanging beam for every load case; ratio = demand / capacity, greatest over the cases that count
 *
 * @param outrigger  [m, deg, Pa, N] member, geometry, loads (down positive, wind uplift negative), screws, seat
 * @returns          [-] checks with their governing case, cases, gates; provisional, the engineer decides
 * @throws           RangeError when a value is outside its range
 * @source           NDS-2018 chapters 3, 4 and 12 (seen-transcription); IBC-2018 table 1604.3 (memory); own statics (computed)
 * @assumes          dry wood, braced edges, no load on the back span, screws pull straight; their slip is not in the sag
 */
export function outriggerScreening(outrigger: Outrigger): OutriggerScreening {
  demandPositive('spacing_m', outrigger.spacing_m);
  demandRange('tip_N', outrigger.tip_N ?? 0, 0);
  demandRange('screw.heelCount', outrigger.screw.heelCount, 1);
  demandRange('screw.wallCount', outrigger.screw.wallCount, 1);
  const all = outriggerCases(outrigger);
  const counted = all.filter((load) => load.counts);
  const { always, seat, edge } = limitsOf(outrigger);
  const limits: readonly Limit[] = [
    ...Object.values(always),
    ...(seat ? [seat] : []),
    ...(edge ? [edge] : []),
  ];
  const cases = all.map((load) => ({
    ...load,
    ratio: useOf(limits, load),
  }));
  const shown = cases.find((load) => !load.counts);
  const checks = {
    bending: worst(always.bending, counted),
    shear: worst(always.shear, counted),
    deflection: worst(always.deflection, counted),
    heelScrews: worst(always.heelScrews, counted),
    wallTie: worst(always.wallTie, counted),
    ...(seat ? { seat: worst(seat, counted) } : {}),
    ...(edge ? { seatEdge: worst(edge, counted) } : {}),
  };
  const gates = engineerGates(outrigger);
  const lifts = seat !== undefined && counted.some((load) => load.pressure.lifts);
  return {
    provisional: true,
    decidedBy: ENGINEER,
    standing: standingOf(Object.values(checks), gates.length > 0 || lifts),
    notes: notesOf(outrigger, gates, lifts),
    ...checks,
    ...(shown ? { robust: robustCheck(shown.ratio, shown.id) } : {}),
    screwsNeeded: {
      heel: screwsFor(checks.heelScrews, outrigger.screw.heelCount),
      wall: screwsFor(checks.wallTie, outrigger.screw.wallCount),
    },
    cases,
    gates,
    governing: Object.values(checks).reduce(greater),
  };
}

/**
 * The row of a robust check: shown beside the limits, never one of them.
 *
 * @param ratio          [-] greatest use of the member under the case
 * @param governingCase  [-] the case
 * @returns              [-] a check with limit 1
 * @source               ASCE-7-16 section 7.4.5 (seen-secondary); OUR-JUDGEMENT to show it where it is not asked for
 */
export const robustCheck = (ratio: number, governingCase: string): ScreeningCheck => ({
  id: 'robust-eave-ice',
  what: 'Robust check: greatest use under eave ice that is not asked for',
  demand: ratio,
  capacity: 1,
  unit: 'ratio',
  ratio,
  governingCase,
  who: ENGINEER,
  source: 'ASCE-7-16',
  clause: '7.4.5',
  known: 'seen-secondary',
});

/**
 * The greatest use of an outrigger over the cases that count, and its gates, for searches.
 *
 * @param outrigger  [m, deg, Pa, N] as in outriggerScreening
 * @returns          [-] greatest demand / capacity, and the gates
 * @throws           RangeError when a value is outside its range
 * @source           NDS-2018 chapters 3, 4 and 12 (seen-transcription)
 */
export function outriggerUse(outrigger: Outrigger): {
  readonly use: number;
  readonly gates: readonly Gate[];
} {
  const { always, seat, edge } = limitsOf(outrigger);
  const limits: readonly Limit[] = [
    ...Object.values(always),
    ...(seat ? [seat] : []),
    ...(edge ? [edge] : []),
  ];
  const use = outriggerCases(outrigger)
    .filter((load) => load.counts)
    .reduce((most, load) => Math.max(most, useOf(limits, load)), 0);
  return { use, gates: engineerGates(outrigger) };
}
