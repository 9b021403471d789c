/** The hours of a file gathered into one year: fixed in size, whatever the file holds. */
import { DAYS_WITH_LEAP, HOURS_PER_DAY, type WeatherHour } from './station.ts';
import { signsOf, vaporOfHour } from './vapor.ts';

const MONTHS = DAYS_WITH_LEAP.length;
const DAYS = 366;
const HOURS = DAYS * HOURS_PER_DAY;
/** Days before each month in a leap year. */
const daysBefore = DAYS_WITH_LEAP.map((_, month) =>
  DAYS_WITH_LEAP.slice(0, month).reduce<number>((total, days) => total + days, 0),
);

/** What a file may show and the summary warns of. */
export const oddities = [
  'dryBulbMissing',
  'dryBulbOutside',
  'dewPointMissing',
  'dewPointOutside',
  'dewPointAbove',
  'zeroHumidity',
  'fromHumidity',
  'shortRecord',
] as const;
export type Oddity = (typeof oddities)[number];
export interface Sighting {
  readonly count: number;
  /** Line of the first one. */
  readonly line: number;
}

/** Hour means of one calendar day; NaN where an hour has no usable record. */
export interface DayOfHours {
  /** 1 to 12. */
  readonly month: number;
  readonly day: number;
  /** [°C] in the order of the hours. */
  readonly temperatures_C: readonly number[];
  /** Hours that have temperature and humidity. */
  readonly usableHours: number;
}

export interface MonthOfVapor {
  readonly vaporPressure_Pa: number;
  readonly saturation_Pa: number;
}

export interface YearsMeasured {
  readonly first: number;
  readonly last: number;
}

export interface WeatherYear {
  readonly records: number;
  readonly hasLeapDay: boolean;
  /** First and last year of the records; in a typical year they change from month to month. */
  readonly measured: YearsMeasured | undefined;
  readonly days: readonly DayOfHours[];
  /** Means over the records with humidity, January first; NaN for a month without any. */
  readonly vapor: readonly MonthOfVapor[];
  readonly sightings: Readonly<Partial<Record<Oddity, Sighting>>>;
}

export interface YearGathering {
  /** Takes one record; false when its hour is full already. */
  readonly take: (hour: WeatherHour, line: number, recordsPerHour: number) => boolean;
  readonly note: (oddity: Oddity, line: number) => void;
  readonly year: () => WeatherYear;
}

/** An empty year that takes the hours of a file in any order. */
export function gatherYear(): YearGathering {
  const records = new Uint16Array(HOURS);
  const temperatureSum = new Float64Array(HOURS);
  const temperatures = new Uint16Array(HOURS);
  const vapors = new Uint16Array(HOURS);
  const vaporSum = new Float64Array(MONTHS);
  const saturationSum = new Float64Array(MONTHS);
  const monthVapors = new Uint32Array(MONTHS);
  const sightings: Partial<Record<Oddity, Sighting>> = {};
  let measured: YearsMeasured | undefined;

  const add = (values: Float64Array | Uint16Array | Uint32Array, index: number, amount: number): void => {
    values[index] = (values[index] ?? 0) + amount;
  };
  const note = (oddity: Oddity, line: number): void => {
    const seen = sightings[oddity];
    sightings[oddity] = seen === undefined ? { count: 1, line } : { ...seen, count: seen.count + 1 };
  };

  function noteAll(hour: WeatherHour, line: number): void {
    const { dryBulb_C, dewPoint_C } = hour;
    if (dryBulb_C === 'missing') note('dryBulbMissing', line);
    if (dryBulb_C === 'outside') note('dryBulbOutside', line);
    if (dewPoint_C === 'missing') note('dewPointMissing', line);
    if (dewPoint_C === 'outside') note('dewPointOutside', line);
    const { dewPointAbove, zeroHumidity, fromHumidity } = signsOf(hour);
    if (dewPointAbove) note('dewPointAbove', line);
    if (zeroHumidity) note('zeroHumidity', line);
    if (fromHumidity) note('fromHumidity', line);
  }

  function noteYear(year: number | undefined): void {
    if (year === undefined) return;
    measured = {
      first: Math.min(year, measured?.first ?? year),
      last: Math.max(year, measured?.last ?? year),
    };
  }

  function take(hour: WeatherHour, line: number, recordsPerHour: number): boolean {
    const month = hour.month - 1;
    const index = ((daysBefore[month] ?? 0) + hour.day - 1) * HOURS_PER_DAY + hour.hour - 1;
    if ((records[index] ?? 0) >= recordsPerHour) return false;
    add(records, index, 1);
    noteYear(hour.year);
    noteAll(hour, line);
    if (typeof hour.dryBulb_C === 'number') {
      add(temperatureSum, index, hour.dryBulb_C);
      add(temperatures, index, 1);
    }
    const vapor = vaporOfHour(hour);
    if (vapor !== undefined) {
      add(vapors, index, 1);
      add(vaporSum, month, vapor.vaporPressure_Pa);
      add(saturationSum, month, vapor.saturation_Pa);
      add(monthVapors, month, 1);
    }
    return true;
  }

  const hasRecords = (from: number): boolean =>
    records.subarray(from, from + HOURS_PER_DAY).some((count) => count > 0);

  function dayOf(month: number, day: number): DayOfHours {
    const from = ((daysBefore[month - 1] ?? 0) + day - 1) * HOURS_PER_DAY;
    const hours = Array.from({ length: HOURS_PER_DAY }, (_, hour) => from + hour);
    return {
      month,
      day,
      temperatures_C: hours.map((index) => (temperatureSum[index] ?? 0) / (temperatures[index] ?? 0)),
      usableHours: hours.filter((index) => (vapors[index] ?? 0) > 0).length,
    };
  }

  function year(): WeatherYear {
    const leapDay = ((daysBefore[2] ?? 0) - 1) * HOURS_PER_DAY;
    const hasLeapDay = hasRecords(leapDay);
    return {
      records: records.reduce((total, count) => total + count, 0),
      hasLeapDay,
      measured,
      days: DAYS_WITH_LEAP.flatMap((length, index) =>
        Array.from({ length: index === 1 && !hasLeapDay ? length - 1 : length }, (_, day) =>
          dayOf(index + 1, day + 1),
        ),
      ),
      vapor: Array.from({ length: MONTHS }, (_, index) => ({
        vaporPressure_Pa: (vaporSum[index] ?? 0) / (monthVapors[index] ?? 0),
        saturation_Pa: (saturationSum[index] ?? 0) / (monthVapors[index] ?? 0),
      })),
      sightings,
    };
  }

  return { take, note, year };
}
