/** Drawings as vectors: the shapes of src/drawing as lines, areas and real text of the PDF. */
import type { Picture } from '../../drawing/picture.ts';
import type { Point } from '../../drawing/geometry.ts';
import { palettes, type Palette } from '../../drawing/palette.ts';
import { dashLengths, leaves, type Pen as Stroke, type TextShape } from '../../drawing/shapes.ts';
import type { DrawingBlock } from '../document.ts';
import type { Atom } from './flow.ts';
import type { TextStyle } from './lines.ts';
import { drawLine, linesOf } from './lines.ts';
import type { Pen } from './pen.ts';

/** [pt] one millimeter: 72 pt to the inch of 25.4 mm, exact. */
const POINTS_PER_MM = 72 / 25.4;
/** Tallest drawing on a page that also holds text. */
const MOST_HEIGHT = 300;
const captionText: TextStyle = { size: 8.5, leading: 11.5, ink: 'soft' };
const HALF_TURN_DEG = 180;

interface Place {
  readonly x: number;
  readonly y: number;
  /** [pt] per millimeter of the drawing's paper. */
  readonly scale: number;
}

const at = (place: Place, point: Point): Point => ({
  x: place.x + point.x * place.scale,
  y: place.y + point.y * place.scale,
});

function useStroke(pen: Pen, stroke: Stroke, place: Place, palette: Palette): void {
  pen.doc.setDrawColor(palette.inks[stroke.ink]);
  pen.doc.setLineWidth(stroke.width_mm * place.scale);
  pen.doc.setLineDashPattern(
    dashLengths[stroke.dash].map((length) => length * place.scale),
    0,
  );
}

function path(
  pen: Pen,
  points: readonly Point[],
  place: Place,
  style: 'S' | 'F' | 'FD',
  isClosed: boolean,
): void {
  const [first, ...rest] = points.map((point) => at(place, point));
  if (first === undefined || rest.length === 0) return;
  let last = first;
  const steps = rest.map((point) => {
    const step = [point.x - last.x, point.y - last.y];
    last = point;
    return step;
  });
  pen.doc.lines(steps, first.x, first.y, [1, 1], style, isClosed);
}

function words(pen: Pen, shape: TextShape, place: Place, palette: Palette): void {
  const face = shape.weight === 'bold' ? 'bold' : 'sans';
  const size = shape.size_mm * place.scale;
  const text = pen.letters(shape.text, face);
  if (text.trim() === '') return;
  const share = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? 0.5 : 1;
  const back = pen.widthOf(text, face, size) * share;
  const turn = (shape.turn_deg * Math.PI) / HALF_TURN_DEG;
  const start = at(place, shape.at);
  pen.use(face);
  pen.doc.setFontSize(size);
  pen.doc.setTextColor(palette.inks[shape.ink]);
  const x = start.x - back * Math.cos(turn);
  const y = start.y + back * Math.sin(turn);
  pen.doc.text(text, x, y, shape.turn_deg === 0 ? {} : { angle: shape.turn_deg });
}

function drawShapes(pen: Pen, drawing: Picture, place: Place): void {
  const palette = palettes.print;
  const { doc } = pen;
  for (const shape of leaves(drawing.shapes)) {
    if (shape.kind === 'text') {
      words(pen, shape, place, palette);
      continue;
    }
    if (shape.kind === 'line' || shape.kind === 'polyline') {
      useStroke(pen, shape.pen, place, palette);
      path(pen, shape.kind === 'line' ? [shape.from, shape.to] : shape.points, place, 'S', false);
      continue;
    }
    if (shape.pen !== null) useStroke(pen, shape.pen, place, palette);
    if (shape.fill !== null) doc.setFillColor(palette.fills[shape.fill]);
    if (shape.pen === null && shape.fill === null) continue;
    const style = shape.fill === null ? 'S' : shape.pen === null ? 'F' : 'FD';
    if (shape.kind === 'polygon') path(pen, shape.points, place, style, true);
    else {
      const center = at(place, shape.center);
      doc.circle(center.x, center.y, shape.radius_mm * place.scale, style);
    }
  }
}

/** The drawing at its own size where it fits, else smaller, with its caption below. */
export const drawingAtoms = (pen: Pen, block: DrawingBlock, x: number, width: number): Atom[] =>
  pictureAtoms(pen, { ...block, picture: block.shapes }, x, width, block.height_pt ?? MOST_HEIGHT);

interface Shown {
  readonly id: string;
  readonly picture: Picture;
  readonly caption: string;
}

/** A picture with its caption, no taller than a given height. */
export function pictureAtoms(
  pen: Pen,
  block: Shown,
  x: number,
  width: number,
  most_pt: number = Infinity,
): Atom[] {
  const drawing = block.picture;
  const scale = Math.min(POINTS_PER_MM, width / drawing.width_mm, most_pt / drawing.height_mm);
  const left = x + (width - drawing.width_mm * scale) / 2;
  const picture: Atom = {
    height: drawing.height_mm * scale,
    before: 8,
    keep: true,
    anchors: [block.id],
    draw: ({ pen: on }, top) => {
      on.doc.setLineCap('round');
      on.doc.setLineJoin('round');
      drawShapes(on, drawing, { x: left, y: top, scale });
      on.doc.setLineCap('butt');
      on.doc.setLineJoin('miter');
      on.doc.setLineDashPattern([], 0);
    },
  };
  const caption = linesOf(pen, [{ text: block.caption }], width, captionText).map((line, index): Atom => ({
    height: captionText.leading,
    before: index === 0 ? 2 : 0,
    draw: ({ pen: on, link }, top) => drawLine(on, line, x, top, captionText, link),
  }));
  return [picture, ...caption];
}
