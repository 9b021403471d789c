/** Sheets, vents and flashing of the shopping list: what follows from areas and edges of the roof. */
import { dimension } from '../catalog/dimensions.ts';
import type { TakeoffLine } from '../evaluation/takeoff.ts';
import { planesOf } from './takeoffLayout.ts';
import { priced, type Bare, type ListInput } from './takeoffPrices.ts';

/**
 * Membrane, tape, primer, underlayment, drip edge, ice barrier and mat.
 *
 * @param input  [-] the complete case, a draft, the requirements
 * @returns      [m², m, USD] lines
 * @source       COMMON-PRACTICE laps (common practice); OUR-JUDGEMENT prices
 */
export function sheetLines({ given, draft, requirements }: ListInput): TakeoffLine[] {
  const { variant } = draft;
  const { area_m2, lengths_m } = planesOf(given);
  const lapped = 1 + dimension('sheet-lap-share');
  const wall_m = lengths_m.eave + lengths_m.rake + lengths_m['high-edge'];
  const deckName = given.framing.deck === 'plank' ? 'whole deck of planks' : 'band along the wall lap';
  const primed_m2 = given.framing.deck === 'plank' ? area_m2 : wall_m * dimension('wall-lap_m');
  const plies = requirements.slope.doubleUnderlayment ? 2 : 1;
  const lines = [
    priced(
      {
        id: 'membrane',
        group: 'air-barrier',
        what: 'air-barrier membrane on the deck, laps in',
        quantity: area_m2 * lapped,
        unit: 'm²',
      },
      'deck-membrane',
      area_m2,
    ),
    priced(
      {
        id: 'tape',
        group: 'air-barrier',
        what: 'tape at the wall lap, hips, ridges, valleys and pipes',
        quantity:
          wall_m +
          lengths_m.ridge +
          lengths_m.hip +
          lengths_m.valley +
          given.roof.penetrations * dimension('tape-per-penetration_m'),
        unit: 'm',
      },
      'tape',
    ),
    priced(
      { id: 'primer', group: 'air-barrier', what: `primer, ${deckName}`, quantity: primed_m2, unit: 'm²' },
      'primer',
    ),
    priced(
      {
        id: 'underlayment',
        group: 'weather',
        what: plies > 1 ? 'underlayment, two layers, laps in' : 'underlayment, laps in',
        quantity: area_m2 * lapped * plies,
        unit: 'm²',
      },
      'underlayment',
    ),
    priced(
      {
        id: 'drip-edge',
        group: 'weather',
        what: 'drip edge at eaves and rakes',
        quantity: wall_m,
        unit: 'm',
      },
      'drip-edge',
    ),
  ] satisfies TakeoffLine[];
  const ice = requirements.iceBarrier;
  return [
    ...lines,
    ...(ice.required
      ? [
          priced(
            {
              id: 'ice-barrier',
              group: 'weather',
              what: 'ice barrier along the eaves',
              quantity: lengths_m.eave * ice.length_m,
              unit: 'm²',
            },
            'ice-barrier',
          ),
        ]
      : []),
    ...(variant.ventilation === 'drainage-mat'
      ? [
          priced(
            { id: 'mat', group: 'venting', what: 'drainage mat', quantity: area_m2, unit: 'm²' },
            'drainage-mat',
          ),
        ]
      : []),
  ];
}

/** Lines of a length that has a price; none where the length is zero. */
const along = (id: string, group: Bare['group'], what: string, length_m: number, row = id): TakeoffLine[] =>
  length_m > 0 ? [priced({ id, group, what, quantity: length_m, unit: 'm' }, row)] : [];

/**
 * Vents, screens and flashing.
 *
 * @param input  [-] the complete case, a draft, the requirements
 * @returns      [m, USD] lines; none of zero length
 * @source       COMMON-PRACTICE lengths of the planes' edges (computed); OUR-JUDGEMENT prices
 */
export function edgeLines({ given, draft }: ListInput): TakeoffLine[] {
  const { lengths_m } = planesOf(given);
  const { ventilation } = draft.variant;
  const isVented = ventilation === 'vented-furring' || ventilation === 'panel-gap';
  const top_m = lengths_m.ridge + lengths_m['high-edge'];
  const vents = isVented
    ? [
        ...along('intake-vent', 'venting', 'intake strip along the eaves', lengths_m.eave),
        ...along('ridge-vent', 'venting', 'vent along ridges and high edges', top_m),
        ...along('insect-screen', 'venting', 'insect screen at intake and outlet', lengths_m.eave + top_m),
      ]
    : [];
  return [
    ...vents,
    ...along('valley-flashing', 'flashing', 'valley metal', lengths_m.valley),
    ...along(
      'step-flashing',
      'flashing',
      'step and apron flashing at cheeks, aprons and curbs',
      lengths_m.cheek + lengths_m.apron + lengths_m.opening,
    ),
  ];
}
