/**
 * The shape of what is computed about heat and moisture in depth: by zone of the roof, by month and by plane.
 * Twelve values are January to December. Planes are named by the layer inside them (`after`), a layer id of the
 * candidate, or `inside-surface`.
 */
import * as v from 'valibot';

const number = v.number();
const maybe = v.nullable(v.number());
const word = v.string();
const flag = v.boolean();
const twelve = v.array(number);

/** ISO 6946 combined method beside the parallel path, for the field of the roof. */
export const combinedSchema = v.object({
  upperLimit_m2K_W: number,
  lowerLimit_m2K_W: number,
  resistance_m2K_W: number,
  /** Greatest relative error of the method: (upper - lower) / (2 combined). */
  error_pct: number,
  transmittance_W_m2K: number,
});

/** One part of the roof with its own members across the insulation; the areas add up to the roof over the heated rooms. */
export const thermalZoneSchema = v.object({
  id: v.picklist(['field', 'eave-band', 'rake-band', 'edge-nailers']),
  area_m2: number,
  share_pct: number,
  /** Wood across the insulation here: its share of the area, and how much of the board's depth it crosses. */
  woodShare_pct: number,
  woodDepth_m: number,
  what: word,
  transmittance_W_m2K: number,
  combined_W_m2K: number,
});

/** What a bridge adds to the transmittance of the whole roof; the parts and the clear roof add up to it. */
export const bridgeLossSchema = v.object({
  id: v.picklist([
    'clear',
    'framing',
    'eave-band',
    'rake-band',
    'nailers',
    'panel-blocking',
    'screws',
    'air-voids',
  ]),
  what: word,
  transmittance_W_m2K: number,
  share_pct: number,
});

export const seasonLossSchema = v.object({
  heatingDegreeDays18_Cd: number,
  perArea_kWh_m2: number,
  whole_kWh: number,
  basis: word,
});

/** A plane of the roof month by month: its temperature and the indoor humidity that would just condense there. */
export const planeMonthsSchema = v.object({
  id: v.picklist(['deck-underside', 'deck-top', 'insulation-joint', 'under-underlayment']),
  /** The layer inside the plane. */
  after: word,
  temperature_C: twelve,
  maximumIndoor_pct: twelve,
});

/** Share of R above the deck against the edition's own ceiling total. */
export const editionShareSchema = v.object({
  total_m2K_W: number,
  tableShare_pct: number,
  share_pct: number,
  meets: flag,
});

/** A condensation plane of the monthly method. */
export const condensationPlaneSchema = v.object({
  after: word,
  /** Depth within that layer, when the plane lies inside it. */
  within_pct: maybe,
  /** January to December; negative evaporates. */
  monthly_kg_m2: twelve,
  accumulated_kg_m2: twelve,
  peak_kg_m2: number,
  limit_kg_m2: number,
  meetsLimit: flag,
  limitReason: word,
  source: word,
});

/** Temperature and vapor pressure through the section in the coldest month, inside to outside. */
export const profileSchema = v.object({
  /** 1 to 12. */
  month: number,
  points: v.array(
    v.object({
      after: word,
      /** Distance from the inside surface, [m]. */
      depth_m: number,
      equivalentAirLayer_m: number,
      temperature_C: number,
      vaporPressure_Pa: number,
      saturationPressure_Pa: number,
    }),
  ),
});

/** Where the indoor humidity of the monthly method comes from. */
export const indoorAirSchema = v.object({
  basis: v.picklist(['fixed', 'humidity-class']),
  humidityClass: maybe,
  relativeHumidity_pct: twelve,
  dewPoint_C: twelve,
});

/** Water put into one place of the roof, and how it leaves. */
export const dryingPlaceSchema = v.object({
  place: v.picklist(['deck', 'insulation-joint', 'under-underlayment']),
  /** The layer that was wetted, or the layer inside the wetted joint. */
  layer: word,
  startMonth: number,
  initial_kg_m2: number,
  /** Null when it takes longer than the limit. */
  monthsToDry: maybe,
  limit_months: number,
  /** At the end of each month from the start month, until dry or the limit. */
  remaining_kg_m2: v.array(number),
  elsewhere_kg_m2: v.array(number),
  /** What still sits elsewhere when the wetted place is dry (or at the limit), and in which plane most of it. */
  left_kg_m2: number,
  leftAfter: v.nullable(word),
});

export const gapFlowSchema = v.object({
  /** At the mean outdoor temperature of the year. */
  airChanges_1_h: number,
  velocity_m_s: number,
  excess_K: number,
  lossCoefficient: number,
  equivalentPermeance_ng: number,
  basis: word,
});

/** A surface that leaking air may reach, and the water that air and diffusion bring to it. */
export const leakSurfaceSchema = v.object({
  /** The deck's underside, or the cold side of the board: where air goes that finds a way past the deck. */
  id: v.picklist(['deck', 'cold-side']),
  after: word,
  monthlyLeak_kg: twelve,
  seasonLeak_kg: number,
  monthlyDiffusion_kg: twelve,
  seasonDiffusion_kg: number,
  /** Leak through the whole roof at the stated leakage rate, per roof area. */
  seasonRate_kg_m2: number,
});

/** Water that leaking air carries through a stated hole beside what diffusion carries through a stated area. */
export const airLeakageSchema = v.object({
  /** The stated hole per roof and the stated pressure. */
  hole_m2: number,
  pressure_Pa: number,
  flow_m3_s: number,
  /** Area of whole roof (a 4 by 8 ft sheet) through which diffusion is counted to the same surface. */
  sheet_m2: number,
  /** The stated leakage rate of the whole roof. */
  rate_m3_sm2: number,
  deck: leakSurfaceSchema,
  coldSide: leakSurfaceSchema,
  known: word,
  source: word,
});

/** Wet-cup permeance of a layer and what sources disagree about. */
export const permeanceDoubtSchema = v.object({
  low_ng: number,
  high_ng: number,
  used_ng: number,
  reason: word,
  sources: v.array(word),
});

export type PlaneMonths = v.InferOutput<typeof planeMonthsSchema>;
export type CondensationPlane = v.InferOutput<typeof condensationPlaneSchema>;
export type Profile = v.InferOutput<typeof profileSchema>;
export type DryingPlace = v.InferOutput<typeof dryingPlaceSchema>;
export type GapFlow = v.InferOutput<typeof gapFlowSchema>;
export type LeakSurface = v.InferOutput<typeof leakSurfaceSchema>;
export type AirLeakage = v.InferOutput<typeof airLeakageSchema>;
export type BridgeLoss = v.InferOutput<typeof bridgeLossSchema>;
export type ThermalZone = v.InferOutput<typeof thermalZoneSchema>;
export type IndoorAir = v.InferOutput<typeof indoorAirSchema>;
