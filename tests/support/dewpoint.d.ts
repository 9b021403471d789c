/** The parts of the dewpoint package that the tests call; it ships no types. */
declare module 'dewpoint' {
  class DewPoint {
    constructor(heightAboveSea_m: number);
    /** Water in g per kg of dry air and dew point in °C, from °C and %. */
    Calc(temperature_C: number, relativeHumidity_pct: number): { readonly x: number; readonly dp: number };
  }
  export default DewPoint;
}
