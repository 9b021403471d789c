/** A weather file as the place of a case takes it: twelve months, and an entry that says where they come from. */
import { at } from '../physics/guards.ts';
import { saturationVaporPressure_Pa } from '../physics/psychrometrics.ts';
import { monthNames } from '../catalog/months.ts';
import type { WeatherSummary } from './monthly.ts';
import { plainWords, type WeatherFormat } from './station.ts';

/** What the case keeps of the file beside its months. */
export interface WeatherEntry {
  name: string;
  format: WeatherFormat;
  station: string;
  dataSet?: string;
  firstYear?: number;
  lastYear?: number;
  usable_h: number;
  heatingDegreeDays18_Cd: number;
  heatingDegreeDays18Extremes_Cd: number;
  coolingDegreeDays10_Cd: number;
  coolingDegreeDays10Extremes_Cd: number;
  designTemperature_C: number;
  designBasis: 'quoted' | 'typical-year';
}

export interface PlaceOfWeather {
  readonly monthlyTemperature_C: number[];
  readonly monthlyRelativeHumidity_pct: number[];
  readonly weatherFile: WeatherEntry;
  /** In words: what was changed on the way. */
  readonly notes: readonly string[];
}

/** [%] humidity that a month may have: the limits of the case file. */
const HUMIDITY_LIMITS_PCT = [1, 100] as const;
const PERCENT = 100;
/** Digits kept of a temperature and a humidity: finer than any station measures. */
const TEMPERATURE_DIGITS = 2;
const HUMIDITY_DIGITS = 1;
/** Digits kept of degree days. */
const DEGREE_DAY_DIGITS = 1;

/** Adding 0 turns a rounded -0 into 0. */
const rounded = (value: number, digits: number): number => Number(value.toFixed(digits)) + 0;

/** The file's name without its folder: where it lies on a machine is nobody else's business. */
const bareName = (name: string): string => plainWords(name.split(/[\\/]/).at(-1) ?? '') || 'weather file';

function entryOf(summary: WeatherSummary, fileName: string): WeatherEntry {
  const { format, placeName, source, measured, usableHours, designTemperature } = summary;
  const { heatingDegreeDays, coolingDegreeDays10_Kd } = summary;
  const days = (value: number): number => rounded(value, DEGREE_DAY_DIGITS);
  return {
    name: bareName(fileName),
    format,
    station: placeName,
    ...(source === '' ? {} : { dataSet: source }),
    ...(measured === undefined ? {} : { firstYear: measured.first, lastYear: measured.last }),
    usable_h: usableHours,
    heatingDegreeDays18_Cd: days(heatingDegreeDays.hours.base18_Kd),
    heatingDegreeDays18Extremes_Cd: days(heatingDegreeDays.extremes.base18_Kd),
    coolingDegreeDays10_Cd: days(coolingDegreeDays10_Kd.hours),
    coolingDegreeDays10Extremes_Cd: days(coolingDegreeDays10_Kd.extremes),
    designTemperature_C: rounded(designTemperature.heating99_C, TEMPERATURE_DIGITS),
    designBasis: designTemperature.basis,
  };
}

/**
 * The twelve months as the monthly moisture balance reads them.
 *
 * RH = 100 mean(pv) / psat(mean t)
 *
 * The balance computes a month's vapor pressure as RH psat(mean t), over ice below freezing. So that it finds the file's
 * own mean vapor pressure again, the humidity is taken against that same saturation pressure. The humidity of
 * the summary (against the mean of the hourly saturation pressures) would lose a tenth of the vapor in a dry mountain climate.
 *
 * @param summary  [°C, Pa] the months of a weather file
 * @param fileName [-] name of the file, of which the folder is left out
 * @returns        [°C, %] months rounded to 0.01 K and 0.1 %, the file's entry, notes
 * @range          humidity 1 to 100 %; a month above (fog below freezing, over ice) is taken as 100 and noted
 * @source         ISO-13788-2012 clause 4.2 and annex E (memory)
 * @assumes        the evaluation uses the ISO 13788 saturation formula
 */
export function placeOfWeather(summary: WeatherSummary, fileName: string): PlaceOfWeather {
  const notes: string[] = [];
  const [least, most] = HUMIDITY_LIMITS_PCT;
  const humidity_pct = summary.monthlyTemperature_C.map((mean_C, index) => {
    const vapor_Pa = at(summary.monthlyVaporPressure_Pa, index);
    const found_pct = (PERCENT * vapor_Pa) / saturationVaporPressure_Pa(mean_C);
    const month = at(monthNames, index);
    if (found_pct > most) notes.push(`${month}: vapor pressure is cut to saturation at the month's mean`);
    if (found_pct < least) notes.push(`${month}: relative humidity is raised to ${least} %`);
    return rounded(Math.min(most, Math.max(least, found_pct)), HUMIDITY_DIGITS);
  });
  return {
    monthlyTemperature_C: summary.monthlyTemperature_C.map((mean_C) => rounded(mean_C, TEMPERATURE_DIGITS)),
    monthlyRelativeHumidity_pct: humidity_pct,
    weatherFile: entryOf(summary, fileName),
    notes,
  };
}
