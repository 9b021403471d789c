/**
 * How each kind of quantity is written in inch-pound and in SI: unit, conversion, digits, accepted unit names.
 * Every factor comes from units.ts; this file only says which one belongs where.
 */
import * as u from '../units.ts';

export type System = 'IP' | 'SI';

/** How a number becomes text, apart from the plain "number unit". */
export type Style = 'plain' | 'inches' | 'feet-and-inches' | 'r-value' | 'pitch' | 'dollars';

export interface Scale {
  readonly unit: string;
  /** From the SI value inside to the number shown. */
  readonly shown: (si: number) => number;
  /** From the number typed to the SI value inside. */
  readonly inside: (typed: number) => number;
  /** Greatest number of decimals; trailing zeros are dropped. */
  readonly digits: number;
  /** When present, significant figures decide instead of decimals. */
  readonly significant?: number;
  readonly style: Style;
}

export interface Measure {
  /** With article, for fault messages: `a length`. */
  readonly name: string;
  /** The unit of the value inside. */
  readonly base: string;
  readonly IP: Scale;
  readonly SI: Scale;
  /** Unit names a person may type (lower case, no spaces, no dots), each to SI. */
  readonly accepted: Readonly<Record<string, (typed: number) => number>>;
  readonly examples: string;
  readonly mayBeNegative: boolean;
}

const same = (value: number): number => value;
/** Both directions of a multiplication: 1 shown unit = `factor` SI units. */
const by = (factor: number) => ({
  shown: (si: number): number => si / factor,
  inside: (typed: number): number => typed * factor,
});
const scale = (
  unit: string,
  both: Pick<Scale, 'shown' | 'inside'>,
  digits: number,
  more: Partial<Pick<Scale, 'style' | 'significant'>> = {},
): Scale => ({ unit, ...both, digits, style: 'plain', ...more });
const one = by(1);

/** [mm per m], [cm per m], [kPa per Pa] and the like: SI prefixes, exact by definition. */
const MILLI = 1e-3;
const CENTI = 1e-2;
const KILO = 1e3;
const MEGA = 1e6;
/** [K] ice point, exact (SI Brochure, BIPM, 9th edition 2019, section 2.3.1). */
const ICE_POINT_K = 273.15;
/** [ft²] one roofing square, exact by trade definition. */
const SQUARE_FEET_PER_SQUARE = 100;
const SQUARE_METERS_PER_SQUARE_FOOT = u.squareMetersFromSquareFeet(1);
const SQUARE_METERS_PER_SQUARE = SQUARE_METERS_PER_SQUARE_FOOT * SQUARE_FEET_PER_SQUARE;
const KILOGRAMS_PER_SQUARE_FOOT_POUND = u.KILOGRAMS_PER_POUND / SQUARE_METERS_PER_SQUARE_FOOT;
const NEWTONS_PER_METER_PER_POUND_FOOT = u.NEWTONS_PER_POUND / u.METERS_PER_FOOT;
/** [W/(m·K)] one Btu·in/(h·ft²·°F): an inch over one R. */
const CONDUCTIVITY_PER_IP = u.METERS_PER_INCH / u.RSI_PER_R;
const SQUARE_METERS_PER_SQUARE_INCH = u.METERS_PER_INCH ** 2;
const SECONDS_PER_MINUTE = 60;
/** [m³/s] one cubic foot a minute, exact by definition of foot and minute. */
const CUBIC_METERS_PER_SECOND_PER_CFM = u.METERS_PER_FOOT ** 3 / SECONDS_PER_MINUTE;
const FAHRENHEIT_PER_KELVIN = u.fahrenheitDifferenceFromKelvin(1);

