/** A weather file in words: the rows of its summary, for a file just read and for one in use. */
import type { WeatherFile } from '../../case/case.ts';
import { show, type System } from '../../measures.ts';
import { threeColdestMonths } from '../../physics/climate.ts';
import { monthNames } from './months.ts';

/** Line of the summary: what, the figure, and what to know about it. */
export interface WeatherRow {
  readonly what: string;
  readonly figure: string;
  readonly note?: string;
}

const formatNames: Readonly<Record<WeatherFile['format'], string>> = { epw: 'EPW', tmy3: 'TMY3 table' };

/** `1976 to 2005`; undefined where the file names no year. */
function yearsInWords({ firstYear, lastYear }: WeatherFile): string | undefined {
  if (firstYear === undefined) return undefined;
  return lastYear === undefined || lastYear === firstYear ? String(firstYear) : `${firstYear} to ${lastYear}`;
}

/** `Denver Intl Ap, CO, USA (denver.epw)`. */
export const weatherFileInWords = ({ station, name }: WeatherFile): string => `${station} (${name})`;

function degreeDayRow(what: string, hours_Cd: number, extremes_Cd: number, system: System): WeatherRow {
  return {
    what,
    figure: show('degreeDays', hours_Cd, system),
    note: `by the mean of each day’s hours, which is used; ${show('degreeDays', extremes_Cd, system)} by half the sum of its highest and lowest`,
  };
}

/** What a reader should see before using the file. */
export function weatherRows(file: WeatherFile, monthly_C: readonly number[], system: System): WeatherRow[] {
  const { months, mean_C } = threeColdestMonths(monthly_C);
  const each = months.map(
    (month) => `${monthNames[month - 1] ?? ''} ${show('temperature', monthly_C[month - 1] ?? 0, system)}`,
  );
  const years = yearsInWords(file);
  return [
    { what: 'Station', figure: file.station },
    {
      what: 'Data',
      figure: [file.dataSet ?? formatNames[file.format], `${file.usable_h} hours`].join(', '),
      ...(years === undefined ? {} : { note: `measured in ${years}` }),
    },
    { what: 'Three coldest months', figure: show('temperature', mean_C, system), note: each.join(', ') },
    degreeDayRow(
      `Heating degree-days, base ${show('temperature', 18, system)}`,
      file.heatingDegreeDays18_Cd,
      file.heatingDegreeDays18Extremes_Cd,
      system,
    ),
    degreeDayRow(
      `Cooling degree-days, base ${show('temperature', 10, system)}`,
      file.coolingDegreeDays10_Cd,
      file.coolingDegreeDays10Extremes_Cd,
      system,
    ),
    {
      what: 'Winter design temperature',
      figure: show('temperature', file.designTemperature_C, system),
      note:
        file.designBasis === 'quoted'
          ? 'as the file quotes it for its station'
          : 'from the hours of a typical year: not a design value',
    },
  ];
}
