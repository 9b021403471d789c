import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { answerAt, withPatch, type Answers, type Patch } from '../../src/interview/answers.ts';
import { dependenciesOf } from '../../src/interview/dependencies.ts';
import * as guards from '../../src/interview/guards.ts';
import { pathsOf, stateIds, type AnswerPath } from '../../src/interview/questions.ts';
import {
  askedFields,
  fieldApplies,
  fieldRelevance,
  impliedValues,
  lapsed,
  questionApplies,
  stopNotice,
} from '../../src/interview/relevance.ts';
import { allPaths, anyAnswers, valueAtPath } from './arbitrary.ts';

const after = (patch: Patch): Answers => withPatch({}, patch);

describe('guards', () => {
  it.each<[keyof typeof guards & string, Patch, boolean]>([
    ['isStopped', {}, false],
    ['isStopped', { 'belowDeck.attic': 'cathedral' }, false],
    ['isStopped', { 'belowDeck.attic': 'conditioned-attic' }, false],
    ['isStopped', { 'belowDeck.attic': 'stays-vented' }, true],
    ['hasOldRoof', {}, true],
    ['hasOldRoof', { 'project.kind': 're-roof' }, true],
    ['hasOldRoof', { 'project.kind': 'new-roof' }, false],
    ['hasOldRoof', { 'project.kind': 'addition' }, false],
    ['isTrussRoof', {}, false],
    ['isTrussRoof', { 'framing.kind': 'truss' }, true],
    ['isTrussRoof', { 'framing.kind': 'i-joist' }, false],
    ['deckIsSeen', {}, false],
    ['deckIsSeen', { 'framing.deckSeenFromBelow': true }, true],
    ['deckIsSeen', { 'framing.deckSeenFromBelow': false }, false],
    ['hasCeiling', {}, true],
    ['hasCeiling', { 'belowDeck.ceiling': 'gypsum' }, true],
    ['hasCeiling', { 'belowDeck.ceiling': 'none' }, false],
    ['hasCeiling', { 'belowDeck.ceiling': 'deck-in-view' }, false],
    ['hasCeiling', { 'framing.deckSeenFromBelow': true, 'belowDeck.ceiling': 'gypsum' }, false],
    ['hasFill', {}, true],
    ['hasFill', { 'belowDeck.fill': 'none' }, false],
    ['hasFill', { 'belowDeck.fill': 'cellulose' }, true],
    ['hasFill', { 'belowDeck.fill': 'cellulose', 'framing.deckSeenFromBelow': true }, false],
    ['hasRake', {}, true],
    ['hasRake', { 'roof.shape': 'hip' }, false],
    ['hasRake', { 'roof.shape': 'gable' }, true],
    ['hasEave', {}, true],
    ['hasEave', { 'overhang.eave_m': 0 }, false],
    ['hasEave', { 'overhang.eave_m': 0.001 }, true],
    ['hasOverhang', {}, true],
    ['hasOverhang', { 'overhang.eave_m': 0 }, true],
    ['hasOverhang', { 'overhang.eave_m': 0, 'overhang.rake_m': 0 }, false],
    ['hasOverhang', { 'overhang.eave_m': 0, 'overhang.rake_m': 0.1 }, true],
    ['hasOverhang', { 'overhang.eave_m': 0, 'overhang.rake_m': 0.1, 'roof.shape': 'hip' }, false],
    ['hasOverhang', { 'overhang.eave_m': 0.1, 'overhang.rake_m': 0 }, true],
    ['hasOldOverhang', { 'overhang.eave_m': 0.4 }, true],
    ['hasOldOverhang', { 'overhang.eave_m': 0.4, 'project.kind': 'new-roof' }, false],
    ['hasTailsToCut', {}, true],
    ['hasTailsToCut', { 'framing.kind': 'truss' }, false],
    ['hasTailsToCut', { 'overhang.eave_m': 0 }, false],
    ['hasTailsToCut', { 'overhang.carriedToday': 'rafter-tails' }, true],
    ['hasTailsToCut', { 'overhang.carriedToday': 'outriggers' }, false],
    ['hasTailsToCut', { 'project.kind': 'new-roof' }, false],
    ['snowCanLie', {}, true],
    ['snowCanLie', { 'place.zone': '2A' }, true],
    ['snowCanLie', { 'place.zone': '1A' }, false],
    ['snowCanLie', { 'place.zone': '1A', 'place.elevation_m': 999 }, false],
    ['snowCanLie', { 'place.zone': '1A', 'place.elevation_m': 1000 }, true],
    ['snowCanLie', { 'place.zone': '1A', 'place.elevation_m': 1001 }, true],
    ['snowCanLie', { 'place.countyFips': '12086' }, false],
    ['snowCanLie', { 'place.countyFips': '50007' }, true],
    ['snowCanLie', { 'place.countyFips': '00000' }, true],
    ['mayNeedOutriggers', {}, true],
    ['mayNeedOutriggers', { 'overhang.eave_m': 0 }, false],
    ['mayNeedOutriggers', { 'overhang.tails': 'keep' }, false],
    ['mayNeedOutriggers', { 'overhang.tails': 'keep', 'project.kind': 'new-roof' }, true],
    ['mayBeOnHill', {}, true],
    ['mayBeOnHill', { 'loads.onHill': true }, true],
    ['mayBeOnHill', { 'loads.onHill': false }, false],
    ['hasStock', {}, false],
    ['hasReportShear', { 'insulation.screwReport.lateral_N': 90 }, true],
    ['hasStock', { 'insulation.stock.board': 'eps' }, true],
    ['goesOn', {}, true],
    ['goesOn', { 'belowDeck.attic': 'stays-vented' }, false],
  ])('%s after %o is %s', (name, patch, expected) => {
    expect(guards[name](after(patch))).toBe(expected);
  });
});

