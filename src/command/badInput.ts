/** Input that a person can put right: one line per fault, exit 2. */
import { faultLine, type Fault, type Reading } from '../faults.ts';

/** One fault is one line, even when a file name holds a line end. */
const LINE_ENDS = /[\r\n\u2028\u2029]+/g;

export class BadInput extends Error {
  override readonly name = 'BadInput';
  readonly lines: readonly string[];

  /** @param whole what an empty path stands for: the file's or the option's name */
  constructor(faults: readonly Fault[], whole: string) {
    const lines = faults.map((fault) => faultLine(fault, whole).replace(LINE_ENDS, ' '));
    super(lines.join('\n'));
    this.lines = lines;
  }
}

export const badInput = (whole: string, message: string): BadInput =>
  new BadInput([{ path: '', message }], whole);

/** The value that was read, or the end of the command. */
export function valueOf<T>(reading: Reading<T>, whole: string): T {
  if (reading.ok) return reading.value;
  throw new BadInput(reading.faults, whole);
}
