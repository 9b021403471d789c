import fc from 'fast-check';
import { areaPathsD, FillRule, intersectD, type PathD } from 'clipper2-ts';
import { describe, expect, it, vi } from 'vitest';
import { detailModel, detailsOf, whyNoDetail } from '../../src/drawing/details.ts';
import { details, type Detail, type DetailModel, type EdgePart } from '../../src/drawing/edge-model.ts';
import { distance, type Point } from '../../src/drawing/geometry.ts';
import { detailSheet } from '../../src/drawing/sheet.ts';
import type { Candidate } from '../../src/evaluation/evaluation.ts';
import { anySketch, ordinary } from './cases.ts';
import { sketch, type Sketch } from './fixture.ts';
import { RUNS } from './runs.ts';

vi.setConfig({ testTimeout: 120_000 });

/** Long slopes, so that a part away from every edge can be looked at. */
const VIEW = { inside_m: 1.6, wall_m: 0.3 };
const modelOf = (wanted: Sketch, detail: Detail): { model: DetailModel; candidate: Candidate } => {
  const { evaluation, candidate } = sketch(wanted);
  return { model: detailModel(evaluation, candidate, detail, VIEW), candidate };
};

/** Independent polygon arithmetic in millimeters, on a grid of a tenth of a micrometer. */
const MM = 1000;
const DECIMALS = 4;
const path = (points: readonly Point[]): PathD => points.map((p) => ({ x: p.x * MM, y: p.y * MM }));
const shared_mm2 = (a: readonly Point[], b: readonly Point[]): number =>
  Math.abs(areaPathsD(intersectD([path(a)], [path(b)], FillRule.NonZero, DECIMALS)));

const isSolid = (part: EdgePart): boolean => part.view === 'cut' && part.material !== 'air';

/** [mm²] Slivers between parts that share an edge up to 3 m long, each corner rounded to the grid. */
const SLIVER_mm2 = 0.5;

describe.each(details)('cut parts of any %s', (detail) => {
  it('do not lie on each other, by an independent polygon library', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const parts = modelOf(wanted, detail).model.parts.filter(isSolid);
        parts.forEach((a, i) => {
          for (const b of parts.slice(i + 1)) {
            const shared = shared_mm2(a.polygon, b.polygon);
            expect(shared, `${a.id} on ${b.id}: ${JSON.stringify(wanted)}`).toBeLessThan(SLIVER_mm2);
          }
        });
      }),
      RUNS,
    );
  });

  it('leave no gap between stacked layers but the sheets that are drawn as lines', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const { model, candidate } = modelOf(wanted, detail);
        const { axes, buildUp_m } = model;
        const sheets_m = candidate.layers
          .filter(({ role }) => role === 'air-barrier' || role === 'underlayment')
          .reduce((sum, { thickness_m }) => sum + thickness_m, 0);
        // A strip square to the layers, between outrigger and break.
        const end = model.roofLine?.[detail === 'ridge' ? 0 : 1];
        const top_s =
          detail === 'rake'
            ? Math.max(...model.parts.flatMap((p) => p.polygon.map(({ x }) => x)))
            : (end?.x ?? 0) * Math.cos(axes.angle_rad) + (end?.y ?? 0) * Math.sin(axes.angle_rad);
        // Square lines lean against plumb breaks by the build-up: stay clear of them.
        const from = detail === 'ridge' ? top_s + 0.001 : top_s - buildUp_m * Math.tan(axes.angle_rad) - 0.06;
        const strip = [
          axes.at(from, 0),
          axes.at(from + 0.05, 0),
          axes.at(from + 0.05, buildUp_m),
          axes.at(from, buildUp_m),
        ];
        const bodies = model.parts.filter(
          ({ view, layerId, id }) =>
            (view === 'cut' && layerId !== null) || /^(batten|outrigger|nailer)/.test(id),
        );
        // None lies on another (see above), so their shares of the strip add up.
        const filled = bodies.reduce((sum, { polygon }) => sum + shared_mm2(polygon, strip), 0);
        expect(filled / (0.05 * MM * MM), JSON.stringify(wanted)).toBeCloseTo(buildUp_m - sheets_m, 4);
      }),
      RUNS,
    );
  });

  it('measure true: each dimension is as long as the value that stands on it', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const { model } = modelOf(wanted, detail);
        for (const m of model.measures)
          if (m.id !== 'ice-barrier')
            expect(Math.abs(distance(m.from, m.to) - m.value_m), m.id).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it('have walks whose joints are numbered from one and lie on finite places', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const { model } = modelOf(wanted, detail);
        for (const walk of [model.airWalk, model.waterWalk, model.dryingWalk]) {
          expect(walk.joints.map((j) => j.number)).toEqual(walk.joints.map((_, i) => i + 1));
          for (const { at } of walk.joints) expect(Number.isFinite(at.x) && Number.isFinite(at.y)).toBe(true);
        }
        expect(model.airWalk.joints.length).toBeGreaterThanOrEqual(2);
      }),
      RUNS,
    );
  });
});

