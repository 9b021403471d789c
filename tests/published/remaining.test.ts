/** Rows of the reference tables that neither a calculation of the command nor another test covers. */
import { describe, expect, it } from 'vitest';
import { searchPlaces } from '../../src/catalog/places.ts';
import { threeColdestMonths } from '../../src/physics/climate.ts';
import { withdrawalPerLength } from '../../src/structure/screws.ts';
import { fahrenheitFromCelsius, metersFromInches, poundsFromNewtons } from '../../src/units.ts';

describe('mean of the three coldest months, worked apart from this program from the 1991-2020 normals', () => {
  // Means are printed to 0.01 °C and 0.1 °F.
  it.each([
    ['Fairbanks, AK', -20.1, -4.2, [1, 12, 2]],
    ['International Falls, MN', -12.9, 8.8, null],
    ['Anchorage, AK', -7.1, 19.2, [1, 12, 2]],
    ['Duluth, MN', -9.7, 14.5, null],
    ['Helena, MT', -4.17, 24.5, [1, 12, 2]],
    ['Minneapolis-St. Paul, MN', -6.9, 19.6, null],
    ['Burlington, VT', -4.47, 24, null],
    ['Chicago, IL', -2.13, 28.2, null],
    ['Boston, MA', 0.27, 32.5, null],
    ['Baltimore, MD', 2.53, 36.6, null],
    ['Portland, OR', 5.83, 42.5, [12, 1, 2]],
    ['Atlanta, GA', 8.27, 46.9, null],
    ['Las Vegas, NV', 10.2, 50.4, [12, 1, 2]],
    ['Houston, TX', 13.13, 55.6, null],
    ['Phoenix, AZ', 14.17, 57.5, [12, 1, 2]],
    ['Miami, FL', 21.2, 70.2, null],
  ])('%s: %d °C, %d °F', (query, mean_C, mean_F, months) => {
    const [place] = searchPlaces(query, 1);
    const coldest = threeColdestMonths(place?.monthlyMean_C ?? []);
    expect(Math.abs(coldest.mean_C - mean_C)).toBeLessThanOrEqual(0.005 + 1e-9);
    expect(Math.abs(fahrenheitFromCelsius(coldest.mean_C) - mean_F)).toBeLessThanOrEqual(0.05 + 1e-9);
    if (months !== null) expect(coldest.months).toEqual(months);
  });
});

describe('withdrawal of wood screws from panels, worked apart from this program, printed to whole pounds', () => {
  const NOMINAL_IN = { 8: 0.164, 10: 0.19, 12: 0.216, 14: 0.242 } as const;
  const PANELS = [
    [7 / 16, 0.5],
    [15 / 32, 0.5],
    [15 / 32, 0.42],
    [19 / 32, 0.5],
    [23 / 32, 0.5],
  ] as const;
  it.each([
    [8, [51, 55, 39, 69, 84]],
    [10, [59, 63, 45, 80, 97]],
    [12, [67, 72, 51, 91, 111]],
    [14, [75, 81, 57, 102, 124]],
  ] as const)('No. %i in 7/16, 15/32, 15/32 of G 0.42, 19/32 and 23/32 in', (number, printed_lb) => {
    const diameter_m = metersFromInches(NOMINAL_IN[number]);
    PANELS.forEach(([thickness_in, gravity], column) => {
      const load_N = withdrawalPerLength('wood-screw', diameter_m, gravity) * metersFromInches(thickness_in);
      expect(Math.abs(poundsFromNewtons(load_N) - (printed_lb[column] ?? 0))).toBeLessThanOrEqual(0.5);
    });
  });
});
