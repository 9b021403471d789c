/** The record of the open project: the tree for the page, and the files made from it. */
import { words } from 'virtual:words';
import type { ReportDocument } from '../../report/document.ts';
import type { RecordOptions } from '../../report/record.ts';
import type { Evaluation } from '../../evaluation/evaluation.ts';
import { download, fileName } from '../storage/files.ts';
import { downloadCase } from '../view/caseFile.ts';
import type { Desk } from './desk.svelte.ts';

export type RecordFile = 'pdf' | 'html' | 'markdown' | 'case' | 'quantities';
type WriteRecord = (evaluation: Evaluation, texts: typeof words, options: RecordOptions) => ReportDocument;

export class RecordKeeper {
  readonly #desk: Desk;
  #write = $state.raw<WriteRecord | null>(null);
  #isBusy = $state(false);
  #message = $state('');

  constructor(desk: Desk) {
    this.#desk = desk;
  }

  get isBusy(): boolean {
    return this.#isBusy;
  }
  /** What happened to the file asked for last. */
  get message(): string {
    return this.#message;
  }

  async load(): Promise<void> {
    const { record } = await import('../../report/record.ts');
    this.#write = record;
  }

  readonly #report = $derived.by((): ReportDocument | null => {
    const { evaluation } = this.#desk.assessment;
    const { guide, preferences } = this.#desk;
    if (!this.#write || !evaluation || !guide) return null;
    const best = evaluation.ranking.recommended;
    return this.#write(evaluation, words, {
      role: guide.role,
      system: preferences.system,
      workings: best === null ? [] : this.#desk.assessment.workings(evaluation, best),
    });
  });

  get report(): ReportDocument | null {
    return this.#report;
  }

  async save(kind: RecordFile): Promise<void> {
    const { guide } = this.#desk;
    const report = this.#report;
    if (!guide || !report) return;
    this.#isBusy = true;
    this.#message = 'Writing the file …';
    try {
      await this.#make(kind, report, guide.name);
      this.#message = 'The file is in your downloads.';
    } catch (fault) {
      this.#message = `The file could not be made: ${fault instanceof Error ? fault.message : String(fault)}`;
    }
    this.#isBusy = false;
  }

  async #make(kind: RecordFile, report: ReportDocument, name: string): Promise<void> {
    if (kind === 'case') {
      downloadCase(name, this.#desk.guide?.answers ?? {});
    } else if (kind === 'quantities') {
      const { evaluation } = this.#desk.assessment;
      if (!evaluation) return;
      const { takeoffCsv } = await import('../../report/takeoffCsv.ts');
      download(fileName(name, 'csv'), takeoffCsv(evaluation), 'text/csv');
    } else if (kind === 'html') {
      const { html } = await import('../../report/html.ts');
      download(fileName(name, 'html'), html(report), 'text/html');
    } else if (kind === 'markdown') {
      const { markdown } = await import('../../report/markdown.ts');
      download(fileName(name, 'md'), markdown(report), 'text/markdown');
    } else {
      const [{ pdf }, { readFonts }] = await Promise.all([
        import('../../report/pdf.ts'),
        import('../storage/fonts.ts'),
      ]);
      const bytes = pdf(report, { page: 'letter', fonts: await readFonts() });
      download(fileName(name, 'pdf'), bytes as BlobPart, 'application/pdf');
    }
  }
}