const inches = by(u.METERS_PER_INCH).inside;
const feet = by(u.METERS_PER_FOOT).inside;
const lengths = {
  in: inches,
  inch: inches,
  inches: inches,
  '"': inches,
  "''": inches,
  ft: feet,
  foot: feet,
  feet: feet,
  "'": feet,
  mm: by(MILLI).inside,
  cm: by(CENTI).inside,
  m: same,
  meter: same,
  meters: same,
  metre: same,
  metres: same,
};
const percent = { '%': same, pct: same, percent: same, rh: same, '%rh': same };
const squareMeasures = {
  ft2: u.squareMetersFromSquareFeet,
  sqft: u.squareMetersFromSquareFeet,
  sf: u.squareMetersFromSquareFeet,
  square: by(SQUARE_METERS_PER_SQUARE).inside,
  squares: by(SQUARE_METERS_PER_SQUARE).inside,
  m2: same,
  sqm: same,
};

const measure = (
  name: string,
  base: string,
  IP: Scale,
  SI: Scale,
  accepted: Measure['accepted'],
  examples: string,
  mayBeNegative = false,
): Measure => ({ name, base, IP, SI, accepted, examples, mayBeNegative });

const bothPercent = scale('%', one, 1);
const plainNumber = (unit: string, digits: number): Scale => scale(unit, one, digits);

