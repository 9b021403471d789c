/** Checks of the finished edge that trades forget: each with its figure, and a limit where a code or the case gives one. */
import { dimension } from '../catalog/dimensions.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Requirements } from '../evaluation/evaluation.ts';
import type { GeometryCheck, GeometryChecks } from '../evaluation/takeoff.ts';
import type { Draft } from './draft.ts';
import { isPanelGap } from './assembly.ts';
import { angleOfPitch_deg, cosine, sine } from './geometry.ts';
import { clearShare } from './heat/element.ts';
import { isGap } from './heat/winter.ts';
import { roofOf } from './measures.ts';

/** [m] rounding noise of a length. */
const NOISE_M = 1e-9;

interface CheckInput {
  readonly given: CompleteCase;
  readonly candidate: Draft['candidate'];
  readonly requirements: Requirements;
}

type Limit = NonNullable<GeometryCheck['limit']>;
type Cited = Pick<GeometryCheck, 'source' | 'clause' | 'known'>;

const geometry: Cited = { source: 'COMMON-PRACTICE', clause: 'plane geometry', known: 'computed' };
const answered: Cited = { source: 'USER', clause: 'answer on the profile', known: 'computed' };
const irc = (id: string, clause: string): Cited => ({ source: id, clause, known: 'memory' });

function check(
  id: GeometryCheck['id'],
  value: number,
  from: Cited,
  more: { limit?: Limit; unit?: GeometryCheck['unit']; needsSite?: boolean } = {},
): GeometryCheck {
  const { limit, unit = 'm', needsSite = limit === undefined } = more;
  const meets =
    limit === undefined
      ? null
      : limit.sense === 'most'
        ? value <= limit.value + NOISE_M
        : value >= limit.value - NOISE_M;
  return { id, value, unit, limit: limit ?? null, meets, needsSite, ...from };
}

const atMost = (value: number | null): Limit | undefined =>
  value === null ? undefined : { value, sense: 'most' };
const limited = (limit: Limit | undefined): { limit?: Limit } => (limit === undefined ? {} : { limit });

function heightChecks({ given, candidate }: CheckInput): GeometryCheck[] {
  const { edge } = candidate;
  const cos = cosine(angleOfPitch_deg(given.roof.pitch_rise_per_12));
  const face_m = edge.buildUp_m + edge.carrierDepth_m;
  const fasciaLimit = atMost(edge.fasciaLimit_m);
  const ridgeLimit = atMost(edge.ridgeLimit_m);
  return [
    check('fascia-plumb', face_m / cos, fasciaLimit ? answered : geometry, limited(fasciaLimit)),
    check('fascia-square', face_m, fasciaLimit ? answered : geometry, limited(fasciaLimit)),
    check('ridge-rise', edge.ridgeRise_m, ridgeLimit ? answered : geometry, {
      ...limited(ridgeLimit),
      // A limit of the zoning ordinance is settled with the authority, whatever the answer.
      needsSite: true,
    }),
    check('eave-height', given.roof.eaveHeight_m + edge.ridgeRise_m, geometry),
  ];
}

