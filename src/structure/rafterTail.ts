/** Rafter tails and truss tails as cantilevers: prescriptive limits, then bending, shear and sag. */
import { metersFromInches } from '../units.ts';
import { loadCases, type LoadCaseId, type RoofLoads } from './combinations.ts';
import { demandPositive, demandRange, radians } from './guards.ts';
import {
  CONFIRM_IN_STANDARD,
  ENGINEER,
  standingOf,
  type Screening,
  type ScreeningCheck,
} from './screening.ts';
import {
  allowableStress,
  overhangStatics,
  rectangle,
  sectionOf,
  shearStress,
  tipDeflection,
  type LumberSize,
  type OverhangStatics,
  type SpeciesId,
} from './timber.ts';

/** [m] 24 in, greatest cantilever of a notched tail and eave rule, IRC R802.7.1.1 (seen-secondary), WFCM (memory). */
export const PRESCRIPTIVE_OVERHANG_M = metersFromInches(24);
/** [-] overhang up to a third of the rafter span, WFCM eave rule (memory). */
const SPAN_DIVISOR = 3;
/** [m] 3-1/2 in left above the notch, IRC R802.7.1.1 (seen-secondary). */
const LEAST_REMAINING_M = metersFromInches(7 / 2);
/** [-] notch at the end of a rafter up to a quarter of its depth, IRC R802.7.1 (seen-secondary). */
const NOTCH_DIVISOR = 4;
/** [m] 1-1/2 in, least bearing of a rafter on its plate, IRC R802.6 (memory). */
const LEAST_BEARING_M = metersFromInches(3 / 2);
/** [-] sag limit of roof members under total load, L/120, with twice the overhang as L, IBC table 1604.3 (memory). */
export const SAG_DIVISOR = 120;

/**
 * Deepest eave overhang that the prescriptive rules carry.
 *
 * lesser of 24 in and span/3
 *
 * @param rafterSpan_m  [m] rafter span behind the wall > 0
 * @returns             [m] overhang
 * @throws              RangeError when the span is not > 0
 * @source              AWC-WFCM eave overhang (memory): confirm in the standard
 */
export function prescriptiveOverhang(rafterSpan_m: number): number {
  demandPositive('rafterSpan_m', rafterSpan_m);
  return Math.min(PRESCRIPTIVE_OVERHANG_M, rafterSpan_m / SPAN_DIVISOR);
}

export interface RafterTail {
  readonly species: SpeciesId;
  readonly size: LumberSize;
  readonly spacing_m: number;
  /** Along the slope from the wall line to the tip. */
  readonly overhang_m: number;
  /** Along the slope behind the wall line. */
  readonly backSpan_m: number;
  readonly angle_deg: number;
  /** Depth cut away by the birdsmouth, square to the rafter; 0 without. */
  readonly notch_m: number;
  readonly loads: RoofLoads;
  /** Fascia, gutter and ice at the tip. */
  readonly tip_N: number;
}

export interface RafterTailCase extends OverhangStatics {
  readonly id: LoadCaseId;
  readonly loadDuration: number;
  /** False for a robust check. */
  readonly counts: boolean;
  readonly normal_Pa: number;
  readonly tipDeflection_m: number;
  /** Greatest of bending, shear and sag. */
  readonly ratio: number;
}

export interface RafterTailScreening extends Screening {
  readonly bending: ScreeningCheck;
  readonly shear: ScreeningCheck;
  readonly deflection: ScreeningCheck;
  readonly remainingDepth: ScreeningCheck;
  readonly notchDepth: ScreeningCheck;
  /** Depth that the least seat on the plate needs, against what may be cut. */
  readonly seatCut: ScreeningCheck;
  readonly prescriptive: ScreeningCheck;
  readonly tipDeflection_m: number;
  readonly cases: readonly RafterTailCase[];
}

type CheckText = Pick<ScreeningCheck, 'id' | 'what' | 'unit' | 'source' | 'clause' | 'known'>;
type Pair = readonly [demand: number, capacity: number];
interface Row extends Readonly<Record<'bending' | 'shear' | 'deflection', Pair>> {
  readonly load: RafterTailCase;
}

/** Demand and limit of the tail in every load case. */
function rowsOf(tail: RafterTail): Row[] {
  const member = { species: tail.species, size: tail.size, orientation: 'on-edge' } as const;
  const full = sectionOf(member);
  const left = rectangle(full.width_m, full.depth_m - tail.notch_m);
  const isRepetitive = tail.spacing_m <= PRESCRIPTIVE_OVERHANG_M;
  return loadCases(tail.loads, tail.angle_deg).map((load) => {
    const beam = {
      load_N_m: load.normal_Pa * tail.spacing_m,
      tip_N: tail.tip_N * load.tipShare,
      overhang_m: tail.overhang_m,
      backSpan_m: tail.backSpan_m,
    };
    const statics = overhangStatics(beam);
    const allowed = allowableStress(member, load.loadDuration, isRepetitive);
    const tipDeflection_m = tipDeflection({
      ...beam,
      stiffness_Nm2: allowed.elasticity_Pa * full.inertia_m4,
    });
    const bending: Pair = [Math.abs(statics.moment_Nm) / left.modulus_m3, allowed.bending_Pa];
    const shear: Pair = [shearStress(statics.shear_N, left.area_m2), allowed.shear_Pa];
    const deflection: Pair = [Math.abs(tipDeflection_m), (2 * tail.overhang_m) / SAG_DIVISOR];
    const ratio = Math.max(...[bending, shear, deflection].map(([demand, capacity]) => demand / capacity));
    const { id, loadDuration, counts, normal_Pa } = load;
    const row = { id, loadDuration, counts, normal_Pa, ...statics, tipDeflection_m, ratio };
    return { load: row, bending, shear, deflection };
  });
}

