/** Published worked examples of wood members, computed by the functions. */
import { lumberOf } from '../../src/catalog/lumber.ts';
import { allowableStress, rectangle, sectionOf, shearStress } from '../../src/structure/timber.ts';
import {
  METERS_PER_FOOT,
  METERS_PER_INCH,
  NEWTONS_PER_POUND,
  PASCALS_PER_PSI,
  metersFromFeet,
  metersFromInches,
  pascalsFromPsf,
} from '../../src/units.ts';
import { publishedValues, type PublishedValue } from './rows.ts';
import { AWC_EXAMPLES, HUD_GUIDE } from './sources.ts';

const POUND_INCH = NEWTONS_PER_POUND * METERS_PER_INCH;
const dressed = (depth_in: number) => rectangle(metersFromInches(1.5), metersFromInches(depth_in));

const bendingStress_psi = (moment_lb_in: number, depth_in: number): number =>
  (moment_lb_in * POUND_INCH) / dressed(depth_in).modulus_m3 / PASCALS_PER_PSI;

const awc: PublishedValue[] = [
  {
    id: 'PUB-S6-fb-2x6',
    what: 'bending of a 2x6 by 12,150 lb in',
    source: AWC_EXAMPLES,
    place: 'E1.7, p. 40 to 44',
    unit: 'psi',
    computed: bendingStress_psi(12_150, 5.5),
    printed: 1607,
    tolerance: 0.5,
    why: 'Printed to whole psi.',
  },
  {
    id: 'PUB-S6-fb-2x8',
    what: 'bending of a 2x8 by 12,500 lb in',
    source: AWC_EXAMPLES,
    place: 'E1.9, p. 55 to 79',
    unit: 'psi',
    computed: bendingStress_psi(12_500, 7.25),
    printed: 951,
    tolerance: 0.5,
    why: 'Printed to whole psi.',
  },
  {
    id: 'PUB-S6-Fb-2x6',
    what: 'allowable bending of Southern Pine No. 1 2x6 under wind',
    source: AWC_EXAMPLES,
    place: 'E1.7, p. 40 to 44',
    unit: 'psi',
    computed:
      allowableStress(
        { species: 'southern-pine', size: '2x6', orientation: 'on-edge', grade: 'no-1' },
        1.6,
        false,
      ).bending_Pa / PASCALS_PER_PSI,
    printed: 2160,
    tolerance: 1e-6,
    why: 'A product of 1350 and 1.6, printed whole.',
  },
  ...(
    [
      ['2x4', 1100],
      ['2x6', 1000],
      ['2x8', 925],
      ['2x10', 800],
    ] as const
  ).map(([size, printed]): PublishedValue => ({
    id: `PUB-S6-SP-${size}`,
    what: `reference bending of Southern Pine No. 2 ${size}`,
    source: AWC_EXAMPLES,
    place: 'Supplement table 4B as quoted',
    unit: 'psi',
    computed: lumberOf('southern-pine', size).bending_Pa / PASCALS_PER_PSI,
    printed,
    tolerance: 1e-6,
    why: 'A table value.',
  })),
];

const section = sectionOf({ species: 'hem-fir', size: '2x8', orientation: 'on-edge' });
const hemFir_psi =
  allowableStress({ species: 'hem-fir', size: '2x8', orientation: 'on-edge', grade: 'no-1' }, 1, true)
    .bending_Pa / PASCALS_PER_PSI;
/** 40 psf on joists 16 in on center. */
const line_N_m = pascalsFromPsf(40) * metersFromInches(16);
const bendingSpan_m = Math.sqrt((8 * section.modulus_m3 * hemFir_psi * PASCALS_PER_PSI) / line_N_m);
const hud: PublishedValue[] = [
  {
    id: 'PUB-S7-S',
    what: 'section modulus of a 2x8',
    source: HUD_GUIDE,
    place: 'example 5.1',
    unit: 'in3',
    computed: section.modulus_m3 / METERS_PER_INCH ** 3,
    printed: 13.14,
    tolerance: 0.005,
    why: 'Printed to two decimals.',
  },
  {
    id: 'PUB-S7-I',
    what: 'moment of inertia of a 2x8',
    source: HUD_GUIDE,
    place: 'example 5.1',
    unit: 'in4',
    computed: section.inertia_m4 / METERS_PER_INCH ** 4,
    printed: 47.63,
    tolerance: 0.01,
    why: 'Printed to two decimals, cut: 47.635.',
  },
  {
    id: 'PUB-S7-Fb',
    what: 'allowable bending of Hem-Fir No. 1 2x8, repetitive',
    source: HUD_GUIDE,
    place: 'example 5.1',
    unit: 'psi',
    computed: hemFir_psi,
    printed: 1345,
    tolerance: 0.6,
    why: 'Printed to whole psi, cut: 1345.5.',
  },
  {
    id: 'PUB-S7-span',
    what: 'span at which bending governs',
    source: HUD_GUIDE,
    place: 'example 5.1',
    unit: 'ft',
    computed: bendingSpan_m / METERS_PER_FOOT,
    printed: 14.865,
    tolerance: 0.015,
    why: 'The program stops its search within 1e-3 of the stress, half of that in the span.',
  },
  {
    id: 'PUB-S7-shear',
    what: 'shear stress at a span of 40.8 ft',
    source: HUD_GUIDE,
    place: 'example 5.1',
    unit: 'psi',
    computed: shearStress((line_N_m * metersFromFeet(40.8)) / 2, section.area_m2) / PASCALS_PER_PSI,
    printed: 150,
    tolerance: 0.2,
    why: 'The span is printed to 0.1 ft: 0.05 ft of 40.8 ft is 0.2 psi.',
  },
];

publishedValues('published examples of wood members', [...awc, ...hud]);
