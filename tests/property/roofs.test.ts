/** Laws of heat and moisture for whole roofs: the demo library, and any case that a person could hand in. */
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { boards } from '../../src/catalog/sets.ts';
import { DAYS_OF_MONTHS } from '../../src/physics/climate.ts';
import { condensationYear } from '../../src/physics/iso13788.ts';
import { monthBalance, moistureModel, vaporPoints } from '../../src/physics/moistureBalance.ts';
import { evaluate } from '../../src/evaluate.ts';
import type { Candidate, Evaluation } from '../../src/evaluation/evaluation.ts';
import { planeMonthsOf } from '../../src/roof/heat/planes.ts';
import { heatedRoofOf } from '../../src/roof/measures.ts';
import { indoorAirOf } from '../../src/roof/moisture/indoorAir.ts';
import { assemblyOf, monthsOf, roomSide } from '../../src/roof/moisture/layers.ts';
import { moistureOf } from '../../src/roof/moisture/condensation.ts';
import { anyCase } from '../support/anyCase.ts';
import { relaxedRates } from '../support/relaxation.ts';
import {
  candidateById,
  evaluationOf,
  layersWith,
  scenarioNames,
  settingOf,
  type Changes,
} from '../support/roofs.ts';

vi.setConfig({ testTimeout: 240_000 });

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function heatAddsUp({ thermal }: Candidate): void {
  const whole = sum(thermal.losses.map((loss) => loss.transmittance_W_m2K));
  expect(Math.abs(whole - thermal.transmittance_W_m2K)).toBeLessThanOrEqual(1e-12);
  expect(sum(thermal.losses.map((loss) => loss.share_pct))).toBeCloseTo(100, 9);
  // Wood may insulate better than a cavity whose fill is worth nothing: framing alone may gain.
  for (const loss of thermal.losses)
    if (loss.id !== 'framing') expect(loss.transmittance_W_m2K).toBeGreaterThanOrEqual(-1e-12);
  const byZone = sum(thermal.zones.map((zone) => (zone.share_pct / 100) * zone.transmittance_W_m2K));
  const extra = sum(
    thermal.losses
      .filter(({ id }) => id === 'screws' || id === 'air-voids')
      .map((loss) => loss.transmittance_W_m2K),
  );
  expect(byZone + extra).toBeCloseTo(whole, 12);
}

function limitsInOrder({ thermal }: Candidate): void {
  const { lowerLimit_m2K_W, resistance_m2K_W, upperLimit_m2K_W } = thermal.combined;
  expect(lowerLimit_m2K_W).toBeLessThanOrEqual(resistance_m2K_W + 1e-12);
  expect(resistance_m2K_W).toBeLessThanOrEqual(upperLimit_m2K_W + 1e-12);
  for (const zone of thermal.zones)
    expect(zone.combined_W_m2K).toBeGreaterThanOrEqual(zone.transmittance_W_m2K - 1e-12);
}

function yearInOrder({ moisture }: Candidate): void {
  const start = (moisture.startMonth ?? 1) - 1;
  for (const plane of moisture.planes) {
    let held = 0;
    for (let step = 0; step < 12; step++) {
      const month = (start + step) % 12;
      held = Math.max(0, held + (plane.monthly_kg_m2[month] ?? 0));
      expect(Math.abs(held - (plane.accumulated_kg_m2[month] ?? 0))).toBeLessThan(1e-7);
    }
    expect(Math.max(...plane.accumulated_kg_m2)).toBeCloseTo(plane.peak_kg_m2, 8);
    expect(plane.meetsLimit).toBe(plane.peak_kg_m2 <= plane.limit_kg_m2);
  }
}

function dryingAddsUp({ drying, moisture }: Candidate): void {
  for (const place of drying.places) {
    expect(place.remaining_kg_m2).toHaveLength(place.monthsToDry ?? place.limit_months);
    expect(place.elsewhere_kg_m2).toHaveLength(place.remaining_kg_m2.length);
    expect(place.remaining_kg_m2.at(-1) === 0).toBe(place.monthsToDry !== null);
    expect(place.left_kg_m2 > 0).toBe(place.leftAfter !== null);
  }
  expect(moisture.meetsLimit).toBe(moisture.planes.every((plane) => plane.meetsLimit));
}

const lawful = (evaluation: Evaluation): void => {
  for (const candidate of evaluation.candidates) {
    heatAddsUp(candidate);
    limitsInOrder(candidate);
    yearInOrder(candidate);
    dryingAddsUp(candidate);
    const { moisture } = candidate;
    for (const point of moisture.profile.points.slice(1, -1))
      expect(point.vaporPressure_Pa).toBeLessThanOrEqual(Math.max(point.saturationPressure_Pa, 0) + 0.2);
  }
};

describe('every candidate of the demo library', () => {
  it.each(scenarioNames)('%s: losses add up, limits are in order, masses balance by month', (name) => {
    lawful(evaluationOf(name));
  });

  it.each(scenarioNames)('%s: the zones cover the roof over the heated rooms once', (name) => {
    const evaluation = evaluationOf(name);
    const heated = heatedRoofOf(evaluation.case as Parameters<typeof heatedRoofOf>[0]).area_m2;
    for (const { thermal } of evaluation.candidates)
      expect(sum(thermal.zones.map((zone) => zone.area_m2))).toBeCloseTo(heated, 9);
  });
});

