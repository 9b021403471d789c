/** Temperature and vapor pressure through the section in the coldest month, the layers to scale below. */
import { monthNames } from '../catalog/months.ts';
import { point, type Point } from '../drawing/geometry.ts';
import { line, text, type Shape } from '../drawing/shapes.ts';
import { textWidth_mm, wrapText } from '../drawing/text-metrics.ts';
import type { CondensationPlane, Profile } from '../evaluation/heatMoisture.ts';
import { show, type System } from '../measures.ts';
import { valueAxis, type Axis } from './axis.ts';
import { endLabelShapes, labelsHeight_mm, type EndLabel } from './endLabels.ts';
import {
  acrossAxis,
  baseLine,
  BASELINE,
  BETWEEN_mm,
  footHeight_mm,
  headHeight_mm,
  layoutOf,
  LEADING,
  panelAt,
  pictureOf,
  TICKS,
  titleAt,
  upAxis,
  type Layout,
  type Placed,
} from './layout.ts';
import { limitPen, mark, styleOf } from './marks.ts';
import {
  capital,
  listed,
  numberCell,
  numberColumn,
  wordCell,
  wordColumn,
  type Plot,
  type PlotOptions,
  type PlotTable,
} from './plot.ts';
import { namesOf, seriesLabels, seriesShapes, type Series } from './series.ts';
import { bandNumbers, bandShapes, faceLines, type Band } from './strip.ts';

export interface SectionProfile {
  readonly profile: Profile;
  /** Layers that the profile runs through, by id. */
  readonly layers: readonly {
    readonly id: string;
    readonly name: string;
    readonly material: string | null;
  }[];
  readonly planes: readonly (CondensationPlane & { readonly where: string })[];
  /** Of the profile's month. */
  readonly indoorDewPoint_C: number;
}

type ProfilePoint = Profile['points'][number];

/** Layers with their faces: a layer ends at the last point that is named after it. */
export function bandsOf({ profile, layers }: SectionProfile): Band[] {
  const ends = new Map<string, number>();
  for (const { after, depth_m } of profile.points) ends.set(after, depth_m);
  let from_m = profile.points[0]?.depth_m ?? 0;
  return layers.flatMap((layer): Band[] => {
    const to_m = ends.get(layer.id);
    if (to_m === undefined) return [];
    const band = { ...layer, from_m, to_m };
    from_m = to_m;
    return [band];
  });
}

/** Points at which water condenses in the profile's month. */
function wetPoints({ profile, planes }: SectionProfile): { at: ProfilePoint; where: string }[] {
  return planes.flatMap((plane) => {
    if ((plane.monthly_kg_m2[profile.month - 1] ?? 0) <= 0) return [];
    const own = profile.points.filter(({ after }) => after === plane.after);
    const start = profile.points[profile.points.indexOf(own[0] ?? ({} as ProfilePoint)) - 1];
    const end = own.at(-1);
    if (end === undefined) return [];
    if (plane.within_pct === null || start === undefined) return [{ at: end, where: plane.where }];
    const depth = start.depth_m + ((end.depth_m - start.depth_m) * plane.within_pct) / 100;
    const nearest = own.reduce((best, one) =>
      Math.abs(one.depth_m - depth) < Math.abs(best.depth_m - depth) ? one : best,
    );
    return [{ at: nearest, where: plane.where }];
  });
}

/** Numbered names of the layers in columns. */
function nameList(bands: readonly Band[], system: System, top: number, layout: Layout): Placed {
  const columns = layout.size === 'wide' ? 3 : 1;
  const { size_mm, margin_mm } = layout;
  const room_mm = (layout.width_mm - 2 * margin_mm) / columns;
  const rows = Math.ceil(bands.length / columns);
  const mark_mm = textWidth_mm('00 ', size_mm);
  const entries = bands.map((band) => {
    const thickness = band.to_m - band.from_m;
    const words = `${capital(band.name)}${thickness >= LEAST_NAMED_m ? `, ${show('length', thickness, system)}` : ''}`;
    return wrapText(words, room_mm - mark_mm - 2, size_mm);
  });
  const shapes: Shape[] = [];
  let bottom = top;
  for (let column = 0; column < columns; column += 1) {
    let y = top;
    entries.slice(column * rows, (column + 1) * rows).forEach((lines, i) => {
      const left = margin_mm + column * room_mm;
      const at = (row: number): number => y + (row * LEADING + BASELINE) * size_mm;
      shapes.push(text(point(left, at(0)), String(column * rows + i + 1), { size_mm, weight: 'bold' }));
      lines.forEach((words, row) => shapes.push(text(point(left + mark_mm, at(row)), words, { size_mm })));
      y += lines.length * LEADING * size_mm;
    });
    bottom = Math.max(bottom, y);
  }
  return { shapes, bottom };
}

