/**
 * Conversions between the SI values used inside and the inch-pound values shown at the edges.
 * The only file that knows a conversion factor.
 */

/** [m] one inch, exact (NIST SP 811, 2008, appendix B.8). */
export const METERS_PER_INCH = 0.0254;
/** [m] one foot, exact (NIST SP 811, 2008, appendix B.8). */
export const METERS_PER_FOOT = 0.3048;
/** [m²·K/W] one h·ft²·°F/Btu (product contract; NIST SP 811, 2008, appendix B.8 gives 1.761 102 E-01). */
export const RSI_PER_R = 0.1761101838;
/** [Pa] one pound-force per square foot (NIST SP 811, 2008, appendix B.8). */
export const PASCALS_PER_PSF = 47.88026;
/** [m/s] one mile per hour, exact (NIST SP 811, 2008, appendix B.8). */
export const METERS_PER_SECOND_PER_MPH = 0.44704;
/** [N] one pound-force (NIST SP 811, 2008, appendix B.8). */
export const NEWTONS_PER_POUND = 4.4482216152605;
/** [Pa] one pound-force per square inch (NIST SP 811, 2008, appendix B.8). */
export const PASCALS_PER_PSI = 6894.757293168;
/** [Pa] one conventional inch of mercury (NIST SP 811, 2008, appendix B.8: 3.386 389 E+03). */
export const PASCALS_PER_INCH_OF_MERCURY = 3386.389;
/** [ng/(Pa·s·m²)] one perm at 0 °C (NIST SP 811, 2008, appendix B.8: 5.721 35 E-11 kg/(Pa·s·m²)). */
export const NANOGRAMS_PER_PERM = 57.2135;
/** [kg] one pound, exact (NIST SP 811, 2008, appendix B.8). */
export const KILOGRAMS_PER_POUND = 0.45359237;

export const metersFromInches = (length_in: number): number => length_in * METERS_PER_INCH;
export const inchesFromMeters = (length_m: number): number => length_m / METERS_PER_INCH;
export const metersFromFeet = (length_ft: number): number => length_ft * METERS_PER_FOOT;
export const feetFromMeters = (length_m: number): number => length_m / METERS_PER_FOOT;
export const squareFeetFromSquareMeters = (area_m2: number): number =>
  area_m2 / (METERS_PER_FOOT * METERS_PER_FOOT);
export const squareMetersFromSquareFeet = (area_ft2: number): number =>
  area_ft2 * METERS_PER_FOOT * METERS_PER_FOOT;
export const rsiFromR = (resistance_R: number): number => resistance_R * RSI_PER_R;
export const rFromRsi = (resistance_m2K_W: number): number => resistance_m2K_W / RSI_PER_R;
/** U in W/(m²·K) from Btu/(h·ft²·°F): the reciprocal of the R conversion. */
export const siUFromIpU = (transmittance_IP: number): number => transmittance_IP / RSI_PER_R;
export const ipUFromSiU = (transmittance_W_m2K: number): number => transmittance_W_m2K * RSI_PER_R;
export const celsiusFromFahrenheit = (temperature_F: number): number => (temperature_F - 32) / 1.8;
export const fahrenheitFromCelsius = (temperature_C: number): number => temperature_C * 1.8 + 32;
export const kelvinDifferenceFromFahrenheit = (difference_F: number): number => difference_F / 1.8;
export const fahrenheitDifferenceFromKelvin = (difference_K: number): number => difference_K * 1.8;
export const pascalsFromPsf = (load_psf: number): number => load_psf * PASCALS_PER_PSF;
export const psfFromPascals = (load_Pa: number): number => load_Pa / PASCALS_PER_PSF;
export const metersPerSecondFromMph = (speed_mph: number): number => speed_mph * METERS_PER_SECOND_PER_MPH;
export const mphFromMetersPerSecond = (speed_m_s: number): number => speed_m_s / METERS_PER_SECOND_PER_MPH;
export const nanogramsFromPerms = (permeance_perm: number): number => permeance_perm * NANOGRAMS_PER_PERM;
export const permsFromNanograms = (permeance_ng: number): number => permeance_ng / NANOGRAMS_PER_PERM;
export const newtonsFromPounds = (force_lb: number): number => force_lb * NEWTONS_PER_POUND;
export const poundsFromNewtons = (force_N: number): number => force_N / NEWTONS_PER_POUND;
