/** The list of topics: every question in its group, with where it stands in words. */
import type { QuestionWords } from '../../catalog/wordSchemas.ts';
import {
  questionIds,
  REVIEW,
  skipOf,
  statusOf,
  type Interview,
  type StateId,
} from '../../interview/index.ts';

export interface TopicQuestion {
  readonly id: StateId;
  readonly title: string;
  readonly isAsked: boolean;
  readonly status: string;
}
export interface Topic {
  readonly name: string;
  readonly questions: readonly TopicQuestion[];
}

function statusInWords(way: Interview, id: StateId): string {
  if (id === REVIEW) return '';
  const skip = skipOf(way.answers, id);
  if (skip) return `not asked: ${skip.because}`;
  if (way.notSure.includes(id)) return 'not sure';
  const status = statusOf(way, id);
  return status === 'open' ? '' : status;
}

export function topicsOf(
  way: Interview,
  questions: Readonly<Record<string, QuestionWords>>,
): readonly Topic[] {
  const groups = new Map<string, TopicQuestion[]>();
  for (const id of [...questionIds, REVIEW] as const) {
    const asked = questions[id];
    if (!asked) continue;
    const group = groups.get(asked.topic) ?? [];
    group.push({
      id,
      title: asked.title,
      isAsked: skipOf(way.answers, id) === undefined,
      status: statusInWords(way, id),
    });
    groups.set(asked.topic, group);
  }
  return [...groups].map(([name, questions]) => ({ name, questions }));
}
