/** The steps of the work in words, for the record and for the page that builds the drawing up. */
import { holdPoint, stepsFor, type WorkFacts } from '../../catalog/sequence.ts';
import type { CompleteCase } from '../../case/complete.ts';
import { workFacts } from '../../drawing/sequence.ts';
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import { show, type System } from '../../measures.ts';
import type { Step } from '../document.ts';
import { filled } from '../inline.ts';
import { capital } from '../names.ts';
import { slotsOf } from './context.ts';

export interface WorkStep {
  /** Its id in the table of the sequence. */
  readonly id: string;
  readonly step: Step;
}

/** The steps that apply, their texts filled. */
export const workSteps = (facts: WorkFacts, slots: Readonly<Record<string, string>>): WorkStep[] =>
  stepsFor(facts).map((row, index): WorkStep => {
    const hold = row.hold === undefined ? undefined : holdPoint(row.hold);
    return {
      id: row.id,
      step: {
        number: index + 1,
        title: filled(row.title, slots),
        text: filled(row.text, slots),
        who: capital(row.who),
        ...(row.weather === undefined ? {} : { weather: row.weather }),
        ...(row.covers === undefined ? {} : { covers: row.covers }),
        ...(hold === undefined
          ? {}
          : {
              hold: {
                id: hold.id,
                title: hold.title,
                pass: filled(hold.pass, slots),
                who: hold.who,
                evidence: hold.evidence,
                source: { source: hold.source, clause: hold.clause, known: hold.known },
              },
            }),
      },
    };
  });

/** The steps of the work on one candidate. */
export const stepsOfCandidate = (evaluation: Evaluation, candidate: Candidate, system: System): WorkStep[] =>
  workSteps(
    workFacts(evaluation.case as unknown as CompleteCase, candidate),
    slotsOf(evaluation, candidate, (kind, value) => show(kind, value, system)),
  );
