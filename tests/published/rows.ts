/** Published values that no calculation of the command covers: each row computed by a function and compared. */
import { describe, expect, it } from 'vitest';

/** Where a value was read. */
export interface Published {
  readonly publisher: string;
  readonly title: string;
  readonly edition: string;
  readonly address: string;
  /** Date on which it was read. */
  readonly read: string;
  /** How it is known: seen, seen-primary, seen-secondary or seen-transcription. */
  readonly known: 'seen' | 'seen-primary' | 'seen-secondary' | 'seen-transcription';
}

export interface PublishedValue {
  readonly id: string;
  readonly what: string;
  readonly source: Published;
  /** Page, table, figure or example. */
  readonly place: string;
  readonly unit: string;
  readonly computed: number;
  readonly printed: number;
  /** In the unit of the value. */
  readonly tolerance: number;
  /** Why this tolerance. */
  readonly why: string;
}

const DIGITS = 7;
const shown = (value: number): string => String(Number(value.toPrecision(DIGITS)));

/** One test for each row; its name carries the live error. */
export function publishedValues(title: string, rows: readonly PublishedValue[]): void {
  describe(title, () => {
    it('every row has its own id and gives a reason for its tolerance', () => {
      expect(new Set(rows.map((row) => row.id)).size).toBe(rows.length);
      for (const row of rows) expect([row.id, row.why.length > 0]).toEqual([row.id, true]);
    });
    for (const row of rows) {
      const off = (row.computed - row.printed).toExponential(1);
      const values = `${shown(row.computed)} for ${shown(row.printed)} ${row.unit}, off ${off} of ${shown(row.tolerance)}`;
      const { publisher, title: work, known } = row.source;
      it(`${row.id} ${row.what}: ${values} (${publisher}, ${work}, ${row.place}, ${known})`, () => {
        expect(Math.abs(row.computed - row.printed)).toBeLessThanOrEqual(row.tolerance);
      });
    }
  });
}
