import { describe, expect, it } from 'vitest';
import { createActor } from 'xstate';
import fc from 'fast-check';
import { getShortestPaths, getSimplePaths } from '@xstate/graph';
import { answerAt, answeredPaths, withPatch, type Answers } from '../../src/interview/answers.ts';
import { interviewChart, type InterviewEvent } from '../../src/interview/chart.ts';
import { questionIds, stateIds, type StateId } from '../../src/interview/questions.ts';
import { questionApplies } from '../../src/interview/relevance.ts';
import { allPaths, anyEvent } from './arbitrary.ts';
import { questionFiles } from './words.ts';

const MOST_PATHS = 2000;
type Snapshot = ReturnType<typeof interviewChart.getInitialSnapshot>;

const start = (events: readonly InterviewEvent[] = []) => {
  const actor = createActor(interviewChart).start();
  for (const event of events) actor.send(event);
  return actor;
};
const stateOf = (snapshot: Snapshot): StateId => snapshot.value as StateId;
const answer = (question: StateId, patch: Record<string, unknown>): InterviewEvent => ({
  type: 'answer',
  question,
  patch,
});
const next: InterviewEvent = { type: 'go.next' };
const back: InterviewEvent = { type: 'go.back' };

/** Answers around the boundaries of the guards that skip a whole page. */
const representative: Readonly<Partial<Record<StateId, readonly InterviewEvent[]>>> = {
  place: [
    answer('place', { 'place.zone': '2A' }),
    answer('place', { 'place.zone': '1A' }),
    answer('place', { 'place.zone': '1A', 'place.elevation_m': 999 }),
    answer('place', { 'place.zone': '1A', 'place.elevation_m': 1000 }),
    answer('place', { 'place.zone': '1A', 'place.elevation_m': 1001 }),
  ],
  'below-deck': [
    answer('below-deck', { 'belowDeck.attic': 'cathedral' }),
    answer('below-deck', { 'belowDeck.attic': 'conditioned-attic' }),
    answer('below-deck', { 'belowDeck.attic': 'stays-vented' }),
    { type: 'notSure', question: 'below-deck' },
  ],
  snow: [answer('snow', { 'loads.groundSnow_Pa': 0 }), { type: 'notSure', question: 'snow' }],
};
/** On, and the representative answers while the page has none: changing one's mind is the business of other tests. */
const forward = (snapshot: Snapshot): InterviewEvent[] => {
  const page = stateOf(snapshot);
  const isAnswered = answeredPaths(snapshot.context.answers, page).length > 0;
  return [next, ...(isAnswered ? [] : (representative[page] ?? []))];
};
/** Where the interview is and what has been answered, not how it came there. */
const whereAndWhat = (snapshot: Snapshot): string =>
  `${stateOf(snapshot)} ${JSON.stringify(snapshot.context.answers)}`;

describe('the four sets', () => {
  it('states of the chart = order list = content files (the page attribute is tested in the browser)', () => {
    const states = Object.keys(interviewChart.states).sort();
    expect(states).toEqual([...stateIds].sort());
    expect(questionFiles.map((name) => name.replace('.md', '')).sort()).toEqual(states);
    expect(states.filter((id) => id !== 'review')).toEqual([...questionIds].sort());
  });
});

