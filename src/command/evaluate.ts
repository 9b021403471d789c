/** `overdeck evaluate`: one case in, the evaluation, the report, the section or the table out. */
import { readCaseText } from '../case/read.ts';
import { evaluate } from '../evaluate.ts';
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';
import { whyNoDetail } from '../drawing/details.ts';
import { toDxf } from '../drawing/dxf.ts';
import { details, type Detail } from '../drawing/edge-model.ts';
import { detailSheet, type Drawing } from '../drawing/sheet.ts';
import { toSvg } from '../drawing/svg.ts';
import { workingsOf } from '../judgement/workings.ts';
import type { System } from '../measures.ts';
import { plotNames, type PlotName } from '../plot/plot.ts';
import type { ReportDocument, Role } from '../report/document.ts';
import { html } from '../report/html.ts';
import { markdown } from '../report/markdown.ts';
import { pdf } from '../report/pdf.ts';
import { record } from '../report/record.ts';
import { takeoffCsv } from '../report/takeoffCsv.ts';
import { badInput, valueOf } from './badInput.ts';
import { jsonText } from './calc.ts';
import { words } from './content.ts';
import { checkWritable, readStandardInput, readText, writeWhole } from './files.ts';
import { pdfFonts } from './fonts.ts';
import { namedWithin, readOptions } from './options.ts';
import { plotFormats, plotText, type PlotFormat } from './plots.ts';
import { sureCount, withSure } from './sure.ts';
import { candidateCsv } from './table.ts';
import { withWeather } from './weather.ts';

const FORMATS = ['json', 'markdown', 'html', 'pdf', 'svg', 'dxf', 'csv'] as const;
type Format = (typeof FORMATS)[number];
/** Formats that are one drawing. */
const DRAWN: readonly Format[] = ['svg', 'dxf'];
/** What the table lists: every build-up that was tried, or the shopping list of the best of each strategy. */
const LISTS = ['build-ups', 'quantities'] as const;
type List = (typeof LISTS)[number];
const ROLES: readonly Role[] = ['builder', 'designer', 'trainer'];
const USAGE =
  'evaluate CASE.json [--format …] [--detail …] [--plot …] [--list …] [--out PATH] [--role …] [--units ip|si] [--weather FILE]';
/** [mm] a sheet of Tabloid size inside half an inch of border, for the section as a file of its own. */
const SHEET = { width_mm: 406.4, height_mm: 254 };

interface Wanted {
  readonly format: Format;
  readonly role: Role | undefined;
  readonly system: System;
  /** The place that a drawing shows. */
  readonly detail: Detail;
  /** A plot in place of the section or of the list of build-ups. */
  readonly plot: PlotName | undefined;
  readonly list: List;
}

const isPlotFormat = (format: Format): format is PlotFormat =>
  (plotFormats as readonly string[]).includes(format);

function wantedOf(options: Readonly<Record<string, string>>): Wanted {
  const format = (options['format'] ?? 'json') as Format;
  if (options['detail'] !== undefined && !DRAWN.includes(format)) {
    throw badInput('--detail', `chooses what is drawn: it needs --format ${DRAWN.join(' or ')}`);
  }
  if (options['plot'] !== undefined && !isPlotFormat(format)) {
    throw badInput(
      '--plot',
      `draws one plot or lists its numbers: it needs --format ${plotFormats.join(' or ')}`,
    );
  }
  if (options['plot'] !== undefined && options['detail'] !== undefined) {
    throw badInput('--plot', 'draws a plot and --detail a section: give one of the two');
  }
  if (options['list'] !== undefined && (format !== 'csv' || options['plot'] !== undefined)) {
    throw badInput('--list', 'chooses what the table lists: it needs --format csv and no --plot');
  }
  return {
    format,
    list: (options['list'] ?? 'build-ups') as List,
    plot: options['plot'] as PlotName | undefined,
    detail: (options['detail'] ?? 'eave') as Detail,
    role: options['role'] as Role | undefined,
    system: options['units'] === 'si' ? 'SI' : 'IP',
  };
}

