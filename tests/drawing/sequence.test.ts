import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { detailModel, detailsOf } from '../../src/drawing/details.ts';
import type { details } from '../../src/drawing/edge-model.ts';
import { addedBy, sequenceOf, stageAt, STANDING } from '../../src/drawing/sequence.ts';
import { detailSheet } from '../../src/drawing/sheet.ts';
import { leaves, type Shape } from '../../src/drawing/shapes.ts';
import { anySketch, ordinary } from './cases.ts';
import { sketch, type Sketch } from './fixture.ts';
import { RUNS } from './runs.ts';

vi.setConfig({ testTimeout: 120_000 });

const VIEW = { inside_m: 1.6, wall_m: 0.3 };
const work = (wanted: Sketch) => {
  const { evaluation, candidate } = sketch(wanted);
  return { evaluation, candidate, sequence: sequenceOf(evaluation, candidate) };
};
const bodiesOf = (wanted: Sketch, detail: (typeof details)[number]) => {
  const { evaluation, candidate, sequence } = work(wanted);
  const edge = detailModel(evaluation, candidate, detail, VIEW);
  return { edge, sequence, bodies: [...edge.parts, ...edge.lines] };
};

describe('the steps of any roof', () => {
  it('set every body of eave, rake and ridge exactly once', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const { evaluation, candidate, sequence } = work(wanted);
        const order = [STANDING, ...sequence.steps.map(({ id }) => id)];
        for (const detail of detailsOf(evaluation)) {
          const edge = detailModel(evaluation, candidate, detail, VIEW);
          const bodies = [...edge.parts, ...edge.lines];
          const stages = order.map((step) => stageAt(sequence, edge, step));
          expect(stages.at(-1)?.isWhole).toBe(true);
          for (const body of bodies) {
            const states = stages.map((stage) => stage.ofBody(body));
            const news = states.filter((state) => state === 'new').length;
            const isStanding = sequence.stepOf(body, detail) === STANDING;
            expect(news, `${detail} ${body.id}`).toBe(isStanding ? 0 : 1);
            expect(states.at(-1), body.id).not.toBe('absent');
            // Once in its place a body stays.
            const first = states.findIndex((state) => state !== 'absent');
            expect(states.slice(first), body.id).not.toContain('absent');
          }
        }
      }),
      RUNS,
    );
  });

  it('know when each note has something to point to, and never before its layer is there', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const { evaluation, candidate, sequence } = work(wanted);
        const order = [STANDING, ...sequence.steps.map(({ id }) => id)];
        for (const detail of detailsOf(evaluation)) {
          const { anchors } = detailModel(evaluation, candidate, detail, VIEW);
          for (const anchor of anchors) expect(order).toContain(sequence.stepOfNote(anchor, detail));
        }
      }),
      RUNS,
    );
  });

  it('lay what is above never before what is below', () => {
    fc.assert(
      fc.property(anySketch, (wanted) => {
        const { edge, sequence, bodies } = bodiesOf(wanted, 'eave');
        const order = [STANDING, ...sequence.steps.map(({ id }) => id)];
        const places = edge.stack.map(({ layerId }) =>
          Math.max(
            ...bodies
              .filter((body) => body.layerId === layerId && /^[a-z]+(-[a-z0-9]+)?$/.test(body.id))
              .map((body) => order.indexOf(sequence.stepOf(body, 'eave'))),
            0,
          ),
        );
        const present = places.filter((place) => place > 0);
        expect(present).toEqual([...present].sort((a, b) => a - b));
      }),
      RUNS,
    );
  });
});

describe('the steps of the ordinary roofs', () => {
  const stepOf = (wanted: Sketch, id: string): string => {
    const { bodies, sequence } = bodiesOf(wanted, 'eave');
    const body = bodies.find((each) => each.id === id);
    if (body === undefined) throw new Error(`no ${id}`);
    return sequence.stepOf(body, 'eave');
  };

  it('screw boards down through the furring, and panels in a step of their own', () => {
    expect(stepOf(ordinary['rafter-overhang'], 'long-screw-1')).toBe('furring');
    expect(stepOf({ ...ordinary['rafter-overhang'], ventilation: 'unvented' }, 'long-screw-1')).toBe(
      'upper-deck',
    );
    expect(stepOf(ordinary['prebonded-panel'], 'long-screw-1')).toBe('panel-screws');
  });

  it('set the outrigger before the boards that it pierces', () => {
    const { sequence } = work(ordinary['flush-outriggers']);
    const ids = sequence.steps.map(({ id }) => id);
    expect(ids.indexOf('outriggers')).toBeGreaterThan(ids.indexOf('membrane'));
    expect(ids.indexOf('outriggers')).toBeLessThan(ids.indexOf('boards'));
    expect(stepOf(ordinary['flush-outriggers'], 'outrigger')).toBe('outriggers');
  });

  it('find deck, fill and ceiling standing on a re-roof, and build them on a new roof', () => {
    const reroof = { ...ordinary['rafter-overhang'], case: { project: { kind: 're-roof' as const } } };
    expect([stepOf(reroof, 'deck'), stepOf(reroof, 'cavity')]).toEqual([STANDING, STANDING]);
    expect([
      stepOf(ordinary['rafter-overhang'], 'deck'),
      stepOf(ordinary['rafter-overhang'], 'cavity'),
    ]).toEqual(['deck', 'inside']);
  });

  it('refuse a step that the work has not', () => {
    const { edge, sequence } = bodiesOf(ordinary['rafter-overhang'], 'eave');
    expect(() => stageAt(sequence, edge, 'panels')).toThrow(RangeError);
    expect(() => sequence.stepOf({ id: 'balloon', layerId: null }, 'eave')).toThrow(/balloon/);
  });

  it('name what a step adds', () => {
    const { edge, sequence } = bodiesOf(ordinary['rafter-overhang'], 'eave');
    expect(addedBy(sequence, edge, 'trim')).toEqual(['fascia', 'soffit', 'gutter']);
    expect(addedBy(sequence, edge, 'meeting')).toEqual([]);
  });
});

