/** The air barrier's reason in one picture: water carried by leaking air beside water carried by diffusion. */
import { point } from '../drawing/geometry.ts';
import { polygon, pen, text, type Shape } from '../drawing/shapes.ts';
import { wrapText } from '../drawing/text-metrics.ts';
import type { AirLeakage } from '../evaluation/heatMoisture.ts';
import { show, type System } from '../measures.ts';
import { BASELINE, layoutOf, LEADING, pictureOf, titleAt } from './layout.ts';
import { barShapes, rectangle } from './marks.ts';
import {
  monthNames,
  numberCell,
  numberColumn,
  winterMiddle,
  wordCell,
  wordColumn,
  type Plot,
  type PlotOptions,
  type PlotTable,
} from './plot.ts';

const TITLE = 'Water that reaches the deck in a cold season';
/** Share of the width for the words beside the squares of a wide plot. */
const WORDS_SHARE = 0.5;
/** [mm] Side of the larger square, at most. */
const LARGEST_mm = 52;
const LARGEST_NARROW_mm = 60;
const GAP_mm = 5;
/** [mm] A square smaller than this would be lost; it gets a ring around it. */
const LEAST_SEEN_mm = 1.6;

/** [mm] Side of a square whose area stands for an amount, at a stated area for each kilogram. */
export const side_mm = (amount_kg: number, perKilogram_mm2: number): number =>
  Math.sqrt(Math.max(0, amount_kg) * perKilogram_mm2);

function wordsOf(leak: AirLeakage, system: System): { air: string[]; diffusion: string[] } {
  const hole = `Air leaking through ${show('hole', leak.hole_m2, system)} of holes in the ceiling, ${show('airflow', leak.flow_m3_s, system)}`;
  const sheet = `Diffusion through ${show('area', leak.sheet_m2, system)} of whole ceiling`;
  const dry = 'none: the deck dries that way instead';
  return {
    air: [show('water', leak.seasonLeak_kg, system), hole],
    diffusion: [leak.seasonDiffusion_kg > 0 ? show('water', leak.seasonDiffusion_kg, system) : dry, sheet],
  };
}

function tableOf(leak: AirLeakage, system: System): PlotTable {
  return {
    caption: 'Water to the deck by month; negative dries',
    columns: [
      wordColumn('month', 'Month'),
      numberColumn('leak', 'By leaking air', 'water', system),
      numberColumn('diffusion', 'By diffusion', 'water', system),
    ],
    rows: [
      ...winterMiddle.map((month) => [
        wordCell(monthNames[month] ?? ''),
        numberCell('water', leak.monthlyLeak_kg[month], system),
        numberCell('water', leak.monthlyDiffusion_kg[month], system),
      ]),
      [
        wordCell('Season'),
        numberCell('water', leak.seasonLeak_kg, system),
        numberCell('water', leak.seasonDiffusion_kg, system),
      ],
    ],
  };
}

function sentenceOf(leak: AirLeakage, system: System): string {
  const hole = `Through ${show('hole', leak.hole_m2, system)} of holes leaking air brings ${show('water', leak.seasonLeak_kg, system)} of water to the deck in a cold season`;
  if (leak.seasonDiffusion_kg <= 0)
    return `${hole}; diffusion through ${show('area', leak.sheet_m2, system)} of whole ceiling brings none.`;
  const brings = show('water', leak.seasonDiffusion_kg, system);
  return `${hole}; diffusion through ${show('area', leak.sheet_m2, system)} of whole ceiling brings ${brings}. ${
    leak.seasonLeak_kg > leak.seasonDiffusion_kg
      ? 'That is why the air barrier matters more than the vapor retarder.'
      : 'Here diffusion brings more; the vapor retarder matters as well as the air barrier.'
  }`;
}