export const measures = {
  length: measure(
    'a length',
    'm',
    scale('in', by(u.METERS_PER_INCH), 4, { style: 'inches' }),
    scale('mm', by(MILLI), 0),
    lengths,
    '16 in, 5 1/2 in, 1 ft 4 in, 406 mm, 40.6 cm or 0.4 m',
  ),
  span: measure(
    'a length',
    'm',
    scale('ft', by(u.METERS_PER_FOOT), 4, { style: 'feet-and-inches' }),
    scale('m', one, 2),
    lengths,
    '24 ft, 24 ft 6 in or 7.4 m',
  ),
  elevation: measure(
    'a height above the sea',
    'm',
    scale('ft', by(u.METERS_PER_FOOT), 0),
    scale('m', one, 0),
    lengths,
    '1200 ft or 366 m',
    true,
  ),
  area: measure(
    'an area',
    'm²',
    scale('ft²', by(SQUARE_METERS_PER_SQUARE_FOOT), 0),
    scale('m²', one, 1),
    squareMeasures,
    '1200 sq ft, 12 squares or 111 m²',
  ),
  resistance: measure(
    'an R-value',
    'm²·K/W',
    scale('h·ft²·°F/Btu', by(u.RSI_PER_R), 1, { style: 'r-value' }),
    scale('m²·K/W', one, 2),
    { r: u.rsiFromR, 'hft2f/btu': u.rsiFromR, rsi: same, 'm2k/w': same },
    'R-26 or RSI 4.6',
  ),
  transmittance: measure(
    'a U-factor',
    'W/(m²·K)',
    scale('Btu/(h·ft²·°F)', { shown: u.ipUFromSiU, inside: u.siUFromIpU }, 4),
    scale('W/(m²·K)', one, 3),
    { 'btu/hft2f': u.siUFromIpU, 'w/m2k': same },
    '0.026 Btu/(h·ft²·°F) or 0.15 W/(m²·K)',
  ),
  conductivity: measure(
    'a conductivity',
    'W/(m·K)',
    scale('Btu·in/(h·ft²·°F)', by(CONDUCTIVITY_PER_IP), 3),
    scale('W/(m·K)', one, 4),
    { 'btuin/hft2f': by(CONDUCTIVITY_PER_IP).inside, 'w/mk': same },
    '0.16 Btu·in/(h·ft²·°F) or 0.023 W/(m·K)',
  ),
  temperature: measure(
    'a temperature',
    '°C',
    scale('°F', { shown: u.fahrenheitFromCelsius, inside: u.celsiusFromFahrenheit }, 1),
    scale('°C', one, 1),
    {
      f: u.celsiusFromFahrenheit,
      fahrenheit: u.celsiusFromFahrenheit,
      c: same,
      celsius: same,
      k: (typed) => typed - ICE_POINT_K,
      kelvin: (typed) => typed - ICE_POINT_K,
    },
    '68 °F or 20 °C',
    true,
  ),
  temperatureDifference: measure(
    'a temperature difference',
    'K',
    scale('°F', { shown: u.fahrenheitDifferenceFromKelvin, inside: u.kelvinDifferenceFromFahrenheit }, 1),
    scale('K', one, 1),
    { f: u.kelvinDifferenceFromFahrenheit, k: same, c: same },
    '9 °F or 5 K',
    true,
  ),
  humidity: measure('a humidity', '%', bothPercent, bothPercent, percent, '35 %'),
  share: measure('a share', '%', bothPercent, bothPercent, percent, '58 %'),
  ratio: measure('a ratio', '', plainNumber('', 2), plainNumber('', 2), {}, '0.85'),
  load: measure(
    'a load',
    'Pa',
    scale('psf', by(u.PASCALS_PER_PSF), 1),
    scale('kPa', by(KILO), 2),
    {
      psf: u.pascalsFromPsf,
      'lb/ft2': u.pascalsFromPsf,
      'lbf/ft2': u.pascalsFromPsf,
      kpa: by(KILO).inside,
      'kn/m2': by(KILO).inside,
      pa: same,
      'n/m2': same,
    },
    '60 psf or 2.9 kPa',
    true,
  ),
  pressure: measure(
    'a pressure',
    'Pa',
    scale('psf', by(u.PASCALS_PER_PSF), 2),
    scale('Pa', one, 0),
    { psf: u.pascalsFromPsf, pa: same, kpa: by(KILO).inside },
    '5.2 psf or 250 Pa',
    true,
  ),
  vaporPressure: measure(
    'a vapor pressure',
    'Pa',
    scale('in. Hg', by(u.PASCALS_PER_INCH_OF_MERCURY), 3),
    scale('Pa', one, 0),
    { inhg: by(u.PASCALS_PER_INCH_OF_MERCURY).inside, pa: same, kpa: by(KILO).inside },
    '0.36 in. Hg or 1220 Pa',
  ),
  stress: measure(
    'a stress',
    'Pa',
    scale('psi', by(u.PASCALS_PER_PSI), 0),
    scale('MPa', by(MEGA), 2),
    { psi: by(u.PASCALS_PER_PSI).inside, mpa: by(MEGA).inside, 'n/mm2': by(MEGA).inside },
    '900 psi or 6.2 MPa',
    true,
  ),
  speed: measure(
    'a wind speed',
    'm/s',
    scale('mph', by(u.METERS_PER_SECOND_PER_MPH), 0),
    scale('m/s', one, 1),
    { mph: u.metersPerSecondFromMph, 'mi/h': u.metersPerSecondFromMph, 'm/s': same },
    '115 mph or 51 m/s',
  ),
  force: measure(
    'a force',
    'N',
    scale('lb', by(u.NEWTONS_PER_POUND), 0),
    scale('N', one, 0),
    {
      lb: u.newtonsFromPounds,
      lbs: u.newtonsFromPounds,
      lbf: u.newtonsFromPounds,
      n: same,
      kn: by(KILO).inside,
    },
    '250 lb or 1112 N',
    true,
  ),
  lineLoad: measure(
    'a load along a line',
    'N/m',
    scale('lb/ft', by(NEWTONS_PER_METER_PER_POUND_FOOT), 1),
    scale('N/m', one, 0),
    {
      'lb/ft': by(NEWTONS_PER_METER_PER_POUND_FOOT).inside,
      'lb/in': by(u.NEWTONS_PER_POUND / u.METERS_PER_INCH).inside,
      plf: by(NEWTONS_PER_METER_PER_POUND_FOOT).inside,
      'n/m': same,
      'kn/m': by(KILO).inside,
    },
    '40 lb/ft, 190 lb/in or 584 N/m',
    true,
  ),
  moment: measure(
    'a bending moment',
    'N·m',
    scale('lb·ft', by(u.NEWTONS_PER_POUND * u.METERS_PER_FOOT), 0),
    scale('N·m', one, 0),
    { lbft: by(u.NEWTONS_PER_POUND * u.METERS_PER_FOOT).inside, nm: same, knm: by(KILO).inside },
    '300 lb·ft or 407 N·m',
    true,
  ),
  permeance: measure(
    'a permeance',
    'ng/(Pa·s·m²)',
    scale('perm', by(u.NANOGRAMS_PER_PERM), 0, { significant: 2 }),
    scale('ng/(Pa·s·m²)', one, 0, { significant: 3 }),
    { perm: u.nanogramsFromPerms, perms: u.nanogramsFromPerms, ng: same, 'ng/pasm2': same },
    '0.1 perm or 5.7 ng',
  ),
  equivalentAirLayer: measure(
    'an equivalent air layer',
    'm',
    scale('ft', by(u.METERS_PER_FOOT), 0, { significant: 2 }),
    scale('m', one, 0, { significant: 2 }),
    lengths,
    '10 m or 33 ft',
  ),
  massPerArea: measure(
    'a mass per area',
    'kg/m²',
    scale('lb/ft²', by(KILOGRAMS_PER_SQUARE_FOOT_POUND), 1),
    scale('kg/m²', one, 1),
    {
      'lb/ft2': by(KILOGRAMS_PER_SQUARE_FOOT_POUND).inside,
      psf: by(KILOGRAMS_PER_SQUARE_FOOT_POUND).inside,
      'kg/m2': same,
    },
    '3 lb/ft² or 14.6 kg/m²',
  ),
  waterPerArea: measure(
    'an amount of water per area',
    'kg/m²',
    scale('lb/ft²', by(KILOGRAMS_PER_SQUARE_FOOT_POUND), 3),
    scale('kg/m²', one, 3),
    { 'lb/ft2': by(KILOGRAMS_PER_SQUARE_FOOT_POUND).inside, 'kg/m2': same, 'g/m2': by(MILLI).inside },
    '0.2 lb/ft² or 1 kg/m²',
  ),
  water: measure(
    'an amount of water',
    'kg',
    scale('lb', by(u.KILOGRAMS_PER_POUND), 0, { significant: 3 }),
    scale('kg', one, 0, { significant: 3 }),
    { lb: by(u.KILOGRAMS_PER_POUND).inside, lbs: by(u.KILOGRAMS_PER_POUND).inside, kg: same },
    '2.2 lb or 1 kg',
    true,
  ),
  hole: measure(
    'the area of a hole',
    'm²',
    scale('in²', by(SQUARE_METERS_PER_SQUARE_INCH), 2),
    scale('cm²', by(CENTI ** 2), 1),
    { in2: by(SQUARE_METERS_PER_SQUARE_INCH).inside, cm2: by(CENTI ** 2).inside, m2: same },
    '1 in² or 6.5 cm²',
  ),
  airflow: measure(
    'an air flow',
    'm³/s',
    scale('cfm', by(CUBIC_METERS_PER_SECOND_PER_CFM), 0, { significant: 2 }),
    scale('L/s', by(MILLI), 0, { significant: 2 }),
    { cfm: by(CUBIC_METERS_PER_SECOND_PER_CFM).inside, 'l/s': by(MILLI).inside, 'm3/s': same },
    '2 cfm or 1 L/s',
    true,
  ),
  energy: measure(
    'an amount of heat',
    'kWh',
    scale('kWh', one, 0),
    scale('kWh', one, 0),
    { kwh: same },
    '3000 kWh',
    true,
  ),
  energyPerArea: measure(
    'heat per area',
    'kWh/m²',
    scale('kWh/ft²', by(1 / SQUARE_METERS_PER_SQUARE_FOOT), 2),
    scale('kWh/m²', one, 1),
    { 'kwh/ft2': by(1 / SQUARE_METERS_PER_SQUARE_FOOT).inside, 'kwh/m2': same },
    '1.2 kWh/ft² or 13 kWh/m²',
    true,
  ),
  angle: measure(
    'an angle',
    '°',
    plainNumber('°', 1),
    plainNumber('°', 1),
    { deg: same, degrees: same },
    '30°',
    true,
  ),
  pitch: measure(
    'a pitch',
    'rise in 12',
    scale('in 12', one, 2, { style: 'pitch' }),
    scale('in 12', one, 2, { style: 'pitch' }),
    {},
    '7:12, 7 in 12, or 30°',
  ),
  count: measure('a whole number', '', plainNumber('', 0), plainNumber('', 0), {}, '3'),
  days: measure(
    'a number of days',
    'd',
    plainNumber('days', 1),
    plainNumber('days', 1),
    { d: same, day: same, days: same },
    '12 days',
  ),
  months: measure(
    'a number of months',
    'months',
    plainNumber('months', 0),
    plainNumber('months', 0),
    { month: same, months: same },
    '4 months',
  ),
  degreeDays: measure(
    'degree-days',
    '°C·d',
    scale('°F·d', by(1 / FAHRENHEIT_PER_KELVIN), 0),
    scale('°C·d', one, 0),
    { fd: by(1 / FAHRENHEIT_PER_KELVIN).inside, cd: same, kd: same },
    '7200 °F·d or 4000 °C·d',
  ),
  perArea: measure(
    'a number per area',
    '1/m²',
    scale('per ft²', by(1 / SQUARE_METERS_PER_SQUARE_FOOT), 2),
    scale('per m²', one, 1),
    { perft2: by(1 / SQUARE_METERS_PER_SQUARE_FOOT).inside, perm2: same },
    '0.5 per ft² or 5.4 per m²',
  ),
  mass: measure(
    'a mass',
    'kg',
    scale('lb', by(u.KILOGRAMS_PER_POUND), 0, { significant: 3 }),
    scale('kg', one, 0, { significant: 3 }),
    { lb: by(u.KILOGRAMS_PER_POUND).inside, lbs: by(u.KILOGRAMS_PER_POUND).inside, kg: same },
    '51 lb or 23 kg',
  ),
  money: measure(
    'an amount of money',
    'USD',
    scale('', one, 0, { style: 'dollars' }),
    scale('', one, 0, { style: 'dollars' }),
    { usd: same },
    '$1200',
  ),
  hours: measure('hours of work', 'h', scale('h', one, 0), scale('h', one, 0), { h: same }, '40 h'),
  costPerArea: measure(
    'a cost per area',
    'USD/m²',
    scale('/ft²', by(1 / SQUARE_METERS_PER_SQUARE_FOOT), 2, { style: 'dollars' }),
    scale('/m²', one, 0, { style: 'dollars' }),
    { '/ft2': by(1 / SQUARE_METERS_PER_SQUARE_FOOT).inside, '/m2': same },
    '$12.50/ft² or $135/m²',
  ),
  hoursPerArea: measure(
    'hours of work per area',
    'h/m²',
    scale('h/100 ft²', by(1 / SQUARE_METERS_PER_SQUARE), 1),
    scale('h/m²', one, 2),
    {
      'h/100ft2': by(1 / SQUARE_METERS_PER_SQUARE).inside,
      'h/square': by(1 / SQUARE_METERS_PER_SQUARE).inside,
      'h/m2': same,
    },
    '6 h/100 ft² or 0.65 h/m²',
  ),
  carbonPerArea: measure(
    'carbon per area',
    'kg CO₂e/m²',
    scale('lb CO₂e/ft²', by(KILOGRAMS_PER_SQUARE_FOOT_POUND), 2),
    scale('kg CO₂e/m²', one, 1),
    { 'lbco2e/ft2': by(KILOGRAMS_PER_SQUARE_FOOT_POUND).inside, 'kgco2e/m2': same },
    '4 lb CO₂e/ft² or 20 kg CO₂e/m²',
    true,
  ),
} as const satisfies Record<string, Measure>;

export type MeasureKind = keyof typeof measures;
export const measureKinds = Object.keys(measures) as readonly MeasureKind[];
