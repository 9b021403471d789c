/** The part of a sheet that is shown: zoom and pan as plain arithmetic. All in the sheet's own units. */

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface SheetExtent {
  readonly width: number;
  readonly height: number;
}

/** [-] How many times larger than the whole a drawing can be shown (our judgement). */
export const MOST_ZOOM = 8;
/** [-] One press of a button or key. */
export const ZOOM_STEP = 1.5;
/** [-] Share of the shown part that one press of an arrow moves. */
export const PAN_SHARE = 0.2;

export const whole = ({ width, height }: SheetExtent): ViewBox => ({ x: 0, y: 0, width, height });

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** Keeps the shown part on the sheet. */
const onSheet = (box: ViewBox, sheet: SheetExtent): ViewBox => ({
  ...box,
  x: within(box.x, 0, sheet.width - box.width),
  y: within(box.y, 0, sheet.height - box.height),
});

/** How many times larger than the whole: 1 shows all. */
export const zoomOf = (box: ViewBox, sheet: SheetExtent): number => sheet.width / box.width;

/**
 * Zooms about a place that stays where it is on the screen.
 *
 * @param box     what is shown
 * @param sheet   the whole
 * @param factor  more than 1 makes it larger
 * @param about   shares of the shown part, from its left and its top; the middle when left out
 * @returns       what is then shown, never beyond the sheet, never larger than `MOST_ZOOM`
 */
export function zoomed(
  box: ViewBox,
  sheet: SheetExtent,
  factor: number,
  about: { readonly x: number; readonly y: number } = { x: 1 / 2, y: 1 / 2 },
): ViewBox {
  const zoom = within(zoomOf(box, sheet) * factor, 1, MOST_ZOOM);
  const width = sheet.width / zoom;
  const height = sheet.height / zoom;
  return onSheet(
    { x: box.x + about.x * (box.width - width), y: box.y + about.y * (box.height - height), width, height },
    sheet,
  );
}

/** Moves the shown part by shares of itself, to the right and down, as far as the sheet goes. */
export const panned = (box: ViewBox, sheet: SheetExtent, right: number, down: number): ViewBox =>
  onSheet({ ...box, x: box.x + right * box.width, y: box.y + down * box.height }, sheet);

/** What a key does to the shown part; null for keys that are not the drawing's. */
export function afterKey(box: ViewBox, sheet: SheetExtent, key: string): ViewBox | null {
  switch (key) {
    case '+':
    case '=':
      return zoomed(box, sheet, ZOOM_STEP);
    case '-':
      return zoomed(box, sheet, 1 / ZOOM_STEP);
    case '0':
      return whole(sheet);
    case 'ArrowLeft':
      return moved(box, sheet, -PAN_SHARE, 0);
    case 'ArrowRight':
      return moved(box, sheet, PAN_SHARE, 0);
    case 'ArrowUp':
      return moved(box, sheet, 0, -PAN_SHARE);
    case 'ArrowDown':
      return moved(box, sheet, 0, PAN_SHARE);
    default:
      return null;
  }
}

/** Arrows belong to the drawing only while there is somewhere to go; else they scroll the page. */
function moved(box: ViewBox, sheet: SheetExtent, right: number, down: number): ViewBox | null {
  const next = panned(box, sheet, right, down);
  return next.x === box.x && next.y === box.y ? null : next;
}
