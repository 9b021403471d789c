/** The shape of the roof's geometry, of the shopping list of each leading candidate, and of the geometry checks. */
import * as v from 'valibot';

const number = v.number();
const word = v.string();
const flag = v.boolean();
const citation = { source: word, clause: word, known: word } as const;
/** Low, middle and high of an editable default. */
const range = v.object({ low: number, mid: number, high: number });

export const edgeKinds = [
  'eave',
  'rake',
  'ridge',
  'hip',
  'valley',
  'break',
  'high-edge',
  'cheek',
  'apron',
  'opening',
] as const;

export const roofGeometrySchema = v.object({
  /** Sum of the planes, openings left out. */
  area_m2: number,
  planes: v.array(v.object({ id: word, angle_deg: number, area_m2: number })),
  /** True lengths; what two planes share is counted once. */
  lengths: v.array(v.object({ kind: v.picklist(edgeKinds), length_m: number })),
  /** What was taken for the shape where nobody gave it. */
  assumptions: v.array(
    v.object({
      id: v.picklist(['gambrel', 'l-plan', 'cross-gables', 'dormers', 'openings']),
      count: number,
      /** Width in meters; of a gambrel the lower pitch in rise per 12. */
      size: number,
      known: word,
    }),
  ),
});

export const takeoffGroups = [
  'board',
  'framing',
  'fastener',
  'air-barrier',
  'weather',
  'venting',
  'flashing',
  'fee',
] as const;

export const takeoffLineSchema = v.object({
  /** Unique within the list. */
  id: word,
  group: v.picklist(takeoffGroups),
  what: word,
  quantity: number,
  unit: v.picklist(['m²', 'm', 'pieces', 'fee']),
  thickness_m: v.optional(number),
  /** Of one piece. */
  length_m: v.optional(number),
  /** How boards, panels and sheets were laid out. */
  layout: v.optional(
    v.object({
      count: number,
      whole: number,
      cut: number,
      reused: number,
      covered_m2: number,
      waste_pct: number,
    }),
  ),
  mass_kg: v.optional(number),
  /** Of board as bought, A1-A3. */
  carbon_kg: v.optional(range),
  cost_USD: range,
});

export const takeoffHoursSchema = v.object({
  /** Row of costs.json. */
  task: word,
  what: word,
  trade: word,
  hours: range,
});

/** `straight` adds all lows and all highs; `likely` is the root of the sum of squares of the parts' distances from mid. */
const total = v.object({ straight: range, likely: range });

export const takeoffListSchema = v.object({
  candidate: word,
  lines: v.array(takeoffLineSchema),
  hours: v.array(takeoffHoursSchema),
  laborRate_USD_h: range,
  material_USD: total,
  labor_h: total,
  whole_USD: total,
  carbon_kg: range,
  lift: v.object({
    /** Boards, panels and sheets that go up. */
    total_kg: number,
    heaviest: word,
    heaviest_kg: number,
    /** To carry that piece by hand. */
    people: number,
    person_kg: number,
    /** Loads of a lift. */
    loads: number,
    load_kg: number,
    ...citation,
  }),
});

export const geometryCheckIds = [
  'fascia-plumb',
  'fascia-square',
  'ridge-rise',
  'eave-height',
  'window-head',
  'dormer-cheek',
  'step-flashing',
  'skylight-curb',
  'chimney',
  'gutter',
  'ice-barrier',
  'vent-intake',
  'vent-gap',
  'vent-outlet',
  'vent-throat',
] as const;

/** One check of the finished edge; its words are in content/tables/record.json. */
export const geometryCheckSchema = v.object({
  id: v.picklist(geometryCheckIds),
  value: number,
  unit: v.picklist(['m', 'm²/m']),
  /** Null where only the site can say. */
  limit: v.nullable(v.object({ value: number, sense: v.picklist(['most', 'least']) })),
  meets: v.nullable(flag),
  /** True where something is left to measure or settle on site. */
  needsSite: flag,
  ...citation,
});

export const geometryChecksSchema = v.object({ candidate: word, checks: v.array(geometryCheckSchema) });

export type RoofGeometry = v.InferOutput<typeof roofGeometrySchema>;
export type TakeoffLine = v.InferOutput<typeof takeoffLineSchema>;
export type TakeoffHours = v.InferOutput<typeof takeoffHoursSchema>;
export type TakeoffList = v.InferOutput<typeof takeoffListSchema>;
export type TakeoffTotal = TakeoffList['whole_USD'];
export type GeometryCheck = v.InferOutput<typeof geometryCheckSchema>;
export type GeometryChecks = v.InferOutput<typeof geometryChecksSchema>;
