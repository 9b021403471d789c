/** The case file as JSON that the reader downloads; the same form that Overdeck reads back. */
import { download, fileName } from '../storage/files.ts';

export function caseText(answers: Readonly<Record<string, unknown>>, name: string): string {
  const { project, ...rest } = answers as { project?: object };
  return `${JSON.stringify({ overdeck: 1, project: { ...project, name }, ...rest }, null, 2)}\n`;
}

export function downloadCase(name: string, answers: Readonly<Record<string, unknown>>): void {
  download(fileName(name, 'json'), caseText(answers, name), 'application/json');
}
