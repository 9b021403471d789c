/** `overdeck calc`: one named calculation, JSON in, JSON out. */
import { calculate, type Calculation } from '../catalog/calculation.ts';
import { unknownName } from '../faults.ts';
import { readJson } from '../json.ts';
import { badInput, BadInput, valueOf } from './badInput.ts';
import { calculations } from './calculations.ts';
import { readStandardInput, readText } from './files.ts';
import { namedWithin, readOptions } from './options.ts';

const USAGE = 'calc --list, or calc NAME [FILE.json]';

/** A calculation by its name on the command line. */
export function calculationNamed(name: string): Calculation {
  const found = calculations.find((calculation) => calculation.name === name);
  if (found !== undefined) return found;
  throw badInput(
    JSON.stringify(name),
    unknownName(
      name,
      calculations.map((calculation) => calculation.name),
      'a known calculation',
    ),
  );
}

/** A refusal by a calculation itself: `temperature_C: 2000 is outside -100 to 200`. */
const REFUSAL = /^(\w[\w.]*): ([\s\S]*)$/;

/** The output of a calculation; its refusal of a value counts as a fault of the input. */
export function outputOf(calculation: Calculation, input: unknown, whole: string): unknown {
  try {
    const result = calculate(calculation, input);
    if (result.ok) return result.output;
    throw new BadInput(result.faults, whole);
  } catch (error) {
    if (!(error instanceof RangeError) || /call stack|Invalid (array|string) length/.test(error.message)) {
      throw error;
    }
    const [, path = '', message = error.message] = REFUSAL.exec(error.message) ?? [];
    throw new BadInput([{ path, message }], whole);
  }
}

/** JSON has no word for a number that is not finite, and would write null. */
function onlyFinite(key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${key} came out as ${value}`);
  return value;
}

/** A result as JSON text. */
export const jsonText = (value: unknown): string => `${JSON.stringify(value, onlyFinite, 2)}\n`;

function list(): string {
  const widest = Math.max(...calculations.map(({ name }) => name.length));
  return calculations.map(({ name, summary }) => `${name.padEnd(widest)}  ${summary}\n`).join('');
}

/** Runs the command; gives what belongs on standard output. */
export async function calc(words: readonly string[]): Promise<string> {
  const given = readOptions(words, { list: { flag: true } });
  if ('list' in given.options) {
    namedWithin(given, 0, 0, USAGE);
    return list();
  }
  const [name = '', file] = namedWithin(given, 1, 2, USAGE);
  const calculation = calculationNamed(name);
  const fromFile = file !== undefined && file !== '-';
  if (!fromFile && process.stdin.isTTY) {
    throw badInput(name, `needs its input: calc ${name} FILE.json, or JSON on standard input`);
  }
  const whole = fromFile ? file : 'standard input';
  const input = valueOf(readJson(fromFile ? readText(file) : await readStandardInput()), whole);
  return jsonText(outputOf(calculation, input, whole));
}
