/** Lengths, areas and angles of a sloped roof from its plan. */

/** [-] run to which a roof pitch is stated: rise in 12. */
const PITCH_RUN = 12;
/** [deg] a half turn, for radians. */
const HALF_TURN_DEG = 180;
const DEGREES_PER_RADIAN = HALF_TURN_DEG / Math.PI;

/**
 * Angle of a roof plane from its pitch.
 *
 * angle = atan(rise / 12)
 *
 * @param pitch_rise_per_12  [-] rise in a run of 12, 0 or more
 * @returns                  [deg] 0 to below 90
 * @source                   COMMON-PRACTICE plane geometry (computed)
 */
export const angleOfPitch_deg = (pitch_rise_per_12: number): number =>
  Math.atan(pitch_rise_per_12 / PITCH_RUN) * DEGREES_PER_RADIAN;

const radians = (angle_deg: number): number => angle_deg / DEGREES_PER_RADIAN;
/**
 * Cosine of an angle in degrees.
 *
 * @param angle_deg  [deg] any
 * @returns          [-] −1 to 1
 * @source           COMMON-PRACTICE plane geometry (computed)
 */
export const cosine = (angle_deg: number): number => Math.cos(radians(angle_deg));
/**
 * Sine of an angle in degrees.
 *
 * @param angle_deg  [deg] any
 * @returns          [-] −1 to 1
 * @source           COMMON-PRACTICE plane geometry (computed)
 */
export const sine = (angle_deg: number): number => Math.sin(radians(angle_deg));

export interface RoofPlan {
  readonly shape: 'gable' | 'hip' | 'shed' | 'gambrel' | 'cross-gable';
  readonly angle_deg: number;
  readonly length_m: number;
  readonly width_m: number;
  readonly eaveOverhang_m: number;
  readonly rakeOverhang_m: number;
}

export interface RoofMeasures {
  readonly area_m2: number;
  readonly eaveLength_m: number;
  readonly rakeLength_m: number;
  readonly ridgeLength_m: number;
  /** Length along one slope, eave edge to ridge. */
  readonly slopeLength_m: number;
  /** Horizontal run of one slope, wall line to ridge. */
  readonly run_m: number;
}

/**
 * Area and edge lengths of the finished roof, overhangs in.
 *
 * area = plan area with overhangs / cos(angle): exact for planes of one slope, whatever the number of hips;
 * a gambrel and a cross gable are counted as the plain roof over the same plan.
 *
 * @param plan  [m, deg] ridge along the length
 * @returns     [m², m]
 * @source      COMMON-PRACTICE plane geometry (computed)
 * @assumes     one pitch; a shed drains over one long side
 */
export function measureRoof(plan: RoofPlan): RoofMeasures {
  const { shape, angle_deg, length_m, width_m, eaveOverhang_m, rakeOverhang_m } = plan;
  const cos = cosine(angle_deg);
  const spans = shape === 'shed' ? 1 : 2;
  const run_m = width_m / spans;
  const slopeLength_m = (run_m + eaveOverhang_m) / cos;
  if (shape === 'hip') {
    const outerLength_m = length_m + 2 * eaveOverhang_m;
    const outerWidth_m = width_m + 2 * eaveOverhang_m;
    return {
      area_m2: (outerLength_m * outerWidth_m) / cos,
      eaveLength_m: 2 * (outerLength_m + outerWidth_m),
      rakeLength_m: 0,
      ridgeLength_m: Math.max(0, length_m - width_m),
      slopeLength_m,
      run_m,
    };
  }
  const edgeLength_m = length_m + 2 * rakeOverhang_m;
  return {
    area_m2: spans * slopeLength_m * edgeLength_m,
    eaveLength_m: spans * edgeLength_m,
    rakeLength_m: 2 * spans * slopeLength_m,
    ridgeLength_m: edgeLength_m,
    slopeLength_m,
    run_m,
  };
}

export type EdgeCarrier = 'rafter-tails' | 'truss-tails' | 'outriggers';

export interface RoofEdgeInput {
  readonly angle_deg: number;
  /** Thickness of each layer above the framing, square to the slope. */
  readonly layers_m: readonly number[];
  readonly framingDepth_m: number;
  readonly cut: 'plumb' | 'square';
  readonly carrier: EdgeCarrier;
}

export interface RoofEdge {
  readonly buildUp_m: number;
  readonly fascia_m: number;
  readonly ridgeRise_m: number;
}

/**
 * Build-up, height of the fascia's face and rise of the ridge.
 *
 * build-up  t = Σ layers above the framing, square to the slope
 * plumb cut fascia = (t + d) / cos(angle); square cut fascia = t + d
 * ridge rise = t / cos(angle)
 * with d the depth of the tail behind the fascia: the framing for tails; 0 for outriggers, which lie on
 * the deck within t.
 *
 * @param input  [m, deg] angle 0 to below 90; layers and depth >= 0
 * @returns      [m]
 * @source       COMMON-PRACTICE plane geometry (computed)
 * @assumes      the full stack runs to the fascia; the covering's own thickness counts as a layer
 */
export function roofEdge(input: RoofEdgeInput): RoofEdge {
  const buildUp_m = input.layers_m.reduce((sum, thickness_m) => sum + thickness_m, 0);
  const tail_m = input.carrier === 'outriggers' ? 0 : input.framingDepth_m;
  const cos = cosine(input.angle_deg);
  const face_m = buildUp_m + tail_m;
  return {
    buildUp_m,
    fascia_m: input.cut === 'plumb' ? face_m / cos : face_m,
    ridgeRise_m: buildUp_m / cos,
  };
}
