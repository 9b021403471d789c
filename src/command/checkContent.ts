/** `npm run check:content`: prints every fault of content/ and ends with 1 when there is one. */
import { contentFaults, lineOf } from './contentCheck/all.ts';

const faults = contentFaults();
process.stdout.write(
  faults.length === 0
    ? 'content: no fault\n'
    : `${faults.map(lineOf).join('\n')}\n${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}\n`,
);
process.exitCode = faults.length === 0 ? 0 : 1;
