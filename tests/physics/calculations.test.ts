/** The door of `overdeck calc` to physics: names and fields of the contract, faults in words, null where nothing is known. */
import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/catalog/calculation.ts';
import { physicsCalculations } from '../../src/physics/calculations.ts';

function run(name: string, input: unknown): Record<string, unknown> {
  const calculation = physicsCalculations[name];
  if (!calculation) throw new Error(`no calculation ${name}`);
  const result = calculate(calculation, input);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.output as Record<string, unknown>;
}

function faults(name: string, input: unknown): string[] {
  const calculation = physicsCalculations[name];
  if (!calculation) throw new Error(`no calculation ${name}`);
  const result = calculate(calculation, input);
  if (result.ok) throw new Error(`no fault: ${JSON.stringify(result.output)}`);
  return result.faults.map(({ path, message }) => `${path}: ${message}`);
}

const month = {
  outdoorTemperature_C: -5,
  outdoorRelativeHumidity_pct: 80,
  indoorTemperature_C: 20,
  indoorRelativeHumidity_pct: 40,
};
const months = Array.from({ length: 12 }, (_, index) => ({
  ...month,
  outdoorTemperature_C: 8 - 14 * Math.cos((Math.PI * index) / 6),
}));
const gypsum = { thickness_m: 0.0127, conductivity_W_mK: 0.16, vaporResistanceFactor: 10 };
const fill = { thickness_m: 0.14, conductivity_W_mK: 0.038, vaporResistanceFactor: 1 };
const deck = { thickness_m: 0.0159, conductivity_W_mK: 0.13, vaporResistanceFactor: 50 };
const sheet = { resistance_m2K_W: 0, equivalentAirLayer_m: 100 };
const roof = {
  insideSurface_m2K_W: 0.1,
  outsideSurface_m2K_W: 0.04,
  layers: [gypsum, fill, deck, sheet],
  months,
};
const control = {
  edition: '2018',
  zone: '6A',
  aboveDeck_m2K_W: 4,
  belowDeck_m2K_W: 5,
  outdoorMean_C: -6,
};

describe('names and fields', () => {
  it('are those of the contract', () => {
    expect(Object.keys(physicsCalculations).sort()).toEqual([
      'climate-zone',
      'condensation-control',
      'dew-point',
      'drying',
      'energy-code',
      'interface-temperatures',
      'monthly-condensation',
      'saturation-vapor-pressure',
      'thermal-transmittance',
    ]);
    expect(
      Object.keys(
        run('thermal-transmittance', {
          insideSurface_m2K_W: 0.1,
          outsideSurface_m2K_W: 0.04,
          layers: [{ resistance_m2K_W: 1 }],
        }),
      ),
    ).toEqual([
      'upperLimit_m2K_W',
      'lowerLimit_m2K_W',
      'resistance_m2K_W',
      'fastenerCorrection_W_m2K',
      'transmittance_W_m2K',
    ]);
    expect(Object.keys(run('condensation-control', control))).toEqual([
      'tableMinimum_m2K_W',
      'meetsTable',
      'deckTemperature_C',
      'meetsTemperature',
      'aboveDeckForTemperature_m2K_W',
      'maximumIndoorRelativeHumidity_pct',
    ]);
    expect(Object.keys(run('monthly-condensation', roof))).toEqual([
      'interfaces',
      'maximum_kg_m2',
      'driesOut',
    ]);
    expect(Object.keys(run('drying', { ...roof, wetLayer: 2 }))).toEqual([
      'remaining_kg_m2',
      'elsewhere_kg_m2',
      'monthsToDry',
    ]);
    expect(
      Object.keys(run('climate-zone', { heatingDegreeDays18_Cd: 3500, coolingDegreeDays10_Cd: 900 })),
    ).toEqual(['zone', 'thermal', 'moisture']);
  });
});

