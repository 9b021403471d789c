import { describe, expect, it } from 'vitest';
import { attributesOf } from '../../src/judgement/attributes.ts';
import { candidateFacts, deferralsOf, judge, stopsOf } from '../../src/judgement/judge.ts';
import type { Variant } from '../../src/roof/variant.ts';
import { draftOf, evaluationOf, flush, panel, settingOf, type Changes } from '../support/roofs.ts';

const attribute = (id: string, changes: Changes = {}, of: Partial<Variant> = {}) => {
  const { given, requirements } = settingOf(changes);
  const found = attributesOf(draftOf(changes, of), given, requirements).find(
    ({ criterion }) => criterion === id,
  );
  if (!found) throw new RangeError(`no attribute ${id}`);
  return found;
};
const rules = (changes: Changes, of: Partial<Variant> = {}): string[] =>
  judge(settingOf(changes), draftOf(changes, of)).candidate.excludedBy.map(({ rule }) => rule);

describe('measures of a candidate', () => {
  it('heat loss is the transmittance over that of the code', () => {
    const { requirements } = settingOf();
    const { thermal } = draftOf().candidate;
    expect(attribute('heatLoss').measure).toBe(
      thermal.transmittance_W_m2K / requirements.ceiling.transmittance_W_m2K,
    );
  });

  it('drying adds the two ways out', () => {
    const { drying } = draftOf().candidate;
    expect(attribute('drying').measure).toBe(drying.inwardPermeance_ng + drying.outwardPermeance_ng);
  });

  it('trades count as three steps each', () => {
    const { takeoff } = draftOf().candidate;
    expect(attribute('trades').measure).toBe(takeoff.steps + 3 * takeoff.trades);
  });

  it('lengths of the edge are taken to the millimeter', () => {
    const { edge } = draftOf().candidate;
    expect(attribute('edgeThickness').measure).toBe(Math.round(edge.fascia_m * 1000) / 1000);
    expect(attribute('roofRise').measure).toBe(Math.round(edge.ridgeRise_m * 1000) / 1000);
  });

  it('hold in wind is 1, with a note, on slopes that the tables leave out', () => {
    expect(attribute('windHold', { 'roof.pitch_rise_per_12': 24 })).toMatchObject({
      measure: 1,
      note: expect.stringMatching(/do not reach/) as string,
    });
    expect(attribute('windHold').note).toBeUndefined();
  });

  it.each([
    ['boards from stock', {}, {}, 7],
    ['panels by freight, and a crew new to them', {}, panel, 35 + 10],
    [
      'panels at hand, and their crew',
      { 'work.panelSupply': 'at-hand', 'work.crew': 'panel-crew' },
      panel,
      5,
    ],
    ['boards by a panel crew', { 'work.crew': 'panel-crew' }, {}, 7 + 10],
    ['panels by the owner', { 'work.crew': 'self-build' }, panel, 35],
    ['outriggers: an engineer to hire', {}, flush, 21],
    ['outriggers: an engineer at work', { 'work.engineer': 'engaged' }, flush, 7],
    ['outriggers by a roofer: a framer to find', { 'work.crew': 'roofer' }, flush, 21 + 10],
    ['outriggers by a framer', { 'work.crew': 'framer', 'work.engineer': 'engaged' }, flush, 7],
  ] as const)('waiting, %s: %s days', (_, changes, of, days) => {
    expect(attribute('availability', changes, of).measure).toBe(days);
  });

  it.each([
    ['tails: soffit to reach the bays', {}, {}, 0.5],
    ['outriggers on an open wall: soffit and fascia', {}, flush, 1],
    ['outriggers on a closed wall: the wall too', { 'wall.cladding': 'stays' }, flush, 2],
    ['tails that must go anyway', { 'overhang.tails': 'must-cut' }, flush, 0],
    ['a new roof', { 'project.kind': 'new-roof' }, flush, 0],
  ] as const)('finished edge opened, %s: %s', (_, changes, of, opened) => {
    expect(attribute('wallDisturbance', changes, of).measure).toBe(opened);
  });
});

describe('judging', () => {
  it('an excluded candidate keeps everything, with rule, reason and facts', () => {
    const closed = { 'wall.cladding': 'stays' };
    const { candidate } = judge(settingOf(closed), draftOf(closed, flush));
    expect(candidate.feasible).toBe(false);
    expect(candidate.excludedBy[0]).toMatchObject({
      rule: 'walls-stay-closed',
      reason: expect.stringMatching(/cladding stays/) as string,
    });
    expect(candidate.attributes.length).toBeGreaterThan(11);
    expect(candidate.layers.length).toBeGreaterThan(5);
  });

  it('collects every rule that holds', () => {
    expect(
      rules({ 'wall.cladding': 'stays', 'overhang.tails': 'keep', 'work.engineer': 'none' }, flush),
    ).toEqual(['walls-stay-closed', 'tails-stay', 'engineer-missing']);
  });

  it('a candidate without a rule against it is feasible', () => {
    expect(judge(settingOf(), draftOf()).candidate).toMatchObject({ feasible: true, excludedBy: [] });
  });

  it('offers use in percent to the words of rules', () => {
    const draft = draftOf({}, flush);
    expect(candidateFacts(settingOf(), draft)).toMatchObject({
      draft: { reachesGoal: true, use_pct: 100 * draft.candidate.structure.use },
    });
  });
});

describe('cautions', () => {
  const { cautions } = evaluationOf('7-budget-bunkhouse');

  it('come gravest first', () => {
    const levels = ['stop', 'strong', 'engineer', 'caution'];
    const ranks = cautions.map(({ level }) => levels.indexOf(level));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  });

  it('name the strategies whose leaders they concern, each rule once', () => {
    expect(new Set(cautions.map(({ id }) => id)).size).toBe(cautions.length);
    expect(cautions.find(({ id }) => id === 'panel-never-air-barrier')?.strategies).toEqual([
      'prebonded-panel',
    ]);
    expect(cautions.find(({ id }) => id === 'long-screws')?.strategies).toHaveLength(3);
  });

  it('of a case that stops come first', () => {
    expect(stopsOf(settingOf({ 'belowDeck.attic': 'stays-vented' }))).toMatchObject([
      { level: 'stop', strategies: ['rafter-overhang', 'flush-outriggers', 'prebonded-panel'] },
    ]);
    expect(stopsOf(settingOf())).toEqual([]);
  });
});

describe('deferrals', () => {
  it('always leave code, structure and fire to others', () => {
    const to = deferralsOf(settingOf()).map((deferral) => deferral.to);
    expect(to).toEqual(expect.arrayContaining(['code-official', 'structural-engineer', 'fire-official']));
  });

  it('add the truss designer for trusses', () => {
    const ids = (changes: Changes) => deferralsOf(settingOf(changes)).map(({ id }) => id);
    expect(ids({ 'framing.kind': 'truss' })).toContain('truss-designer');
    expect(ids({})).not.toContain('truss-designer');
  });
});
