/** The drawing note: the schedule in one sentence, both unit systems. */
import type { ScheduleRow, SlopePath } from '../evaluation/fastening.ts';
import { show } from '../measures.ts';

export interface NoteInput {
  readonly hold: { readonly name: string };
  readonly screwLength_m: number;
  readonly into: 'rafter' | 'deck';
  readonly penetration_m: number;
  readonly isFurring: boolean;
  readonly schedule: readonly ScheduleRow[];
  readonly slopePath: SlopePath;
  readonly upliftNeedsDesign: boolean;
  readonly windGap: { readonly standIn: string | null } | null;
}

const both = (length_m: number): string =>
  `${show('length', length_m, 'IP')} (${show('length', length_m, 'SI')})`;

/** Zones that share a spacing, in words: `24 in (610 mm) in zone 1, 16 in (406 mm) in zones 2e and 2n`. */
function spacings(rows: readonly ScheduleRow[]): string {
  const [first] = rows;
  if (first !== undefined && rows.every((row) => row.spacing_m === first.spacing_m))
    return `every ${both(first.spacing_m)} in all zones`;
  const bySpacing = new Map<number, string[]>();
  for (const row of rows) bySpacing.set(row.spacing_m, [...(bySpacing.get(row.spacing_m) ?? []), row.zone]);
  return [...bySpacing]
    .sort(([a], [b]) => b - a)
    .map(
      ([spacing_m, zones]) =>
        `every ${both(spacing_m)} in zone${zones.length > 1 ? 's' : ''} ${listed(zones)}`,
    )
    .join(', ');
}

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;

function againstSliding({ ways, chosen, needsDesign }: SlopePath): string {
  const way = ways.find(({ id }) => id === chosen);
  if (needsDesign || way === undefined) return 'stop against sliding by design of the engineer';
  switch (chosen) {
    case 'screws-across':
      return 'the same screws hold against sliding';
    case 'eave-block':
      return `against sliding a block ${both(way.length_m ?? 0)} long at the eave on each rafter with ${way.count ?? 0} screws`;
    case 'slanted-and-board':
      return `against sliding slanted screws ${both(way.length_m ?? 0)} long, tip up the slope at 60°, every ${both(way.spacing_m ?? 0)} on each rafter`;
    case 'slanted-pairs':
      return 'slanted pairs against sliding by design of the engineer';
  }
}

/**
 * The drawing note of a candidate.
 *
 * @param input  [m] screw, spacings by zone, way against sliding
 * @returns      [-] one sentence, inch-pound first and SI in brackets
 * @source       OUR-JUDGEMENT wording
 */
export function noteOf(input: NoteInput): string {
  const { hold, into, isFurring, schedule, slopePath, upliftNeedsDesign } = input;
  const what = into === 'deck' ? 'the panels' : isFurring ? 'the furring' : 'the upper deck';
  const where =
    into === 'deck'
      ? `into the deck, each way ${spacings(schedule)}`
      : `${both(input.penetration_m)} into each rafter, along it ${spacings(schedule)}`;
  const standIn = input.windGap?.standIn ?? null;
  const design = `${standIn === null ? '' : `; spacings of a stand-in (${standIn}), not covered by the table`}${
    upliftNeedsDesign ? '; uplift by design of the engineer' : ''
  }`;
  return `Screws for ${what}: ${hold.name}, ${both(input.screwLength_m)} long, ${where}; ${againstSliding(slopePath)}${design}; screening only, the engineer’s schedule replaces this note.`;
}
