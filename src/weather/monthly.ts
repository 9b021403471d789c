/** From the hours of a year to its twelve months: what the rest of the program uses of a weather file. */
import { monthNames } from '../catalog/months.ts';
import { listed, type Fault, type Reading } from '../faults.ts';
import { at, sum } from '../physics/guards.ts';
import {
  coldestShare_C,
  COOLING_BASE_C,
  degreeDays_Kd,
  HEATING_BASES_C,
  type DayMean,
} from './degreeDays.ts';
import { DAYS_WITH_LEAP, HOURS_PER_DAY, type Station, type WeatherFormat } from './station.ts';
import { warningsOf } from './warnings.ts';
import type { DayOfHours, WeatherYear, YearsMeasured } from './year.ts';

/** Heating degree days by one convention for the mean of a day. */
export interface HeatingDegreeDays {
  readonly base18_Kd: number;
  /** Base 65 °F. */
  readonly base18_3_Kd: number;
}

export interface DesignTemperature {
  readonly heating99_C: number;
  readonly heating996_C: number;
  /** `quoted`: the file's header carries the station's own. `typical-year`: from its hours, not a design value. */
  readonly basis: 'quoted' | 'typical-year';
  /** In words, for the reader. */
  readonly source: string;
}

export interface WeatherSummary {
  readonly format: WeatherFormat;
  readonly placeName: string;
  /** The set of data that the file names, such as TMY3; empty where it names none. */
  readonly source: string;
  readonly measured: YearsMeasured | undefined;
  readonly latitude_deg: number;
  readonly longitude_deg: number;
  readonly elevation_m: number;
  /** Means of the hours, January first, as all lists of twelve. */
  readonly monthlyTemperature_C: readonly number[];
  /** Mean of the hourly vapor pressures: what a monthly vapor balance needs. */
  readonly monthlyVaporPressure_Pa: readonly number[];
  /**
   * 100 · mean vapor pressure / mean saturation pressure over water. Neither the mean of the hourly humidities (higher
   * by several points) nor what a vapor balance needs at the mean temperature: for that see placeOfWeather.
   */
  readonly monthlyRelativeHumidity_pct: readonly number[];
  readonly heatingDegreeDays: Readonly<Record<DayMean, HeatingDegreeDays>>;
  /** [K·d] base 10 °C, by both conventions. */
  readonly coolingDegreeDays10_Kd: Readonly<Record<DayMean, number>>;
  readonly designTemperature: DesignTemperature;
  readonly warnings: readonly Fault[];
  /** Hours of the year that have temperature and humidity. */
  readonly usableHours: number;
}

/** [h] hours that a day needs to show its course (our judgement: three quarters). */
const LEAST_HOURS_OF_DAY = 18;
/** [d] days that a month may lack: 11 missing days void a month (WMO-1203 section 4.4, memory). */
const MOST_MISSING_DAYS = 10;
/** [°C] monthly means accepted, as in the case file. */
const MONTHLY_LIMITS_C = [-60, 45] as const;
/** [%] hours that are colder than the 99 % and the 99.6 % heating temperature. */
const COLDER_99_PCT = 1;
const COLDER_996_PCT = 0.4;
const PERCENT = 100;

const present = (temperatures_C: readonly number[]): number[] =>
  temperatures_C.filter((value) => !Number.isNaN(value));
const isUsable = ({ usableHours }: DayOfHours): boolean => usableHours >= LEAST_HOURS_OF_DAY;

const monthLengths = ({ hasLeapDay }: WeatherYear): number[] =>
  DAYS_WITH_LEAP.map((days, index) => (index === 1 && !hasLeapDay ? days - 1 : days));

/** Months that lack too many days, or whose mean cannot be. */
function monthFaults(year: WeatherYear, means_C: readonly number[]): Fault[] {
  return monthLengths(year).flatMap((length, index) => {
    const path = at(monthNames, index);
    const usable = year.days.filter((day) => day.month === index + 1 && isUsable(day)).length;
    if (length - usable > MOST_MISSING_DAYS) {
      const needed = `at least ${length - MOST_MISSING_DAYS} are needed, each with ${LEAST_HOURS_OF_DAY} of its ${HOURS_PER_DAY} hours`;
      return [{ path, message: `has ${usable} usable days of ${length}; ${needed}` }];
    }
    const mean_C = at(means_C, index);
    const [least, most] = MONTHLY_LIMITS_C;
    return mean_C < least || mean_C > most
      ? [{ path, message: `mean temperature ${mean_C.toFixed(1)} °C is outside ${least} to ${most} °C` }]
      : [];
  });
}

function designOf({ design }: Station, temperatures_C: readonly number[]): DesignTemperature {
  if (design !== undefined) {
    const { heating99_C, heating996_C, source } = design;
    return { heating99_C, heating996_C, basis: 'quoted', source: `as the file quotes: ${source}` };
  }
  return {
    heating99_C: coldestShare_C(temperatures_C, COLDER_99_PCT),
    heating996_C: coldestShare_C(temperatures_C, COLDER_996_PCT),
    basis: 'typical-year',
    source: 'from a typical year, not a design value',
  };
}

/** The twelve months of a file, or why its hours do not give them. */
export function summaryOf(station: Station, year: WeatherYear): Reading<WeatherSummary> {
  const means_C = monthNames.map((_, index) => {
    const hours = year.days
      .filter(({ month }) => month === index + 1)
      .flatMap(({ temperatures_C }) => present(temperatures_C));
    return sum(hours) / hours.length;
  });
  const faults = monthFaults(year, means_C);
  if (faults.length > 0) return { ok: false, faults: listed(faults) };

  const lengths = monthLengths(year);
  const days = year.days
    .filter(isUsable)
    .map(({ month, temperatures_C }) => ({ month, temperatures_C: present(temperatures_C) }));
  const heating = (convention: DayMean): HeatingDegreeDays => ({
    base18_Kd: degreeDays_Kd(days, lengths, HEATING_BASES_C.base18, 'heating', convention),
    base18_3_Kd: degreeDays_Kd(days, lengths, HEATING_BASES_C.base18_3, 'heating', convention),
  });
  const cooling = (convention: DayMean): number =>
    degreeDays_Kd(days, lengths, COOLING_BASE_C, 'cooling', convention);
  const usableHours = sum(year.days.map((day) => day.usableHours));
  const design = designOf(
    station,
    year.days.flatMap(({ temperatures_C }) => present(temperatures_C)),
  );
  const { format, placeName, source, latitude_deg, longitude_deg, elevation_m } = station;
  const value: WeatherSummary = {
    format,
    placeName,
    source,
    measured: year.measured,
    latitude_deg,
    longitude_deg,
    elevation_m,
    monthlyTemperature_C: means_C,
    monthlyVaporPressure_Pa: year.vapor.map(({ vaporPressure_Pa }) => vaporPressure_Pa),
    monthlyRelativeHumidity_pct: year.vapor.map(
      ({ vaporPressure_Pa, saturation_Pa }) => (PERCENT * vaporPressure_Pa) / saturation_Pa,
    ),
    heatingDegreeDays: { extremes: heating('extremes'), hours: heating('hours') },
    coolingDegreeDays10_Kd: { extremes: cooling('extremes'), hours: cooling('hours') },
    designTemperature: design,
    warnings: warningsOf(station, year, usableHours, design.basis),
    usableHours,
  };
  return { ok: true, value };
}
