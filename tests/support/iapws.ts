/**
 * Saturation pressure by the formulas of the International Association for the Properties of Water and Steam, a
 * second formulation for the tests (coefficients from memory; the verification numbers are tested).
 */

/** Saturation over liquid water by IAPWS-IF97 region 4, eq. 30. */
export function industrialFormula_Pa(temperature_C: number): number {
  const T = temperature_C + 273.15;
  const x = T - 0.23855557567849 / (T - 0.65017534844798e3);
  const A = x * x + 0.11670521452767e4 * x - 0.72421316703206e6;
  const B = -0.17073846940092e2 * x * x + 0.1202082470247e5 * x - 0.32325550322333e7;
  const C = 0.1491510861353e2 * x * x - 0.48232657361591e4 * x + 0.40511340542057e6;
  return 1e6 * ((2 * C) / (-B + Math.sqrt(B * B - 4 * A * C))) ** 4;
}

/** Sublimation pressure of ice by IAPWS R14-08(2011). */
export function sublimation_Pa(temperature_C: number): number {
  const t = (temperature_C + 273.15) / 273.16;
  const terms: [number, number][] = [
    [-0.212144006e2, 0.333333333e-2],
    [0.273203819e2, 1.20666667],
    [-0.61059813e1, 1.70333333],
  ];
  return 611.657 * Math.exp(terms.reduce((sum, [a, b]) => sum + a * t ** b, 0) / t);
}
