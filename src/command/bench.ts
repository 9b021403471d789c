/**
 * Measures how long the work takes, one JSON object per line: `{"name","unit","median","min","max","n"}`.
 * Ratios compare with an independent library on the same machine in the same minute: ours over theirs.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { readCaseText } from '../case/read.ts';
import type { Case } from '../case/case.ts';
import { evaluate } from '../evaluate.ts';
import { dewPointFromHumidity_C, saturationVaporPressure_Pa } from '../physics/psychrometrics.ts';
import { valueOf } from './badInput.ts';
import { root } from './place.ts';

interface Psychrolib {
  readonly SI: number;
  SetUnitSystem(system: number): void;
  GetSatVapPres(temperature_C: number): number;
  GetTDewPointFromRelHum(temperature_C: number, relativeHumidityShare: number): number;
}

const SAMPLES = 30;
/** Samples of one whole evaluation, which takes long enough to be measured alone. */
const CASE_SAMPLES = 10;
const WARM_UPS = 5;
/** Calls in one sample of a short function, so that a sample is longer than the clock's step. */
const CALLS = 2000;
const NANOSECONDS_PER_MILLISECOND = 1e6;
const MILLISECONDS_PER_SECOND = 1e3;

function elapsed_ns(work: () => void): number {
  const before = process.hrtime.bigint();
  work();
  return Number(process.hrtime.bigint() - before);
}

function samples(work: () => void): number[] {
  work();
  return Array.from({ length: CASE_SAMPLES }, () => elapsed_ns(work));
}

function report(name: string, unit: string, values: readonly number[]): void {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  const median = ((sorted[Math.ceil(middle) - 1] ?? 0) + (sorted[Math.floor(middle)] ?? 0)) / 2;
  const line = { name, unit, median, min: sorted[0], max: sorted.at(-1), n: sorted.length };
  process.stdout.write(`${JSON.stringify(line)}\n`);
}

function demoCases(): { readonly name: string; readonly roof: Case }[] {
  const folder = join(root, 'content', 'scenarios');
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => ({
      name: name.replace(/\.json$/, ''),
      roof: valueOf(readCaseText(readFileSync(join(folder, name), 'utf8')), name),
    }));
}

function benchEvaluate(): void {
  const cases = demoCases();
  if (cases.length === 0) throw new Error('content/scenarios holds no case to measure');
  const variants = cases.map(({ roof }) => evaluate(roof).candidates.length);
  const perCase: number[] = [];
  const perVariant: number[] = [];
  cases.forEach(({ roof }, index) => {
    const times_ms = samples(() => evaluate(roof)).map((time_ns) => time_ns / NANOSECONDS_PER_MILLISECOND);
    perCase.push(...times_ms);
    perVariant.push(
      ...times_ms.map((time_ms) => (time_ms * MILLISECONDS_PER_SECOND) / Math.max(variants[index] ?? 1, 1)),
    );
  });
  report('evaluate-per-case', 'ms', perCase);
  report('evaluate-per-variant', 'us', perVariant);
  report('variants-per-case', '1', variants);
}

/** [°C] temperatures over the range in which both are valid, one for each call of a sample. */
const temperatures = Array.from({ length: CALLS }, (_, index) => -40 + (90 * index) / (CALLS - 1));
const HUMIDITY_PCT = 55;

function compare(name: string, ours: (t: number) => number, theirs: (t: number) => number): void {
  const through = (work: (t: number) => number) => (): void => {
    let sum = 0;
    for (const temperature_C of temperatures) sum += work(temperature_C);
    if (!Number.isFinite(sum)) throw new Error(`${name} left the numbers`);
  };
  // Turn about, so that what else the machine does falls on both.
  const [run, runReference] = [through(ours), through(theirs)];
  for (let i = 0; i < WARM_UPS; i += 1) {
    run();
    runReference();
  }
  const pairs = Array.from({ length: SAMPLES }, () => [elapsed_ns(run), elapsed_ns(runReference)] as const);
  const our = pairs.map(([time_ns]) => time_ns);
  const their = pairs.map(([, time_ns]) => time_ns);
  report(
    name,
    'ns',
    our.map((time_ns) => time_ns / CALLS),
  );
  report(
    `${name}-reference`,
    'ns',
    their.map((time_ns) => time_ns / CALLS),
  );
  report(
    `ratio-${name}`,
    '1',
    our.map((time_ns, index) => time_ns / (their[index] ?? time_ns)),
  );
}

const psychrolib = createRequire(import.meta.url)('psychrolib') as Psychrolib;
psychrolib.SetUnitSystem(psychrolib.SI);
compare(
  'saturation-vapor-pressure',
  (t) => saturationVaporPressure_Pa(t, 'ashrae'),
  (t) => psychrolib.GetSatVapPres(t),
);
compare(
  'dew-point',
  (t) => dewPointFromHumidity_C(t, HUMIDITY_PCT, 'ashrae'),
  (t) => psychrolib.GetTDewPointFromRelHum(t, HUMIDITY_PCT / 100),
);
benchEvaluate();
