/** What the command line says about itself. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './place.ts';

export const commands = ['evaluate', 'calc', 'check', 'schema', 'batch'] as const;
export type CommandName = (typeof commands)[number];
export const isCommand = (word: string): word is CommandName =>
  (commands as readonly string[]).includes(word);

const texts: Readonly<Record<CommandName, string>> = {
  evaluate: `evaluate CASE.json [--format json|markdown|html|pdf|svg|dxf|csv] [--out PATH]
         [--detail eave|rake|ridge] [--plot NAME] [--role builder|designer|trainer] [--units ip|si]
         [--weather FILE]
  Computes one case. --format json is the whole evaluation, markdown, html and pdf the report,
  svg and dxf a section of the recommended build-up, csv one line for each build-up that was tried,
  or with --list quantities the shopping list of the best build-up of each strategy.
  CASE.json may be - for standard input. --out writes a file and prints nothing.
  --detail chooses the place that svg and dxf draw, the eave unless told. DXF is in true size:
  inches for ip, millimeters for si, layers named by material.
  --plot draws one plot of the recommended build-up (svg) or lists its numbers (csv): heat-loss, deck-months,
  profile, condensate, air-leak, drying, drying-compared.
  --role chooses the wording of the report, --units the units in it (inch-pound unless told).
  --weather takes the twelve months, degree days and design temperature from an hourly weather file
  (EPW or TMY3 table) and notes it in the case; zone, county and a design temperature of the case
  stay. What to know of the file is on standard error.
  --sure N says how sure the ranking is: chances of each way, answers that would change the pick, what is
  worth finding out. It evaluates every other answer once, and N cases with several of them (0 to 1000).
  JSON gains "sure", the report a part under what would overturn it. It takes a minute or more.
`,
  calc: `calc --list
calc NAME [FILE.json]
  One calculation, JSON in, JSON out; standard input without FILE. SI units, named in the fields.
`,
  check: `check
  Computes every check value again and prints computed, published, difference,
  tolerance and source. Ends with 1 when one is missed.
`,
  schema: `schema case|evaluation
  The JSON Schema (2020-12) of the case file or of the evaluation.
`,
  batch: `batch
  Many cases at once. Not available yet.
`,
};

export const commandHelp = (command: CommandName): string => texts[command];

export function generalHelp(): string {
  return `Overdeck: choose and document rigid insulation on top of a sloped, wood-framed roof deck.

${Object.values(texts).join('\n')}
--help after a command shows that command alone; --version prints the version.

Ends with 0 when all went well, 2 for input that needs correcting (one line for each fault on
standard error, nothing on standard output, no file written), 1 for anything else.
The results inform people who decide. They approve nothing.
`;
}

export function version(): string {
  const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  return manifest.version;
}
