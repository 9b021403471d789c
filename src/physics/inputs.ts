/** Quantities that several physics calculations take in, with the range each allows. */
import { quantity } from '../catalog/quantity.ts';
import { SATURATION_RANGE_C } from './psychrometrics.ts';

/** [°C] lowest and highest temperature of the monthly method's saturation formula. */
const [COLDEST_C, HOTTEST_C] = SATURATION_RANGE_C.iso13788;
/** [m] thickest layer, [W/(m·K)] best conductor (silver is 429), [m2·K/W], [m] of still air: our judgement. */
const THICKEST_M = 10;
const GREATEST_CONDUCTIVITY = 500;
const GREATEST_RESISTANCE = 100;
const GREATEST_AIR_LAYER_M = 1e6;
const GREATEST_VAPOR_FACTOR = 1e8;

export const temperature_C = quantity({ atLeast: COLDEST_C, atMost: HOTTEST_C });
export const relativeHumidity_pct = quantity({ atLeast: 0, atMost: 100 });
export const thickness_m = quantity({ above: 0, atMost: THICKEST_M });
export const conductivity_W_mK = quantity({ above: 0, atMost: GREATEST_CONDUCTIVITY });
export const resistance_m2K_W = quantity({ atLeast: 0, atMost: GREATEST_RESISTANCE });
export const vaporResistanceFactor = quantity({ above: 0, atMost: GREATEST_VAPOR_FACTOR });
export const equivalentAirLayer_m = quantity({ atLeast: 0, atMost: GREATEST_AIR_LAYER_M });
/** [-] most layers of one assembly: our judgement. */
export const MOST_LAYERS = 60;
