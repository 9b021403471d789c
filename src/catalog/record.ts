/** Typed access to content/tables/record.json: the words of the record's sections for each reader. */
import * as v from 'valibot';
import json from '../../content/tables/record.json' with { type: 'json' };
import { workCondition } from './sequence.ts';
import {
  windEditions,
  windShapes,
  windZones,
  type WindEdition,
  type WindShape,
  type WindZone,
} from './windCoefficients.ts';

const text = v.pipe(v.string(), v.minLength(1));
const some = <S extends v.GenericSchema>(item: S) => v.pipe(v.array(item), v.minLength(1));
const forReaders = v.strictObject({ builder: text, designer: text, trainer: text });

export const recordTable = v.strictObject({
  title: text,
  about: text,
  sources: some(text),
  sections: some(v.strictObject({ id: text, title: forReaders, lead: forReaders })),
  /** What the method leaves out. */
  limits: some(text),
  /** What to do when the ranking stops. */
  instead: some(text),
  /** Words of the fastening schedule. */
  fastening: v.strictObject({
    /** Where a zone lies; `{a}` is the width of the strips. */
    zones: some(
      v.strictObject({
        edition: v.picklist(windEditions),
        shape: v.picklist(windShapes),
        zone: v.picklist(windZones),
        words: text,
      }),
    ),
    ways: some(v.strictObject({ id: text, name: text, plain: text })),
    governs: some(v.strictObject({ id: text, words: text })),
    needsDesign: text,
    snowCases: v.strictObject({ balanced: text, unbalanced: text, drift: text }),
    standIn: text,
    noStandIn: text,
    standInRow: text,
    byEquations: text,
    byReport: text,
  }),
  /** Words of the geometry checks. */
  geometry: some(v.strictObject({ id: text, what: text, onSite: text })),
  /** Words of the shopping list; slots `{count}`, `{size}`, `{pitch}`. */
  takeoff: v.strictObject({
    assumptions: some(v.strictObject({ id: text, words: text })),
    layout: text,
    prices: text,
    likely: text,
  }),
  /** Words of the engineer's sheet. */
  engineer: v.strictObject({
    stamp: text,
    decides: text,
    assumed: some(text),
    assumedTails: some(text),
    assumedOutriggers: some(text),
    open: some(text),
    openTails: some(text),
    openOutriggers: some(text),
    confirm: text,
    combinationNote: text,
    notAnswered: text,
    trussTails: text,
    noMember: text,
    cardTitle: text,
  }),
  cards: some(
    v.strictObject({
      id: v.picklist(['structural-engineer', 'roofer', 'code-official']),
      title: text,
      questions: some(v.strictObject({ text, when: v.optional(workCondition) })),
    }),
  ),
});

export type RecordTable = v.InferOutput<typeof recordTable>;
export type CardRow = RecordTable['cards'][number];

export const recordWords = json as RecordTable;

const found = <T>(row: T | undefined, what: string): T => {
  if (row === undefined) throw new RangeError(`no ${what} in record.json`);
  return row;
};

/** Where a wind zone lies, with the width of the strips put in. */
export function zoneWords(edition: WindEdition, shape: WindShape, zone: WindZone, width: string): string {
  const row = recordWords.fastening.zones.find(
    (each) => each.edition === edition && each.shape === shape && each.zone === zone,
  );
  return found(row, `zone ${zone} of ${shape}, ${edition}`).words.replace('{a}', width);
}

/** Name of a way against sliding, and what it is in plain words. */
export const wayWords = (id: string): RecordTable['fastening']['ways'][number] =>
  found(
    recordWords.fastening.ways.find((way) => way.id === id),
    `way ${id}`,
  );

/** What governs a screw, in words. */
export const governWords = (id: string): string =>
  found(
    recordWords.fastening.governs.find((row) => row.id === id),
    `check ${id}`,
  ).words;

/** Words of a geometry check. */
export const geometryWords = (id: string): RecordTable['geometry'][number] =>
  found(
    recordWords.geometry.find((row) => row.id === id),
    `geometry check ${id}`,
  );

/** What was taken for the shape of the roof, in words with slots. */
export const shapeWords = (id: string): string =>
  found(
    recordWords.takeoff.assumptions.find((row) => row.id === id),
    `shape ${id}`,
  ).words;

/** @throws RangeError when the table lacks the section: a slip in content or code. */
export function sectionWords(id: string): RecordTable['sections'][number] {
  const found = recordWords.sections.find((section) => section.id === id);
  if (!found) throw new RangeError(`no section ${id} in record.json`);
  return found;
}
