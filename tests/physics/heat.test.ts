/**
 * ISO 6946: what the named calculations do not show. Hand-worked values (computed) are regression anchors; rules
 * of the standard are from memory of the 2017 edition.
 */
import { describe, expect, it } from 'vitest';
import {
  airLayerByEmissivity_m2K_W,
  airLayerVentilation,
  insideSurface_m2K_W,
  resistanceWithAirLayer_m2K_W,
  resistancesBehindVentilation_m2K_W,
  unventilatedAirLayer_m2K_W,
} from '../../src/physics/airLayers.ts';
import {
  type Fastener,
  airVoidCorrection_W_m2K,
  elementResistance,
  fastenerCorrection_W_m2K,
  fastenerPointTransmittance_W_K,
  homogeneousLayer,
  taperedRectangleTransmittance_W_m2K,
} from '../../src/physics/iso6946.ts';
import {
  areaWeightedTransmittance_W_m2K,
  interfaceTemperatures_C,
  parallelPath_m2K_W,
  seriesResistance_m2K_W,
  solveTemperatureDependentResistance,
} from '../../src/physics/thermal.ts';
import { woodConductivity_W_mK } from '../../src/physics/wood.ts';

const circle_m2 = (diameter_m: number): number => (Math.PI * diameter_m ** 2) / 4;
const steel: Fastener = {
  crossSection_m2: circle_m2(0.0048),
  conductivity_W_mK: 50,
  lengthInLayer_m: 0.1,
  layerThickness_m: 0.1,
  layerResistance_m2K_W: 3.8462,
  totalResistance_m2K_W: 4.1085,
};

describe('fasteners and voids', () => {
  it('one steel screw of 4.8 mm through 100 mm loses 0.006343 W/K (0.5 %: hand-worked, rounded section)', () => {
    expect(Math.abs(fastenerPointTransmittance_W_K(steel) / 0.006343 - 1)).toBeLessThan(0.005);
  });

  it.each([
    [steel, 4, 9.44],
    [
      {
        ...steel,
        crossSection_m2: circle_m2(0.0045),
        lengthInLayer_m: 0.1524,
        layerThickness_m: 0.1524,
        layerResistance_m2K_W: 0.1524 / 0.026,
        totalResistance_m2K_W: 1 / 0.16105,
      },
      2.9,
      6.28,
    ],
  ])('the screws take the stated share of R (hand-worked, two decimals)', (fastener, perArea, loss_pct) => {
    const U = 1 / fastener.totalResistance_m2K_W;
    const corrected = U + fastenerCorrection_W_m2K(fastener, perArea);
    expect(100 * (1 - U / corrected)).toBeCloseTo(loss_pct, 1);
  });

  it('a head recessed to half the layer halves the loss, exactly', () => {
    const recessed = fastenerPointTransmittance_W_K({ ...steel, lengthInLayer_m: 0.05 });
    expect(recessed).toBeCloseTo(fastenerPointTransmittance_W_K(steel) / 2, 15);
  });

  it('fasteners of plastic need no correction', () => {
    expect(fastenerCorrection_W_m2K({ ...steel, conductivity_W_mK: 0.3 }, 4)).toBe(0);
  });

  it('steel of 1/4 in on a 24 in grid, 200 times the conductivity, adds 1.7 % by area alone (trade figure)', () => {
    const share = circle_m2(0.25) / (24 * 24);
    const plain = parallelPath_m2K_W([{ share: 1, resistance_m2K_W: 200 }]);
    const bridged = parallelPath_m2K_W([
      { share: 1 - share, resistance_m2K_W: 200 },
      { share, resistance_m2K_W: 1 },
    ]);
    expect(100 * (plain / bridged - 1)).toBeCloseTo(1.7, 1);
  });

  it('air voids of level 1 add 0.00876 W/m2K (hand-worked)', () => {
    expect(airVoidCorrection_W_m2K(1, 3.846, 4.108)).toBeCloseTo(0.00876, 4);
    expect(airVoidCorrection_W_m2K(0, 3.846, 4.108)).toBe(0);
    expect(airVoidCorrection_W_m2K(2, 3.846, 4.108)).toBeCloseTo(
      4 * airVoidCorrection_W_m2K(1, 3.846, 4.108),
      12,
    );
  });

  it('refuses a layer with more resistance than the whole', () => {
    expect(() => fastenerPointTransmittance_W_K({ ...steel, layerResistance_m2K_W: 5 })).toThrow(RangeError);
  });
});

