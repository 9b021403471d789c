/** The outdoor climate of a case: own figures, a weather file's, a listed place, or a cautious stand-in. */
import {
  allPlaces,
  isMountainStation,
  placeLabel,
  representativePlace,
  type Place,
} from '../catalog/places.ts';
import { notesOf } from '../catalog/placeNotes.ts';
import type { County } from '../catalog/counties.ts';
import type { Case, WeatherFile } from '../case/case.ts';
import { standingOf, type ZoneFinding } from '../case/place.ts';
import type { Climate } from '../evaluation/evaluation.ts';
import { degreeDaysFromMonthlyMeans_Kd, threeColdestMonths } from '../physics/climate.ts';
import { estimateRange, zoneDoubtOf, zoneNumbers, type DegreeDays } from '../physics/zoneCheck.ts';
import { usesOlderMap } from '../catalog/zones.ts';
import { editions } from '../catalog/sets.ts';

/** [°C] base of heating degree days in SI zone definitions (ASHRAE 169-2013). */
const HEATING_BASE_C = 18;
/** [°C] base of cooling degree days in the zone definitions, 50 °F (ASHRAE 169-2013). */
const COOLING_BASE_C = 10;
/** The newest map stands for "not sure", as in content/tables/defaults.json. */
const OPEN_EDITION = editions[2];
/** [-], [K·d] how far a file's degree days may be from the estimate by its months (our judgement: far beyond its error in any real year). */
const ODD_SHARE = 0.16;
const ODD_KD = 350;
/** [%] outdoor humidity taken where a table has none (our judgement: the damp side of winter months). */
const MISSING_HUMIDITY_PCT = 80;

interface Months {
  readonly placeName: string;
  readonly basis: Climate['basis'];
  readonly temperature_C: readonly number[];
  readonly humidity_pct: readonly (number | null)[];
  readonly design_C: number | null;
  readonly notes: readonly string[];
  readonly sources: readonly string[];
}

const fromPlace = (place: Place, basis: Climate['basis']): Months => ({
  placeName: placeLabel(place),
  basis,
  temperature_C: place.monthlyMean_C,
  humidity_pct: place.monthlyRelativeHumidity_pct ?? place.monthlyMean_C.map(() => null),
  design_C: place.heatingDesignStation_C ?? place.heatingDesignCounty_C,
  notes: notesOf(place).map((note) => note.id),
  sources: [place.source],
});

const coldness_C = (place: Place): number => threeColdestMonths(place.monthlyMean_C).mean_C;

/**
 * The listed place that stands for a county: one within it, else the coldest of its zone in the same state, else a
 * cold place of its zone. Mountain stations never stand for a county. The zone is that of the newest map, whatever
 * edition is in force: weather does not depend on the code.
 */
function monthsOfCounty({ fips, name, state, zone }: County): Months {
  const usable = allPlaces().filter((place) => !isMountainStation(place));
  const within = usable.filter((place) => place.fips === fips);
  const near = usable.filter((place) => place.region === state && place.zone === zone);
  const [coldest] = (within.length > 0 ? within : near).sort((a, b) => coldness_C(a) - coldness_C(b));
  const months =
    coldest === undefined
      ? fromPlace(representativePlace(zone), 'representative')
      : fromPlace(coldest, 'county');
  return { ...months, placeName: `${name}, ${state} (climate of ${months.placeName})` };
}

/** The months of a weather file, which the case holds beside the name of the file. */
function monthsOfFile(given: Case, temperature_C: readonly number[], file: WeatherFile): Months {
  return {
    placeName: given.place.name ?? `${file.station} (weather file)`,
    basis: 'weather-file',
    temperature_C,
    humidity_pct: temperature_C.map(() => null),
    design_C: file.designTemperature_C,
    notes: [
      'weather-file',
      ...(file.designBasis === 'typical-year' && given.place.designTemperature_C === undefined
        ? ['weather-file-design']
        : []),
      ...(isOdd(file, temperature_C) ? ['weather-file-odd'] : []),
    ],
    sources: ['WEATHER-FILE'],
  };
}

const estimated_Kd = (months_C: readonly number[]): DegreeDays => ({
  heating18_Kd: degreeDaysFromMonthlyMeans_Kd(months_C, HEATING_BASE_C, 'heating'),
  cooling10_Kd: degreeDaysFromMonthlyMeans_Kd(months_C, COOLING_BASE_C, 'cooling'),
});

/** Whether the degree days noted for the file are not those of these months: then one of them was changed by hand. */
function isOdd(file: WeatherFile, months_C: readonly number[]): boolean {
  const estimate = estimated_Kd(months_C);
  const differs = (noted_Kd: number, found_Kd: number): boolean =>
    Math.abs(noted_Kd - found_Kd) > Math.max(ODD_KD, ODD_SHARE * found_Kd);
  return (
    differs(file.heatingDegreeDays18_Cd, estimate.heating18_Kd) ||
    differs(file.coolingDegreeDays10_Cd, estimate.cooling10_Kd)
  );
}

