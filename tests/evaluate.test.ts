import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it, vi } from 'vitest';
import type { Case } from '../src/case/case.ts';
import { readCase } from '../src/case/read.ts';
import { placeById } from '../src/catalog/places.ts';
import { evaluate, UnplacedCaseError } from '../src/evaluate.ts';
import { evaluationSchema, type Evaluation } from '../src/evaluation/evaluation.ts';
import { criteria } from '../src/judgement/criteria.ts';
import { anyCase } from './support/anyCase.ts';
import {
  changed,
  evaluationOf,
  plainCase,
  scenario,
  scenarioNames,
  strangeNumbers,
  type Changes,
} from './support/roofs.ts';

vi.setConfig({ testTimeout: 240_000 });

const ofPlain = (changes: Changes = {}): Evaluation => evaluate(changed(plainCase, changes));

/** Faults of an evaluation as a file: its schema, and numbers that JSON cannot hold. */
function faultsOf(evaluation: Evaluation): string[] {
  const parsed = v.safeParse(evaluationSchema, evaluation);
  const broken = parsed.success
    ? []
    : parsed.issues.map((issue) => `${v.getDotPath(issue)}: ${issue.message}`);
  return [...broken, ...strangeNumbers(evaluation)];
}

describe.each(scenarioNames)('the evaluation of %s', (name) => {
  it('fits its schema and holds no number that JSON cannot', () => {
    expect(faultsOf(evaluationOf(name))).toEqual([]);
  });

  it('is the same bytes every time, JSON loses nothing of it, and the case stays as it was', () => {
    const first = JSON.stringify(evaluationOf(name));
    const given = scenario(name);
    expect(JSON.stringify(evaluate(given))).toBe(first);
    expect(JSON.parse(first)).toEqual(evaluationOf(name));
    expect(given).toEqual(scenario(name));
  });
});

describe('any valid case', () => {
  it('is evaluated without an error, fits the schema, has finite numbers and the same bytes twice', () => {
    fc.assert(
      fc.property(anyCase, (given) => {
        const evaluation = evaluate(given);
        expect(faultsOf(evaluation)).toEqual([]);
        expect(JSON.stringify(evaluate(structuredClone(given)))).toBe(JSON.stringify(evaluation));
      }),
      { numRuns: 8 },
    );
  });

  it('of the least answers is evaluated as well', () => {
    const least: Case = { overdeck: 1, place: { zone: '5A' } };
    const evaluation = evaluate(least);
    expect(evaluation.ranking.recommended).not.toBeNull();
    expect(evaluation.assumptions.length).toBeGreaterThan(40);
  });

  it('with every priority at 0 is still ranked', () => {
    const priorities = Object.fromEntries(criteria.map(({ id }) => [`priorities.${id}`, 0]));
    expect(ofPlain(priorities).ranking.recommended).not.toBeNull();
  });
});

describe('the case in the evaluation', () => {
  it('is complete and valid: evaluating it again assumes nothing and finds the same ranking', () => {
    const first = evaluate({ overdeck: 1, place: { zone: '6A' } });
    expect(readCase(first.case).ok).toBe(true);
    const again = evaluate(first.case);
    expect(again.assumptions).toEqual([]);
    expect(again.ranking).toEqual(first.ranking);
  });
});

describe('hints of the place', () => {
  const snow = (changes: Changes) => ofPlain({ place: { id: 'us-mn-duluth' }, ...changes });

  it('snow that the place lists is taken, and said to be an assumption', () => {
    const found = snow({ 'loads.groundSnow_Pa': undefined });
    const listed = placeById('us-mn-duluth')?.groundSnow_Pa;
    expect(found.case.loads?.groundSnow_Pa).toBe(listed);
    expect(found.assumptions[0]).toMatchObject({
      path: 'loads.groundSnow_Pa',
      question: 'snow',
      value: listed,
    });
    expect(found.assumptions.filter(({ path }) => path === 'loads.groundSnow_Pa')).toHaveLength(1);
  });

  it('snow that is given stays', () => {
    const found = snow({ 'loads.groundSnow_Pa': 1234 });
    expect(found.case.loads?.groundSnow_Pa).toBe(1234);
    expect(found.assumptions.map(({ path }) => path)).not.toContain('loads.groundSnow_Pa');
  });
});