function openingChecks({ given, candidate }: CheckInput): GeometryCheck[] {
  const { edge } = candidate;
  const { dormers, skylights, chimneys } = given.roof;
  const angle_deg = angleOfPitch_deg(given.roof.pitch_rise_per_12);
  const tan = sine(angle_deg) / cosine(angle_deg);
  const rise_m = edge.ridgeRise_m;
  const { run_m } = roofOf(given);
  const aboveDeck_m = edge.buildUp_m - given.framing.deckThickness_m;
  const leg_m = dimension('step-flashing-leg_m');
  const near_m = Math.min(dimension('chimney-reach_m'), run_m) * tan + dimension('chimney-above-near_m');
  const chimney_m = Math.max(dimension('chimney-above-roof_m'), near_m);
  return [
    check('window-head', given.overhang.eave_m * tan + edge.carrierDepth_m / cosine(angle_deg), geometry),
    ...(dormers > 0
      ? [
          check('dormer-cheek', rise_m, geometry),
          check('step-flashing', rise_m + leg_m, irc('IRC-2018-R905.2.8.3', 'leg of 4 in up the wall')),
        ]
      : []),
    ...(skylights > 0
      ? [
          check('skylight-curb', aboveDeck_m + dimension('curb-above-roof_m'), {
            source: 'COMMON-PRACTICE',
            clause: 'curb 4 in above the finished roof',
            known: 'common practice',
          }),
        ]
      : []),
    ...(chimneys > 0
      ? [
          check(
            'chimney',
            rise_m + chimney_m,
            irc('IRC-2018-R1003.9', '3 ft above the roof, 2 ft above what is within 10 ft'),
          ),
        ]
      : []),
    check('gutter', rise_m, geometry),
  ];
}

function iceChecks({ requirements }: CheckInput): GeometryCheck[] {
  const { required, length_m, courses, source, clause, known } = requirements.iceBarrier;
  if (!required) return [];
  const covered_m = courses * dimension('ice-roll_m') - (courses - 1) * dimension('ice-lap_m');
  return [
    check(
      'ice-barrier',
      covered_m,
      { source, clause, known },
      { limit: { value: length_m, sense: 'least' } },
    ),
  ];
}

function ventChecks({ given, candidate }: CheckInput): GeometryCheck[] {
  const gap = candidate.layers.find(isGap);
  if (gap === undefined || gap.role === 'drainage-mat') return [];
  // Cross battens lie across the air: only the furring's height counts.
  const height_m = isPanelGap(gap)
    ? gap.thickness_m
    : Math.min(gap.thickness_m, dimension('furring-height_m'));
  const free_m2_m = height_m * clearShare(given, gap);
  const screened_m2_m = free_m2_m * dimension('gap-free-share');
  const least: Limit = { value: candidate.ventilation.netFreeArea_m2_m, sense: 'least' };
  const from: Cited = {
    source: 'IRC-2018-R806.1',
    clause: '1/300 of the slope, half low and half high, as a yardstick: R806 does not govern this gap',
    known: 'seen-secondary',
  };
  const unit = 'm²/m' as const;
  return [
    check('vent-intake', screened_m2_m, from, { limit: least, unit }),
    check('vent-gap', free_m2_m, from, { limit: least, unit }),
    check('vent-outlet', screened_m2_m, from, { limit: least, unit }),
    check('vent-throat', Math.min(free_m2_m, screened_m2_m), from, { limit: least, unit, needsSite: true }),
  ];
}

/**
 * Geometry checks of a candidate.
 *
 * fascia = (build-up + carrier) / cos for a plumb cut, without cos for a square one; rise = build-up / cos;
 * soffit below the top of the framing = overhang tan + carrier / cos; curb = build-up above the deck + 4 in;
 * chimney above today's roof = rise + the greater of 3 ft and 2 ft + reach tan;
 * free area per length = gap × clear share, at the openings × free share of the screen
 *
 * @param given         [m] the complete case
 * @param candidate     [m] the computed candidate
 * @param requirements  [m] ice barrier and pitch
 * @returns             [m, m²/m] checks in the order of the table
 * @source              COMMON-PRACTICE plane geometry (computed); IRC-2018-R1003.9 (memory); IRC-2018-R806.1 (seen-secondary)
 * @assumes             the chimney stands anywhere within reach of the ridge; outlet screened as the intake is
 */
export function geometryChecksOf(
  given: CompleteCase,
  candidate: Draft['candidate'] | Candidate,
  requirements: Requirements,
): GeometryChecks {
  const input = { given, candidate, requirements };
  return {
    candidate: candidate.id,
    checks: [...heightChecks(input), ...openingChecks(input), ...iceChecks(input), ...ventChecks(input)],
  };
}