describe('faults say what is wrong and what is allowed', () => {
  it.each([
    ['dew-point', { temperature_C: 20, relativeHumidity_pct: 101 }, 'relativeHumidity_pct: 101 is above 100'],
    ['dew-point', { temperature_C: 20, relativeHumidity_pct: 0 }, 'relativeHumidity_pct: 0 is not above 0'],
    [
      'saturation-vapor-pressure',
      { temperature_C: 81 },
      'temperature_C: 81 is above 80, the highest of method iso13788',
    ],
    [
      'saturation-vapor-pressure',
      { temperature_C: -61 },
      'temperature_C: -61 is below -60, the lowest of method iso13788',
    ],
    [
      'saturation-vapor-pressure',
      { temperature_C: -101, method: 'ashrae' },
      'temperature_C: -101 is below -100',
    ],
    [
      'interface-temperatures',
      { insideTemperature_C: 20, outsideTemperature_C: 0, resistances_m2K_W: [] },
      'resistances_m2K_W: 0 entries; 1 to 60 are allowed',
    ],
    [
      'interface-temperatures',
      { insideTemperature_C: 20, outsideTemperature_C: 0, resistances_m2K_W: [0, 0] },
      'resistances_m2K_W: the resistances add to 0; above 0 is needed',
    ],
    [
      'thermal-transmittance',
      { insideSurface_m2K_W: 0.1, outsideSurface_m2K_W: 0.04, layers: [] },
      'layers: 0 entries; 1 to 60 are allowed',
    ],
    ['energy-code', { edition: '2020', zone: '5A' }, 'edition: "2020" is not one of 2015, 2018, 2021, 2024'],
    ['monthly-condensation', { ...roof, months: months.slice(1) }, 'months: 11 entries; 12 are allowed'],
    ['monthly-condensation', { ...roof, startMonth: 13 }, 'startMonth: 13 is above 12'],
    [
      'monthly-condensation',
      { ...roof, startMonth: 1.5 },
      'startMonth: 1.5 is not a whole number; at least 1 and at most 12 is allowed',
    ],
    ['drying', { ...roof, wetLayer: 4 }, 'wetLayer: 4 is above 3, the last layer'],
    [
      'climate-zone',
      { heatingDegreeDays18_Cd: -1, coolingDegreeDays10_Cd: 0 },
      'heatingDegreeDays18_Cd: -1 is below 0',
    ],
    [
      'condensation-control',
      { ...control, aboveDeck_m2K_W: 0, belowDeck_m2K_W: 0 },
      'the resistances add to 0; above 0 is needed',
    ],
  ])('%s of a bad input', (name, input, fault) => {
    expect(
      faults(name, input).some((each) => each.includes(fault)),
      faults(name, input).join(' | '),
    ).toBe(true);
  });

  it.each([Number.NaN, Infinity, '20', null])('%s is not a temperature', (value) => {
    expect(faults('saturation-vapor-pressure', { temperature_C: value })).toHaveLength(1);
  });

  it('a dew point below the range of the formula is named', () => {
    expect(faults('dew-point', { temperature_C: -55, relativeHumidity_pct: 2 })).toEqual([
      'relativeHumidity_pct: 2 gives a dew point below -60 °C, the lowest of method iso13788',
    ]);
  });

  it('an unknown field is named with the nearest known one', () => {
    expect(faults('dew-point', { temperature: 20, relativeHumidity_pct: 40 })[0]).toContain(
      'nearest known name is "temperature_C"',
    );
  });

  it.each([
    [
      { thickness_m: 0, conductivity_W_mK: 1, vaporResistanceFactor: 1 },
      'layers.0.thickness_m: 0 is not above 0',
    ],
    [
      { thickness_m: 0.1, vaporResistanceFactor: 1 },
      'exactly one of conductivity_W_mK and resistance_m2K_W is needed',
    ],
    [{ ...gypsum, resistance_m2K_W: 1 }, 'exactly one of conductivity_W_mK and resistance_m2K_W is needed'],
    [
      { ...gypsum, equivalentAirLayer_m: 1 },
      'exactly one of vaporResistanceFactor and equivalentAirLayer_m is needed',
    ],
    [{ resistance_m2K_W: 1, vaporResistanceFactor: 1 }, 'thickness_m is missing'],
    [{ conductivity_W_mK: 1, equivalentAirLayer_m: 1 }, 'thickness_m is missing'],
  ])('a moisture layer %j is refused', (layer, fault) => {
    expect(faults('monthly-condensation', { ...roof, layers: [layer] }).join(' | ')).toContain(fault);
  });

  it.each([
    [{ thickness_m: 0.1 }, 'exactly one of conductivity_W_mK, resistance_m2K_W and parts is needed'],
    [{ conductivity_W_mK: 1 }, 'thickness_m is missing'],
    [
      { thickness_m: 0.1, parts: [{ share_pct: 90, conductivity_W_mK: 1 }] },
      'shares add to 90; 100 is needed',
    ],
  ])('a thermal layer %j is refused', (layer, fault) => {
    const input = { insideSurface_m2K_W: 0.1, outsideSurface_m2K_W: 0.04, layers: [layer] };
    expect(faults('thermal-transmittance', input).join(' | ')).toContain(fault);
  });

  it('a fastener in a layer that does not exist, and nothing but zeros, are refused', () => {
    const fasteners = {
      layer: 1,
      perArea_1_m2: 4,
      crossSection_m2: 2e-5,
      conductivity_W_mK: 50,
      length_m: 0.1,
    };
    const layers = [{ thickness_m: 0.1, conductivity_W_mK: 0.03 }];
    const films = { insideSurface_m2K_W: 0.1, outsideSurface_m2K_W: 0.04 };
    expect(faults('thermal-transmittance', { ...films, layers, fasteners })).toEqual([
      'fasteners.layer: 1 is above 0, the last layer',
    ]);
    const none = { insideSurface_m2K_W: 0, outsideSurface_m2K_W: 0, layers: [{ resistance_m2K_W: 0 }] };
    expect(faults('thermal-transmittance', none).join()).toContain('add to 0');
    const many = {
      thickness_m: 0.1,
      parts: [
        { share_pct: 50, conductivity_W_mK: 1 },
        { share_pct: 50, conductivity_W_mK: 2 },
      ],
    };
    expect(
      faults('thermal-transmittance', { ...films, layers: Array.from({ length: 17 }, () => many) }).join(),
    ).toContain('combinations');
  });

  it('layers without any vapor resistance, or a wet layer open to the air, are refused', () => {
    const open = { resistance_m2K_W: 1, equivalentAirLayer_m: 0 };
    expect(faults('monthly-condensation', { ...roof, layers: [open] }).join()).toContain(
      'equivalent air layers add to 0',
    );
    expect(faults('drying', { ...roof, layers: [open, deck], wetLayer: 0 }).join()).toContain(
      'open to the air',
    );
  });
});