/** Two squares drawn to one scale of area: kilograms of water by leak and by diffusion. */
export function airLeakPlot(leak: AirLeakage, options: PlotOptions): Plot {
  const { system } = options;
  const layout = layoutOf(options);
  const { margin_mm, size_mm, width_mm } = layout;
  const isNarrow = options.size === 'narrow';
  const title = titleAt(TITLE, layout);
  const words = wordsOf(leak, system);
  const most_kg = Math.max(leak.seasonLeak_kg, leak.seasonDiffusion_kg, Number.MIN_VALUE);
  const largest_mm = isNarrow ? LARGEST_NARROW_mm : LARGEST_mm;
  const perKilogram_mm2 = most_kg > Number.MIN_VALUE ? largest_mm ** 2 / most_kg : 0;
  const lead = LEADING * size_mm;
  const shapes: Shape[] = [...title.shapes];
  const base = title.bottom + 1 + largest_mm;

  const say = (figure: string, what: string, left: number, top: number, room_mm: number): number => {
    const strong = wrapText(figure, room_mm, size_mm * 1.3, 'bold');
    const plain = wrapText(what, room_mm, size_mm);
    strong.forEach((line, i) =>
      shapes.push(
        text(point(left, top + (i * LEADING + BASELINE) * size_mm * 1.3), line, {
          size_mm: size_mm * 1.3,
          weight: 'bold',
        }),
      ),
    );
    const below = top + strong.length * lead * 1.3;
    plain.forEach((line, i) =>
      shapes.push(text(point(left, below + (i * LEADING + BASELINE) * size_mm), line, { size_mm })),
    );
    return below + plain.length * lead;
  };
  const square = (amount_kg: number, left: number, pattern: 'right' | 'plain'): number => {
    const side = side_mm(amount_kg, perKilogram_mm2);
    const corners = rectangle(left, base - side, left + side, base);
    if (side > 0) shapes.push(...barShapes(corners, pattern));
    if (side > 0 && side < LEAST_SEEN_mm)
      shapes.push(
        polygon(
          rectangle(left - 1, base - side - 1, left + side + 1, base + 1),
          pen(0.18, 'softText', 'dashed'),
          null,
        ),
      );
    return side;
  };

  let bottom: number;
  const [air = '', hole = ''] = words.air;
  const [diffusion = '', sheet = ''] = words.diffusion;
  if (isNarrow) {
    // The two stand beside each other; their words follow below, each with its square's own mark.
    const left = margin_mm + 1;
    const airSide = square(leak.seasonLeak_kg, left, 'right');
    const beside = left + airSide + GAP_mm;
    const diffusionSide = side_mm(leak.seasonDiffusion_kg, perKilogram_mm2);
    const fits = beside + diffusionSide < width_mm - margin_mm;
    const column_mm = (width_mm - 2 * margin_mm - GAP_mm) / 2;
    if (fits) square(leak.seasonDiffusion_kg, beside, 'plain');
    const letter = (words_: string, x: number): void =>
      void shapes.push(text(point(x, base + 1 + BASELINE * size_mm), words_, { size_mm, weight: 'bold' }));
    letter('A', left);
    letter('B', fits ? beside : left + airSide + 1.5);
    const top = base + 1 + lead + 1.5;
    const a = say(`A  ${air}`.replace('  ', ' '), hole, margin_mm, top, column_mm);
    const b = say(`B ${diffusion}`, sheet, margin_mm + column_mm + GAP_mm, top, column_mm);
    bottom = Math.max(a, b);
    if (!fits) {
      const second = bottom + 2 + diffusionSide;
      shapes.push(...barShapes(rectangle(left, bottom + 2, left + diffusionSide, second), 'plain'));
      bottom = second;
    }
  } else {
    const airSide = side_mm(leak.seasonLeak_kg, perKilogram_mm2);
    const diffusionSide = side_mm(leak.seasonDiffusion_kg, perKilogram_mm2);
    const half_mm = (width_mm - 2 * margin_mm) * WORDS_SHARE;
    const left = margin_mm + 1;
    const second = margin_mm + half_mm + GAP_mm;
    square(leak.seasonLeak_kg, left, 'right');
    square(leak.seasonDiffusion_kg, second, 'plain');
    const room = (side: number): number => half_mm - GAP_mm - side - 3;
    const place = (side: number, from: number): { x: number; room_mm: number } => ({
      x: from + side + 3,
      room_mm: Math.max(24, room(side)),
    });
    const a = place(airSide, left);
    const b = place(diffusionSide, second);
    const tall = (figure: string, what: string, room_mm: number): number =>
      wrapText(figure, room_mm, size_mm * 1.3, 'bold').length * lead * 1.3 +
      wrapText(what, room_mm, size_mm).length * lead;
    const top = (side: number, figure: string, what: string, room_mm: number): number =>
      Math.max(title.bottom + 1, base - Math.max(side, tall(figure, what, room_mm)));
    bottom = Math.max(
      base,
      say(air, hole, a.x, top(airSide, air, hole, a.room_mm), a.room_mm),
      say(diffusion, sheet, b.x, top(diffusionSide, diffusion, sheet, b.room_mm), b.room_mm),
    );
  }
  const scaleWords =
    perKilogram_mm2 > 0
      ? 'The areas of the two squares stand to each other as the amounts of water.'
      : 'No water reaches the deck on either way.';
  wrapText(scaleWords, width_mm - 2 * margin_mm, size_mm).forEach((line, i) => {
    shapes.push(
      text(point(margin_mm, bottom + 2 + (i * LEADING + BASELINE) * size_mm), line, {
        size_mm,
        ink: 'softText',
      }),
    );
  });
  const notes = wrapText(scaleWords, width_mm - 2 * margin_mm, size_mm).length;
  const height_mm = bottom + 2 + notes * lead + margin_mm;
  const sentence = sentenceOf(leak, system);
  return {
    name: 'air-leak',
    title: TITLE,
    picture: pictureOf(TITLE, sentence, layout, height_mm, shapes, options),
    sentence,
    table: tableOf(leak, system),
  };
}