describe('tapered insulation, zones, wood', () => {
  it('rectangle with R0 1 and R2 4 has U = 0.25 ln 5 = 0.4024', () => {
    expect(taperedRectangleTransmittance_W_m2K(1, 4)).toBeCloseTo(0.4024, 4);
  });

  it('the tapered rectangle equals the mean of U over the fall, summed numerically', () => {
    const strips = 20000;
    let mean = 0;
    for (let strip = 0; strip < strips; strip++) mean += 1 / (1.3 + (5.1 * (strip + 0.5)) / strips) / strips;
    expect(taperedRectangleTransmittance_W_m2K(1.3, 5.1)).toBeCloseTo(mean, 8);
  });

  it('an eave band of 0.6 m in 5 m with U 0.2866 gives 0.2374 (hand-worked)', () => {
    const mean = areaWeightedTransmittance_W_m2K([
      { area_m2: 0.6, transmittance_W_m2K: 0.2866 },
      { area_m2: 4.4, transmittance_W_m2K: 0.2307 },
    ]);
    expect(mean).toBeCloseTo(0.2374, 4);
  });

  it('wood of gravity 0.40 at 12 % conducts 0.1158 W/mK (Wood Handbook eq. 4-15, seen)', () => {
    expect(woodConductivity_W_mK(0.4, 12)).toBeCloseTo(0.1158, 4);
    expect(() => woodConductivity_W_mK(0.4, 26)).toThrow(RangeError);
  });
});

describe('air layers and films', () => {
  it('a roof in winter has 0.10 inside (table 7)', () => {
    expect([
      insideSurface_m2K_W('up'),
      insideSurface_m2K_W('horizontal'),
      insideSurface_m2K_W('down'),
    ]).toEqual([0.1, 0.13, 0.17]);
  });

  it.each([
    [0.005, 'up', 0.11],
    [0.007, 'up', 0.13],
    [0.01, 'up', 0.15],
    [0.015, 'up', 0.16],
    [0.3, 'up', 0.16],
    [0.025, 'horizontal', 0.18],
    [0.05, 'down', 0.21],
    [0.1, 'down', 0.22],
    [0.075, 'down', 0.215],
    [0.0085, 'up', 0.14],
  ] as const)('an air layer of %d m, heat flowing %s, has R %d (table 8, linear between)', (d, flow, R) => {
    expect(unventilatedAirLayer_m2K_W(d, flow)).toBeCloseTo(R, 10);
  });

  it('the table agrees with annex D for dull faces within 0.02 m2K/W (both from the same standard, rounded)', () => {
    for (const flow of ['up', 'horizontal', 'down'] as const) {
      for (const d of [0.01, 0.025, 0.05, 0.1]) {
        const dull = airLayerByEmissivity_m2K_W(d, flow, [0.9, 0.9]);
        expect(Math.abs(dull - unventilatedAirLayer_m2K_W(d, flow)), `${d} ${flow}`).toBeLessThan(0.02);
      }
    }
  });

  it('a bright face raises the resistance', () => {
    const bright = airLayerByEmissivity_m2K_W(0.025, 'up', [0.05, 0.9]);
    expect(bright).toBeGreaterThan(2 * airLayerByEmissivity_m2K_W(0.025, 'up', [0.9, 0.9]));
  });

  it('counts openings: 500 closed, 501 and 1499 slightly, 1500 well ventilated', () => {
    expect([500, 501, 1499, 1500].map(airLayerVentilation)).toEqual([
      'unventilated',
      'slightly-ventilated',
      'slightly-ventilated',
      'well-ventilated',
    ]);
  });

  it('between the limits the total goes straight from closed to open', () => {
    expect(resistanceWithAirLayer_m2K_W(5, 4, 500)).toBe(5);
    expect(resistanceWithAirLayer_m2K_W(5, 4, 1000)).toBeCloseTo(4.5, 12);
    expect(resistanceWithAirLayer_m2K_W(5, 4, 2000)).toBe(4);
  });

  it('behind a well-ventilated gap the covering does not count', () => {
    const thin = resistancesBehindVentilation_m2K_W('up', [0.08, 4, 0.16, 0.1], 2);
    const thick = resistancesBehindVentilation_m2K_W('up', [0.08, 4, 0.16, 9], 2);
    expect(thin).toEqual([0.1, 0.08, 4, 0.1]);
    expect(thick).toEqual(thin);
  });

  it('refuses thicker layers than the table holds', () => {
    expect(() => unventilatedAirLayer_m2K_W(0.31, 'up')).toThrow(RangeError);
    expect(() => airLayerByEmissivity_m2K_W(0.02, 'up', [0, 0.9])).toThrow(RangeError);
    expect(() => resistancesBehindVentilation_m2K_W('up', [1], 1)).toThrow(RangeError);
  });
});

