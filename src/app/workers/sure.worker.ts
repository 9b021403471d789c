/** Works out how sure a ranking is, away from the page: it takes a hundred evaluations and more. */
import { evaluate } from '../../evaluate.ts';
import { sureOf } from '../../judgement/sure/sure.ts';
import type { SureReply, SureRequest } from './sureMessages.ts';

const reply = (message: SureReply): void => {
  self.postMessage(message);
};

function work({ given, evaluations }: SureRequest): void {
  try {
    const sure = sureOf(given, evaluate, {
      evaluations,
      onprogress: (stage, done, total) => {
        if (stage !== 'samples' || done === total) reply({ kind: 'progress', stage, done, total });
      },
    });
    reply({ kind: 'done', sure });
  } catch (error) {
    reply({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
}

self.addEventListener('message', ({ data }: MessageEvent<SureRequest>) => {
  work(data);
});
