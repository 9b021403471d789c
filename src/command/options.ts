/** The words after a command: what is named, and options with their values. */
import { unknownName } from '../faults.ts';
import { badInput } from './badInput.ts';

export interface OptionRule {
  /** Values allowed; free text when absent. A flag takes no value. */
  readonly values?: readonly string[];
  readonly flag?: true;
}

export interface Given {
  readonly named: readonly string[];
  readonly options: Readonly<Record<string, string>>;
}

/** Reads `--name value`, `--name=value` and flags; `--` ends the options, `-` is a name. */
export function readOptions(words: readonly string[], rules: Readonly<Record<string, OptionRule>>): Given {
  const named: string[] = [];
  const options: Record<string, string> = {};
  const rest = [...words];
  for (let word = rest.shift(); word !== undefined; word = rest.shift()) {
    if (word === '--') {
      named.push(...rest.splice(0));
    } else if (!word.startsWith('--')) {
      if (word.startsWith('-') && word !== '-')
        throw badInput(word, 'is not a known option; options start with --');
      named.push(word);
    } else {
      const [name = '', ...after] = word.slice(2).split('=');
      const rule = Object.hasOwn(rules, name) ? rules[name] : undefined;
      if (rule === undefined) throw badInput(`--${name}`, unknownOption(name, rules));
      if (Object.hasOwn(options, name)) throw badInput(`--${name}`, 'is given twice');
      options[name] = valueOf(name, rule, after, rest);
    }
  }
  return { named, options };
}

function unknownOption(name: string, rules: Readonly<Record<string, OptionRule>>): string {
  const known = Object.keys(rules);
  return known.length === 0
    ? 'is not a known option; this command takes none'
    : unknownName(name, known, 'a known option').replace(/"(.*)"$/, '"--$1"');
}

function valueOf(name: string, rule: OptionRule, after: readonly string[], rest: string[]): string {
  const value = after.length > 0 ? after.join('=') : rule.flag ? '' : rest.shift();
  if (rule.flag) {
    if (after.length > 0) throw badInput(`--${name}`, 'takes no value');
    return '';
  }
  if (value === undefined || value === '') {
    throw badInput(`--${name}`, `needs a value${rule.values ? `: one of ${rule.values.join(', ')}` : ''}`);
  }
  if (rule.values !== undefined && !rule.values.includes(value)) {
    throw badInput(`--${name}`, `${JSON.stringify(value)} is not one of ${rule.values.join(', ')}`);
  }
  return value;
}

/** Refuses more or fewer names than a command takes. */
export function namedWithin(given: Given, least: number, greatest: number, usage: string): readonly string[] {
  const { named } = given;
  if (named.length < least) throw badInput('arguments', `too few; the form is: ${usage}`);
  if (named.length > greatest) {
    throw badInput('arguments', `${JSON.stringify(named[greatest])} is one too many; the form is: ${usage}`);
  }
  return named;
}
