/** The parts of psychrolib that the tests call; the package ships no types. */
declare module 'psychrolib' {
  interface Psychrolib {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    /** Pa from °C. */
    GetSatVapPres(temperature_C: number): number;
    /** °C from °C and a share. */
    GetTDewPointFromRelHum(temperature_C: number, relativeHumidity: number): number;
  }
  const psychrolib: Psychrolib;
  export default psychrolib;
}