describe('what the outputs mean', () => {
  it('the deck rule is held at 20 °C whatever the indoor temperature, the humidity limit is not', () => {
    const standard = run('condensation-control', control);
    const warm = run('condensation-control', {
      ...control,
      indoorTemperature_C: 24,
      indoorRelativeHumidity_pct: 40,
    });
    expect(warm['deckTemperature_C']).toBe(standard['deckTemperature_C']);
    expect(warm['aboveDeckForTemperature_m2K_W']).toBe(standard['aboveDeckForTemperature_m2K_W']);
    expect(warm['maximumIndoorRelativeHumidity_pct']).not.toBe(standard['maximumIndoorRelativeHumidity_pct']);
  });

  it('exactly the resistance asked for meets the rule', () => {
    const needed = run('condensation-control', control)['aboveDeckForTemperature_m2K_W'];
    expect(run('condensation-control', { ...control, aboveDeck_m2K_W: needed })).toMatchObject({
      meetsTemperature: true,
    });
  });

  it('months are given from startMonth on, and come back in the same order', () => {
    const fromJanuary = run('monthly-condensation', roof);
    const fromOctober = run('monthly-condensation', {
      ...roof,
      months: [...months.slice(9), ...months.slice(0, 9)],
      startMonth: 10,
    });
    const of = (output: Record<string, unknown>): number[] =>
      (output['interfaces'] as { accumulated_kg_m2: number[] }[])[0]?.accumulated_kg_m2 ?? [];
    expect(fromJanuary['driesOut']).toBe(true);
    expect(of(fromOctober).slice(0, 3)).toEqual([...of(fromJanuary).slice(9)]);
    expect(of(fromOctober).slice(3)).toEqual(of(fromJanuary).slice(0, 9));
  });

  it('a fastener in a layer of stated R takes its own length for the thickness', () => {
    const films = { insideSurface_m2K_W: 0.1, outsideSurface_m2K_W: 0.04 };
    const fasteners = {
      layer: 0,
      perArea_1_m2: 4,
      crossSection_m2: 2e-5,
      conductivity_W_mK: 50,
      length_m: 0.1,
    };
    const byR = run('thermal-transmittance', { ...films, layers: [{ resistance_m2K_W: 4 }], fasteners });
    const byK = run('thermal-transmittance', {
      ...films,
      layers: [{ thickness_m: 0.1, conductivity_W_mK: 0.025 }],
      fasteners,
    });
    expect(byR['fastenerCorrection_W_m2K']).toBeCloseTo(byK['fastenerCorrection_W_m2K'] as number, 12);
  });

  it('drying stops at its limit with null', () => {
    const tight = [sheet, deck, sheet];
    const result = run('drying', { ...roof, layers: tight, wetLayer: 1, limit_months: 1, initial_kg_m2: 50 });
    expect(result['monthsToDry']).toBeNull();
    expect(result['remaining_kg_m2']).toHaveLength(1);
  });
});
