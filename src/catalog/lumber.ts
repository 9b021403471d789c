/** Typed access to the lumber and screw tables; values leave here in SI. */
import * as v from 'valibot';
import lumberTable from '../../content/tables/lumber.json' with { type: 'json' };
import screwTable from '../../content/tables/screws.json' with { type: 'json' };
import { metersFromInches, PASCALS_PER_PSI } from '../units.ts';

export const speciesIds = ['spruce-pine-fir', 'douglas-fir-larch', 'hem-fir', 'southern-pine'] as const;
export type SpeciesId = (typeof speciesIds)[number];
export const lumberSizes = ['2x4', '2x6', '2x8', '2x10'] as const;
export type LumberSize = (typeof lumberSizes)[number];
/** Grades; the table gives No. 2 from a transcription and the others from memory. */
export const lumberGrades = ['select-structural', 'no-1', 'no-2', 'no-3'] as const;
export type LumberGrade = (typeof lumberGrades)[number];
export const gradeNames: Readonly<Record<LumberGrade, string>> = {
  'select-structural': 'Select Structural',
  'no-1': 'No. 1',
  'no-2': 'No. 2',
  'no-3': 'No. 3',
};
export const screwKinds = ['wood-screw', 'lag-screw'] as const;
export type ScrewKind = (typeof screwKinds)[number];

const positive = v.pipe(v.number(), v.gtValue(0));
const bySize = v.strictObject({ '2x4': positive, '2x6': positive, '2x8': positive, '2x10': positive });

export const lumberSchema = v.strictObject({
  about: v.string(),
  source: v.string(),
  known: v.string(),
  grade: v.string(),
  species: v.array(
    v.strictObject({
      id: v.picklist(speciesIds),
      name: v.string(),
      specificGravity: positive,
      bending_psi: v.optional(positive),
      bendingBySize_psi: v.optional(bySize),
      shear_psi: positive,
      bearing_psi: positive,
      elasticity_psi: positive,
      elasticityMinimum_psi: positive,
      sizeFactorApplies: v.boolean(),
    }),
  ),
  sizes: v.array(
    v.strictObject({
      id: v.picklist(lumberSizes),
      thickness_in: positive,
      depth_in: positive,
      sizeFactor: positive,
      flatUseFactor: positive,
    }),
  ),
  grades: v.strictObject({
    about: v.string(),
    known: v.string(),
    rows: v.array(
      v.strictObject({
        species: v.picklist(speciesIds),
        grade: v.picklist(lumberGrades),
        bending_psi: v.optional(positive),
        bendingBySize_psi: v.optional(bySize),
        elasticity_psi: positive,
      }),
    ),
  }),
  repetitiveFactor: positive,
});

export const screwsSchema = v.strictObject({
  about: v.string(),
  screws: v.array(
    v.strictObject({
      id: v.string(),
      kind: v.picklist(screwKinds),
      name: v.string(),
      nominal_in: positive,
      root_in: positive,
      head_in: v.optional(positive),
      bendingYield_psi: positive,
    }),
  ),
  source: v.string(),
  place: v.string(),
  known: v.string(),
  lengths: v.strictObject({
    about: v.string(),
    source: v.string(),
    known: v.string(),
    lengths_in: v.array(positive),
  }),
});

const lumber = v.parse(lumberSchema, lumberTable);
const screwRows = v.parse(screwsSchema, screwTable);

export interface Lumber {
  readonly name: string;
  readonly specificGravity: number;
  /** Reference bending strength of the size before any factor. */
  readonly bending_Pa: number;
  readonly shear_Pa: number;
  /** Compression perpendicular to grain. */
  readonly bearing_Pa: number;
  readonly elasticity_Pa: number;
  readonly sizeFactor: number;
  readonly flatUseFactor: number;
  readonly repetitiveFactor: number;
  readonly thickness_m: number;
  readonly depth_m: number;
  /** How the strength and stiffness of the grade are known. */
  readonly known: string;
}

export interface Screw {
  readonly id: string;
  readonly kind: ScrewKind;
  readonly name: string;
  readonly nominal_m: number;
  readonly root_m: number;
  /** Absent for lag screws, whose washer decides. */
  readonly head_m?: number;
  readonly bendingYield_Pa: number;
}

function readLumber(species: SpeciesId, size: LumberSize, grade: LumberGrade): Lumber {
  const wood = lumber.species.find((row) => row.id === species);
  const dressed = lumber.sizes.find((row) => row.id === size);
  const other = lumber.grades.rows.find((row) => row.species === species && row.grade === grade);
  const graded = grade === 'no-2' ? wood : other;
  const bending_psi = graded?.bendingBySize_psi?.[size] ?? graded?.bending_psi;
  if (!wood || !dressed || !graded || bending_psi === undefined)
    throw new RangeError(`no lumber row for ${species} ${size} ${grade}`);
  return {
    name: `${size} ${wood.name} ${gradeNames[grade]}`,
    specificGravity: wood.specificGravity,
    bending_Pa: bending_psi * PASCALS_PER_PSI,
    shear_Pa: wood.shear_psi * PASCALS_PER_PSI,
    bearing_Pa: wood.bearing_psi * PASCALS_PER_PSI,
    elasticity_Pa: graded.elasticity_psi * PASCALS_PER_PSI,
    sizeFactor: wood.sizeFactorApplies ? dressed.sizeFactor : 1,
    flatUseFactor: dressed.flatUseFactor,
    repetitiveFactor: lumber.repetitiveFactor,
    thickness_m: metersFromInches(dressed.thickness_in),
    depth_m: metersFromInches(dressed.depth_in),
    known: grade === 'no-2' ? lumber.known : lumber.grades.known,
  };
}

const lumberByName = new Map(
  speciesIds.flatMap((species) =>
    lumberSizes.flatMap((size) =>
      lumberGrades.map((grade) => [`${species}/${size}/${grade}`, readLumber(species, size, grade)] as const),
    ),
  ),
);

/** The design values and dressed size of one member, in SI; No. 2 unless another grade is named. */
export function lumberOf(species: SpeciesId, size: LumberSize, grade: LumberGrade = 'no-2'): Lumber {
  const found = lumberByName.get(`${species}/${size}/${grade}`);
  if (!found) throw new RangeError(`no lumber row for ${species} ${size} ${grade}`);
  return found;
}

/** All generic screw sizes, in SI. */
export const screws: readonly Screw[] = screwRows.screws.map((row) => ({
  id: row.id,
  kind: row.kind,
  name: row.name,
  nominal_m: metersFromInches(row.nominal_in),
  root_m: metersFromInches(row.root_in),
  ...(row.head_in === undefined ? {} : { head_m: metersFromInches(row.head_in) }),
  bendingYield_Pa: row.bendingYield_psi * PASCALS_PER_PSI,
}));

/** One generic screw by its id. */
export function screwOf(id: string): Screw {
  const found = screws.find((row) => row.id === id);
  if (!found) throw new RangeError(`no screw ${id}`);
  return found;
}

/** Lengths sold, shortest first, [m]. */
export const screwLengths_m: readonly number[] = screwRows.lengths.lengths_in
  .map(metersFromInches)
  .sort((a, b) => a - b);
