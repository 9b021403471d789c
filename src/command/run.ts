/** Runs one command: what it prints, and with which code it ends. */
import { unknownName } from '../faults.ts';
import { badInput, BadInput } from './badInput.ts';
import { calc } from './calc.ts';
import { check } from './check.ts';
import { commandHelp, commands, generalHelp, isCommand, version, type CommandName } from './help.ts';
import { namedWithin, readOptions } from './options.ts';
import { jsonSchema, schemaNames, type SchemaName } from './schema.ts';

/** Exit codes of the contract. */
const GOOD = 0;
const FAILED = 1;
const BAD_INPUT = 2;

/** What a command leaves: for standard output, for standard error, and the code. */
export interface Ending {
  readonly output: string | Uint8Array;
  readonly errors: string;
  readonly code: number;
}

const good = (output: string | Uint8Array): Ending => ({ output, errors: '', code: GOOD });

function schema(words: readonly string[]): string {
  const [name = ''] = namedWithin(readOptions(words, {}), 1, 1, 'schema case|evaluation');
  if (!(schemaNames as readonly string[]).includes(name)) {
    throw badInput('schema', `${JSON.stringify(name)} is not one of ${schemaNames.join(', ')}`);
  }
  return `${JSON.stringify(jsonSchema(name as SchemaName), null, 2)}\n`;
}

async function run(command: CommandName, words: readonly string[]): Promise<Ending> {
  switch (command) {
    case 'evaluate': {
      // Loaded only here: the tables and the report are much more than a calculation needs.
      const { evaluateCommand } = await import('./evaluate.ts');
      const { output, notes } = await evaluateCommand(words);
      return { output, errors: notes.map((note) => `${note}\n`).join(''), code: GOOD };
    }
    case 'calc':
      return good(await calc(words));
    case 'check': {
      namedWithin(readOptions(words, {}), 0, 0, 'check');
      const { text, meets } = check();
      return { output: text, errors: '', code: meets ? GOOD : FAILED };
    }
    case 'schema':
      return good(schema(words));
    case 'batch':
      throw badInput('batch', `is not available yet; evaluate one case at a time with: evaluate CASE.json`);
  }
}

async function dispatched(words: readonly string[]): Promise<Ending> {
  const [command, ...rest] = words;
  if (command === undefined) throw badInput('command', `is missing; one of ${commands.join(', ')} is needed`);
  if (command === '--help' || command === '-h' || command === 'help') return good(generalHelp());
  if (command === '--version') return good(`${version()}\n`);
  if (!isCommand(command))
    throw badInput(JSON.stringify(command), unknownName(command, commands, 'a known command'));
  if (rest.includes('--help') || rest.includes('-h')) return good(commandHelp(command));
  return run(command, rest);
}

/** Runs the words after `overdeck`; never throws, and leaves nothing for standard output when it fails. */
export async function ending(words: readonly string[]): Promise<Ending> {
  try {
    return await dispatched(words);
  } catch (error) {
    if (error instanceof BadInput)
      return { output: '', errors: `${error.lines.join('\n')}\n`, code: BAD_INPUT };
    const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { output: '', errors: `Overdeck failed: ${what}\n`, code: FAILED };
  }
}
