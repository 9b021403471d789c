/**
 * A drawing as a DXF file in true size: millimeters for SI, inches for IP, layers named by material. Bodies and
 * lines come from the model itself, notes and dimensions from the sheet, set back to the size of the building.
 */
import {
  DxfWriter,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  Units,
  type Text,
} from '@tarikjabiri/dxf';
import type { System } from '../measures.ts';
import { METERS_PER_INCH } from '../units.ts';
import type { EdgeLine, EdgePart, LineKind } from './edge-model.ts';
import type { Point } from './geometry.ts';
import type { HatchName } from './hatch.ts';
import { dashes, dashLengths, leaves, type Dash, type GroupShape, type Shape } from './shapes.ts';
import type { Drawing } from './sheet.ts';
import { fromPaper } from './sheet-section.ts';

const MILLIMETERS_PER_METER = 1000;
/** [1/m] Units of the file in one meter. */
const unitsPerMeter: Readonly<Record<System, number>> = {
  SI: MILLIMETERS_PER_METER,
  IP: 1 / METERS_PER_INCH,
};
const unitWords: Readonly<Record<System, string>> = {
  SI: 'True size: one unit is one millimeter.',
  IP: 'True size: one unit is one inch.',
};

/** Decimals written: a ten-thousandth of a millimeter, a millionth of an inch. */
const DECIMALS = 6;
const rounded = (value: number): number => {
  const kept = Number(value.toFixed(DECIMALS));
  return Object.is(kept, -0) ? 0 : kept;
};

/** [-] Height of the capitals in font sizes: DXF states the height of capitals. */
const CAPITALS_SHARE = 0.66;
/** [-] Plain stroke letters are wider than the sheet's; narrowed to its widths. */
const LETTER_WIDTH = 0.8;

/** AutoCAD color index: a number that every reader knows. 7 is black or white, as the ground asks. */
const BLACK = 7;
const GRAY = 8;
const LIGHT_GRAY = 9;
const RED = 1;
const BLUE = 5;
const BROWN = 34;
const YELLOW = 52;

/** Layer names of parts that are no layer of the build-up, by their sign. */
const signLayers: Readonly<Record<HatchName, string>> = {
  foam: 'FOAM',
  fibrous: 'FOAM-SEALANT',
  'wood-end': 'WOOD',
  'wood-long': 'WOOD',
  'wood-beyond': 'WOOD-BEYOND',
  panel: 'WOOD-PANEL',
  gypsum: 'GYPSUM',
  metal: 'METAL',
  covering: 'RIDGE-CAP',
  cladding: 'CLADDING',
  mat: 'RIDGE-VENT',
  air: 'AIR',
};

const lineLayers: Readonly<Record<LineKind, readonly [name: string, color: number, dash: Dash]>> = {
  'air-barrier': ['AIR-BARRIER', RED, 'continuous'],
  membrane: ['MEMBRANE', BLACK, 'continuous'],
  'wall-barrier': ['WALL-BARRIER', BLACK, 'continuous'],
  underlayment: ['UNDERLAYMENT', BLACK, 'continuous'],
  'ice-barrier': ['ICE-BARRIER', BLUE, 'dashed'],
  retarder: ['VAPOR-RETARDER', BLACK, 'dashed'],
  'drip-edge': ['METAL', BLACK, 'continuous'],
  gutter: ['METAL', BLACK, 'continuous'],
  screen: ['INSECT-SCREEN', BLACK, 'dotted'],
  'board-joint': ['BOARD-JOINTS', BLACK, 'continuous'],
  screw: ['SCREWS', BLACK, 'chain'],
  'panel-outline': ['PANEL-OUTLINE', BLACK, 'continuous'],
  sealant: ['SEALANT', RED, 'continuous'],
  hidden: ['HIDDEN', GRAY, 'dashed'],
  lap: ['UNDERLAYMENT', BLACK, 'continuous'],
  removed: ['REMOVED', GRAY, 'chain'],
};

/** Layers of what stands on the sheet around the section, by its group. */
const sheetLayers: Readonly<Record<string, readonly [name: string, color: number]>> = {
  breaks: ['BREAKS', GRAY],
  notes: ['NOTES', BLACK],
  dimensions: ['DIMENSIONS', GRAY],
  signs: ['NOTES', BLACK],
  before: ['BEFORE', GRAY],
  'walk-air-barrier': ['WALK', RED],
  'walk-water': ['WALK', BLUE],
  'walk-drying': ['WALK', BROWN],
  title: ['TITLE', BLACK],
};

const layerName = (words: string): string => words.toUpperCase().replace(/[^A-Z0-9]+/g, '-');

const colorOf = (sign: HatchName): number => {
  if (sign === 'foam' || sign === 'fibrous') return YELLOW;
  if (sign === 'wood-beyond' || sign === 'air') return LIGHT_GRAY;
  return sign.startsWith('wood') || sign === 'panel' ? BROWN : BLACK;
};

/** Writes into one file; remembers which layers it has. */
class Sheet {
  readonly #writer = new DxfWriter();
  readonly #known = new Set<string>();
  readonly #drawing: Drawing;
  readonly #perMeter: number;

  constructor(drawing: Drawing, system: System) {
    this.#drawing = drawing;
    this.#perMeter = unitsPerMeter[system];
    this.#writer.setUnits(system === 'IP' ? Units.Inches : Units.Millimeters);
    this.#writer.setVariable('$MEASUREMENT', { 70: system === 'IP' ? 0 : 1 });
    this.#writer.setVariable('$LASTSAVEDBY', { 1: 'Overdeck' });
    const perPaper = this.#perMeter / drawing.placement.per_m;
    for (const dash of dashes) {
      const lengths = dashLengths[dash].map((length_mm, i) =>
        rounded(length_mm * perPaper * (i % 2 === 0 ? 1 : -1)),
      );
      if (lengths.length > 0) this.#writer.addLType(dash.toUpperCase(), dash, lengths);
    }
  }