describe('the sheet of a step', () => {
  const groups = (shapes: readonly Shape[]): { id: string; isHighlighted: boolean }[] =>
    shapes.flatMap((shape) => (shape.kind === 'group' ? [shape, ...groups(shape.shapes)] : []));
  const sheetOf = (stage?: string) => {
    const { evaluation, candidate } = work(ordinary['flush-outriggers']);
    return detailSheet(evaluation, candidate, 'eave', {
      system: 'IP',
      width_mm: 280,
      height_mm: 165,
      ...(stage === undefined ? {} : { stage }),
    });
  };

  it('stands at the same place and scale as the whole section', () => {
    expect(sheetOf('outriggers').placement).toEqual(sheetOf().placement);
  });

  it('draws what is there, lights what is new and leaves out what is to come', () => {
    const drawn = groups(sheetOf('outriggers').shapes);
    const find = (id: string) => drawn.find((each) => each.id === id);
    expect(find('outrigger')?.isHighlighted).toBe(true);
    expect(find('deck')?.isHighlighted).toBe(false);
    expect(find('covering')).toBeUndefined();
    expect(find('note-part-outrigger')?.isHighlighted).toBe(true);
    expect(find('note-covering')).toBeUndefined();
  });

  it('writes dimensions only when every body is in its place', () => {
    const count = (stage?: string): number => {
      const all = sheetOf(stage).shapes.find((s) => s.kind === 'group' && s.id === 'dimensions');
      return all?.kind === 'group' ? [...leaves(all.shapes)].length : 0;
    };
    expect(count('outriggers')).toBe(0);
    expect(count('handover')).toBe(count());
    expect(count()).toBeGreaterThan(0);
  });

  it('lists the marks that it draws and no other', () => {
    const { evaluation, candidate } = work(ordinary['flush-outriggers']);
    const size = { system: 'IP' as const, width_mm: 130, height_mm: 118, isCompact: true };
    const sheet = detailSheet(evaluation, candidate, 'eave', { ...size, stage: 'outriggers' });
    const drawn = groups(sheet.shapes).flatMap(({ id }) => (id.startsWith('note-') ? [id.slice(5)] : []));
    expect(sheet.notes.map(({ id }) => id).sort()).toEqual(drawn.sort());
    expect(drawn).toContain('part-outrigger');
    expect(drawn).not.toContain('part-fascia');
  });

  it('shows the covering of today until it is stripped, and never on a new roof', () => {
    const reroof = { ...ordinary['rafter-overhang'], case: { project: { kind: 're-roof' as const } } };
    const hasOld = (wanted: Sketch, stage: string): boolean => {
      const { evaluation, candidate } = work(wanted);
      const options = { system: 'SI' as const, width_mm: 280, height_mm: 165, stage };
      return groups(detailSheet(evaluation, candidate, 'eave', options).shapes).some(
        ({ id }) => id === 'before',
      );
    };
    expect([STANDING, 'survey', 'strip', 'membrane'].map((stage) => hasOld(reroof, stage))).toEqual([
      true,
      true,
      false,
      false,
    ]);
    expect(hasOld(ordinary['rafter-overhang'], STANDING)).toBe(false);
  });

  it('breaks the roof only as high as it is built', () => {
    const height = (stage?: string): number => {
      const breaks = sheetOf(stage).shapes.find((s) => s.kind === 'group' && s.id === 'breaks');
      const first = breaks?.kind === 'group' ? [...leaves([breaks])][0] : undefined;
      return first?.kind === 'polyline'
        ? Math.max(...first.points.map(({ y }) => y)) - Math.min(...first.points.map(({ y }) => y))
        : 0;
    };
    expect(height('membrane')).toBeGreaterThan(0);
    expect(height('membrane')).toBeLessThan(height('boards'));
    expect(height('boards')).toBeLessThan(height());
  });

  it('says its step in the title and in words', () => {
    const sheet = sheetOf('membrane');
    expect(sheet.title).toContain('Air and vapor layer on the deck');
    expect(sheet.description.join(' ')).toContain('New in this step');
  });
});
