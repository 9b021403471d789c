/** Small weather files written by the tests: invented, with a year whose figures can be worked by hand. */

export interface Moment {
  readonly month: number;
  readonly day: number;
  readonly hour: number;
}

const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Every hour of a year, with or without 29 February. */
export function hoursOfYear(isLeap = false): Moment[] {
  return LENGTHS.flatMap((length, index) =>
    Array.from({ length: isLeap && index === 1 ? length + 1 : length }, (_, day) => day + 1).flatMap((day) =>
      Array.from({ length: 24 }, (_, hour) => ({ month: index + 1, day, hour: hour + 1 })),
    ),
  );
}

export const headers = (changes: Readonly<Record<number, string>> = {}): string[] =>
  [
    'LOCATION,Invented Field,MN,USA,TEST,000000,46.50,-93.25,-6.0,400.0',
    'DESIGN CONDITIONS,1,Invented Handbook,,Heating,1,-28.6,-25.4,-33,0.2,-28.1,Cooling,7,11,Extremes,11',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
    'COMMENTS 1,invented, with, commas',
    'COMMENTS 2,',
    'DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31',
  ].map((line, index) => changes[index] ?? line);

/** What a record says beside its hour; the rest is as real files have it. */
export interface Weather {
  readonly dryBulb?: string | number;
  readonly dewPoint?: string | number;
  readonly humidity?: string | number;
}

const REST =
  '98000,0,0,250,0,0,0,0,0,0,0,80,5.2,0,0,24.1,77777,9,999999999,60,0.0720,0,88,999.000,999.0,99.0';

export const record = ({ month, day, hour }: Moment, weather: Weather = {}): string => {
  const { dryBulb = 10, dewPoint = 5, humidity = 71 } = weather;
  return `1999,${month},${day},${hour},0,?9?9,${dryBulb},${dewPoint},${humidity},${REST}`;
};

export interface EpwOptions {
  readonly headers?: readonly string[];
  readonly hours?: readonly Moment[];
  readonly weather?: (moment: Moment, index: number) => Weather;
}

export const epwLines = ({ hours = hoursOfYear(), weather, ...given }: EpwOptions = {}): string[] => [
  ...(given.headers ?? headers()),
  ...hours.map((moment, index) => record(moment, weather?.(moment, index))),
];

export const epwText = (options?: EpwOptions): string => `${epwLines(options).join('\n')}\n`;

export const TMY3_COLUMNS =
  'Date (MM/DD/YYYY),Time (HH:MM),ETR (W/m^2),Dry-bulb (C),Dry-bulb source,Dew-point (C),RHum (%),Pressure (mbar)';

const two = (value: number): string => String(value).padStart(2, '0');

export const tmy3Text = (
  weather: (moment: Moment) => Weather = () => ({}),
  hours: readonly Moment[] = hoursOfYear(),
): string =>
  [
    '000000,"INVENTED FIELD, NORTH",MN,-6.0,46.500,-93.250,400',
    TMY3_COLUMNS,
    ...hours.map((moment) => {
      const { dryBulb = 10, dewPoint = 5, humidity = 71 } = weather(moment);
      const date = `${two(moment.month)}/${two(moment.day)}/1999`;
      return `${date},${two(moment.hour)}:00,0,${dryBulb},A,${dewPoint},${humidity},980`;
    }),
  ].join('\n');

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
