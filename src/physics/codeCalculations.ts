/** The calculations of `overdeck calc` that read the code tables, and the climate zone. */
import * as v from 'valibot';
import { defineCalculation } from '../catalog/calculation.ts';
import { aboveDeckMinimum } from '../catalog/condensationTable.ts';
import { ceilingRequirement } from '../catalog/energyCode.ts';
import { listOf, oneOf, quantity, rule } from '../catalog/quantity.ts';
import { coverings, editions, zones } from '../catalog/sets.ts';
import { relativeHumidity_pct, resistance_m2K_W, temperature_C } from './inputs.ts';
import { MONTHLY_MEAN_RANGE_C, MONTHS } from './climate.ts';
import { moistureLetter, thermalZone } from './climateZone.ts';
import {
  RULE_INDOOR_TEMPERATURE_C,
  aboveDeckForTemperature_m2K_W,
  deckTemperature_C,
  maximumIndoorRelativeHumidity_pct,
  meetsDeckTemperature,
} from './condensationControl.ts';

export const energyCodeCalculation = defineCalculation({
  name: 'energy-code',
  summary:
    'Least ceiling R and greatest ceiling U of an energy-code edition; null where the table holds none',
  input: v.strictObject({ edition: oneOf(editions), zone: oneOf(zones) }),
  run(input) {
    const found = ceilingRequirement(input.edition, input.zone);
    if (found.kind === 'notCovered') return { ceilingResistance_m2K_W: null, transmittance_W_m2K: null };
    return {
      ceilingResistance_m2K_W: found.resistance_m2K_W,
      transmittance_W_m2K: found.transmittance_W_m2K,
    };
  },
});

/** [m2·K/W] rounding allowed when a resistance is held against the table. */
const COMPARISON_TOLERANCE_M2K_W = 1e-9;
/** [°C] indoor air of a heated house, our judgement. */
const INDOOR_RANGE = { atLeast: 0, atMost: 50 } as const;

/**
 * The deck temperature and the resistance for it are the code's rule, always with 20 °C (68 °F) indoors; the
 * highest humidity is for the indoor temperature of the input.
 */
export const condensationControlCalculation = defineCalculation({
  name: 'condensation-control',
  summary: 'Above-deck minimum of the table, deck temperature of the 45 °F rule, highest indoor humidity',
  input: v.pipe(
    v.strictObject({
      edition: oneOf(editions),
      zone: oneOf(zones),
      covering: v.optional(oneOf(coverings)),
      aboveDeck_m2K_W: resistance_m2K_W,
      belowDeck_m2K_W: resistance_m2K_W,
      outdoorMean_C: temperature_C,
      indoorTemperature_C: v.optional(quantity(INDOOR_RANGE), RULE_INDOOR_TEMPERATURE_C),
      indoorRelativeHumidity_pct: v.optional(relativeHumidity_pct),
    }),
    rule(
      (input) => input.aboveDeck_m2K_W + input.belowDeck_m2K_W > 0,
      'the resistances add to 0; above 0 is needed',
    ),
  ),
  run(input) {
    const minimum = aboveDeckMinimum(input.edition, input.zone, input.covering);
    const tableMinimum_m2K_W = minimum.kind === 'notCovered' ? null : minimum.resistance_m2K_W;
    const ruleDeck_C = deckTemperature_C(input, input.outdoorMean_C);
    const ownDeck_C = deckTemperature_C(input, input.outdoorMean_C, input.indoorTemperature_C);
    return {
      tableMinimum_m2K_W,
      meetsTable:
        tableMinimum_m2K_W === null
          ? null
          : input.aboveDeck_m2K_W >= tableMinimum_m2K_W - COMPARISON_TOLERANCE_M2K_W,
      deckTemperature_C: ruleDeck_C,
      meetsTemperature: meetsDeckTemperature(ruleDeck_C),
      aboveDeckForTemperature_m2K_W: aboveDeckForTemperature_m2K_W(
        input.belowDeck_m2K_W,
        input.outdoorMean_C,
      ),
      maximumIndoorRelativeHumidity_pct: maximumIndoorRelativeHumidity_pct(
        ownDeck_C,
        input.indoorTemperature_C,
      ),
    };
  },
});

/** [K·d] most degree days of a year at 100 K from the base; [mm] above the wettest place on record (our judgement). */
const MOST_DEGREE_DAYS = 36500;
const MOST_RAIN_MM = 30000;
const degreeDays = quantity({ atLeast: 0, atMost: MOST_DEGREE_DAYS });
const rain_mm = quantity({ atLeast: 0, atMost: MOST_RAIN_MM });
const mean_C = quantity({ atLeast: MONTHLY_MEAN_RANGE_C[0], atMost: MONTHLY_MEAN_RANGE_C[1] });

export const climateZoneCalculation = defineCalculation({
  name: 'climate-zone',
  summary:
    'Climate zone by degree days and rain (ASHRAE 169-2013): a plausibility check, the county list decides',
  input: v.strictObject({
    heatingDegreeDays18_Cd: degreeDays,
    coolingDegreeDays10_Cd: degreeDays,
    annualPrecipitation_mm: v.optional(rain_mm),
    annualMean_C: v.optional(mean_C),
    monthlyMean_C: v.optional(listOf(mean_C, MONTHS, MONTHS)),
    monthlyPrecipitation_mm: v.optional(listOf(rain_mm, MONTHS, MONTHS)),
  }),
  run(input) {
    const thermal = thermalZone(input.heatingDegreeDays18_Cd, input.coolingDegreeDays10_Cd);
    const moisture = moistureLetter(thermal, input);
    return { zone: `${thermal}${moisture ?? ''}`, thermal, moisture };
  },
});
