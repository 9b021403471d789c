/** Every rule holds on one side of its limit and not on the other; texts are filled; levels and order are kept. */
import { describe, expect, it } from 'vitest';
import { strategies, type StrategyId } from '../../src/catalog/sets.ts';
import { findings, inBothUnits, rules, type Facts, type Rule } from '../../src/judgement/rules.ts';
import { candidatePairs } from './pairs/candidateRules.ts';
import { casePairs } from './pairs/caseRules.ts';
import { at, type Pair } from './pairs/facts.ts';

const pairs: Readonly<Record<string, Pair>> = { ...casePairs, ...candidatePairs };

const isRaised = (rule: Rule, facts: Facts, strategy?: StrategyId): boolean =>
  findings(rule.effect, rule.scope, facts, strategy).some((finding) => finding.rule.id === rule.id);

const ruleOf = (id: string): Rule => {
  const found = rules.find((rule) => rule.id === id);
  if (!found) throw new RangeError(`no rule ${id}`);
  return found;
};

/** Rules that hold for every case; only deferrals may. */
const always = rules.filter((rule) => rule.when === true);
const asked = rules.filter((rule) => rule.when !== true);

describe('the pairs of facts', () => {
  it('are there for every rule with a condition, and for no other', () => {
    expect(Object.keys(pairs).sort()).toEqual(asked.map(({ id }) => id).sort());
  });

  it('have both sides', () => {
    const oneSided = Object.entries(pairs).filter(
      ([, { holds, not }]) => holds.length === 0 || not.length === 0,
    );
    expect(oneSided.map(([id]) => id)).toEqual([]);
  });
});

describe.each(asked.map((rule) => [rule.id, rule] as const))('the rule %s', (id, rule) => {
  const { holds = [], not = [] } = pairs[id] ?? {};
  const shown = (facts: Facts): string => JSON.stringify(facts);

  it.each(holds.map((facts) => [shown(facts), facts] as const))('holds for %s', (_, facts) => {
    expect(isRaised(rule, facts)).toBe(true);
  });

  it.each(not.map((facts) => [shown(facts), facts] as const))('does not hold for %s', (_, facts) => {
    expect(isRaised(rule, facts)).toBe(false);
  });
});

describe('rules without a condition', () => {
  it('are deferrals: nothing stops, excludes or warns without a reason', () => {
    expect(always.map(({ effect }) => effect)).toEqual(always.map(() => 'defer'));
  });

  it('hold whatever the case says', () => {
    expect(always.filter((rule) => !isRaised(rule, {})).map(({ id }) => id)).toEqual([]);
  });
});

describe('a rule for some strategies', () => {
  const limited = rules.filter((rule) => rule.strategies !== undefined);

  it('is left out for the others (every rule that names strategies)', () => {
    const heard = limited.flatMap((rule) =>
      (pairs[rule.id]?.holds ?? []).flatMap((facts) =>
        strategies
          .filter((strategy) => isRaised(rule, facts, strategy))
          .map((strategy) => `${rule.id} ${strategy}`),
      ),
    );
    const wanted = limited.flatMap((rule) =>
      (pairs[rule.id]?.holds ?? []).flatMap(() =>
        strategies
          .filter((strategy) => rule.strategies?.includes(strategy))
          .map((strategy) => `${rule.id} ${strategy}`),
      ),
    );
    expect(heard).toEqual(wanted);
    expect(limited.length).toBeGreaterThan(0);
  });
});

describe('a finding', () => {
  it('fills its text in inch-pound and in SI', () => {
    const [found] = findings('caution', 'case', at('case.loads.groundSnow_Pa', 2394.013)).filter(
      ({ rule }) => rule.id === 'heavy-snow',
    );
    expect(found?.text).toContain('50 psf (2.39 kPa)');
    expect(found?.facts).toEqual({ snow: 2394.013 });
  });

  it('says that a fact is not known instead of leaving a slot open', () => {
    const [found] = findings('caution', 'candidate', at('candidate.fasteners.sold', false)).filter(
      ({ rule }) => rule.id === 'screws-not-sold',
    );
    expect(found?.text).toContain('not known');
    expect(found?.facts).toEqual({ length: null });
  });

  it('shows a quantity once where both systems agree', () => {
    expect(inBothUnits('pitch', 7)).toBe('7:12');
    expect(inBothUnits('length', 0.2032)).toBe('8 in (203 mm)');
  });

  it('of a missed condensation minimum names both paths: the R of the table and the deck temperature', () => {
    const { holds = [] } = pairs['condensation-minimum-missed'] ?? {};
    const control = {
      table: { meets: false, provided_m2K_W: 1.761101838, minimum_m2K_W: 3.522203676 },
      temperature: { meets: false, deck_C: 5, limit_C: 7.222222222 },
    };
    const facts = { ...holds[0], candidate: { condensationControl: control } };
    const [found] = findings('exclude', 'candidate', facts).filter(
      ({ rule }) => rule.id === 'condensation-minimum-missed',
    );
    for (const figure of ['R-10', 'R-20', '41 °F', '45 °F']) expect(found?.text).toContain(figure);
  });

  it('of a refused board names the board, of a refused base layer the base layer', () => {
    const facts = {
      candidate: { board: 'eps', baseBoard: 'xps' },
      case: { insulation: { refusedBoards: ['xps'] } },
    };
    const [found, ...others] = findings('exclude', 'candidate', facts).filter(
      ({ rule }) => rule.question === 'insulation' && rule.id.endsWith('board-refused'),
    );
    expect(found?.text).toBe('The board of the base layer was refused: xps.');
    expect(others).toEqual([]);
  });

  it('keeps the order of the file', () => {
    const order = findings('defer', 'case', {}).map(({ rule }) => rule.id);
    expect(order).toEqual(always.map(({ id }) => id));
  });

  it('leaves no slot open wherever a rule holds', () => {
    const open = Object.values(pairs)
      .flatMap(({ holds }) => holds)
      .flatMap((facts) =>
        (['stop', 'exclude', 'caution', 'defer'] as const).flatMap((effect) =>
          (['case', 'candidate'] as const).flatMap((scope) => findings(effect, scope, facts)),
        ),
      )
      .filter(({ text }) => /[{}]/.test(text));
    expect(open.map(({ rule }) => rule.id)).toEqual([]);
  });
});

describe('limits named by a source', () => {
  it('a deck above 19 % is a strong caution, from 16 % to 19 % a caution (AITC Technical Note 20; trade practice)', () => {
    expect(ruleOf('wet-deck')).toMatchObject({ level: 'strong', source: 'AITC-TN20' });
    expect(ruleOf('damp-deck')).toMatchObject({ level: 'caution' });
  });

  it('lines that no source draws are called our judgement: high wind and heavy snow', () => {
    expect(ruleOf('high-wind').source).toBe('OUR-JUDGEMENT');
    expect(ruleOf('heavy-snow').source).toBe('OUR-JUDGEMENT');
    expect(ruleOf('heavy-snow-needs-vented-base')).toMatchObject({
      source: 'BASC-ROOF-OVER',
      text: expect.stringContaining('our judgement') as string,
    });
  });
});