  /** Goes to a layer, made when it is new. */
  on(name: string, color: number, dash: Dash = 'continuous'): this {
    if (!this.#known.has(name)) {
      this.#writer.addLayer(name, color, dash === 'continuous' ? 'Continuous' : dash.toUpperCase());
      this.#known.add(name);
    }
    this.#writer.setCurrentLayerName(name);
    return this;
  }

  /** A path of the building, in meters. */
  path(points: readonly Point[], isClosed: boolean): void {
    this.#writer.addLWPolyline(
      points.map((p) => ({ point: point2d(rounded(p.x * this.#perMeter), rounded(p.y * this.#perMeter)) })),
      isClosed ? { flags: LWPolylineFlags.Closed } : {},
    );
  }

  #at(p: Point): ReturnType<typeof point3d> {
    const real = fromPaper(this.#drawing.placement, p);
    return point3d(rounded(real.x * this.#perMeter), rounded(real.y * this.#perMeter), 0);
  }

  #length(paper_mm: number): number {
    return rounded((paper_mm / this.#drawing.placement.per_m) * this.#perMeter);
  }

  text(shape: Extract<Shape, { kind: 'text' }>): Text {
    const at = this.#at(shape.at);
    const anchors = {
      start: TextHorizontalAlignment.Left,
      middle: TextHorizontalAlignment.Center,
      end: TextHorizontalAlignment.Right,
    } as const;
    return this.#writer.addText(at, this.#length(shape.size_mm * CAPITALS_SHARE), shape.text, {
      rotation: rounded(shape.turn_deg),
      relativeXScaleFactor: LETTER_WIDTH,
      ...(shape.anchor === 'start'
        ? {}
        : { horizontalAlignment: anchors[shape.anchor], secondAlignmentPoint: at }),
    });
  }

  /** What stands on the sheet, set back to true size. Paper behind figures is left out. */
  shapes(shapes: readonly Shape[]): void {
    for (const shape of leaves(shapes)) {
      switch (shape.kind) {
        case 'line':
          this.#writer.addLine(this.#at(shape.from), this.#at(shape.to));
          break;
        case 'polyline':
        case 'polygon':
          if (shape.pen !== null)
            this.path(
              shape.points.map((p) => fromPaper(this.#drawing.placement, p)),
              shape.kind === 'polygon',
            );
          break;
        case 'circle':
          this.#writer.addCircle(this.#at(shape.center), this.#length(shape.radius_mm));
          break;
        case 'text':
          this.text(shape);
          break;
      }
    }
  }

  written(): string {
    this.#writer.setCurrentLayerName('0');
    return this.#writer.stringify();
  }
}

const groupsOf = (shapes: readonly Shape[]): GroupShape[] =>
  shapes.filter((shape): shape is GroupShape => shape.kind === 'group');

/** A part's layer: its material where it is a layer of the build-up, else by its sign. */
function partLayer(drawing: Drawing, part: EdgePart): string {
  const layer = drawing.layers.find(({ id }) => id === part.layerId);
  if (layer === undefined || part.material.startsWith('wood')) return signLayers[part.material];
  return layerName(layer.material ?? layer.role);
}

/** The strokes of a part's hatch on the sheet. */
function strokes(drawing: Drawing, part: EdgePart): Shape[] {
  const section = groupsOf(drawing.shapes).find(({ id }) => id === 'section');
  const own = groupsOf(section?.shapes ?? []).find(({ id }) => id === part.id);
  return (own?.shapes ?? []).filter((shape) => shape.kind === 'line');
}

function drawLine(sheet: Sheet, line: EdgeLine): void {
  const [name, color, dash] = lineLayers[line.kind];
  sheet.on(name, color, dash).path(line.points, false);
}

/** [mm] From the foot of the title to the words on the unit. */
const UNIT_WORDS_mm = 5;

/**
 * Writes a drawing as DXF (AC1021, ASCII): model space in true size, origin where the model has it.
 *
 * @param drawing  the finished sheet
 * @param system   SI: millimeters; IP: inches; stated in $INSUNITS
 * @returns        the file's text; the same drawing gives the same bytes
 */
export function toDxf(drawing: Drawing, system: System): string {
  const sheet = new Sheet(drawing, system);
  for (const part of drawing.edge.parts) {
    const name = partLayer(drawing, part);
    sheet.on(name, colorOf(part.material)).path(part.polygon, true);
    const hatch = strokes(drawing, part);
    if (hatch.length > 0) sheet.on(`${name}-HATCH`, GRAY).shapes(hatch);
  }
  for (const line of drawing.edge.lines) drawLine(sheet, line);
  for (const group of groupsOf(drawing.shapes)) {
    const named = sheetLayers[group.id];
    if (named !== undefined) sheet.on(...named).shapes(group.shapes);
  }
  sheet.on('TITLE', BLACK).text({
    kind: 'text',
    at: { x: drawing.placement.origin.x, y: drawing.height_mm + UNIT_WORDS_mm },
    text: unitWords[system],
    size_mm: UNIT_WORDS_mm / 2,
    anchor: 'middle',
    weight: 'regular',
    ink: 'text',
    turn_deg: 0,
  });
  return sheet.written();
}
