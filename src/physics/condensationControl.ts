/**
 * Condensation control of unvented roofs: how warm the underside of the deck stays, how much resistance
 * must sit above it, and how humid the indoor air may be.
 */
import { temperatureRule } from '../catalog/condensationTable.ts';
import { requireFinite, requireNotNegative, requirePositive } from './guards.ts';
import { saturationVaporPressure_Pa } from './psychrometrics.ts';

/** [°C] the limit, exactly 45 °F = 7.222 °C (the codes print it rounded as 7 °C); content/tables/condensation-control.json. */
export const DECK_TEMPERATURE_LIMIT_C = temperatureRule.deckLimit_C;
/** [°C] the indoor air of the rule, exactly 68 °F = 20 °C; content/tables/condensation-control.json. */
export const RULE_INDOOR_TEMPERATURE_C = temperatureRule.indoor_C;
/** [K] rounding allowed when a deck is held against the limit, so that exactly enough insulation passes. */
const COMPARISON_TOLERANCE_K = 1e-9;
/** [%] humidity of saturated air. */
const SATURATED_PCT = 100;

/** The roof as the rule sees it: everything outside the deck's underside, and everything inside it. */
export interface DeckSplit {
  readonly aboveDeck_m2K_W: number;
  readonly belowDeck_m2K_W: number;
}

/**
 * Temperature of the underside of the structural deck, steady state.
 *
 * T = Tin - (Tin - Tout) Rbelow / (Rabove + Rbelow)
 *
 * @param split         [m2·K/W] resistance outside the plane (above) and inside it (below), each 0 or more
 * @param outdoorMean_C [°C] outdoor temperature, for the rule the mean of the three coldest months (Tout)
 * @param indoor_C      [°C] indoor temperature (Tin); 20 °C (68 °F) unless said otherwise
 * @returns             [°C] temperature of the plane
 * @range               unvented roofs; above a vented gap nothing counts
 * @throws              RangeError when a resistance is negative, both are 0, or a value is not finite
 * @source              IRC-2018-R806.5 item 5.1.4 (seen-secondary); arithmetic of series layers (computed)
 * @assumes             heat flows straight through; which films and sheathing count is the caller's choice
 */
export function deckTemperature_C(
  split: DeckSplit,
  outdoorMean_C: number,
  indoor_C = RULE_INDOOR_TEMPERATURE_C,
): number {
  requireNotNegative('aboveDeck_m2K_W', split.aboveDeck_m2K_W);
  requireNotNegative('belowDeck_m2K_W', split.belowDeck_m2K_W);
  requireFinite('outdoorMean_C', outdoorMean_C);
  requireFinite('indoor_C', indoor_C);
  const total = split.aboveDeck_m2K_W + split.belowDeck_m2K_W;
  requirePositive('total resistance_m2K_W', total);
  return indoor_C - ((indoor_C - outdoorMean_C) * split.belowDeck_m2K_W) / total;
}

/**
 * Whether the deck's underside stays at or above a limit (within 1e-9 K of rounding).
 *
 * @param deck_C  [°C] temperature of the plane
 * @param limit_C [°C] limit; 7.222 °C (45 °F) unless said otherwise
 * @returns       [-] true when it does
 * @range         any
 * @throws        RangeError when a value is not finite
 * @source        IRC-2018-R806.5 item 5.1.4 (seen-secondary)
 * @assumes       "above 45 °F" is read as at or above, as the tabulated values round
 */
export function meetsDeckTemperature(deck_C: number, limit_C = DECK_TEMPERATURE_LIMIT_C): boolean {
  requireFinite('deck_C', deck_C);
  requireFinite('limit_C', limit_C);
  return deck_C >= limit_C - COMPARISON_TOLERANCE_K;
}

/**
 * Share of the total resistance that must lie above the deck's underside.
 *
 * r = (Tlimit - Tout) / (Tin - Tout), 0 when it is as warm as the limit outdoors
 *
 * @param outdoorMean_C [°C] outdoor temperature (Tout)
 * @param indoor_C      [°C] indoor temperature (Tin), above the limit; 20 °C unless said otherwise
 * @param limit_C       [°C] lowest temperature of the plane (Tlimit); 7.222 °C (45 °F) unless said otherwise
 * @returns             [-] share from 0 to below 1
 * @range               limit below the indoor temperature
 * @throws              RangeError when the limit is not below the indoor temperature
 * @source              IRC-2018-R806.5 item 5.1.4 (seen-secondary), solved for the share (computed)
 * @assumes             as deckTemperature_C
 */