/** [m] Sheets thinner than this are named, not measured. */
const LEAST_NAMED_m = 0.002;
/** [mm] Height of the strip and of the row of numbers above it. */
const STRIP_mm = 11;
const NUMBERS_mm = 6.5;
/** Decimals of depths in the table: hundredths of an inch, tenths of a millimeter. */
const DEPTH_DIGITS: Readonly<Record<System, number>> = { IP: 2, SI: 1 };

function tableOf(data: SectionProfile, system: System): PlotTable {
  const { points } = data.profile;
  const names = new Map(data.layers.map(({ id, name }) => [id, name]));
  const place = ({ after }: ProfilePoint, i: number): string => {
    const name = names.get(after);
    if (name === undefined) return 'Inside surface';
    return points[i + 1]?.after === after ? `Within ${name}` : `Outside of ${name}`;
  };
  return {
    caption: `Through the section in ${monthNames[data.profile.month - 1] ?? ''}, inside to outside`,
    columns: [
      wordColumn('place', 'Place'),
      numberColumn('depth', 'Depth', 'length', system),
      numberColumn('air-layer', 'Equivalent air layer from inside', 'equivalentAirLayer', system),
      numberColumn('temperature', 'Temperature', 'temperature', system),
      numberColumn('vapor-pressure', 'Vapor pressure', 'vaporPressure', system),
      numberColumn('saturation', 'Saturation', 'vaporPressure', system),
    ],
    rows: points.map((each, i) => [
      wordCell(place(each, i)),
      numberCell('length', each.depth_m, system, DEPTH_DIGITS[system]),
      numberCell('equivalentAirLayer', each.equivalentAirLayer_m, system),
      numberCell('temperature', each.temperature_C, system),
      numberCell('vaporPressure', each.vaporPressure_Pa, system),
      numberCell('vaporPressure', each.saturationPressure_Pa, system),
    ]),
  };
}

function sentenceOf(data: SectionProfile, wet: ReturnType<typeof wetPoints>, system: System): string {
  const month = monthNames[data.profile.month - 1] ?? '';
  const inside = data.profile.points[0]?.temperature_C ?? 0;
  const outside = data.profile.points.at(-1)?.temperature_C ?? 0;
  const falls = `In ${month} the temperature runs from ${show('temperature', inside, system)} at the inside surface to ${show('temperature', outside, system)} at the outer end.`;
  return wet.length === 0
    ? `${falls} The vapor pressure stays below saturation everywhere: nothing condenses by diffusion.`
    : `${falls} The vapor pressure reaches saturation ${listed(wet.map(({ where }) => where))}: water condenses there.`;
}

