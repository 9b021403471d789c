/** Real evaluations of the demo scenarios, the words of content/, the fonts: read once for all tests of the report. */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Case } from '../../src/case/case.ts';
import { parseWords, type Words } from '../../src/catalog/words.ts';
import { evaluate } from '../../src/evaluate.ts';
import type { Evaluation } from '../../src/evaluation/evaluation.ts';
import type { Block, ReportDocument, Role } from '../../src/report/document.ts';
import type { PdfFonts } from '../../src/report/pdf.ts';
import { record, type RecordOptions } from '../../src/report/record.ts';
import { root } from '../support/arrows.ts';

export const roles: readonly Role[] = ['builder', 'designer', 'trainer'];

const scenarioFolder = join(root, 'content/scenarios');
export const scenarios: readonly string[] = readdirSync(scenarioFolder)
  .filter((name) => name.endsWith('.json'))
  .sort();

export const scenario = (name: string): Case =>
  JSON.parse(readFileSync(join(scenarioFolder, name), 'utf8')) as Case;

const evaluations = new Map<string, Evaluation>();
export function evaluationOf(name: string): Evaluation {
  const found = evaluations.get(name) ?? evaluate(scenario(name));
  evaluations.set(name, found);
  return found;
}

function readWords(): Words {
  const files: Record<string, string> = {};
  for (const folder of ['questions', 'strategies', 'cautions', 'glossary']) {
    for (const name of readdirSync(join(root, 'content', folder))) {
      files[`content/${folder}/${name}`] = readFileSync(join(root, 'content', folder, name), 'utf8');
    }
  }
  const reading = parseWords(files);
  if (!reading.ok)
    throw new Error(reading.faults.map((fault) => `${fault.path}: ${fault.message}`).join('\n'));
  return reading.words;
}
export const words = readWords();

const require = createRequire(import.meta.url);
const font = (path: string): Uint8Array =>
  new Uint8Array(readFileSync(require.resolve(`@expo-google-fonts/${path}`)));
export const fonts: PdfFonts = {
  sans: font('source-sans-3/400Regular/SourceSans3_400Regular.ttf'),
  sansBold: font('source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf'),
  sansItalic: font('source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf'),
  serif: font('source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf'),
};

export const recordOf = (name: string, options: Partial<RecordOptions> = {}): ReportDocument =>
  record(evaluationOf(name), words, { role: 'designer', system: 'IP', ...options });

/** The same evaluation with another name of the project, as a person may type it. */
export function named(name: string, evaluation: Evaluation): Evaluation {
  return { ...evaluation, case: { ...evaluation.case, project: { ...evaluation.case.project, name } } };
}

export const blocksOf = (document: ReportDocument): readonly Block[] =>
  document.sections.flatMap((section) => section.blocks);

export function tableOf(document: ReportDocument, id: string): Extract<Block, { kind: 'table' }> {
  const found = blocksOf(document).find((block) => block.kind === 'table' && block.id === id);
  if (found?.kind !== 'table') throw new Error(`no table ${id}`);
  return found;
}

/** A case that recommends each of the three strategies, and one that stops. */
export const recommending = (strategy: string): string => {
  const found = scenarios.find((name) => evaluationOf(name).ranking.recommended?.startsWith(strategy));
  if (found === undefined) throw new Error(`no scenario recommends ${strategy}`);
  return found;
};
export const stopping = (): string => {
  const found = scenarios.find((name) => evaluationOf(name).ranking.confidence.level === 'stop');
  if (found === undefined) throw new Error('no scenario stops');
  return found;
};
