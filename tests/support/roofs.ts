/** Cases to test with: the demo library, and a plain invented roof that a test changes in one place. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Case } from '../../src/case/case.ts';
import { complete, type CompleteCase } from '../../src/case/complete.ts';
import { withValueAt } from '../../src/case/paths.ts';
import { zoneOf } from '../../src/case/place.ts';
import type { StrategyId } from '../../src/catalog/sets.ts';
import { evaluate } from '../../src/evaluate.ts';
import type { Candidate, Climate, Evaluation, Layer } from '../../src/evaluation/evaluation.ts';
import type { Setting } from '../../src/judgement/judge.ts';
import { assemble } from '../../src/roof/assembly.ts';
import type { BoardStack } from '../../src/roof/boards.ts';
import type { Draft } from '../../src/roof/draft.ts';
import { requirementsOf } from '../../src/roof/requirements.ts';
import { climateOf } from '../../src/roof/site.ts';
import { withWinterResistance } from '../../src/roof/heat/winter.ts';
import type { Variant } from '../../src/roof/variant.ts';
import { buildCandidate } from '../../src/strategies/index.ts';

const folder = fileURLToPath(new URL('../../content/scenarios/', import.meta.url));
export const scenarioNames: readonly string[] = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.replace('.json', ''))
  .sort();
export const scenario = (name: string): Case =>
  JSON.parse(readFileSync(`${folder}${name}.json`, 'utf8')) as Case;

const evaluated = new Map<string, Evaluation>();
/** The evaluation of a scenario, computed once for each test file. */
export function evaluationOf(name: string): Evaluation {
  const known = evaluated.get(name) ?? evaluate(scenario(name));
  evaluated.set(name, known);
  return known;
}

/** Changes by dotted path; `undefined` takes an answer away. */
export type Changes = Readonly<Record<string, unknown>>;
export const changed = (given: Case, changes: Changes): Case =>
  Object.entries(changes).reduce((one, [path, value]) => withValueAt(one, path, value), given);

/** Months of an invented place: the three coldest average −6 °C. */
export const coldMonths_C = [-8, -6, 0, 6, 12, 18, 21, 20, 15, 9, 2, -4];
const humidity_pct = [74, 72, 68, 65, 68, 71, 73, 75, 76, 73, 74, 76];

/** An invented re-roof in zone 6A, 6:12 gable 12 m by 8 m, 2x6 rafters at 400 mm, R-19 below. */
export const plainCase: Case = {
  overdeck: 1,
  project: { kind: 're-roof', role: 'builder' },
  place: {
    zone: '6A',
    monthlyTemperature_C: coldMonths_C,
    monthlyRelativeHumidity_pct: humidity_pct,
  },
  codes: { edition: '2021', iceBarrierRequired: true },
  roof: {
    shape: 'gable',
    pitch_rise_per_12: 6,
    length_m: 12,
    width_m: 8,
    eaveHeight_m: 3,
    valleys: 0,
    dormers: 0,
    skylights: 0,
    chimneys: 0,
    penetrations: 0,
  },
  framing: {
    kind: 'rafter',
    depth_m: 0.14,
    width_m: 0.04,
    spacing_m: 0.4,
    deck: 'plywood',
    deckThickness_m: 0.016,
    deckSeenFromBelow: false,
  },
  belowDeck: {
    attic: 'cathedral',
    fill: 'glass-fiber-batt',
    fillResistance_m2K_W: 3.3,
    ceiling: 'gypsum',
    interiorRetarder: 'latex-paint',
  },
  indoor: { temperature_C: 20, relativeHumidity_pct: 35, airtightness: 'ordinary' },
  overhang: {
    eave_m: 0.4,
    rake_m: 0.3,
    carriedToday: 'rafter-tails',
    tails: 'may-cut',
    iceDams: 'sometimes',
  },
  profile: { cut: 'plumb', look: 'no-preference' },
  wall: { airBarrier: 'taped-sheathing', thickness_m: 0.16, cladding: 'comes-off' },
  covering: { kind: 'asphalt-shingle' },
  loads: { groundSnow_Pa: 1500, basicWindSpeed_m_s: 50, exposure: 'C', seismicCategory: 'B' },
  work: {
    crew: 'framer-and-roofer',
    experience: 'some',
    lift: true,
    schedule: 'ordinary',
    weather: 'mixed',
    budget: 'middle',
    engineer: 'can-be-hired',
    panelSupply: 'can-be-ordered',
  },
};

export const completed = (changes: Changes = {}): CompleteCase => {
  const given = changed(plainCase, changes);
  return complete(given, zoneOf(given).zone).completed;
};

export function settingOf(changes: Changes = {}): Setting {
  const case_ = changed(plainCase, changes);
  const zone = zoneOf(case_);
  const given = complete(case_, zone.zone).completed;
  const climate = climateOf(case_, zone);
  return { given, climate, requirements: requirementsOf(given, climate) };
}

export const variant = (changes: Partial<Variant> = {}): Variant => ({
  strategy: 'rafter-overhang',
  board: 'eps',
  baseBoard: null,
  ventilation: 'vented-furring',
  underlayment: 'vapor-open',
  carrier: 'rafter-tails',
  ...changes,
});

export const flush: Partial<Variant> = { strategy: 'flush-outriggers', carrier: 'outriggers' };
export const panel: Partial<Variant> = { strategy: 'prebonded-panel', ventilation: 'panel-gap' };

export function draftOf(changes: Changes = {}, of: Partial<Variant> = {}): Draft {
  const { given, climate, requirements } = settingOf(changes);
  return buildCandidate(given, variant(of), climate, requirements);
}

export const candidateOf = (changes: Changes = {}, of: Partial<Variant> = {}): Draft['candidate'] =>
  draftOf(changes, of).candidate;

/** Layers of a variant with a stack of the test's own, winter resistance in. */
export function layersWith(
  stack: BoardStack,
  changes: Changes = {},
  of: Partial<Variant> = {},
  climate?: Climate,
): Layer[] {
  const setting = settingOf(changes);
  return withWinterResistance(
    assemble(setting.given, variant(of), stack),
    climate ?? setting.climate,
    setting.given.indoor.temperature_C,
  );
}

export const boardsOf = (layers: readonly Layer[]): Layer[] =>
  layers.filter(({ role }) => role === 'insulation');

export const layerOf = (layers: readonly Layer[], id: string): Layer => {
  const found = layers.find((layer) => layer.id === id);
  if (!found) throw new RangeError(`no layer ${id}`);
  return found;
};

export const ofStrategy = (evaluation: Evaluation, strategy: StrategyId): Candidate[] =>
  evaluation.candidates.filter((candidate) => candidate.strategy === strategy);

export const candidateById = (evaluation: Evaluation, id: string | null | undefined): Candidate => {
  const found = evaluation.candidates.find((candidate) => candidate.id === id);
  if (!found) throw new RangeError(`no candidate ${id}`);
  return found;
};

/** Every number below a value that JSON cannot hold, by its path. */
export function strangeNumbers(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path}: ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => strangeNumbers(inner, `${path}.${key}`));
}