const measure = (model: DetailModel, id: string) => model.measures.find((m) => m.id === id);
const part = (model: DetailModel, id: string) => model.parts.find((p) => p.id === id);
const xs = (points: readonly Point[] | undefined): number[] => (points ?? []).map(({ x }) => x);

describe('ridge', () => {
  it('rises by the build-up over the cosine, limit and margin beside it', () => {
    const { model, candidate } = modelOf({ ...ordinary['rafter-overhang'], ridgeLimit_m: 0.2 }, 'ridge');
    const angle = Math.atan(7 / 12);
    const rise = measure(model, 'ridge-rise');
    expect(rise?.value_m).toBeCloseTo(candidate.edge.buildUp_m / Math.cos(angle), 12);
    expect(rise?.to.y).toBeCloseTo(candidate.edge.buildUp_m / Math.cos(angle), 12);
    expect(rise?.margin_m).toBeCloseTo(0.2 - (rise?.value_m ?? 0), 12);
  });

  it('has its dimensions across the layers wholly on the left slope, wherever they are moved', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const { model } = modelOf(wanted, 'ridge');
        const { axes } = model;
        for (const m of model.measures.filter(({ way }) => way === 'across'))
          for (const slide_m of m.slides_m ?? [0])
            for (const end of [m.from, m.to])
              expect(end.x + slide_m * Math.cos(axes.angle_rad), m.id).toBeLessThanOrEqual(0);
      }),
      RUNS,
    );
  });

  it('is the same on both slopes', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const { model } = modelOf(wanted, 'ridge');
        for (const right of model.parts.filter(({ id }) => id.endsWith('-right'))) {
          const left = part(model, right.id.replace(/-right$/, ''));
          const key = (points: readonly Point[] | undefined, sign: number): string =>
            (points ?? [])
              .map((p) => `${(sign * p.x).toFixed(9)} ${p.y.toFixed(9)}`)
              .sort()
              .join();
          expect(key(right.polygon, -1)).toBe(key(left?.polygon, 1));
        }
      }),
      RUNS,
    );
  });

  it('is open where the covering is vented: slot, vent, screens; and closed where it is not', () => {
    const open = modelOf(ordinary['rafter-overhang'], 'ridge').model;
    expect(part(open, 'ridge-vent')).toBeDefined();
    expect(open.lines.filter(({ kind }) => kind === 'screen')).toHaveLength(2);
    const slot_m = measure(open, 'slot')?.value_m ?? 0;
    expect(slot_m).toBeGreaterThan(0.02);
    expect(Math.max(...xs(part(open, 'upper-deck')?.polygon))).toBeCloseTo(-slot_m, 12);
    const closed = modelOf({ ...ordinary['rafter-overhang'], ventilation: 'unvented' }, 'ridge').model;
    expect(part(closed, 'ridge-vent')).toBeUndefined();
    expect(measure(closed, 'slot')).toBeUndefined();
    expect(Math.max(...xs(part(closed, 'upper-deck')?.polygon))).toBe(0);
    expect(closed.sectionNote).toContain('closed at the ridge');
  });

  it('fills the joint of foam boards with foam, and butts fibrous boards', () => {
    expect(part(modelOf(ordinary['rafter-overhang'], 'ridge').model, 'joint-insulation-1')).toBeDefined();
    const wool = modelOf({ ...ordinary['rafter-overhang'], board: 'stone-wool' }, 'ridge').model;
    expect(part(wool, 'joint-insulation-1')).toBeUndefined();
  });

  it('carries the air barrier over as one line', () => {
    const { model } = modelOf(ordinary['flush-outriggers'], 'ridge');
    expect(model.piercings).toEqual([]);
    const line = model.lines.find(({ id }) => id === 'air-barrier-line')?.points ?? [];
    expect(line[0]?.x).toBeCloseTo(-(line.at(-1)?.x ?? 0), 12);
    expect(line[1]?.x).toBe(0);
  });
});