describe('generated paths', () => {
  it('reach every state (shortest paths over every kind of event)', () => {
    const events: InterviewEvent[] = [
      next,
      back,
      { type: 'review.open' },
      { type: 'undo' },
      { type: 'redo' },
      ...stateIds.map((question): InterviewEvent => ({ type: 'go.to', question })),
      ...Object.values(representative).flat(),
    ];
    const paths = getShortestPaths(interviewChart, {
      events,
      serializeState: (snapshot) => stateOf(snapshot),
    });
    expect(paths.map((path) => stateOf(path.state)).sort()).toEqual([...stateIds].sort());
  });

  it('replayed through a real actor end where the model says, and every step back returns and loses nothing', () => {
    const paths = getSimplePaths(interviewChart, { events: forward, serializeState: whereAndWhat });
    console.info(`interview: ${paths.length} simple paths, at most ${MOST_PATHS} allowed`);
    expect(paths.length).toBeLessThanOrEqual(MOST_PATHS);
    expect(paths.length).toBeGreaterThan(stateIds.length);
    expect(new Set(paths.map((path) => stateOf(path.state)))).toEqual(new Set(stateIds));
    for (const path of paths) {
      const events = path.steps
        .map((step) => step.event)
        .filter((event) => (event.type as string) !== 'xstate.init');
      const actor = start(events);
      const reached = actor.getSnapshot();
      expect(stateOf(reached)).toBe(stateOf(path.state));
      expect(reached.context.answers).toEqual(path.state.context.answers);
      actor.send(back);
      const before = actor.getSnapshot();
      if (stateOf(reached) === questionIds[0]) expect(stateOf(before)).toBe(questionIds[0]);
      else expect(stateIds.indexOf(stateOf(before))).toBeLessThan(stateIds.indexOf(stateOf(reached)));
      expect(before.context.answers).toEqual(reached.context.answers);
      if (stateOf(reached) !== questionIds[0]) {
        actor.send(next);
        expect(stateOf(actor.getSnapshot())).toBe(stateOf(reached));
      }
    }
  });
});

describe('the way through', () => {
  const walk = (events: readonly InterviewEvent[]): StateId[] => {
    const actor = start(events);
    const way = [stateOf(actor.getSnapshot())];
    while (way.at(-1) !== 'review' && way.length < 100) {
      actor.send(next);
      way.push(stateOf(actor.getSnapshot()));
    }
    return way;
  };

  it('asks every question in order while nothing is known', () => {
    expect(walk([])).toEqual([...stateIds]);
  });

  it('skips snow in the hottest zones', () => {
    expect(walk([answer('place', { 'place.zone': '0B' })])).toEqual(stateIds.filter((id) => id !== 'snow'));
  });

  it('goes from the vented attic to the review, and back to it', () => {
    const stop = answer('below-deck', { 'belowDeck.attic': 'stays-vented' });
    expect(walk([stop])).toEqual([...stateIds.slice(0, stateIds.indexOf('below-deck') + 1), 'review']);
    const actor = start([stop, { type: 'review.open' }, back]);
    expect(stateOf(actor.getSnapshot())).toBe('below-deck');
  });

  it('jumps to any question that is asked, and to no other', () => {
    const actor = start([answer('place', { 'place.zone': '0B' })]);
    for (const question of stateIds) {
      const from = stateOf(actor.getSnapshot());
      actor.send({ type: 'go.to', question });
      expect(stateOf(actor.getSnapshot())).toBe(question === 'snow' ? from : question);
    }
  });

  it('leaves a page that a change elsewhere has made pointless, forward and back', () => {
    const stop = answer('below-deck', { 'belowDeck.attic': 'stays-vented' });
    expect(stateOf(start([{ type: 'go.to', question: 'wind' }, stop, next]).getSnapshot())).toBe('review');
    expect(stateOf(start([{ type: 'go.to', question: 'wind' }, stop, back]).getSnapshot())).toBe(
      'below-deck',
    );
  });

  it('takes no answer that belongs to another question', () => {
    const { context } = start([answer('reader', { 'roof.shape': 'hip' })]).getSnapshot();
    expect(context.answers).toEqual({});
    expect(context.past).toEqual([]);
  });
});