export function requiredAboveDeckShare(
  outdoorMean_C: number,
  indoor_C = RULE_INDOOR_TEMPERATURE_C,
  limit_C = DECK_TEMPERATURE_LIMIT_C,
): number {
  requireFinite('outdoorMean_C', outdoorMean_C);
  requireFinite('indoor_C', indoor_C);
  requireFinite('limit_C', limit_C);
  if (limit_C >= indoor_C) throw new RangeError(`limit_C: ${limit_C} is not below indoor_C ${indoor_C}`);
  if (outdoorMean_C >= limit_C) return 0;
  return (limit_C - outdoorMean_C) / (indoor_C - outdoorMean_C);
}

/**
 * Resistance above the deck's underside that keeps it at a limit.
 *
 * Rabove = Rbelow (Tlimit - Tout) / (Tin - Tlimit), 0 when it is as warm as the limit outdoors
 *
 * @param belowDeck_m2K_W [m2·K/W] resistance inside the plane (Rbelow), 0 or more
 * @param outdoorMean_C   [°C] outdoor temperature (Tout)
 * @param indoor_C        [°C] indoor temperature (Tin), above the limit; 20 °C unless said otherwise
 * @param limit_C         [°C] lowest temperature of the plane (Tlimit); 7.222 °C (45 °F) unless said otherwise
 * @returns               [m2·K/W] resistance needed above
 * @range                 limit below the indoor temperature
 * @throws                RangeError when the limit is not below the indoor temperature
 * @source                IRC-2018-R806.5 item 5.1.4 (seen-secondary), solved for the resistance (computed)
 * @assumes               as deckTemperature_C
 */
export function aboveDeckForTemperature_m2K_W(
  belowDeck_m2K_W: number,
  outdoorMean_C: number,
  indoor_C = RULE_INDOOR_TEMPERATURE_C,
  limit_C = DECK_TEMPERATURE_LIMIT_C,
): number {
  requireNotNegative('belowDeck_m2K_W', belowDeck_m2K_W);
  const share = requiredAboveDeckShare(outdoorMean_C, indoor_C, limit_C);
  return (belowDeck_m2K_W * share) / (1 - share);
}

/**
 * Resistance above the deck for a given total, by the required share.
 *
 * Rabove = r Rtotal
 *
 * @param total_m2K_W   [m2·K/W] total resistance, 0 or more
 * @param outdoorMean_C [°C] outdoor temperature
 * @param indoor_C      [°C] indoor temperature; 20 °C unless said otherwise
 * @param limit_C       [°C] lowest temperature of the plane; 7.222 °C (45 °F) unless said otherwise
 * @returns             [m2·K/W] resistance needed above
 * @range               as requiredAboveDeckShare
 * @throws              RangeError as requiredAboveDeckShare
 * @source              IRC-2018-R806.5 item 5.1.4 (seen-secondary), arithmetic (computed)
 * @assumes             as deckTemperature_C
 */
export function aboveDeckOfTotal_m2K_W(
  total_m2K_W: number,
  outdoorMean_C: number,
  indoor_C = RULE_INDOOR_TEMPERATURE_C,
  limit_C = DECK_TEMPERATURE_LIMIT_C,
): number {
  requireNotNegative('total_m2K_W', total_m2K_W);
  return total_m2K_W * requiredAboveDeckShare(outdoorMean_C, indoor_C, limit_C);
}

/**
 * Highest indoor relative humidity whose dew point is not above a surface temperature.
 *
 * RH = psat(Tsurface) / psat(Tin), at most 100 %
 *
 * @param surface_C [°C] temperature of the surface, here the deck's underside
 * @param indoor_C  [°C] indoor air temperature
 * @returns         [%] relative humidity, 100 where the surface is as warm as the air or warmer
 * @range           -100 to 200 °C
 * @throws          RangeError outside the range
 * @source          ASHRAE-HOF-2017-CH1 ch. 1 eqs 5, 6 and 22 (memory)
 * @assumes         indoor air reaches the surface undiluted (air leakage), no safety margin
 */
export function maximumIndoorRelativeHumidity_pct(surface_C: number, indoor_C: number): number {
  const share =
    saturationVaporPressure_Pa(surface_C, 'ashrae') / saturationVaporPressure_Pa(indoor_C, 'ashrae');
  return SATURATED_PCT * Math.min(1, share);
}
