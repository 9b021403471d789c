/** The air barrier's reason in one picture: water carried by leaking air beside water carried by diffusion. */
import { monthNames } from '../catalog/months.ts';
import { point } from '../drawing/geometry.ts';
import { polygon, pen, text, type Shape } from '../drawing/shapes.ts';
import { wrapText } from '../drawing/text-metrics.ts';
import type { AirLeakage, LeakSurface } from '../evaluation/heatMoisture.ts';
import { show, type System } from '../measures.ts';
import { BASELINE, layoutOf, LEADING, pictureOf, titleAt, wordsAt } from './layout.ts';
import { barShapes, rectangle } from './marks.ts';
import {
  numberCell,
  numberColumn,
  winterMiddle,
  wordCell,
  wordColumn,
  type Plot,
  type PlotOptions,
  type PlotTable,
} from './plot.ts';

const TITLE = 'Water by leaking air and by diffusion in a cold season';
/** [mm] Side of the larger square, from a square to its words, and between the two. */
const LARGEST_mm = 42;
const BESIDE_mm = 3;
const GAP_mm = 5;
/** [mm] A square smaller than this would be lost; it gets a ring around it. */
const LEAST_SEEN_mm = 1.6;
/** [-] Size of the figure over the size of the words below it. */
const FIGURE_SIZE = 1.3;

/** [mm] Side of a square whose area stands for an amount, at a stated area for each kilogram. */
export const side_mm = (amount_kg: number, perKilogram_mm2: number): number =>
  Math.sqrt(Math.max(0, amount_kg) * perKilogram_mm2);

/** The surface that is drawn: the deck when it gets water, else the cold side of the board. */
export const drawnSurface = ({ deck, coldSide }: AirLeakage): LeakSurface => (isDry(deck) ? coldSide : deck);

const isDry = ({ seasonLeak_kg, seasonDiffusion_kg }: LeakSurface): boolean =>
  seasonLeak_kg <= 0 && seasonDiffusion_kg <= 0;

const whereIs = ({ id }: LeakSurface): string =>
  id === 'deck' ? 'on the deck' : 'on the cold side of the board';

const whole = ({ id }: LeakSurface): string => (id === 'deck' ? 'whole ceiling' : 'whole roof');

function wordsOf(
  leak: AirLeakage,
  surface: LeakSurface,
  system: System,
): { air: string[]; diffusion: string[] } {
  const { seasonDiffusion_kg } = surface;
  const hole = `${whereIs(surface)}, by air leaking through ${show('hole', leak.hole_m2, system)} of holes, ${show('airflow', leak.flow_m3_s, system)}`;
  const sheet = `${whereIs(surface)}, by diffusion through ${show('area', leak.sheet_m2, system)} of ${whole(surface)}`;
  const dry = 'none: vapor leaves that way instead';
  return {
    air: [show('water', surface.seasonLeak_kg, system), hole],
    diffusion: [seasonDiffusion_kg > 0 ? show('water', seasonDiffusion_kg, system) : dry, sheet],
  };
}

function tableOf({ deck, coldSide }: AirLeakage, system: System): PlotTable {
  const amounts = (leak: LeakSurface, month?: number) =>
    (month === undefined
      ? [leak.seasonLeak_kg, leak.seasonDiffusion_kg]
      : [leak.monthlyLeak_kg[month], leak.monthlyDiffusion_kg[month]]
    ).map((amount) => numberCell('water', amount, system));
  return {
    caption: 'Water to the deck, and past the deck to the cold side of the board, by month',
    columns: [
      wordColumn('month', 'Month'),
      numberColumn('deck-leak', 'Deck, by air', 'water', system),
      numberColumn('deck-diffusion', 'Deck, by diffusion', 'water', system),
      numberColumn('cold-leak', 'Cold side, by air', 'water', system),
      numberColumn('cold-diffusion', 'Cold side, by diffusion', 'water', system),
    ],
    rows: [
      ...winterMiddle.map((month) => [
        wordCell(monthNames[month] ?? ''),
        ...amounts(deck, month),
        ...amounts(coldSide, month),
      ]),
      [wordCell('Season'), ...amounts(deck), ...amounts(coldSide)],
    ],
  };
}

function sentenceOf(leak: AirLeakage, system: System): string {
  const surface = drawnSurface(leak);
  const holes = `${show('hole', leak.hole_m2, system)} of holes`;
  const area = `${show('area', leak.sheet_m2, system)} of ${whole(surface)}`;
  if (isDry(surface))
    return `With the humidity assumed, neither air leaking through ${holes} nor diffusion through ${area} leaves water in any month: every surface stays warm enough.`;
  const water = show('water', surface.seasonLeak_kg, system);
  const brings = surface.seasonDiffusion_kg > 0 ? show('water', surface.seasonDiffusion_kg, system) : 'none';
  const reason =
    surface.seasonLeak_kg > surface.seasonDiffusion_kg
      ? 'That is why the air barrier and its joints matter more than the vapor retarder.'
      : 'Here diffusion brings more; the vapor retarder matters as well as the air barrier.';
  return surface.id === 'deck'
    ? `Through ${holes} leaking air brings ${water} of water to the deck in a cold season; diffusion through ${area} brings ${brings}. ${reason}`
    : `The deck stays warm enough in every month. But air that finds a way past it through ${holes} would leave ${water} of water on the cold side of the board in a cold season; diffusion through ${area} brings ${brings}. ${reason}`;
}

