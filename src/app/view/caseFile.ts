/** The case file as JSON that the reader downloads; the same form that Overdeck reads back. */
import type { Answers } from '../../interview/answers.ts';
import { download, fileName } from '../storage/files.ts';

export function caseText(answers: Answers, name: string): string {
  const { project, ...rest } = answers;
  return `${JSON.stringify({ overdeck: 1, project: { ...project, name }, ...rest }, null, 2)}\n`;
}

export function downloadCase(name: string, answers: Answers): void {
  download(fileName(name, 'json'), caseText(answers, name), 'application/json');
}
