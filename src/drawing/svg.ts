/** A drawing as a self-contained SVG text. No DOM: plain strings. */
import type { Point } from './geometry.ts';
import { palettes, type FillName, type Palette, type Theme } from './palette.ts';
import type { Picture } from './picture.ts';
import { dashLengths, type Pen, type Shape } from './shapes.ts';

/** Text made safe for XML text and attributes; characters that XML 1.0 forbids are left out. */
export function escapeXml(words: string): string {
  return (
    words
      // eslint-disable-next-line no-control-regex -- XML 1.0 forbids these characters
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
      .replace(/&/g, '&amp;')
      .replace(/</g, '&lt;')
      .replace(/>/g, '&gt;')
      .replace(/"/g, '&quot;')
      .replace(/'/g, '&#39;')
  );
}

/** Millimeters with at most three decimals. */
export function figure(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return Object.is(rounded, -0) ? '0' : String(rounded);
}

export const pathOf = (points: readonly Point[], isClosed: boolean): string =>
  points.map((p, i) => `${i === 0 ? 'M' : 'L'}${figure(p.x)} ${figure(p.y)}`).join('') +
  (isClosed ? 'Z' : '');

const strokeOf = (stroke: Pen | null, palette: Palette): string => {
  if (stroke === null) return ' stroke="none"';
  const dash = dashLengths[stroke.dash];
  const dashed = dash.length > 0 ? ` stroke-dasharray="${dash.map(figure).join(' ')}"` : '';
  return ` stroke="${palette.inks[stroke.ink]}" stroke-width="${figure(stroke.width_mm)}"${dashed}`;
};
const fillOf = (fill: FillName | null, palette: Palette): string =>
  ` fill="${fill === null ? 'none' : palette.fills[fill]}"`;

const classOf = (stroke: Pen | null, fill: FillName | null): string => {
  const names = [stroke === null ? '' : `ink-${stroke.ink}`, fill === null ? '' : `fill-${fill}`].filter(
    Boolean,
  );
  return names.length > 0 ? ` class="${names.join(' ')}"` : '';
};

/** One shape as SVG text. Neighboring lines of one pen are joined into one path. */
function shapesSvg(shapes: readonly Shape[], palette: Palette): string {
  let out = '';
  for (let i = 0; i < shapes.length; i += 1) {
    const shape = shapes[i];
    if (shape === undefined) continue;
    if (shape.kind === 'line') {
      let path = pathOf([shape.from, shape.to], false);
      for (;;) {
        const next = shapes[i + 1];
        if (next?.kind !== 'line' || !samePen(next.pen, shape.pen)) break;
        path += pathOf([next.from, next.to], false);
        i += 1;
      }
      out += `<path${classOf(shape.pen, null)} d="${path}" fill="none"${strokeOf(shape.pen, palette)}/>`;
    } else out += shapeSvg(shape, palette);
  }
  return out;
}

const samePen = (a: Pen, b: Pen): boolean =>
  a.width_mm === b.width_mm && a.ink === b.ink && a.dash === b.dash;

function shapeSvg(shape: Exclude<Shape, { kind: 'line' }>, palette: Palette): string {
  switch (shape.kind) {
    case 'polyline':
      return `<path${classOf(shape.pen, null)} d="${pathOf(shape.points, false)}" fill="none"${strokeOf(shape.pen, palette)}/>`;
    case 'polygon':
      return `<path${classOf(shape.pen, shape.fill)} d="${pathOf(shape.points, true)}"${fillOf(shape.fill, palette)}${strokeOf(shape.pen, palette)}/>`;
    case 'circle':
      return `<circle${classOf(shape.pen, shape.fill)} cx="${figure(shape.center.x)}" cy="${figure(shape.center.y)}" r="${figure(shape.radius_mm)}"${fillOf(shape.fill, palette)}${strokeOf(shape.pen, palette)}/>`;
    case 'text': {
      const turn =
        shape.turn_deg === 0
          ? ''
          : ` transform="rotate(${figure(-shape.turn_deg)} ${figure(shape.at.x)} ${figure(shape.at.y)})"`;
      const weight = shape.weight === 'bold' ? ' font-weight="600"' : '';
      return `<text class="ink-${shape.ink}" x="${figure(shape.at.x)}" y="${figure(shape.at.y)}" font-size="${figure(shape.size_mm)}" text-anchor="${shape.anchor}"${weight} fill="${palette.inks[shape.ink]}"${turn}>${escapeXml(shape.text)}</text>`;
    }
    case 'group': {
      const layer = shape.layerId === null ? '' : ` data-layer="${escapeXml(shape.layerId)}"`;
      const title = shape.title === null ? '' : `<title>${escapeXml(shape.title)}</title>`;
      const lit = shape.isHighlighted ? ' is-highlighted' : '';
      return `<g class="${escapeXml(shape.meaning)}${lit}" data-part="${escapeXml(shape.id)}"${layer}>${title}${shapesSvg(shape.shapes, palette)}</g>`;
    }
  }
}

/**
 * Writes a drawing as SVG: millimeters, title and description for screen readers, colors of its theme
 * as attributes, classes by meaning (`ink-…`, `fill-…`) for pages that restyle it.
 */
export function toSvg(drawing: Picture, theme: Theme = drawing.theme): string {
  const palette = palettes[theme];
  const { width_mm, height_mm } = drawing;
  const size = `${figure(width_mm)} ${figure(height_mm)}`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="${figure(width_mm)}mm" height="${figure(height_mm)}mm" viewBox="0 0 ${size}"` +
    ` font-family="'Source Sans 3', 'Source Sans Pro', sans-serif" stroke-linejoin="round" stroke-linecap="round">` +
    `<title>${escapeXml(drawing.title)}</title><desc>${escapeXml(drawing.description.join(' '))}</desc>` +
    `<path class="fill-paper" d="M0 0H${figure(width_mm)}V${figure(height_mm)}H0Z" fill="${palette.fills.paper}" stroke="none"/>` +
    shapesSvg(drawing.shapes, palette) +
    `</svg>`
  );
}
