/** The small schemas that the tables share. */
import * as v from 'valibot';
import { editions, knownGrades, zones } from './sets.ts';

export const text = v.pipe(v.string(), v.minLength(1));
export const note = v.string();
export const finite = v.pipe(v.number(), v.finite());
export const positive = v.pipe(finite, v.gtValue(0));
export const nonNegative = v.pipe(finite, v.minValue(0));
export const id = v.pipe(v.string(), v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower case words with hyphens'));
export const sourceId = v.pipe(v.string(), v.regex(/^[A-Za-z0-9]+([-.][A-Za-z0-9.]+)*$/, 'a source id'));
export const known = v.picklist(knownGrades);
export const zone = v.picklist(zones);
export const edition = v.picklist(editions);
export const some = <S extends v.GenericSchema>(item: S) => v.pipe(v.array(item), v.minLength(1));
export const twelve = <S extends v.GenericSchema>(item: S) => v.pipe(v.array(item), v.length(12));

export const head = { title: text, about: v.optional(text), sources: some(sourceId) };
export const cited = { source: sourceId, known };
