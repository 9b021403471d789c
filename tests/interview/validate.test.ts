import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { readCase } from '../../src/case/read.ts';
import { answersOf, withPatch } from '../../src/interview/answers.ts';
import { caseOf, fieldSchema, validate } from '../../src/interview/validate.ts';
import { anyAnswers, allPaths, valueAtPath } from './arbitrary.ts';

describe('validate', () => {
  it.each<[string, Record<string, unknown>, string, string]>([
    [
      'a pitch above the bounds',
      { 'roof.pitch_rise_per_12': 31 },
      'roof.pitch_rise_per_12',
      '31 is above 24',
    ],
    [
      'a pitch below the bounds',
      { 'roof.pitch_rise_per_12': 1.9 },
      'roof.pitch_rise_per_12',
      '1.9 is below 2',
    ],
    ['text for a number', { 'roof.length_m': 'long' }, 'roof.length_m', 'expected a number'],
    ['NaN', { 'roof.length_m': Number.NaN }, 'roof.length_m', ''],
    ['an unknown option', { 'roof.shape': 'dome' }, 'roof.shape', '"dome" is not one of gable'],
    [
      'eleven months',
      { 'place.monthlyTemperature_C': Array(11).fill(0) },
      'place.monthlyTemperature_C',
      'exactly 12',
    ],
    ['half a valley', { 'roof.valleys': 1.5 }, 'roof.valleys', 'not a whole number'],
    ['a weight above 100', { priorities: { cost: 101 } }, 'priorities.cost', '101 is above 100'],
    ['a county of four digits', { 'place.countyFips': '1234' }, 'place.countyFips', 'five digits'],
    ['a county that no list has', { 'place.countyFips': '00000' }, 'place.countyFips', 'not a listed county'],
    ['a place that no list has', { 'place.id': 'nowhere' }, 'place.id', 'not a listed place'],
    ['a path nobody asks', { 'roof.color': 'red' }, 'roof.color', 'not asked'],
    ['the format version', { overdeck: 2 }, 'overdeck', 'not asked'],
  ])('refuses %s at its path', (_, patch, path, message) => {
    const faults = validate(patch);
    expect(faults.map((fault) => fault.path)).toContain(path);
    expect(faults.map((fault) => fault.message).join()).toContain(message);
  });

  it('collects every fault of a patch and lets an answer be taken back', () => {
    expect(validate({ 'roof.shape': 'dome', 'roof.length_m': 0 })).toHaveLength(2);
    expect(validate({ 'roof.shape': undefined })).toEqual([]);
  });

  it('lets every valid value of every path through', () => {
    for (const path of allPaths) {
      for (const value of fc.sample(valueAtPath(path), { numRuns: 20, seed: 3 })) {
        expect(validate({ [path]: value }), path).toEqual([]);
      }
    }
  });

  it('knows no schema for names that every object has', () => {
    expect(fieldSchema('constructor')).toBeUndefined();
    expect(fieldSchema('roof.__proto__')).toBeUndefined();
  });
});

describe('caseOf', () => {
  const placed = withPatch({}, { 'place.zone': '6A' });

  it('asks for the place, because nothing can be computed without one', () => {
    const read = caseOf({});
    expect(read.ok).toBe(false);
    expect(read.ok ? [] : read.faults.map((fault) => fault.path)).toEqual(['place']);
  });

  it('gives a case that holds the answers', () => {
    expect(caseOf(withPatch(placed, { 'roof.shape': 'hip', 'roof.valleys': 0 }))).toMatchObject({
      ok: true,
      value: { overdeck: 1, place: { zone: '6A' }, roof: { shape: 'hip', valleys: 0 } },
    });
  });

  it('leaves out what no longer applies, and a stock of board that is half described', () => {
    const read = caseOf(
      withPatch(placed, {
        'framing.kind': 'truss',
        'overhang.tails': 'may-cut',
        'insulation.stock.board': 'eps',
        'insulation.stock.thickness_m': 0.05,
      }),
    );
    expect(read.ok && read.value.overhang).toBeUndefined();
    expect(read.ok && read.value.insulation).toBeUndefined();
  });

  it('puts in what follows, so that no default contradicts the answers', () => {
    const read = caseOf(withPatch(placed, { 'framing.deckSeenFromBelow': true, 'roof.shape': 'hip' }));
    expect(read).toMatchObject({
      value: {
        belowDeck: { fill: 'none', ceiling: 'deck-in-view', recessedLights: 0 },
        overhang: { rake_m: 0 },
      },
    });
  });

  it('makes a case that can be read, whatever the valid answers (any answers with a zone)', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const read = caseOf(withPatch(answers, { 'place.zone': '5A' }));
        expect(read.ok ? [] : read.faults).toEqual([]);
        if (read.ok) expect(readCase(JSON.parse(JSON.stringify(read.value)))).toMatchObject({ ok: true });
      }),
      { numRuns: 100 },
    );
  });

  it('and answersOf are inverse where every answer applies', () => {
    const given = {
      overdeck: 1 as const,
      place: { zone: '6A' as const },
      roof: { shape: 'gable' as const, valleys: 2 },
    };
    const read = caseOf(answersOf(given));
    expect(read.ok && read.value).toEqual(given);
  });
});
