/** How sure a ranking is, asked from the page: progress, stop, and nothing of other answers. */
import { describe, expect, it } from 'vitest';
import { SureStudy, type SureWorker } from '../../src/app/state/sure.svelte.ts';
import type { SureReply } from '../../src/app/workers/sureMessages.ts';
import { curveOf } from '../../src/app/view/valueCurve.ts';
import type { Case } from '../../src/case/case.ts';
import type { Sure } from '../../src/evaluation/sure.ts';

const given: Case = { overdeck: 1, place: { zone: '5A' } };
const other: Case = { overdeck: 1, place: { zone: '6A' } };
const sure = { seed: 1 } as Sure;

/** A worker that says what the test tells it to. */
function stage() {
  const hearers = new Map<string, (event: never) => void>();
  const told: unknown[] = [];
  let ended = 0;
  const worker = {
    addEventListener: (kind: string, hearer: (event: never) => void) => hearers.set(kind, hearer),
    postMessage: (message: unknown) => told.push(message),
    terminate: () => (ended += 1),
  } as unknown as SureWorker;
  const say = (data: SureReply): void => hearers.get('message')?.({ data } as never);
  const fail = (message: string): void => hearers.get('error')?.({ message } as never);
  return { study: new SureStudy(() => worker), say, fail, told, ended: () => ended };
}

describe('a study of how sure the ranking is', () => {
  it('is idle until asked, then working with its progress, then ready; its worker is ended', () => {
    const { study, say, told, ended } = stage();
    expect(study.stateFor(given).kind).toBe('idle');
    study.begin(given, 4);
    expect(told).toEqual([{ given, evaluations: 4 }]);
    say({ kind: 'progress', stage: 'answers', done: 3, total: 9 });
    expect(study.stateFor(given)).toEqual({ kind: 'working', stage: 'answers', done: 3, total: 9 });
    say({ kind: 'done', sure });
    expect(study.stateFor(given)).toEqual({ kind: 'ready', sure });
    expect(ended()).toBe(1);
  });

  it('counts for the answers it was asked for only', () => {
    const { study, say } = stage();
    study.begin(given, 4);
    say({ kind: 'done', sure });
    expect(study.stateFor(other).kind).toBe('idle');
    expect(study.stateFor(null).kind).toBe('idle');
  });

  it('that is stopped is idle again, and hears no late message', () => {
    const { study, say, ended } = stage();
    study.begin(given, 4);
    study.cancel();
    say({ kind: 'done', sure });
    expect(study.stateFor(given).kind).toBe('idle');
    expect(ended()).toBe(1);
  });

  it('says why it failed: by its message, by the worker’s own error, or since nothing is ranked', () => {
    const first = stage();
    first.study.begin(given, 4);
    first.say({ kind: 'failed', message: 'no such place' });
    expect(first.study.stateFor(given)).toEqual({ kind: 'failed', message: 'no such place' });
    const second = stage();
    second.study.begin(given, 4);
    second.fail('');
    expect(second.study.stateFor(given).kind).toBe('failed');
    const third = stage();
    third.study.begin(given, 4);
    third.say({ kind: 'done', sure: null });
    expect(third.study.stateFor(given).kind).toBe('failed');
  });
});

describe('the curve of a value function', () => {
  it('runs from end to end, and measures past an end stand at it', () => {
    const anchors: [number, number][] = [
      [0, 1],
      [10, 0],
    ];
    const { line, marks } = curveOf(anchors, [-5, 5, 20]);
    expect(line).toBe('6,4 114,40');
    expect(marks).toEqual([
      [6, 4],
      [60, 22],
      [114, 40],
    ]);
  });
});