describe('the combined method', () => {
  const framed = (wood: number) =>
    elementResistance({
      insideSurface_m2K_W: 0.1,
      outsideSurface_m2K_W: 0.04,
      layers: [
        homogeneousLayer(0.08),
        {
          paths: [
            { share: 0.9, resistance_m2K_W: 6 },
            { share: 0.1, resistance_m2K_W: wood },
          ],
        },
      ],
    });

  it('says so where upper over lower passes 1.5: metal needs a numerical calculation', () => {
    expect(framed(1.8).methodApplies).toBe(true);
    expect(framed(0.005).methodApplies).toBe(false);
  });

  it('the error of the split-insulation roof is 2.6 % (hand-worked)', () => {
    const roof = elementResistance({
      insideSurface_m2K_W: 0.1,
      outsideSurface_m2K_W: 0.04,
      layers: [
        homogeneousLayer(0.0127 / 0.16),
        {
          paths: [
            { share: 0.9, resistance_m2K_W: 0.235 / 0.038 },
            { share: 0.1, resistance_m2K_W: 0.235 / 0.13 },
          ],
        },
        homogeneousLayer(0.0159 / 0.13),
        homogeneousLayer(0.1 / 0.026),
        homogeneousLayer(0.0111 / 0.13),
      ],
    });
    expect(roof.error_pct).toBeCloseTo(2.6, 1);
  });

  it('refuses shares that do not fill the area and far too many combinations', () => {
    const half = { paths: [{ share: 0.5, resistance_m2K_W: 1 }] };
    const many = {
      paths: [
        { share: 0.5, resistance_m2K_W: 1 },
        { share: 0.5, resistance_m2K_W: 2 },
      ],
    };
    const element = { insideSurface_m2K_W: 0.1, outsideSurface_m2K_W: 0.04 };
    expect(() => elementResistance({ ...element, layers: [half] })).toThrow(RangeError);
    expect(() => elementResistance({ ...element, layers: Array.from({ length: 17 }, () => many) })).toThrow(
      RangeError,
    );
    expect(() => elementResistance({ ...element, layers: [{ paths: [] }] })).toThrow(RangeError);
  });
});

describe('temperatures and conductivity that depends on them', () => {
  it('refuses negative and absent resistance', () => {
    expect(() => interfaceTemperatures_C(20, 0, [])).toThrow(RangeError);
    expect(() => interfaceTemperatures_C(20, 0, [1, -1])).toThrow(RangeError);
    expect(() => seriesResistance_m2K_W([Number.NaN])).toThrow(RangeError);
  });

  it('a lone slab with k linear in temperature takes k at its mean: the exact answer of Fourier', () => {
    const k = (t: number): number => 0.025 + 0.0002 * t;
    const solved = solveTemperatureDependentResistance([{ resistanceAt: (t) => 0.1 / k(t) }], 20, -10);
    expect(solved.resistances_m2K_W[0]).toBeCloseTo(0.1 / k(5), 9);
  });

  it('says when a resistance that jumps with temperature does not settle', () => {
    const jumping = { resistanceAt: (t: number): number => (t > 0 ? 0.1 : 10) };
    expect(() => solveTemperatureDependentResistance([{ resistanceAt: () => 1 }, jumping], 20, -10)).toThrow(
      'not settled',
    );
  });
});