describe('any valid case', () => {
  it('keeps the same laws', () => {
    fc.assert(
      fc.property(anyCase, (given) => lawful(evaluate(given))),
      { numRuns: 3, endOnFailure: true },
    );
  });
});

const thickness = fc.double({ min: 0.0254, max: 0.25, noNaN: true });
const board = fc.constantFrom(...boards);

describe('more board above (1 to 10 in of any board)', () => {
  it('never cools the deck in any month that is colder outdoors than in', () => {
    const { given, climate } = settingOf();
    const deckOf = (id: (typeof boards)[number], thickness_m: number) =>
      planeMonthsOf(given, layersWith([{ board: id, thickness_m }], {}, { board: id }), climate).find(
        (plane) => plane.id === 'deck-underside',
      )?.temperature_C ?? [];
    fc.assert(
      fc.property(board, thickness, thickness, (id, one, other) => {
        const thin = deckOf(id, Math.min(one, other));
        const thick = deckOf(id, Math.max(one, other));
        climate.monthlyTemperature_C.forEach((outdoor_C, month) => {
          if (outdoor_C < given.indoor.temperature_C)
            expect(thick[month]).toBeGreaterThanOrEqual((thin[month] ?? 0) - 2e-4);
        });
      }),
      { numRuns: 60 },
    );
  });
});

const peakOf = (changes: Changes, sheet_ng: number | null, thickness_m: number): number => {
  const { given, climate } = settingOf(changes);
  const layers = layersWith([{ board: 'eps', thickness_m }], changes, { ventilation: 'unvented' }).map(
    (layer) =>
      layer.id === 'underlayment' && sheet_ng !== null ? { ...layer, permeance_ng: sheet_ng } : layer,
  );
  const found = moistureOf(given, layers, climate, planeMonthsOf(given, layers, climate));
  return Math.max(0, ...found.planes.filter(({ after }) => after === 'upper-deck').map((p) => p.peak_kg_m2));
};

describe('the underlayment of an unvented roof (2 to 3,000 ng/(Pa·s·m²))', () => {
  it('a tighter one never lowers the peak under it', () => {
    const humid: Changes = { 'indoor.relativeHumidity_pct': 50, 'belowDeck.interiorRetarder': 'none' };
    const permeance = fc.double({ min: 2, max: 3000, noNaN: true });
    fc.assert(
      fc.property(permeance, permeance, thickness, (one, other, thickness_m) => {
        const tight = peakOf(humid, Math.min(one, other), thickness_m);
        const open = peakOf(humid, Math.max(one, other), thickness_m);
        expect(tight).toBeGreaterThanOrEqual(open - 1e-9);
      }),
      { numRuns: 40 },
    );
  });
});

describe('two equal layers of board', () => {
  it('changed places, change nothing', () => {
    const { given, climate } = settingOf();
    const stack = [
      { board: 'eps', thickness_m: 0.0508 },
      { board: 'eps', thickness_m: 0.0508 },
    ] as const;
    const layers = layersWith(stack);
    const first = layers.findIndex(({ id }) => id === 'insulation-1');
    const swapped = layers.map((layer, index) =>
      index === first
        ? { ...layer, ...layers[first + 1], id: layer.id }
        : index === first + 1
          ? { ...layer, ...layers[first], id: layer.id }
          : layer,
    );
    const of = (list: typeof layers) => {
      const planes = planeMonthsOf(given, list, climate);
      return [planes, moistureOf(given, list, climate, planes)];
    };
    expect(of(swapped)).toEqual(of(layers));
  });
});

describe('the relaxation of the tests agrees with real roofs of the demo library to 0.1 g/m²', () => {
  let most_kg_m2 = 0;
  it.each(scenarioNames.filter((name) => evaluationOf(name).ranking.recommended !== null))('%s', (name) => {
    const evaluation = evaluationOf(name);
    const candidate = candidateById(evaluation, evaluation.ranking.recommended);
    // Humid rooms, so that there is water to compare.
    const given = {
      ...evaluation.case,
      indoor: { ...evaluation.case.indoor, relativeHumidity_pct: 60 },
    } as Parameters<typeof monthsOf>[0];
    const months = monthsOf(given, evaluation.climate, indoorAirOf(given, evaluation.climate));
    const inner = roomSide(candidate.layers);
    const assembly = assemblyOf(given, inner, inner.length < candidate.layers.length);
    const model = moistureModel(assembly);
    const { startIndex } = condensationYear(assembly, months);
    let held: readonly number[] = model.sites.map(() => 0);
    let relaxed = held;
    for (let step = 0; step < 12; step++) {
      const month = (startIndex + step) % 12;
      const conditions = months[month];
      if (conditions === undefined) throw new RangeError('a month is missing');
      const days = DAYS_OF_MONTHS[month] ?? 0;
      const rates = relaxedRates(
        vaporPoints(
          model,
          conditions,
          relaxed.map((mass) => (mass > 1e-7 ? mass : 0)),
        ),
      );
      relaxed = relaxed.map((mass, site) => Math.max(0, mass + (rates[site + 1] ?? 0) * days * 86400));
      held = monthBalance(model, conditions, held, days).held_kg_m2;
      const off = Math.max(0, ...held.map((mass, site) => Math.abs(mass - (relaxed[site] ?? 0))));
      expect(off).toBeLessThan(1e-4);
      most_kg_m2 = Math.max(most_kg_m2, ...held);
    }
  });

  it('with water to compare', () => {
    expect(most_kg_m2).toBeGreaterThan(0.01);
  });
});
