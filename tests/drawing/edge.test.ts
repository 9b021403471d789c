import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { eaveEdge, type EaveEdge } from '../../src/drawing/edge.ts';
import { area, distance, isInside, middle, type Point } from '../../src/drawing/geometry.ts';
import { anySketch, ordinary } from './cases.ts';
import { sketch, type Sketch } from './fixture.ts';
import { RUNS } from './runs.ts';

vi.setConfig({ testTimeout: 60_000 });

const VIEW = { inside_m: 0.4, wall_m: 0.3 };
const edgeOf = (wanted: Sketch): EaveEdge => {
  const { evaluation, candidate } = sketch(wanted);
  return eaveEdge(evaluation, candidate, VIEW);
};
const candidateOf = (edge: EaveEdge) => edge.input.candidate;
const measure = (edge: EaveEdge, id: string) => edge.measures.find((m) => m.id === id);
const lineOf = (edge: EaveEdge, id: string) => edge.lines.find((l) => l.id === id);

describe('stack above the framing', () => {
  it('adds up to the build-up of the evaluation, whatever the case', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const edge = edgeOf(wanted);
        expect(edge.buildUp_m).toBeCloseTo(candidateOf(edge).edge.buildUp_m, 12);
      }),
      RUNS,
    );
  });

  it('has layers that touch and never overlap', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const { stack } = edgeOf(wanted);
        stack.slice(1).forEach((b, i) => expect(b.low_m).toBe(stack[i]?.high_m));
        for (const b of stack) expect(b.high_m).toBeGreaterThanOrEqual(b.low_m);
      }),
      RUNS,
    );
  });

  it('draws every board with its thickness square to the slope', () => {
    const edge = edgeOf(ordinary['rafter-overhang']);
    const normal = { x: -Math.sin(edge.axes.angle_rad), y: Math.cos(edge.axes.angle_rad) };
    for (const layer of candidateOf(edge).layers.filter((l) => l.role === 'insulation')) {
      const part = edge.parts.find((p) => p.id === layer.id);
      const reach = part?.polygon.map((p) => p.x * normal.x + p.y * normal.y) ?? [];
      expect(Math.max(...reach) - Math.min(...reach)).toBeCloseTo(layer.thickness_m, 12);
    }
  });

  it('offsets the joints of neighboring board layers by half a course', () => {
    const edge = edgeOf({ ...ordinary['rafter-overhang'], case: { overhang: { eave_m: 1.2 } } });
    const joints = edge.lines.filter((l) => l.kind === 'board-joint');
    const along = (p: Point | undefined): number =>
      (p?.x ?? 0) * Math.cos(edge.axes.angle_rad) + (p?.y ?? 0) * Math.sin(edge.axes.angle_rad);
    const first = joints.find((j) => j.layerId === 'insulation-1');
    const second = joints.find((j) => j.layerId === 'insulation-2');
    expect(second).toBeDefined();
    expect(first).toBeDefined();
    // The nailer's plumb end moves the layers by thickness × sin(angle); the rest is half of 4 ft.
    const lean_m = 0.0635 * Math.tan(edge.axes.angle_rad);
    const step_m = along(first?.points[0]) - along(second?.points[0]);
    expect(Math.abs(step_m - (0.6096 - lean_m))).toBeLessThan(1e-9);
  });
});