describe('answers, kept and taken back', () => {
  it('changing an early answer keeps later ones', () => {
    const { context } = start([
      answer('overhang', { 'overhang.tails': 'may-cut' }),
      answer('framing', { 'framing.kind': 'truss' }),
    ]).getSnapshot();
    expect(answerAt(context.answers, 'overhang.tails')).toBe('may-cut');
  });

  it('"not sure" takes the whole question back to its defaults, or one field', () => {
    const given = answer('roof-shape', { 'roof.shape': 'hip', 'roof.length_m': 10 });
    const whole = start([given, { type: 'notSure', question: 'roof-shape' }]).getSnapshot().context;
    expect(whole.answers).toEqual({});
    expect(whole.notSure).toEqual(['roof-shape']);
    const one = start([given, { type: 'notSure', question: 'roof-shape', path: 'roof.shape' }]).getSnapshot()
      .context;
    expect(one.answers).toEqual({ roof: { length_m: 10 } });
    expect(one.notSure).toEqual([]);
    expect(
      start([given, { type: 'notSure', question: 'roof-shape' }, given]).getSnapshot().context.notSure,
    ).toEqual([]);
  });

  it('the same answer again leaves no trace in the history', () => {
    const shape = answer('roof-shape', { 'roof.shape': 'hip' });
    expect(start([shape, shape]).getSnapshot().context.past).toHaveLength(1);
  });

  it('load replaces everything and starts at the first question', () => {
    const answers: Answers = { roof: { shape: 'hip' } };
    const snapshot = start([
      answer('job', { 'project.kind': 'new-roof' }),
      { type: 'review.open' },
      { type: 'load', answers, passed: ['reader'], notSure: ['snow'] },
    ]).getSnapshot();
    expect(stateOf(snapshot)).toBe('reader');
    expect(snapshot.context).toMatchObject({
      answers,
      passed: ['reader'],
      notSure: ['snow'],
      reopened: [],
      past: [],
      future: [],
    });
  });

  it('a new answer after undo drops what could be done again', () => {
    const { context } = start([
      answer('job', { 'project.kind': 'new-roof' }),
      { type: 'undo' },
      answer('job', { 'project.kind': 'addition' }),
    ]).getSnapshot();
    expect(context.future).toEqual([]);
  });

  it(
    'undo to the start, then redo to the end, gives the same moment (any events)',
    { timeout: 60_000 },
    () => {
      fc.assert(
        fc.property(fc.array(anyEvent, { maxLength: 25 }), (events) => {
          const actor = start(events);
          while (actor.getSnapshot().can({ type: 'redo' })) actor.send({ type: 'redo' });
          const end = actor.getSnapshot().context;
          let steps = 0;
          while (actor.getSnapshot().can({ type: 'undo' })) {
            actor.send({ type: 'undo' });
            steps += 1;
          }
          expect(steps).toBe(end.past.length);
          expect(actor.getSnapshot().context.answers).toEqual({});
          for (let step = 0; step < steps; step += 1) actor.send({ type: 'redo' });
          const { answers, notSure, reopened, question, past, future } = actor.getSnapshot().context;
          expect({ answers, notSure, reopened, question, past, future }).toEqual({
            answers: end.answers,
            notSure: end.notSure,
            reopened: end.reopened,
            question: end.question,
            past: end.past,
            future: [],
          });
        }),
        { numRuns: 60 },
      );
    },
  );

  it('moving about never changes an answer (any events)', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 25 }), (events) => {
        const actor = start();
        for (const event of events) {
          const before = actor.getSnapshot().context.answers;
          actor.send(event);
          const after = actor.getSnapshot();
          if (event.type.startsWith('go.') || event.type === 'review.open') {
            expect(after.context.answers).toBe(before);
          }
          if (event.type === 'answer') {
            for (const path of allPaths) {
              if (!Object.hasOwn(event.patch, path)) {
                expect(answerAt(after.context.answers, path)).toEqual(answerAt(before, path));
              }
            }
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('a page is entered only when it is asked (any events)', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 25 }), (events) => {
        const actor = start();
        for (const event of events) {
          const from = stateOf(actor.getSnapshot());
          actor.send(event);
          const to = stateOf(actor.getSnapshot());
          if (to !== from) expect(questionApplies(actor.getSnapshot().context.answers, to)).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('answers stay free of empty sections, so that a case file stays small', () => {
    expect(withPatch({ roof: { shape: 'hip' } }, { 'roof.shape': undefined })).toEqual({});
  });
});
