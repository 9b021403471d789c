/** Reads a case as a person or another program gave it: the typed case, or every fault. Never throws. */
import { criterionIds } from '../catalog/criterionIds.ts';
import { listed, readWith, shown, unknownName, type Fault, type Reading } from '../faults.ts';
import { readJson } from '../json.ts';
import { caseSchema, formatVersion, type Case } from './case.ts';
import { placeFaults } from './place.ts';

/** Largest case file read, in bytes; a full case has about 5,000. */
export const LARGEST_CASE_BYTES = 2_000_000;

const whole = (message: string): Reading<never> => ({ ok: false, faults: [{ path: '', message }] });

/** Why a file of this size is not read, or undefined when it may be. */
export function sizeFault(bytes: number): string | undefined {
  return bytes > LARGEST_CASE_BYTES
    ? `has ${bytes} bytes; at most ${LARGEST_CASE_BYTES} (2 MB) are read`
    : undefined;
}

/** A newer format may mean other things by the same names, so its other faults are not listed. */
function versionFault(input: object): string | undefined {
  const version = (input as { overdeck?: unknown }).overdeck;
  if (version === formatVersion) return undefined;
  if (version === undefined) {
    return `is missing; the format version ${formatVersion} is needed`;
  }
  return typeof version === 'number' && version > formatVersion
    ? `${version} is a newer format than this program knows; it reads version ${formatVersion}`
    : `${shown(version)} is not a format version; this program reads version ${formatVersion}`;
}

/** Weights for criteria that the ranking does not have. */
const priorityFaults = ({ priorities = {} }: Case): Fault[] =>
  Object.keys(priorities)
    .filter((name) => !criterionIds.includes(name))
    .map((name) => ({
      path: `priorities.${name}`,
      message: unknownName(name, criterionIds, 'a known criterion'),
    }));

/** Reads a case that is already a plain value. */
export function readCase(input: unknown): Reading<Case> {
  if (typeof input !== 'object' || input === null || Array.isArray(input)) {
    return whole(`a case file is one JSON object; this is ${shown(input)}`);
  }
  const version = versionFault(input);
  if (version !== undefined) return { ok: false, faults: [{ path: 'overdeck', message: version }] };
  const reading = readWith(caseSchema, input);
  if (!reading.ok) return reading;
  const strange = [...placeFaults(reading.value), ...priorityFaults(reading.value)];
  return strange.length === 0 ? reading : { ok: false, faults: listed(strange) };
}

/** Reads a case from the text of a file. */
export function readCaseText(text: string): Reading<Case> {
  const size = sizeFault(new TextEncoder().encode(text).length);
  if (size !== undefined) return whole(size);
  const json = readJson(text);
  return json.ok ? readCase(json.value) : json;
}