describe('what an earlier answer makes pointless', () => {
  it.each<[string, Patch, readonly AnswerPath[]]>([
    [
      'a new roof: old deck, old ducts, ice, old carrier, tails, cladding',
      { 'project.kind': 'new-roof' },
      [
        'roof.exhaustEndsInRoof',
        'framing.deckCondition',
        'framing.deckMoisture_pct',
        'overhang.carriedToday',
        'overhang.tails',
        'overhang.iceDams',
        'wall.cladding',
      ],
    ],
    ['a truss roof: cutting rafter tails', { 'framing.kind': 'truss' }, ['overhang.tails']],
    ['a hip roof: the rake', { 'roof.shape': 'hip' }, ['overhang.rake_m']],
    [
      'no overhang: its carrier, tails, added pieces and cut',
      { 'overhang.eave_m': 0, 'overhang.rake_m': 0 },
      ['overhang.carriedToday', 'overhang.tails', ...pathsOf.outriggers, 'profile.cut'],
    ],
    ['tails that stay: added pieces', { 'overhang.tails': 'keep' }, [...pathsOf.outriggers]],
    ['level ground: the factor of a hill', { 'loads.onHill': false }, ['loads.topographicFactor']],
    [
      'a deck in view: fill, ceiling, retarder, lights',
      { 'framing.deckSeenFromBelow': true },
      [
        'belowDeck.fill',
        'belowDeck.fillDepth_m',
        'belowDeck.fillResistance_m2K_W',
        'belowDeck.ceiling',
        'belowDeck.interiorRetarder',
        'belowDeck.recessedLights',
      ],
    ],
    ['the hottest zones: snow', { 'place.zone': '1A' }, [...pathsOf.snow]],
  ])('%s', (_, patch, expected) => {
    const parts: readonly AnswerPath[] = [
      'insulation.stock.thickness_m',
      'insulation.stock.area_m2',
      'insulation.screwReport.lateralGap_m',
    ];
    const gone = allPaths.filter((path) => !fieldApplies(after(patch), path));
    expect(gone.filter((path) => !parts.includes(path))).toEqual(expected);
  });

  it('nothing is skipped while nothing is known, but what belongs to a stock or a report that nobody gave', () => {
    expect(allPaths.filter((path) => !fieldApplies({}, path))).toEqual([
      'insulation.stock.thickness_m',
      'insulation.stock.area_m2',
      'insulation.screwReport.lateralGap_m',
    ]);
    expect(stateIds.filter((page) => !questionApplies({}, page))).toEqual([]);
  });

  it('an attic that stays vented ends the interview at the review, with a notice', () => {
    const answers = after({ 'belowDeck.attic': 'stays-vented' });
    expect(stateIds.filter((page) => questionApplies(answers, page))).toEqual([
      ...stateIds.slice(0, stateIds.indexOf('below-deck') + 1),
      'review',
    ]);
    expect(stopNotice(answers)?.instead).toHaveLength(2);
    expect(stopNotice({})).toBeUndefined();
  });
});

describe('lapsed answers', () => {
  it('are kept and named with page, value and reason', () => {
    const answers = after({ 'overhang.tails': 'may-cut', 'framing.kind': 'truss' });
    expect(answerAt(answers, 'overhang.tails')).toBe('may-cut');
    expect(lapsed(answers)).toEqual([
      {
        path: 'overhang.tails',
        question: 'overhang',
        value: 'may-cut',
        because: 'There are no rafter tails that could be cut.',
      },
    ]);
  });

  it('give the reason of the skipped question before that of the field', () => {
    const answers = after({ 'wall.cladding': 'stays', 'belowDeck.attic': 'stays-vented' });
    expect(lapsed(answers)[0]?.because).toContain('attic stays vented');
  });

  it('each have a reason (any answers)', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        for (const each of lapsed(answers)) expect(each.because).not.toBe('');
      }),
      { numRuns: 50 },
    );
  });
});

describe('the table of dependencies', () => {
  const anyChange = fc
    .constantFrom(...allPaths)
    .chain((path) => valueAtPath(path).map((value) => ({ path, value })));

  it(
    'names every path that can change what a page asks (any answers, any change of one path)',
    { timeout: 60_000 },
    () => {
      fc.assert(
        fc.property(anyAnswers, anyChange, (answers, { path, value }) => {
          const changed = withPatch(answers, { [path]: value });
          for (const page of stateIds) {
            if (dependenciesOf(page).includes(path)) continue;
            expect(askedFields(changed, page), `${page} on ${path}`).toEqual(askedFields(answers, page));
          }
        }),
        { numRuns: 150 },
      );
    },
  );

  it('has no idle row: every guard can be turned by a path it names', () => {
    for (const row of fieldRelevance) {
      const turned = fc
        .sample(anyAnswers, { numRuns: 200, seed: 7 })
        .some((answers) => row.applies(answers) !== row.applies({}));
      expect(turned, row.path).toBe(true);
    }
  });

  it('implied values stand only where nothing is asked, and are allowed by the case', () => {
    const implied = impliedValues(after({ 'project.kind': 'new-roof', 'framing.deckSeenFromBelow': true }));
    expect(implied).toMatchObject({
      'belowDeck.fill': 'none',
      'wall.cladding': 'new',
      'overhang.iceDams': 'never',
    });
    expect(impliedValues({})).toEqual({});
  });
});
