/** A drawing as a file to take away: SVG, DXF in true size, or a picture of pixels. */
import type { Point } from '../../drawing/geometry.ts';
import { palettes, type Palette } from '../../drawing/palette.ts';
import { dashLengths, leaves, type Pen } from '../../drawing/shapes.ts';
import type { Drawing } from '../../drawing/sheet.ts';
import type { System } from '../../measures.ts';
import { download, fileName } from '../storage/files.ts';

export const drawingFormats = ['svg', 'dxf', 'png'] as const;
export type DrawingFormat = (typeof drawingFormats)[number];

/** [1/mm] Pixels in a millimeter of the sheet: 300 to the inch. */
const PIXELS_PER_MM = 300 / 25.4;

function trace(pen: CanvasRenderingContext2D, points: readonly Point[], isClosed: boolean): void {
  pen.beginPath();
  points.forEach(({ x, y }, i) => (i === 0 ? pen.moveTo(x, y) : pen.lineTo(x, y)));
  if (isClosed) pen.closePath();
}

function stroke(pen: CanvasRenderingContext2D, with_: Pen | null, palette: Palette): void {
  if (with_ === null) return;
  pen.strokeStyle = palette.inks[with_.ink];
  pen.lineWidth = with_.width_mm;
  pen.setLineDash([...dashLengths[with_.dash]]);
  pen.stroke();
}

/** Draws the shapes of a sheet on a canvas whose unit is a millimeter, with the page's own letters. */
function paint(pen: CanvasRenderingContext2D, drawing: Drawing, family: string): void {
  const palette = palettes.print;
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  pen.fillStyle = palette.fills.paper;
  pen.fillRect(0, 0, drawing.width_mm, drawing.height_mm);
  for (const shape of leaves(drawing.shapes)) {
    if (shape.kind === 'text') {
      pen.save();
      pen.translate(shape.at.x, shape.at.y);
      pen.rotate((-shape.turn_deg * Math.PI) / 180);
      pen.font = `${shape.weight === 'bold' ? 600 : 400} ${String(shape.size_mm)}px ${family}`;
      pen.textAlign = shape.anchor === 'middle' ? 'center' : shape.anchor;
      pen.fillStyle = palette.inks[shape.ink];
      pen.fillText(shape.text, 0, 0);
      pen.restore();
      continue;
    }
    if (shape.kind === 'circle') {
      pen.beginPath();
      pen.arc(shape.center.x, shape.center.y, shape.radius_mm, 0, 2 * Math.PI);
    } else if (shape.kind === 'line') trace(pen, [shape.from, shape.to], false);
    else trace(pen, shape.points, shape.kind === 'polygon');
    if ((shape.kind === 'circle' || shape.kind === 'polygon') && shape.fill !== null) {
      pen.fillStyle = palette.fills[shape.fill];
      pen.fill();
    }
    stroke(pen, shape.pen, palette);
  }
}

/** The sheet as PNG at 300 dots to the inch. */
async function png(drawing: Drawing): Promise<Blob> {
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(drawing.width_mm * PIXELS_PER_MM);
  canvas.height = Math.round(drawing.height_mm * PIXELS_PER_MM);
  const pen = canvas.getContext('2d');
  if (pen === null) throw new Error('this browser cannot draw pictures');
  await document.fonts.ready;
  pen.scale(PIXELS_PER_MM, PIXELS_PER_MM);
  paint(pen, drawing, getComputedStyle(document.body).fontFamily);
  return new Promise((done, failed) => {
    canvas.toBlob((blob) => {
      if (blob === null) failed(new Error('this browser cannot make a PNG of this size'));
      else done(blob);
    }, 'image/png');
  });
}

/** Makes the file and hands it to the browser's download. */
export async function saveDrawing(
  drawing: Drawing,
  format: DrawingFormat,
  system: System,
  project: string,
): Promise<void> {
  const name = fileName(`${project} ${drawing.detail} ${drawing.edge.strategyName}`, format);
  switch (format) {
    case 'svg': {
      const { toSvg } = await import('../../drawing/svg.ts');
      download(name, toSvg(drawing, 'print'), 'image/svg+xml');
      return;
    }
    case 'dxf': {
      const { toDxf } = await import('../../drawing/dxf.ts');
      download(name, toDxf(drawing, system), 'image/vnd.dxf');
      return;
    }
    case 'png':
      download(name, await png(drawing), 'image/png');
      return;
  }
}