/** Temperature above, vapor pressure against saturation below, over the section to scale. */
export function profilePlot(data: SectionProfile, options: PlotOptions): Plot {
  const { system } = options;
  const layout = layoutOf(options);
  const { size_mm } = layout;
  const { points } = data.profile;
  const month = monthNames[data.profile.month - 1] ?? '';
  const TITLE = `Through the section in ${month}, the coldest month`;
  const title = titleAt(TITLE, layout);
  const wet = wetPoints(data);
  const bands = bandsOf(data);
  const tops = {
    temperature: 'Temperature',
    pressure: 'Vapor pressure',
  };
  const warm = [
    { id: 'temperature', words: 'Temperature', style: styleOf(0) },
    { id: 'dew-point', words: 'Indoor dew point', style: styleOf(1) },
  ];
  const vapor = [
    { id: 'pressure', words: 'Vapor pressure', style: styleOf(0) },
    { id: 'saturation', words: 'Saturation, the most air can hold', style: styleOf(1) },
  ];
  const wetLabels: EndLabel[] = wet.map(({ where }, i) => ({
    id: `wet-${String(i)}`,
    words: `Condensation ${where}`,
    from: point(0, 0),
    style: { form: 'diamond', dash: 'chain', ink: 'limit' },
    isBold: true,
  }));
  const upper = panelAt(
    layout,
    title.bottom + headHeight_mm(tops.temperature, layout),
    Math.max(layout.panel_mm * 0.85, labelsHeight_mm(namesOf(warm), layout)),
  );
  const lower = panelAt(
    layout,
    upper.bottom + BETWEEN_mm + headHeight_mm(`${tops.pressure}, in. Hg`, layout),
    Math.max(layout.panel_mm * 0.85, labelsHeight_mm([...namesOf(vapor), ...wetLabels], layout)),
  );
  const strip = { ...lower, top: lower.bottom + NUMBERS_mm, bottom: lower.bottom + NUMBERS_mm + STRIP_mm };
  const depth = valueAxis({
    title: 'Depth from the inside surface',
    kind: 'length',
    system,
    values: points.map(({ depth_m }) => depth_m),
    from: upper.left,
    to: upper.right,
    ticks: options.size === 'narrow' ? 5 : 8,
    isExact: true,
  });
  const celsius = valueAxis({
    title: tops.temperature,
    kind: 'temperature',
    system,
    values: [data.indoorDewPoint_C, ...points.map(({ temperature_C }) => temperature_C)],
    from: upper.bottom,
    to: upper.top,
    ticks: TICKS,
  });
  const pascal = valueAxis({
    title: tops.pressure,
    kind: 'vaporPressure',
    system,
    values: [0, ...points.flatMap((each) => [each.vaporPressure_Pa, each.saturationPressure_Pa])],
    from: lower.bottom,
    to: lower.top,
    ticks: TICKS,
  });
  const through = (axis: Axis, value: (each: ProfilePoint) => number): Point[] =>
    points.map((each) => point(depth.at(each.depth_m), axis.at(value(each))));
  const noPoints = points.map(() => false);
  const named = (
    one: Pick<Series, 'id' | 'words' | 'style'> | undefined,
    places: readonly Point[],
  ): Series[] => (one === undefined ? [] : [{ ...one, places, points: noPoints }]);
  const warmSeries = [
    ...named(
      warm[0],
      through(celsius, (each) => each.temperature_C),
    ),
    ...named(
      warm[1],
      through(celsius, () => data.indoorDewPoint_C),
    ),
  ];
  const vaporSeries = [
    ...named(
      vapor[0],
      through(pascal, (each) => each.vaporPressure_Pa),
    ),
    ...named(
      vapor[1],
      through(pascal, (each) => each.saturationPressure_Pa),
    ),
  ];
  const wetPlaces = wet.map(({ at }) => point(depth.at(at.depth_m), pascal.at(at.saturationPressure_Pa)));
  const plain = (labels: readonly EndLabel[]): EndLabel[] =>
    labels.map(({ id, words, from }) => ({ id, words, from }));
  const names = nameList(bands, system, strip.bottom + footHeight_mm(layout) + 1, layout);
  const at = (depth_m: number): number => depth.at(depth_m);
  const shapes: Shape[] = [
    ...title.shapes,
    ...faceLines(bands, at, upper.top, upper.bottom),
    ...faceLines(bands, at, lower.top, lower.bottom),
    ...upAxis(upper, celsius, layout),
    baseLine(upper),
    ...seriesShapes(warmSeries),
    ...endLabelShapes(plain(seriesLabels(warmSeries)), upper, layout),
    ...upAxis(lower, pascal, layout),
    baseLine(lower),
    ...wetPlaces.flatMap(({ x }) => [
      line(point(x, upper.top), point(x, upper.bottom), limitPen),
      line(point(x, lower.top), point(x, lower.bottom), limitPen),
    ]),
    ...seriesShapes(vaporSeries),
    ...wetPlaces.map((place) => mark('diamond', place, 'limit', 'solid', 1.3)),
    ...endLabelShapes(
      [
        ...plain(seriesLabels(vaporSeries)),
        ...wetLabels.map((label, i) => ({ ...label, from: wetPlaces[i] ?? label.from })),
      ],
      lower,
      layout,
    ),
    ...bandNumbers(
      bands,
      at,
      lower.bottom + BASELINE * size_mm + 1,
      strip.top,
      [upper.left + 1, upper.right - 1],
      size_mm,
    ),
    ...bandShapes(bands, at, strip.top, strip.bottom),
    ...acrossAxis(strip, depth, layout),
    ...names.shapes,
  ];
  const sentence = sentenceOf(data, wet, system);
  return {
    name: 'profile',
    title: TITLE,
    picture: pictureOf(TITLE, sentence, layout, names.bottom + layout.margin_mm, shapes, options),
    sentence,
    table: tableOf(data, system),
  };
}