interface Way {
  readonly amount_kg: number;
  /** The amount and where it comes from, in words. */
  readonly words: readonly string[];
  readonly pattern: 'right' | 'plain';
}

/** One square standing on a base line, its words beside it from its top or as high as they need. */
function wayShapes(
  way: Way,
  left: number,
  top: number,
  base: number,
  room_mm: number,
  size_mm: number,
  perKilogram_mm2: number,
): Shape[] {
  const side = side_mm(way.amount_kg, perKilogram_mm2);
  const beside_mm = room_mm - side - BESIDE_mm;
  const [figure = '', what = ''] = way.words;
  const big_mm = size_mm * FIGURE_SIZE;
  const strong = wrapText(figure, beside_mm, big_mm, 'bold');
  const plain = wrapText(what, beside_mm, size_mm);
  const figure_mm = strong.length * LEADING * big_mm;
  const tall_mm = figure_mm + plain.length * LEADING * size_mm;
  const words = Math.max(top, base - Math.max(side, tall_mm));
  const x = left + side + BESIDE_mm;
  const isLost = side > 0 && side < LEAST_SEEN_mm;
  const ring = rectangle(left - 1, base - side - 1, left + side + 1, base + 1);
  return [
    ...(side > 0 ? barShapes(rectangle(left, base - side, left + side, base), way.pattern) : []),
    ...(isLost ? [polygon(ring, pen(0.18, 'softText', 'dashed'), null)] : []),
    ...strong.map((line, i) =>
      text(point(x, words + (i * LEADING + BASELINE) * big_mm), line, { size_mm: big_mm, weight: 'bold' }),
    ),
    ...plain.map((line, i) =>
      text(point(x, words + figure_mm + (i * LEADING + BASELINE) * size_mm), line, { size_mm }),
    ),
  ];
}

/** Two squares drawn to one scale of area: kilograms of water by leak and by diffusion. */
export function airLeakPlot(leak: AirLeakage, options: PlotOptions): Plot {
  const { system } = options;
  const layout = layoutOf(options);
  const { margin_mm, size_mm, width_mm } = layout;
  const sentence = sentenceOf(leak, system);
  const table = tableOf(leak, system);
  const surface = drawnSurface(leak);
  if (isDry(surface)) return { name: 'air-leak', title: TITLE, picture: null, sentence, table };
  const title = titleAt(TITLE, layout);
  const words = wordsOf(leak, surface, system);
  const perKilogram_mm2 = LARGEST_mm ** 2 / Math.max(surface.seasonLeak_kg, surface.seasonDiffusion_kg);
  const ways: readonly Way[] = [
    { amount_kg: surface.seasonLeak_kg, words: words.air, pattern: 'right' },
    { amount_kg: surface.seasonDiffusion_kg, words: words.diffusion, pattern: 'plain' },
  ];
  const isNarrow = options.size === 'narrow';
  const inner_mm = width_mm - 2 * margin_mm - 1;
  const room_mm = isNarrow ? inner_mm : (inner_mm - GAP_mm) / 2;
  const shapes: Shape[] = [...title.shapes];
  let top = title.bottom + 1;
  let bottom = top;
  ways.forEach((way, i) => {
    // On a narrow sheet the second stands below the first, no taller than it needs.
    const tall_mm = isNarrow
      ? Math.max(side_mm(way.amount_kg, perKilogram_mm2), 5 * LEADING * size_mm)
      : LARGEST_mm;
    const left = margin_mm + 1 + (isNarrow ? 0 : i * (room_mm + GAP_mm));
    shapes.push(...wayShapes(way, left, top, top + tall_mm, room_mm, size_mm, perKilogram_mm2));
    bottom = top + tall_mm;
    if (isNarrow) top = bottom + GAP_mm;
  });
  const note = wordsAt(
    'The areas of the two squares stand to each other as the amounts of water.',
    margin_mm,
    bottom + 2,
    width_mm - 2 * margin_mm,
    size_mm,
  );
  shapes.push(...note.shapes);
  const height_mm = note.bottom + margin_mm;
  return {
    name: 'air-leak',
    title: TITLE,
    picture: pictureOf(TITLE, sentence, layout, height_mm, shapes, options),
    sentence,
    table,
  };
}