function monthsOf(given: Case, zone: ZoneFinding['zone']): Months {
  const { place, county } = standingOf(given);
  const { monthlyTemperature_C: own, weatherFile } = given.place;
  if (own !== undefined && weatherFile !== undefined) return monthsOfFile(given, own, weatherFile);
  if (own !== undefined) {
    return {
      placeName: given.place.name ?? (place === undefined ? `own climate, zone ${zone}` : placeLabel(place)),
      basis: 'own',
      temperature_C: own,
      humidity_pct: own.map(() => null),
      design_C: null,
      notes: ['humidity-missing'],
      sources: ['USER'],
    };
  }
  if (place !== undefined) return fromPlace(place, 'place');
  if (county !== undefined) return monthsOfCounty(county);
  const months = fromPlace(representativePlace(zone), 'representative');
  const name = given.place.name ?? `zone ${zone}`;
  return { ...months, placeName: `${name} (climate of ${months.placeName}, a cold place of the zone)` };
}

type CountedDays = Pick<
  Climate,
  | 'degreeDaysBasis'
  | 'heatingDegreeDays18_Cd'
  | 'coolingDegreeDays10_Cd'
  | 'heatingDegreeDays18Extremes_Cd'
  | 'coolingDegreeDays10Extremes_Cd'
>;

/** The degree days that count, and every way of counting them that the zone may be read from. */
function degreeDaysOf(
  months: Months,
  file: WeatherFile | undefined,
): { counted: CountedDays; ways: readonly DegreeDays[] } {
  if (months.basis !== 'weather-file' || file === undefined) {
    const estimate = estimated_Kd(months.temperature_C);
    const counted: CountedDays = {
      degreeDaysBasis: 'monthly-means',
      heatingDegreeDays18_Cd: estimate.heating18_Kd,
      coolingDegreeDays10_Cd: estimate.cooling10_Kd,
      heatingDegreeDays18Extremes_Cd: null,
      coolingDegreeDays10Extremes_Cd: null,
    };
    return { counted, ways: estimateRange(estimate) };
  }
  const { heatingDegreeDays18_Cd, coolingDegreeDays10_Cd } = file;
  const { heatingDegreeDays18Extremes_Cd, coolingDegreeDays10Extremes_Cd } = file;
  return {
    counted: {
      degreeDaysBasis: 'hours',
      heatingDegreeDays18_Cd,
      coolingDegreeDays10_Cd,
      heatingDegreeDays18Extremes_Cd,
      coolingDegreeDays10Extremes_Cd,
    },
    ways: [
      { heating18_Kd: heatingDegreeDays18_Cd, cooling10_Kd: coolingDegreeDays10_Cd },
      { heating18_Kd: heatingDegreeDays18Extremes_Cd, cooling10_Kd: coolingDegreeDays10Extremes_Cd },
    ],
  };
}

/** Humidity that the user gives goes before the table's, and takes its notes away. */
function withOwnHumidity(given: Case, months: Months): Months {
  const own_pct = given.place.monthlyRelativeHumidity_pct;
  if (own_pct === undefined) return months;
  return {
    ...months,
    humidity_pct: own_pct,
    notes: months.notes.filter((id) => !id.startsWith('humidity-')),
    // The file's own humidity is stored as the answer, too.
    sources: months.basis === 'weather-file' ? months.sources : [...new Set([...months.sources, 'USER'])],
  };
}

/**
 * The climate that a case is computed with.
 *
 * coldest mean = mean of the three coldest months; degree days from the monthly means, or from a weather file's hours
 *
 * @param given    [-] a valid case without place faults
 * @param finding  [-] its climate zone
 * @returns        [°C, %] twelve months, the mean of the three coldest, degree days, notes
 * @source         IRC-2018-R806.5 item 5.1.4, the three coldest months (seen-secondary); OUR-JUDGEMENT stand-in places
 * @assumes        a month without humidity is taken at 80 %
 */
export function climateOf(given: Case, finding: ZoneFinding): Climate {
  const months = withOwnHumidity(given, monthsOf(given, finding.zone));
  const coldest = threeColdestMonths(months.temperature_C);
  const { counted, ways } = degreeDaysOf(months, given.place.weatherFile);
  const map = usesOlderMap(given.codes?.edition ?? OPEN_EDITION) ? 'earlier' : 'later';
  const isGiven = months.basis === 'own' || months.basis === 'weather-file';
  const zoneDoubt = isGiven ? (zoneDoubtOf(ways, finding.zone, map) ?? null) : null;
  return {
    placeName: months.placeName,
    basis: months.basis,
    zone: finding.zone,
    zoneBasis: finding.basis,
    monthlyTemperature_C: [...months.temperature_C],
    monthlyRelativeHumidity_pct: months.humidity_pct.map((value) => value ?? MISSING_HUMIDITY_PCT),
    coldestMonths: [...coldest.months],
    coldestMean_C: coldest.mean_C,
    ...counted,
    zoneNumbersByThreshold: zoneNumbers(ways, map),
    zoneDoubt,
    designTemperature_C: given.place.designTemperature_C ?? months.design_C,
    notes: [...months.notes],
    sources: [...months.sources, ...(zoneDoubt === null ? [] : ['ASHRAE-169-2013'])],
  };
}
