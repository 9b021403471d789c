/** What a draftsman would mark on a sheet, for tests. */
import {
  boxesOverlap,
  boxInside,
  segmentsCross,
  type Box,
  type Segment,
} from '../../src/drawing/geometry.ts';
import { leaves, shapeBox, textBox, type GroupShape, type Shape } from '../../src/drawing/shapes.ts';
import type { Drawing } from '../../src/drawing/sheet.ts';

export function* groups(shapes: readonly Shape[]): Generator<GroupShape> {
  for (const shape of shapes) {
    if (shape.kind !== 'group') continue;
    yield shape;
    yield* groups(shape.shapes);
  }
}
export const ofMeaning = (drawing: Drawing, meaning: string): GroupShape[] =>
  [...groups(drawing.shapes)].filter((g) => g.meaning === meaning);

const textBoxes = (drawing: Drawing): Box[] =>
  [...leaves(drawing.shapes)].flatMap((shape) => (shape.kind === 'text' ? [textBox(shape)] : []));

const leaders = (drawing: Drawing): Segment[] =>
  ofMeaning(drawing, 'note').flatMap((note) => {
    const [first] = note.shapes;
    return first?.kind === 'line' ? [[first.from, first.to] as const] : [];
  });

/** Texts may share the hair of space between lines of one note. */
const TOUCH_mm = 0.3;

/** Boxes of the scale bar and of balloons, each with the texts that belong in it. */
export const markBoxes = (drawing: Drawing): { box: Box; own: readonly Shape[] }[] => {
  const bars = ofMeaning(drawing, 'title').flatMap((g) => g.shapes.filter((s) => s.kind === 'polygon'));
  const balloons = ofMeaning(drawing, 'note').flatMap((note) =>
    note.shapes.flatMap((s) =>
      s.kind === 'circle' && s.radius_mm > 1 ? [{ box: shapeBox(s), own: note.shapes }] : [],
    ),
  );
  return [...bars.map((bar) => ({ box: shapeBox(bar), own: [] })), ...balloons];
};

/** What a draftsman would mark on a sheet, in words. */
export function marks(drawing: Drawing): string[] {
  const sheet = { x: 0, y: 0, width: drawing.width_mm, height: drawing.height_mm };
  const found: string[] = [];
  for (const shape of leaves(drawing.shapes)) {
    const box = shapeBox(shape);
    if (![box.x, box.y, box.width, box.height].every(Number.isFinite))
      found.push(`not a number: ${shape.kind}`);
    else if (!boxInside(box, sheet)) found.push(`outside the sheet: ${JSON.stringify([shape, box])}`);
  }
  const boxes = textBoxes(drawing);
  boxes.forEach((a, i) => {
    for (const b of boxes.slice(i + 1))
      if (boxesOverlap(a, b, -TOUCH_mm)) found.push(`texts overlap: ${JSON.stringify([a, b])}`);
  });
  const marked = markBoxes(drawing);
  for (const shape of leaves(drawing.shapes)) {
    if (shape.kind !== 'text') continue;
    for (const { box, own } of marked)
      if (!own.includes(shape) && boxesOverlap(textBox(shape), box, -TOUCH_mm))
        found.push(`text on a mark: ${JSON.stringify([shape, box])}`);
  }
  const lines = leaders(drawing);
  lines.forEach((a, i) => {
    for (const b of lines.slice(i + 1))
      if (segmentsCross(a, b)) found.push(`leaders cross: ${JSON.stringify([a, b])}`);
  });
  const noted = ofMeaning(drawing, 'note').flatMap((g) => (g.layerId === null ? [] : [g.layerId]));
  const layers = drawing.layers.map((l) => l.id).filter((id) => !drawing.edge.outOfView.includes(id));
  if ([...noted].sort().join() !== [...layers].sort().join())
    found.push(`notes ${noted.join()} for ${layers.join()}`);
  return found;
}
