/** Typed access to the wind coefficients; areas leave here in square meters. */
import * as v from 'valibot';
import table from '../../content/tables/wind-gcp.json' with { type: 'json' };
import { squareMetersFromSquareFeet } from '../units.ts';

export const windEditions = ['asce7-16', 'asce7-22'] as const;
export type WindEdition = (typeof windEditions)[number];
export const windShapes = ['gable', 'hip'] as const;
export type WindShape = (typeof windShapes)[number];
export const windZones = ['1', '2', '3', '2e', '2n', '2r', '3e', '3r'] as const;
export type WindZone = (typeof windZones)[number];

const point = v.tuple([v.pipe(v.number(), v.gtValue(0)), v.number()]);
const line = v.tuple([point, point]);
export const windCoefficientsSchema = v.strictObject({
  about: v.string(),
  sources: v.array(v.string()),
  known: v.string(),
  rows: v.array(
    v.strictObject({
      edition: v.picklist(windEditions),
      shape: v.picklist(windShapes),
      above_deg: v.number(),
      to_deg: v.number(),
      part: v.picklist(['roof', 'overhang', 'positive']),
      /** Height to width of a low-slope hip roof: `low` up to 0.5, `high` from 0.8. */
      proportion: v.optional(v.picklist(['low', 'high'])),
      zones: v.array(v.picklist(windZones)),
      points: line,
      note: v.optional(v.string()),
    }),
  ),
  wall: v.strictObject({ about: v.string(), points: line, known: v.string() }),
});

const coefficients = v.parse(windCoefficientsSchema, table);

/** GCp at the smallest and the greatest area of its line. */
export interface CoefficientLine {
  readonly smallArea_m2: number;
  readonly atSmallArea: number;
  readonly largeArea_m2: number;
  readonly atLargeArea: number;
  readonly note?: string;
}

function lineFrom(points: v.InferOutput<typeof line>, note?: string): CoefficientLine {
  const [[smallArea_ft2, atSmallArea], [largeArea_ft2, atLargeArea]] = points;
  return {
    smallArea_m2: squareMetersFromSquareFeet(smallArea_ft2),
    atSmallArea,
    largeArea_m2: squareMetersFromSquareFeet(largeArea_ft2),
    atLargeArea,
    ...(note === undefined ? {} : { note }),
  };
}

/** The line of one zone, or undefined when the table has none for that slope, shape and part. */
export function coefficientLine(wanted: {
  readonly edition: WindEdition;
  readonly shape: WindShape;
  readonly angle_deg: number;
  readonly part: 'roof' | 'overhang' | 'positive';
  readonly zone: WindZone;
  readonly proportion: 'low' | 'high';
}): CoefficientLine | undefined {
  const row = coefficients.rows.find(
    (candidate) =>
      candidate.edition === wanted.edition &&
      candidate.shape === wanted.shape &&
      candidate.part === wanted.part &&
      wanted.angle_deg > candidate.above_deg &&
      wanted.angle_deg <= candidate.to_deg &&
      (candidate.proportion === undefined || candidate.proportion === wanted.proportion) &&
      candidate.zones.includes(wanted.zone),
  );
  return row && lineFrom(row.points, row.note);
}

/** The wall line that pushes up on a soffit. */
export const WALL_LINE: CoefficientLine = lineFrom(coefficients.wall.points);

/** The zones that an edition names for a roof shape. */
export function zonesOf(edition: WindEdition, shape: WindShape): readonly WindZone[] {
  if (edition === 'asce7-22') return ['1', '2', '3'];
  return shape === 'gable' ? ['1', '2e', '2n', '2r', '3e', '3r'] : ['1', '2e', '2r', '3'];
}