describe('sources', () => {
  it('are those that the parts cite, each once', () => {
    const { sources, ...parts } = evaluationOf('1-ridge-cottage');
    const ids = sources.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const text = JSON.stringify(parts);
    expect(ids.every((id) => text.includes(`"${id}"`))).toBe(true);
    expect(ids).toContain(parts.requirements.aboveDeckTable.source);
    for (const id of parts.climate.sources) expect(ids).toContain(id);
  });
});

describe('a case that no table can place', () => {
  it('is refused with every fault', () => {
    const unplaced = changed(plainCase, { place: { id: 'nowhere', countyFips: '99999' } });
    try {
      evaluate(unplaced);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(UnplacedCaseError);
      expect((error as UnplacedCaseError).name).toBe('UnplacedCaseError');
      expect((error as UnplacedCaseError).faults.map(({ path }) => path)).toEqual([
        'place.id',
        'place.countyFips',
      ]);
      expect((error as UnplacedCaseError).message).toMatch(/place\.id: .*\nplace\.countyFips: /);
    }
  });
});

/** Candidates of two evaluations of changed cases, pair by pair. */
function pairs(less: Changes, more: Changes) {
  const [first, second] = [ofPlain(less), ofPlain(more)];
  return first.candidates.map((candidate) => {
    const other = second.candidates.find(({ id }) => id === candidate.id);
    if (!other) throw new RangeError(`no ${candidate.id}`);
    return [candidate, other] as const;
  });
}

describe('laws over the whole', () => {
  const isRising = (a: number, b: number): boolean => b >= a - 1e-9;

  it('more R wanted above the deck never makes any deck colder (R 1 to 7 m²·K/W)', () => {
    const wanted = fc.double({ min: 1, max: 7, noNaN: true });
    fc.assert(
      fc.property(wanted, wanted, (a, b) => {
        const at = (r: number): Changes => ({ 'insulation.aboveDeckTarget_m2K_W': r });
        for (const [less, more] of pairs(at(Math.min(a, b)), at(Math.max(a, b))))
          expect(
            isRising(
              less.condensationControl.temperature.deck_C,
              more.condensationControl.temperature.deck_C,
            ),
          ).toBe(true);
      }),
      { numRuns: 2 },
    );
  });

  it('a steeper roof never has a lower fascia with a plumb cut (2:12 to 24:12, R wanted)', () => {
    const pitch = fc.double({ min: 2, max: 24, noNaN: true });
    fc.assert(
      fc.property(pitch, pitch, (a, b) => {
        const at = (rise: number): Changes => ({
          'insulation.aboveDeckTarget_m2K_W': 3,
          'roof.pitch_rise_per_12': rise,
        });
        for (const [flat, steep] of pairs(at(Math.min(a, b)), at(Math.max(a, b))))
          expect(isRising(flat.edge.fascia_m, steep.edge.fascia_m)).toBe(true);
      }),
      { numRuns: 2 },
    );
  });

  it('more valleys never mean less waste, cost or hours', () => {
    for (const [plain, broken] of pairs({}, { 'roof.valleys': 5 })) {
      expect(isRising(plain.takeoff.cost_USD_m2, broken.takeoff.cost_USD_m2)).toBe(true);
      expect(isRising(plain.takeoff.labor_h_m2, broken.takeoff.labor_h_m2)).toBe(true);
    }
  });

  it('more fill below never makes a deck warmer when R above is held', () => {
    const at = (r: number): Changes => ({
      'insulation.aboveDeckTarget_m2K_W': 3,
      'belowDeck.fillResistance_m2K_W': r,
    });
    for (const [thin, thick] of pairs(at(2), at(5)))
      expect(
        isRising(thick.condensationControl.temperature.deck_C, thin.condensationControl.temperature.deck_C),
      ).toBe(true);
  });

  it('a tighter fascia limit never lets a candidate in', () => {
    for (const [wide, tight] of pairs({ 'profile.fasciaLimit_m': 0.5 }, { 'profile.fasciaLimit_m': 0.25 }))
      expect(tight.feasible && !wide.feasible).toBe(false);
  });
});
