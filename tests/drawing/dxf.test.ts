import DxfParser, { type IDxf, type IEntity, type ILwpolylineEntity, type ILineEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { toDxf } from '../../src/drawing/dxf.ts';
import { details, type Detail, type EdgePart } from '../../src/drawing/edge-model.ts';
import { distance, type Point } from '../../src/drawing/geometry.ts';
import { detailSheet, type Drawing } from '../../src/drawing/sheet.ts';
import { evaluate } from '../../src/evaluate.ts';
import { ordinary } from './cases.ts';
import { sketch, type Sketch } from './fixture.ts';

const systems = ['IP', 'SI'] as const;
const PER_METER = { SI: 1000, IP: 1 / 0.0254 } as const;
/** [m] The file must agree with the evaluation to a tenth of a millimeter. */
const TENTH_MM = 0.0001;

const drawn = (wanted: Sketch, detail: Detail, system: 'IP' | 'SI'): Drawing => {
  const { evaluation, candidate } = sketch(wanted);
  return detailSheet(evaluation, candidate, detail, { system, width_mm: 300, height_mm: 200 });
};
const read = (text: string): IDxf => {
  const file = new DxfParser().parseSync(text);
  if (file === null) throw new Error('not a DXF file');
  return file;
};
const isPath = (entity: IEntity): entity is ILwpolylineEntity => entity.type === 'LWPOLYLINE';
const isLine = (entity: IEntity): entity is ILineEntity => entity.type === 'LINE';
const lowest = (values: readonly number[]): number => Math.min(...values);
const highest = (values: readonly number[]): number => Math.max(...values);

const cases = Object.entries(ordinary).flatMap(([name, wanted]) =>
  details.flatMap((detail) => systems.map((system) => [name, detail, system, wanted] as const)),
);

describe.each(cases)('DXF of %s, %s, %s, opened by a general reader', (_, detail, system, wanted) => {
  const drawing = drawn(wanted, detail, system);
  const text = toDxf(drawing, system);
  const file = read(text);
  const per_m = PER_METER[system];
  const paths = (layer: string): Point[][] =>
    file.entities
      .filter(isPath)
      .flatMap((e) =>
        e.layer === layer ? [e.vertices.map(({ x, y }) => ({ x: x / per_m, y: y / per_m }))] : [],
      );

  it('says its unit', () => {
    expect(file.header['$INSUNITS']).toBe(system === 'IP' ? 1 : 4);
  });

  it('names layers by material, and every entity lies on one of them', () => {
    const layers = Object.keys(file.tables.layer.layers);
    const foam = wanted.strategy === 'prebonded-panel' ? 'EPS' : 'POLYISOCYANURATE';
    for (const name of [
      foam,
      `${foam}-HATCH`,
      'WOOD',
      'MEMBRANE',
      'AIR-BARRIER',
      'NOTES',
      'DIMENSIONS',
      'SCREWS',
    ])
      expect(layers).toContain(name);
    for (const entity of file.entities) expect(layers).toContain(entity.layer);
  });

  it('holds every body of the model at true size', () => {
    const close = (a: Point, b: Point | undefined): boolean => b !== undefined && distance(a, b) < TENTH_MM;
    const all = file.entities
      .filter(isPath)
      .map((e) => e.vertices.map(({ x, y }) => ({ x: x / per_m, y: y / per_m })));
    const isThere = (part: EdgePart): boolean =>
      all.some(
        (path) => path.length === part.polygon.length && path.every((p, i) => close(p, part.polygon[i])),
      );
    expect(drawing.edge.parts.filter((part) => !isThere(part)).map(({ id }) => id)).toEqual([]);
  });

  it('measures back to the thicknesses and sizes of the evaluation within 0.1 mm', () => {
    const { axes } = drawing.edge;
    const across = (p: Point): number => -p.x * Math.sin(axes.angle_rad) + p.y * Math.cos(axes.angle_rad);
    const { candidate } = sketch(wanted);
    for (const layer of candidate.layers.filter(({ role }) => role === 'insulation')) {
      const name = (layer.material ?? '').toUpperCase();
      const heights = paths(name)
        .filter((path) => path.some(({ x }) => x <= 0) || detail !== 'ridge')
        .filter((path) => detail !== 'ridge' || path.every(({ x }) => x <= 0))
        .map((path) => highest(path.map(across)) - lowest(path.map(across)));
      expect(lowest(heights.map((height) => Math.abs(height - layer.thickness_m)))).toBeLessThan(TENTH_MM);
    }
    const wood = paths('WOOD');
    if (detail !== 'ridge') {
      // The fascia or barge board is the leftmost wood; its face is the roof edge less what lies on the upper deck.
      const face = lowest(wood.flat().map(({ x }) => x));
      const edge = drawing.edge.measures.find((m) => m.id === 'overhang')?.value_m ?? NaN;
      expect(Math.abs(-face - edge)).toBeLessThan(TENTH_MM);
    }
  });

  it('has dimension lines as long as the values that stand on them', () => {
    const lines = file.entities.filter(isLine).filter(({ layer }) => layer === 'DIMENSIONS');
    // Ticks are short strokes at 45 degrees; their middles are the ends of dimensions.
    const middles = lines.flatMap(({ vertices: [a, b] }): Point[] => {
      if (a === undefined || b === undefined) return [];
      const isTick =
        Math.abs(Math.abs(a.x - b.x) - Math.abs(a.y - b.y)) < 1e-4 && (a.x - b.x) * (a.y - b.y) > 0;
      return isTick ? [{ x: (a.x + b.x) / 2 / per_m, y: (a.y + b.y) / 2 / per_m }] : [];
    });
    for (const m of drawing.edge.measures.filter(({ way }) => way !== 'listed')) {
      const spans = middles.flatMap((a) => middles.map((b) => distance(a, b)));
      const nearest = lowest(spans.map((span) => Math.abs(span - m.value_m)));
      expect(nearest, m.id).toBeLessThan(TENTH_MM);
    }
  });

  it('is the same text each time, with nothing but numbers where numbers belong', () => {
    expect(toDxf(drawing, system)).toBe(text);
    expect(text).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('DXF of a real evaluation', () => {
  it('keeps the build-up, the roof edge and the ridge rise of the recommended candidate', () => {
    const evaluation = evaluate({ overdeck: 1, place: { zone: '6A' }, project: { kind: 'new-roof' } });
    const candidate = evaluation.candidates.find(({ id }) => id === evaluation.ranking.recommended);
    expect(candidate).toBeDefined();
    if (candidate === undefined) return;
    const drawing = detailSheet(evaluation, candidate, 'ridge', {
      system: 'SI',
      width_mm: 406.4,
      height_mm: 254,
    });
    const file = read(toDxf(drawing, 'SI'));
    const bodies = file.entities.filter(isPath).filter(({ layer }) => layer === 'AIR-BARRIER');
    const apex = highest(bodies.flatMap((e) => e.vertices.map(({ y }) => y)));
    const angle = (evaluation.requirements.slope.angle_deg * Math.PI) / 180;
    const deck = candidate.layers.find(({ role }) => role === 'deck')?.thickness_m ?? 0;
    const sheet = candidate.layers.find(({ role }) => role === 'air-barrier')?.thickness_m ?? 0;
    expect(apex).toBeCloseTo(((deck + sheet / 2) / Math.cos(angle)) * 1000, 3);
    const rise = drawing.edge.measures.find(({ id }) => id === 'ridge-rise');
    expect(rise?.value_m).toBe(candidate.edge.ridgeRise_m);
  }, 60_000);
});
