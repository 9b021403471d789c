/** Bytes of a text file to its lines, chunk by chunk, in a bounded amount of memory. */

/** Longest line read, in bytes; the longest header line of a real file has about 1,500. */
export const LONGEST_LINE_BYTES = 65_536;

const LINE_FEED = 0x0a;
const CARRIAGE_RETURN = 0x0d;
const NUL = 0x00;
/** Ends a text file of old systems. */
const END_OF_FILE = '\u001a';
/** Stands where bytes are no UTF-8. */
const REPLACEMENT = '\ufffd';

export interface Line {
  /** Number in the file, from 1. */
  readonly number: number;
  readonly text: string;
}

/** Why no more lines come. */
export type Break = 'too-long' | 'not-text';

export interface LineSplitter {
  /** The lines that a chunk completes; blank ones are counted and left out. */
  readonly push: (chunk: Uint8Array) => Generator<Line, void>;
  /** The last line, when the file does not end with a line end. */
  readonly end: () => Generator<Line, void>;
  readonly broken: () => (Line & { readonly why: Break }) | undefined;
}

const utf8 = new TextDecoder('utf-8');
const western = new TextDecoder('windows-1252');

/** Older files carry accents in the Western code page; the byte order mark goes with the decoding. */
function textOf(bytes: Uint8Array): string {
  const text = utf8.decode(bytes);
  return text.includes(REPLACEMENT) ? western.decode(bytes) : text;
}

/** A splitter for line ends of every kind: LF, CR LF, CR. */
export function lineSplitter(): LineSplitter {
  let number = 0;
  let endsWithReturn = false;
  let broken: (Line & { readonly why: Break }) | undefined;
  const carried = new Uint8Array(LONGEST_LINE_BYTES);
  let carriedBytes = 0;

  const carry = (bytes: Uint8Array): void => {
    if (carriedBytes + bytes.length > LONGEST_LINE_BYTES) {
      broken = { number: number + 1, text: '', why: 'too-long' };
      return;
    }
    carried.set(bytes, carriedBytes);
    carriedBytes += bytes.length;
  };

  /** The line that the carried bytes are; nothing when it is blank. */
  function* complete(): Generator<Line, void> {
    number += 1;
    const text = textOf(carried.subarray(0, carriedBytes)).replace(END_OF_FILE, '');
    carriedBytes = 0;
    if (text.trim() !== '') yield { number, text };
  }

  function* push(chunk: Uint8Array): Generator<Line, void> {
    let from = 0;
    // Counted by index: an iterator over every byte of a large file costs several times as much.
    for (let index = 0; index < chunk.length; index++) {
      if (broken !== undefined) return;
      const byte = chunk[index];
      const followsReturn = endsWithReturn;
      endsWithReturn = byte === CARRIAGE_RETURN;
      if (byte === NUL) {
        broken = { number: number + 1, text: '', why: 'not-text' };
        return;
      }
      if (byte === LINE_FEED || byte === CARRIAGE_RETURN) {
        if (!(byte === LINE_FEED && followsReturn)) {
          carry(chunk.subarray(from, index));
          if (broken === undefined) yield* complete();
        }
        from = index + 1;
      }
    }
    if (broken === undefined) carry(chunk.subarray(from));
  }

  function* end(): Generator<Line, void> {
    if (broken === undefined && carriedBytes > 0) yield* complete();
  }

  return { push, end, broken: () => broken };
}