describe('rake', () => {
  const RAKE = { overhang: { eave_m: 0.4, rake_m: 0.35 } };
  it('has a barge board as deep as build-up and framing together, square to the slope', () => {
    const { model, candidate } = modelOf({ ...ordinary['rafter-overhang'], case: RAKE }, 'rake');
    const { buildUp_m, carrierDepth_m } = candidate.edge;
    expect(measure(model, 'barge')?.value_m).toBeCloseTo(buildUp_m + carrierDepth_m, 12);
    expect(Math.min(...xs(part(model, 'fascia')?.polygon))).toBeCloseTo(-0.35, 12);
    expect(measure(model, 'overhang')?.value_m).toBe(0.35);
  });

  it('is pierced by lookouts where rafters carry it, and by nothing where outriggers do', () => {
    const tails = modelOf({ ...ordinary['rafter-overhang'], case: RAKE }, 'rake').model;
    expect(part(tails, 'lookout')).toBeDefined();
    expect(tails.piercings).toHaveLength(1);
    const flush = modelOf({ ...ordinary['flush-outriggers'], case: RAKE }, 'rake').model;
    expect(part(flush, 'lookout')).toBeUndefined();
    expect(part(flush, 'outrigger')).toBeDefined();
    expect(flush.piercings).toEqual([]);
    const none = modelOf(
      { ...ordinary['rafter-overhang'], case: { overhang: { eave_m: 0.4, rake_m: 0 } } },
      'rake',
    ).model;
    expect(none.piercings).toEqual([]);
    expect(none.sectionNote).toContain('shorter than drawn');
  });

  it('cuts furring across on the rafters and closes the gap at the side', () => {
    const { model } = modelOf({ ...ordinary['rafter-overhang'], case: RAKE }, 'rake');
    const rafters = model.parts.filter(({ id }) => id.startsWith('rafter-'));
    const furring = model.parts.filter(({ id }) => id.startsWith('furring-'));
    expect(rafters.length).toBeGreaterThanOrEqual(2);
    const mid = (points: readonly Point[] | undefined): number =>
      (Math.min(...xs(points)) + Math.max(...xs(points))) / 2;
    rafters.forEach((rafter, i) => expect(mid(furring[i]?.polygon)).toBeCloseTo(mid(rafter.polygon), 9));
    expect(part(model, 'rake-furring')?.view).toBe('cut');
  });
});

describe('existing work', () => {
  const old = (wanted: Sketch, detail: Detail): DetailModel =>
    modelOf(
      {
        ...wanted,
        case: { ...wanted.case, project: { kind: 're-roof' }, overhang: { eave_m: 0.5, rake_m: 0.4 } },
      },
      detail,
    ).model;
  it('keeps the tails where they carry the overhang, and says so', () => {
    const model = old(ordinary['rafter-overhang'], 'eave');
    expect(model.sectionNote).toContain('existing tails kept');
    expect(model.anchors.some(({ name }) => name === 'Existing rafter tail, kept')).toBe(true);
    expect(model.lines.some(({ kind }) => kind === 'removed')).toBe(false);
  });
  it('shows tails and gable ladder cut off where outriggers take over', () => {
    for (const detail of ['eave', 'rake'] as const) {
      const model = old(ordinary['flush-outriggers'], detail);
      expect(model.sectionNote).toContain('cut off');
      expect(model.lines.some(({ id }) => id === 'removed-tail')).toBe(true);
    }
  });
  it('has a roof before only in a re-roof', () => {
    for (const detail of details) {
      expect(old(ordinary['rafter-overhang'], detail).before).toHaveLength(1);
      expect(modelOf(ordinary['rafter-overhang'], detail).model.before).toEqual([]);
    }
  });
});

describe('places that a roof lacks', () => {
  const shaped = (roof: object): ReturnType<typeof sketch> =>
    sketch({ ...ordinary['rafter-overhang'], case: { roof: roof as never } });
  it('are named with their reason', () => {
    expect(detailsOf(shaped({ shape: 'gable' }).evaluation)).toEqual(['eave', 'rake', 'ridge']);
    expect(detailsOf(shaped({ shape: 'hip', length_m: 12, width_m: 8 }).evaluation)).toEqual([
      'eave',
      'ridge',
    ]);
    expect(detailsOf(shaped({ shape: 'hip', length_m: 8, width_m: 8 }).evaluation)).toEqual(['eave']);
    expect(detailsOf(shaped({ shape: 'shed' }).evaluation)).toEqual(['eave', 'rake']);
    expect(whyNoDetail(shaped({ shape: 'shed' }).evaluation, 'ridge')).toContain('no ridge');
  });
  it('are refused by the sheet', () => {
    const { evaluation, candidate } = shaped({ shape: 'hip', length_m: 12, width_m: 8 });
    expect(() =>
      detailSheet(evaluation, candidate, 'rake', { system: 'IP', width_mm: 300, height_mm: 200 }),
    ).toThrow(/hip roof/);
  });
});
