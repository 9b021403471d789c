import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { withPatch, type Patch } from '../../src/interview/answers.ts';
import { contradictionRules, contradictions } from '../../src/interview/contradictions.ts';
import { stateIds } from '../../src/interview/questions.ts';
import { anyAnswers } from './arbitrary.ts';

const R = 0.1761101838;
const cold = [-12, -10, -4, 4, 11, 16, 19, 18, 13, 7, 0, -8];
const idsAfter = (patch: Patch): readonly string[] =>
  contradictions(withPatch({}, patch)).map((each) => each.id);

/** Answers that clash, and the nearest answers that do not. */
const cases: readonly (readonly [id: string, clash: Patch, clear: Patch])[] = [
  [
    'zone-against-county',
    { 'place.countyFips': '50007', 'place.zone': '4A' },
    { 'place.countyFips': '50007', 'place.zone': '6A' },
  ],
  ['zone-against-county', { 'place.id': 'us-mn-duluth', 'place.zone': '3A' }, { 'place.zone': '3A' }],
  [
    'design-temperature-too-warm',
    { 'place.designTemperature_C': -9.9, 'place.monthlyTemperature_C': cold },
    { 'place.designTemperature_C': -10, 'place.monthlyTemperature_C': cold },
  ],
  [
    'local-deck-above-local-ceiling',
    { 'codes.localAboveDeck_m2K_W': 39 * R, 'codes.localCeiling_m2K_W': 38 * R },
    { 'codes.localAboveDeck_m2K_W': 38 * R, 'codes.localCeiling_m2K_W': 38 * R },
  ],
  [
    'pitch-below-covering',
    { 'covering.kind': 'metal-panel', 'roof.pitch_rise_per_12': 2.99 },
    { 'covering.kind': 'metal-panel', 'roof.pitch_rise_per_12': 3 },
  ],
  [
    'pitch-below-covering',
    { 'covering.kind': 'slate', 'roof.pitch_rise_per_12': 3 },
    { 'covering.kind': 'asphalt-shingle', 'roof.pitch_rise_per_12': 2 },
  ],
  [
    'valley-on-plain-gable',
    { 'roof.shape': 'gable', 'roof.valleys': 1, 'roof.dormers': 0 },
    { 'roof.shape': 'gable', 'roof.valleys': 2, 'roof.dormers': 1 },
  ],
  [
    'wet-but-sound',
    { 'framing.deckCondition': 'sound', 'framing.deckMoisture_pct': 19.1 },
    { 'framing.deckCondition': 'sound', 'framing.deckMoisture_pct': 19 },
  ],
  [
    'seen-deck-with-fill',
    { 'framing.deckSeenFromBelow': true, 'belowDeck.fill': 'cellulose' },
    { 'framing.deckSeenFromBelow': true, 'belowDeck.fill': 'none' },
  ],
  [
    'seen-deck-with-fill',
    { 'belowDeck.ceiling': 'deck-in-view', 'belowDeck.fill': 'closed-cell-spray' },
    { 'belowDeck.ceiling': 'gypsum', 'belowDeck.fill': 'closed-cell-spray' },
  ],
  [
    'seen-deck-with-ceiling',
    { 'framing.deckSeenFromBelow': true, 'belowDeck.ceiling': 'gypsum' },
    { 'framing.deckSeenFromBelow': true, 'belowDeck.ceiling': 'deck-in-view' },
  ],
  [
    'seen-deck-with-ceiling',
    { 'framing.deckSeenFromBelow': false, 'belowDeck.ceiling': 'deck-in-view' },
    { 'framing.deckSeenFromBelow': false, 'belowDeck.ceiling': 'gypsum' },
  ],
  [
    'fill-deeper-than-framing',
    { 'framing.kind': 'rafter', 'framing.depth_m': 0.1397, 'belowDeck.fillDepth_m': 0.14 },
    { 'framing.kind': 'rafter', 'framing.depth_m': 0.1397, 'belowDeck.fillDepth_m': 0.1397 },
  ],
  [
    'fill-deeper-than-framing',
    { 'framing.depth_m': 0.0889, 'belowDeck.fillDepth_m': 0.3 },
    { 'framing.kind': 'truss', 'framing.depth_m': 0.0889, 'belowDeck.fillDepth_m': 0.3 },
  ],
  [
    'tight-with-open-flue',
    { 'indoor.airtightness': 'very-tight', 'indoor.appliances': 'drafting' },
    { 'indoor.airtightness': 'tight', 'indoor.appliances': 'drafting' },
  ],
  [
    'truss-tails-cut',
    { 'framing.kind': 'truss', 'overhang.tails': 'must-cut' },
    { 'framing.kind': 'truss', 'overhang.tails': 'keep' },
  ],
  [
    'truss-tails-cut',
    { 'framing.kind': 'truss', 'overhang.tails': 'may-cut' },
    { 'framing.kind': 'rafter', 'overhang.tails': 'may-cut' },
  ],
  [
    'carrier-against-framing',
    { 'framing.kind': 'truss', 'overhang.carriedToday': 'rafter-tails' },
    { 'framing.kind': 'truss', 'overhang.carriedToday': 'truss-tails' },
  ],
  [
    'carrier-against-framing',
    { 'framing.kind': 'rafter', 'overhang.carriedToday': 'truss-tails' },
    { 'framing.kind': 'rafter', 'overhang.carriedToday': 'truss-tails', 'project.kind': 'new-roof' },
  ],
  [
    'no-overhang-but-tails-stay',
    { 'overhang.carriedToday': 'none', 'overhang.tails': 'keep' },
    { 'overhang.carriedToday': 'rafter-tails', 'overhang.tails': 'keep' },
  ],
  [
    'cut-tails-but-shown',
    { 'overhang.tails': 'must-cut', 'profile.look': 'exposed-tails' },
    { 'overhang.tails': 'may-cut', 'profile.look': 'exposed-tails' },
  ],
  [
    'no-eave-but-tails-shown',
    { 'overhang.eave_m': 0, 'profile.look': 'exposed-tails' },
    { 'overhang.eave_m': 0.01, 'profile.look': 'exposed-tails' },
  ],
  [
    'i-joists-shown',
    { 'framing.kind': 'i-joist', 'profile.look': 'exposed-tails' },
    { 'framing.kind': 'i-joist', 'profile.look': 'ordinary' },
  ],
  [
    'tails-shown-in-fire-zone',
    { 'loads.wildfire': 'hazard-zone', 'profile.look': 'exposed-tails' },
    { 'loads.wildfire': 'none', 'profile.look': 'exposed-tails' },
  ],
  [
    'cut-tails-closed-wall',
    { 'overhang.tails': 'must-cut', 'wall.cladding': 'stays' },
    { 'overhang.tails': 'must-cut', 'wall.cladding': 'comes-off' },
  ],
  [
    'ice-without-snow',
    { 'overhang.iceDams': 'sometimes', 'loads.groundSnow_Pa': 0 },
    { 'overhang.iceDams': 'never', 'loads.groundSnow_Pa': 0 },
  ],
  [
    'ice-without-snow',
    { 'overhang.iceDams': 'every-winter', 'loads.groundSnow_Pa': 0 },
    { 'overhang.iceDams': 'every-winter', 'loads.groundSnow_Pa': 1 },
  ],
  [
    'no-rise-at-all',
    { 'profile.ridgeRiseLimit_m': 0, 'insulation.aboveDeckTarget_m2K_W': 20 * R },
    { 'profile.ridgeRiseLimit_m': 0.01, 'insulation.aboveDeckTarget_m2K_W': 20 * R },
  ],
  [
    'no-board-left',
    { 'insulation.foamFree': true, 'insulation.refusedBoards': ['stone-wool', 'wood-fiber'] },
    { 'insulation.foamFree': true, 'insulation.refusedBoards': ['wood-fiber', 'eps'] },
  ],
  [
    'no-board-left',
    {
      'insulation.refusedBoards': [
        'polyisocyanurate',
        'xps',
        'eps',
        'graphite-eps',
        'stone-wool',
        'wood-fiber',
      ],
    },
    { 'insulation.refusedBoards': ['polyisocyanurate', 'xps', 'eps', 'graphite-eps', 'stone-wool'] },
  ],
  [
    'stock-is-foam',
    { 'insulation.foamFree': true, 'insulation.stock.board': 'xps' },
    { 'insulation.foamFree': true, 'insulation.stock.board': 'stone-wool' },
  ],
  [
    'stock-is-refused',
    { 'insulation.refusedBoards': ['xps'], 'insulation.stock.board': 'xps' },
    { 'insulation.refusedBoards': ['xps'], 'insulation.stock.board': 'eps' },
  ],
  [
    'stock-half-described',
    { 'insulation.stock.board': 'eps', 'insulation.stock.thickness_m': 0.05 },
    { 'insulation.stock.board': 'eps', 'insulation.stock.thickness_m': 0.05, 'insulation.stock.area_m2': 40 },
  ],
  [
    'part-above-whole',
    { 'insulation.aboveDeckTarget_m2K_W': 8, 'insulation.totalTarget_m2K_W': 7.9 },
    { 'insulation.aboveDeckTarget_m2K_W': 8, 'insulation.totalTarget_m2K_W': 8 },
  ],
  [
    'plastic-sheet-and-drying',
    { 'belowDeck.interiorRetarder': 'polyethylene', priorities: { drying: 70 } },
    { 'belowDeck.interiorRetarder': 'polyethylene', priorities: { drying: 69 } },
  ],
  [
    'plastic-sheet-and-drying',
    { 'belowDeck.interiorRetarder': 'polyethylene', priorities: { drying: 100 } },
    { 'belowDeck.interiorRetarder': 'smart-membrane', priorities: { drying: 100 } },
  ],
  [
    'vented-but-refused',
    { 'covering.ventWish': 'vented', 'covering.refusedVentilations': ['vented-furring', 'panel-gap'] },
    { 'covering.ventWish': 'vented', 'covering.refusedVentilations': ['vented-furring', 'unvented'] },
  ],
  [
    'unvented-but-refused',
    { 'covering.ventWish': 'unvented', 'covering.refusedVentilations': ['unvented', 'drainage-mat'] },
    { 'covering.ventWish': 'unvented', 'covering.refusedVentilations': ['unvented'] },
  ],
  [
    'no-way-left',
    { 'covering.refusedVentilations': ['unvented', 'vented-furring', 'drainage-mat', 'panel-gap'] },
    { 'covering.refusedVentilations': ['unvented', 'vented-furring', 'drainage-mat'] },
  ],
  [
    'panel-crew-without-panel',
    { 'work.crew': 'panel-crew', 'work.panelSupply': 'not-available' },
    { 'work.crew': 'panel-crew', 'work.panelSupply': 'can-be-ordered' },
  ],
  [
    'panel-crew-without-panel',
    { 'work.crew': 'panel-crew', 'covering.refusedVentilations': ['panel-gap'] },
    { 'work.crew': 'roofer', 'covering.refusedVentilations': ['panel-gap'] },
  ],
  [
    'crew-of-strangers',
    { 'work.crew': 'panel-crew', 'work.experience': 'none' },
    { 'work.crew': 'panel-crew', 'work.experience': 'some' },
  ],
];

