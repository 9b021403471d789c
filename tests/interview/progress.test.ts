import { describe, expect, it } from 'vitest';
import { createActor } from 'xstate';
import { interviewChart, type InterviewEvent } from '../../src/interview/chart.ts';
import { firstOpen, progress, statusOf } from '../../src/interview/progress.ts';
import { questionIds, type StateId } from '../../src/interview/questions.ts';
import { newInterview } from '../../src/interview/steps.ts';

const after = (...events: readonly InterviewEvent[]) => {
  const actor = createActor(interviewChart).start();
  for (const event of events) actor.send(event);
  return actor.getSnapshot().context;
};
const answer = (question: StateId, patch: Record<string, unknown>): InterviewEvent => ({
  type: 'answer',
  question,
  patch,
});
const next: InterviewEvent = { type: 'go.next' };
const CHICAGO_LIKE = answer('place', { 'place.zone': '5A' });

describe('progress', () => {
  it('starts at 0 of about 24', () => {
    expect(progress(newInterview)).toEqual({ done: 0, about: 24 });
    expect(firstOpen(newInterview)).toBe('reader');
  });

  it('counts a page left with next, answered, or answered with not sure', () => {
    const way = after(next, answer('job', { 'project.kind': 'new-roof' }), {
      type: 'notSure',
      question: 'snow',
    });
    expect(progress(way)).toEqual({ done: 3, about: 24 });
    expect(firstOpen(way)).toBe('place');
  });

  it('leaves out what is not asked: snow in hot zones, everything after a vented attic', () => {
    expect(progress(after(answer('place', { 'place.zone': '1A' })))).toEqual({ done: 1, about: 23 });
    expect(progress(after(answer('below-deck', { 'belowDeck.attic': 'stays-vented' })))).toEqual({
      done: 1,
      about: questionIds.indexOf('below-deck') + 1,
    });
  });

  it('does not count a page done on the strength of an answer that no longer applies', () => {
    const way = after(
      answer('wall', { 'wall.cladding': 'stays' }),
      answer('job', { 'project.kind': 'new-roof' }),
    );
    expect(statusOf(way, 'wall')).toBe('open');
  });
});

describe('a changed answer re-opens only what depends on it', () => {
  const walkAll: readonly InterviewEvent[] = questionIds.map(() => next);

  it('new roof to re-roof: the pages that now ask more', () => {
    const way = after(
      answer('job', { 'project.kind': 'new-roof' }),
      ...walkAll,
      answer('job', { 'project.kind': 're-roof' }),
    );
    expect(way.reopened.map((each) => each.question)).toEqual(['roof-breaks', 'deck', 'overhang', 'wall']);
    expect(statusOf(way, 'deck')).toBe('look again');
    expect(statusOf(way, 'wind')).toBe('done');
  });

  it('re-roof to new roof: nothing, since less is asked', () => {
    const way = after(
      answer('job', { 'project.kind': 're-roof' }),
      ...walkAll,
      answer('job', { 'project.kind': 'new-roof' }),
    );
    expect(way.reopened).toEqual([]);
  });

  it('another place: the loads and the local code that were given for the old one, if they were', () => {
    const given = [
      CHICAGO_LIKE,
      answer('snow', { 'loads.groundSnow_Pa': 1200 }),
      answer('code', { 'codes.localCeiling_m2K_W': 8 }),
    ];
    const way = after(...given, ...walkAll, answer('place', { 'place.zone': '6A' }));
    expect(way.reopened.map((each) => each.question)).toEqual(['code', 'snow']);
    expect(way.answers.loads?.groundSnow_Pa).toBe(1200);
  });

  it('a place given for the first time re-opens nothing', () => {
    expect(after(answer('snow', { 'loads.groundSnow_Pa': 1200 }), CHICAGO_LIKE).reopened).toEqual([]);
  });

  it('another kind of framing: its sizes, and the overhang it carries', () => {
    const way = after(
      answer('framing', { 'framing.kind': 'rafter', 'framing.depth_m': 0.14 }),
      answer('overhang', { 'overhang.carriedToday': 'rafter-tails' }),
      answer('framing', { 'framing.kind': 'i-joist', 'framing.depth_m': 0.24 }),
    );
    expect(way.reopened.map((each) => each.question)).toEqual(['overhang']);
  });

  it('a page looked at again, answered again, or undone is settled', () => {
    const events = [
      CHICAGO_LIKE,
      answer('snow', { 'loads.groundSnow_Pa': 1200 }),
      answer('place', { 'place.zone': '6A' }),
    ];
    expect(after(...events).reopened.map((each) => each.question)).toEqual(['snow']);
    expect(after(...events, { type: 'go.to', question: 'snow' }, next).reopened).toEqual([]);
    expect(after(...events, answer('snow', { 'loads.groundSnow_Pa': 1200 })).reopened).toEqual([]);
    expect(after(...events, { type: 'undo' }).reopened).toEqual([]);
  });
});
