/** Typed access to the building code's wall table for furring over foam. */
import * as v from 'valibot';
import table from '../../content/tables/furring-over-foam.json' with { type: 'json' };
import { metersFromInches, pascalsFromPsf } from '../units.ts';

export const furringFasteners = ['nail-0.131', 'nail-0.162', 'wood-10', 'lag-1/4'] as const;
export type FurringFastener = (typeof furringFasteners)[number];

const cells = v.pipe(v.array(v.nullable(v.pipe(v.number(), v.gtValue(0)))), v.length(4));
export const furringSchema = v.strictObject({
  about: v.string(),
  source: v.string(),
  place: v.string(),
  known: v.string(),
  weights_psf: v.pipe(v.array(v.number()), v.length(4)),
  rows: v.array(
    v.strictObject({
      fastener: v.picklist(furringFasteners),
      spacing_in: v.number(),
      penetration_in: v.number(),
      studs16_in: cells,
      studs24_in: cells,
    }),
  ),
});

const furring = v.parse(furringSchema, table);

export interface FurringCell {
  readonly fastener: FurringFastener;
  /** Of the fasteners along the furring. */
  readonly spacing_m: number;
  /** Of the studs or rafters. */
  readonly across_m: number;
  readonly penetration_m: number;
  readonly weight_Pa: number;
  /** Greatest foam thickness; null when a design is required. */
  readonly foam_m: number | null;
}

/** Every cell of the table, in SI. */
export const furringCells: readonly FurringCell[] = furring.rows.flatMap((row) =>
  ([16, 24] as const).flatMap((across_in) =>
    row[across_in === 16 ? 'studs16_in' : 'studs24_in'].map((foam_in, index) => ({
      fastener: row.fastener,
      spacing_m: metersFromInches(row.spacing_in),
      across_m: metersFromInches(across_in),
      penetration_m: metersFromInches(row.penetration_in),
      weight_Pa: pascalsFromPsf(furring.weights_psf[index] ?? 0),
      foam_m: foam_in === null ? null : metersFromInches(foam_in),
    })),
  ),
);