const texts = {
  bending: {
    id: 'tail-bending',
    what: 'Bending of the tail above the notch',
    unit: 'Pa',
    source: 'NDS-2018-SUPPLEMENT',
    clause: 'Tables 4A, 4B',
    known: 'seen-transcription',
  },
  shear: {
    id: 'tail-shear',
    what: 'Shear of the tail above the notch',
    unit: 'Pa',
    source: 'NDS-2018',
    clause: '3.4.2',
    known: 'seen-transcription',
  },
  deflection: {
    id: 'tail-deflection',
    what: 'Sag of the tip against twice the overhang over 120',
    unit: 'm',
    source: 'IBC-2018',
    clause: 'Table 1604.3',
    known: 'memory',
  },
  // The demand is the depth that must stay, so that a ratio above 1 is a fault as everywhere.
  remainingDepth: {
    id: 'tail-remaining-depth',
    what: 'Depth that must stay above the notch',
    unit: 'm',
    source: 'IRC-2024-R802.7',
    clause: 'R802.7.1.1',
    known: 'seen-secondary',
  },
  notchDepth: {
    id: 'tail-notch',
    what: 'Notch against a quarter of the depth',
    unit: 'm',
    source: 'IRC-2024-R802.7',
    clause: 'R802.7.1',
    known: 'seen-secondary',
  },
  seatCut: {
    id: 'tail-seat-cut',
    what: 'Notch that 1 1/2 in of bearing needs',
    unit: 'm',
    source: 'IRC-2024-R802.7',
    clause: 'R802.6, R802.7.1',
    known: 'memory',
  },
  prescriptive: {
    id: 'tail-prescriptive',
    what: 'Overhang against the lesser of 24 in and a third of the span',
    unit: 'm',
    source: 'AWC-WFCM',
    clause: 'eave overhang',
    known: 'memory',
  },
} as const satisfies Record<string, CheckText>;

const checkOf = (text: CheckText, [demand, capacity]: Pair, governingCase: string): ScreeningCheck => ({
  ...text,
  demand,
  capacity,
  ratio: demand / capacity,
  governingCase,
  who: ENGINEER,
});

function worst(rows: readonly Row[], key: 'bending' | 'shear' | 'deflection'): ScreeningCheck {
  return rows
    .filter(({ load }) => load.counts)
    .map((row) => checkOf(texts[key], row[key], row.load.id))
    .reduce((most, next) => (next.ratio > most.ratio ? next : most));
}

/**
 * Screening of a sawn rafter tail.
 *
 * M = w a^2/2 + P a and V on the section left above the notch; sag with the full section; ratio = demand / limit
 *
 * @param tail  [m, deg, Pa, N] member, spacing, overhang, back span, slope, notch, loads
 * @returns     [-] one check per limit with the case that governs, and every case
 * @throws      RangeError when a value is outside its range
 * @source      NDS-2018 chapter 3 (seen-transcription); IRC-2024-R802.7 section R802.7.1 (seen-secondary); AWC-WFCM (memory)
 * @assumes     the notch sits at the wall line; repetitive use when spaced 24 in or less; no load on the back span
 */
export function rafterTailScreening(tail: RafterTail): RafterTailScreening {
  demandPositive('spacing_m', tail.spacing_m);
  demandRange('notch_m', tail.notch_m, 0);
  demandRange('tip_N', tail.tip_N, 0);
  const full = sectionOf({ species: tail.species, size: tail.size, orientation: 'on-edge' });
  if (tail.notch_m >= full.depth_m)
    throw new RangeError(`notch_m: ${tail.notch_m} is not below the depth ${full.depth_m}`);
  const rows = rowsOf(tail);
  const limit_m = full.depth_m / NOTCH_DIVISOR;
  const rule = (text: CheckText, pair: Pair): ScreeningCheck => checkOf(text, pair, 'geometry');
  const checks = {
    bending: worst(rows, 'bending'),
    shear: worst(rows, 'shear'),
    deflection: worst(rows, 'deflection'),
    remainingDepth: rule(texts.remainingDepth, [
      tail.notch_m > 0 ? LEAST_REMAINING_M : 0,
      full.depth_m - tail.notch_m,
    ]),
    notchDepth: rule(texts.notchDepth, [tail.notch_m, limit_m]),
    seatCut: rule(texts.seatCut, [LEAST_BEARING_M * Math.sin(radians(tail.angle_deg)), limit_m]),
    prescriptive: rule(texts.prescriptive, [tail.overhang_m, prescriptiveOverhang(tail.backSpan_m)]),
  };
  return {
    provisional: true,
    decidedBy: ENGINEER,
    standing: standingOf(Object.values(checks), checks.prescriptive.ratio > 1),
    notes: [CONFIRM_IN_STANDARD, 'Truss tails follow the truss drawing, not this screening.'],
    ...checks,
    tipDeflection_m: checks.deflection.demand,
    cases: rows.map(({ load }) => load),
  };
}