describe('contradictions', () => {
  it.each(cases)('%s is said for %o and not for %o', (id, clash, clear) => {
    expect(idsAfter(clash)).toContain(id);
    expect(idsAfter(clear)).not.toContain(id);
  });

  it('are at least 10, each with tests on both sides, each on pages that exist', () => {
    expect(contradictionRules.length).toBeGreaterThanOrEqual(10);
    expect(new Set(contradictionRules.map((rule) => rule.id)).size).toBe(contradictionRules.length);
    expect([...new Set(cases.map(([id]) => id))].sort()).toEqual(
      contradictionRules.map((rule) => rule.id).sort(),
    );
    for (const rule of contradictionRules) {
      for (const page of rule.questions) expect(stateIds).toContain(page);
    }
  });

  it('are none while nothing is answered', () => {
    expect(contradictions({})).toEqual([]);
  });

  it('speak in the units of the reader', () => {
    const answers = withPatch({}, { 'framing.depth_m': 0.1397, 'belowDeck.fillDepth_m': 0.1905 });
    expect(contradictions(answers)[0]?.text).toContain('7 1/2 in deep');
    expect(contradictions(answers, 'SI')[0]?.text).toContain('191 mm deep');
  });

  it('are whole sentences without gaps (any answers)', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        for (const { text } of contradictions(answers)) {
          expect(text).toMatch(/^[A-Z].*\.$/);
          expect(text).not.toMatch(/undefined|NaN|null|\{|\}/);
        }
      }),
      { numRuns: 100 },
    );
  });
});
