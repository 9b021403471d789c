/** Names at the ends of lines, right of a panel: no name on another, no leader across another. */
import { placeNotes, type Column } from '../drawing/labels.ts';
import { point, type Point } from '../drawing/geometry.ts';
import { line, pen, text, type Shape } from '../drawing/shapes.ts';
import { wrapText } from '../drawing/text-metrics.ts';
import { BASELINE, LEADING, type Layout, type Panel } from './layout.ts';
import { barShapes, mark, rectangle, type Pattern, type Style } from './marks.ts';

export interface EndLabel {
  readonly id: string;
  readonly words: string;
  /** Where the line ends, or the height at which the name would best stand. */
  readonly from: Point;
  /** The point of the series, drawn before its name. */
  readonly style?: Style;
  /** A piece of the bar's pattern in place of a point. */
  readonly pattern?: Pattern;
  readonly isBold?: boolean;
}

/** [mm] From the panel to the names, between two names, and for the point before a name. */
const LEADER_mm = 4;
const GAP_mm = 1;
const KEY_mm = 3.2;

const keyWidth = (label: EndLabel): number =>
  label.style === undefined && label.pattern === undefined ? 0 : KEY_mm;

function linesOf(label: EndLabel, layout: Layout): string[] {
  const width_mm = layout.labels_mm - LEADER_mm - keyWidth(label);
  return wrapText(label.words, width_mm, layout.size_mm, label.isBold === true ? 'bold' : 'regular');
}

/** [mm] Least height of a panel beside which all its names find room. */
export function labelsHeight_mm(labels: readonly EndLabel[], layout: Layout): number {
  const lines = labels.reduce((sum, label) => sum + linesOf(label, layout).length, 0);
  return lines * LEADING * layout.size_mm + labels.length * GAP_mm;
}

/**
 * @param labels  one for each line; the panel must be at least as high as `labelsHeight_mm` says
 * @throws        RangeError when it is not: a slip of the plot
 */
export function endLabelShapes(labels: readonly EndLabel[], panel: Panel, layout: Layout): Shape[] {
  const { size_mm } = layout;
  const half = (LEADING * size_mm) / 2;
  const column: Column = {
    side: 'right',
    x: panel.right + LEADER_mm,
    width_mm: layout.labels_mm - LEADER_mm,
    top: panel.top - half,
    bottom: panel.bottom + half,
    gap_mm: GAP_mm,
  };
  const notes = labels.map((label) => ({
    id: label.id,
    layerId: null,
    mark: '',
    at: label.from,
    height_mm: linesOf(label, layout).length * LEADING * size_mm,
    portDrop_mm: half,
  }));
  const placed = placeNotes(notes, column);
  if (placed === null) throw new RangeError('the names are higher than their panel');
  return placed.flatMap(({ note, box, port }): Shape[] => {
    const label = labels.find(({ id }) => id === note.id);
    if (label === undefined) return [];
    const words = box.x + keyWidth(label);
    const endsHere = Math.abs(label.from.x - panel.right) < layout.axis_mm;
    return [
      ...(endsHere
        ? [line(label.from, point(port.x - 0.6, port.y), pen(0.18, label.style?.ink ?? 'softText'))]
        : []),
      ...(label.style === undefined
        ? []
        : [mark(label.style.form, point(box.x + 1, port.y), label.style.ink)]),
      ...(label.pattern === undefined
        ? []
        : barShapes(rectangle(box.x, port.y - 1.2, box.x + KEY_mm - 0.8, port.y + 1.2), label.pattern)),
      ...linesOf(label, layout).map((words_, i) =>
        text(point(words, box.y + (i * LEADING + BASELINE) * size_mm), words_, {
          size_mm,
          weight: label.isBold === true ? 'bold' : 'regular',
        }),
      ),
    ];
  });
}