describe('roof edge', () => {
  it('is drawn exactly as high as the evaluation says, plumb or square', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const edge = edgeOf(wanted);
        const fascia = measure(edge, 'fascia');
        expect(fascia).toBeDefined();
        if (fascia === undefined) return;
        expect(Math.abs(distance(fascia.from, fascia.to) - fascia.value_m)).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it('slopes by the pitch: the covering rises 7 in 12', () => {
    const edge = edgeOf(ordinary['rafter-overhang']);
    const [a, b] = edge.parts.find((p) => p.id === 'covering')?.polygon ?? [];
    expect(a).toBeDefined();
    expect(((b?.y ?? 0) - (a?.y ?? 0)) / ((b?.x ?? 0) - (a?.x ?? 0))).toBeCloseTo(7 / 12, 12);
  });

  it('stands the wanted overhang out from the wall', () => {
    const edge = edgeOf({ ...ordinary['rafter-overhang'], case: { overhang: { eave_m: 0.5 } } });
    const fascia = edge.parts.find((p) => p.id === 'fascia');
    expect(Math.min(...(fascia?.polygon.map((p) => p.x) ?? []))).toBeCloseTo(-0.5, 12);
  });

  it('says so when the wanted overhang is too short to be drawn', () => {
    const edge = edgeOf({ ...ordinary['rafter-overhang'], case: { overhang: { eave_m: 0 } } });
    expect(edge.sectionNote).toContain('shorter than drawn');
    expect(measure(edge, 'overhang')).toBeUndefined();
  });

  it('runs the ice barrier its computed length along the slope', () => {
    const { evaluation, candidate } = sketch(ordinary['rafter-overhang']);
    const edge = eaveEdge(evaluation, candidate, { inside_m: 1.5, wall_m: 0.3 });
    const ice = lineOf(edge, 'ice-barrier');
    const [from, to] = ice?.points ?? [];
    expect(from && to ? distance(from, to) : 0).toBeCloseTo(evaluation.requirements.iceBarrier.length_m, 9);
  });
});

describe('air barrier', () => {
  it('is one line: the roof membrane ends on it and each stretch joins the next', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const edge = edgeOf(wanted);
        const line = lineOf(edge, 'air-barrier-line');
        const membrane = lineOf(edge, 'membrane');
        expect(line?.points.at(-1)).toEqual(membrane?.points.at(-1));
        expect(line?.points.length ?? 0).toBeGreaterThanOrEqual(3);
        for (const p of line?.points ?? []) expect(Number.isFinite(p.x) && Number.isFinite(p.y)).toBe(true);
      }),
      RUNS,
    );
  });

  it('is not pierced where outriggers carry the eave', () => {
    const edge = edgeOf(ordinary['flush-outriggers']);
    expect(edge.piercings).toHaveLength(0);
    const rafter = edge.parts.find((p) => p.id === 'rafter');
    expect(Math.min(...(rafter?.polygon.map((p) => p.x) ?? []))).toBeGreaterThan(0);
    const membrane = lineOf(edge, 'membrane');
    expect(membrane?.points).toHaveLength(3);
    expect(membrane?.points[0]?.x).toBe(0);
    expect(membrane?.points[0]?.y).toBeLessThan(membrane?.points[1]?.y ?? -1);
  });

  it('is pierced once per tail where tails carry the eave', () => {
    const edge = edgeOf(ordinary['rafter-overhang']);
    expect(edge.piercings.map((p) => p.count)).toEqual([candidateOf(edge).airBarrier.piercings]);
    const tail = edge.parts.find((p) => p.id === 'rafter');
    const at = edge.piercings[0]?.at;
    expect(
      at !== undefined && tail !== undefined && isInside({ x: at.x - 0.001, y: at.y }, tail.polygon),
    ).toBe(true);
  });

  it('keeps the outrigger in the insulation zone, above the membrane', () => {
    const edge = edgeOf(ordinary['flush-outriggers']);
    const outrigger = edge.parts.find((p) => p.id === 'outrigger');
    const height = (p: Point): number =>
      -p.x * Math.sin(edge.axes.angle_rad) + p.y * Math.cos(edge.axes.angle_rad);
    const boards = edge.input.boards;
    const n = outrigger?.polygon.map(height) ?? [];
    expect(Math.min(...n)).toBeCloseTo(boards[0]?.low_m ?? -1, 12);
    expect(Math.max(...n)).toBeLessThanOrEqual((boards.at(-1)?.high_m ?? 0) + 1e-12);
    expect(outrigger?.polygon.some((p) => p.x > 0)).toBe(true);
    expect(outrigger?.polygon.some((p) => p.x < -0.2)).toBe(true);
  });

  it('draws the outrigger that the evaluation chose: depth square to it, back span along it', () => {
    const outrigger = {
      size: '2x6',
      orientation: 'on-edge',
      depth_m: 0.1397,
      width_m: 0.0381,
      backSpan_m: 0.7,
      spacing_m: 0.4064,
    } as const;
    const { evaluation, candidate } = sketch({ ...ordinary['flush-outriggers'], outrigger });
    const edge = eaveEdge(evaluation, candidate, { inside_m: 1.5, wall_m: 0.3 });
    const { angle_rad } = edge.axes;
    const part = edge.parts.find((p) => p.id === 'outrigger')?.polygon ?? [];
    const across = part.map((p) => -p.x * Math.sin(angle_rad) + p.y * Math.cos(angle_rad));
    const along = part.map((p) => p.x * Math.cos(angle_rad) + p.y * Math.sin(angle_rad));
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(0.1397, 12);
    const wallLine_m = Math.min(...across) * Math.tan(angle_rad);
    expect(Math.max(...along) - wallLine_m).toBeCloseTo(0.7, 12);
    expect(measure(edge, 'back-span')?.value_m).toBeCloseTo(0.7, 12);
  });

  it('walks from wall to roof with joints numbered from one', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const { airWalk } = edgeOf(wanted);
        expect(airWalk.joints.map((j) => j.number)).toEqual(airWalk.joints.map((_, i) => i + 1));
        expect(airWalk.joints.at(-1)?.name).toContain('deck membrane');
      }),
      RUNS,
    );
  });
});

describe('strategies differ', () => {
  it('by a panel outline with spacer blocks in the prebonded panel alone', () => {
    const has = (wanted: Sketch, id: string): boolean => {
      const edge = edgeOf(wanted);
      return edge.parts.some((p) => p.id.startsWith(id)) || edge.lines.some((l) => l.id === id);
    };
    expect(has(ordinary['prebonded-panel'], 'spacer-')).toBe(true);
    expect(has(ordinary['prebonded-panel'], 'panel-outline')).toBe(true);
    expect(has(ordinary['rafter-overhang'], 'panel-outline')).toBe(false);
    expect(has(ordinary['flush-outriggers'], 'panel-outline')).toBe(false);
    expect(has(ordinary['rafter-overhang'], 'outrigger')).toBe(false);
    expect(has(ordinary['flush-outriggers'], 'outrigger')).toBe(true);
  });
});

/** Parts that are solid and cut: no two of them may claim the same place. */
const solid = (edge: EaveEdge) => edge.parts.filter((p) => p.view === 'cut' && p.material !== 'air');

describe('cut parts', () => {
  it('are proper polygons that do not lie on each other', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const parts = solid(edgeOf(wanted));
        for (const part of parts) {
          expect(part.polygon.length, part.id).toBeGreaterThanOrEqual(3);
          expect(Math.abs(area(part.polygon)), part.id).toBeGreaterThan(0);
        }
        for (const a of parts)
          for (const b of parts)
            if (a !== b) expect(isInside(middle(a.polygon), b.polygon), `${a.id} in ${b.id}`).toBe(false);
      }),
      RUNS,
    );
  });
});