const candidateOf = (evaluation: Evaluation, id: string): Candidate | undefined =>
  evaluation.candidates.find((candidate) => candidate.id === id);

/** The build-up that is recommended; without one there is nothing to draw. */
function recommended(evaluation: Evaluation, format: Format): Candidate {
  const { recommended: id } = evaluation.ranking;
  const found = id === null ? undefined : candidateOf(evaluation, id);
  if (found !== undefined) return found;
  const stops = evaluation.cautions.filter(({ level }) => level === 'stop').map(({ text }) => text);
  throw badInput(
    '--format',
    `"${format}" draws the recommended build-up, and this case has none${stops.length > 0 ? `: ${stops.join(' ')}` : ''}`,
  );
}

/** The place that is wanted of the recommended build-up, on a sheet. */
function drawingOf(evaluation: Evaluation, { system, detail, format }: Wanted): Drawing {
  const candidate = recommended(evaluation, format);
  const reason = whyNoDetail(evaluation, detail);
  if (reason !== null) throw badInput('--detail', `"${detail}" cannot be drawn: ${reason}`);
  return detailSheet(evaluation, candidate, detail, { system, theme: 'print', ...SHEET });
}

function reportOf(evaluation: Evaluation, { role, system }: Wanted): ReportDocument {
  const { recommended: id } = evaluation.ranking;
  return record(evaluation, words(), {
    role: role ?? evaluation.case.project?.role ?? 'builder',
    system,
    workings: id === null ? [] : workingsOf(evaluation, id),
  });
}

/** The evaluation in the form that is wanted; the same case always gives the same bytes. */
export function rendered(evaluation: Evaluation, wanted: Wanted): string | Uint8Array {
  const { format, plot, system } = wanted;
  if (plot !== undefined && isPlotFormat(format))
    return plotText(evaluation, recommended(evaluation, format), plot, format, system);
  switch (wanted.format) {
    case 'json':
      return jsonText(evaluation);
    case 'csv':
      return wanted.list === 'quantities' ? takeoffCsv(evaluation) : candidateCsv(evaluation);
    case 'svg':
      return `${toSvg(drawingOf(evaluation, wanted)).trimEnd()}\n`;
    case 'dxf':
      return toDxf(drawingOf(evaluation, wanted), wanted.system);
    case 'markdown':
      return markdown(reportOf(evaluation, wanted));
    case 'html':
      return html(reportOf(evaluation, wanted));
    case 'pdf':
      return pdf(reportOf(evaluation, wanted), { page: 'letter', fonts: pdfFonts() });
  }
}

export interface Evaluated {
  /** What belongs on standard output; nothing when it goes into a file. */
  readonly output: string | Uint8Array;
  /** What to know of the input, for standard error. */
  readonly notes: readonly string[];
}

/** Runs the command. */
export async function evaluateCommand(given: readonly string[]): Promise<Evaluated> {
  const read = readOptions(given, {
    format: { values: FORMATS },
    detail: { values: details },
    plot: { values: plotNames },
    list: { values: LISTS },
    out: {},
    role: { values: ROLES },
    units: { values: ['ip', 'si'] },
    weather: {},
    sure: {},
  });
  const [named = ''] = namedWithin(read, 1, 1, USAGE);
  const wanted = wantedOf(read.options);
  const { out, weather } = read.options;
  const sure = sureCount(read.options['sure']);
  if (out !== undefined) checkWritable(out);
  if (out === undefined && wanted.format === 'pdf' && process.stdout.isTTY) {
    throw badInput('--out', 'is needed: a PDF is not printed on a terminal');
  }
  const isPiped = named === '-';
  const text = isPiped ? await readStandardInput() : readText(named);
  const asGiven = valueOf(readCaseText(text), isPiped ? 'standard input' : named);
  const { roof, notes } =
    weather === undefined ? { roof: asGiven, notes: [] } : withWeather(asGiven, weather);
  const plainly = evaluate(roof);
  const output = rendered(sure === undefined ? plainly : withSure(plainly, roof, sure), wanted);
  if (out === undefined) return { output, notes };
  writeWhole(out, output);
  return { output: '', notes };
}
