/** The report as Markdown (GitHub flavor): same outline, same order, no HTML inside. */
import type { Block, Cell, Inline, ReportDocument, Run, Section } from './document.ts';
import { calloutMarks, citationText, plainText, verdictMarks } from './document.ts';

/** Letters that could start Markdown or HTML are escaped; control characters and line ends become spaces. */
export function safeMarkdown(text: string): string {
  return (
    text
      // eslint-disable-next-line no-control-regex -- the point is to find them
      .replace(/[\u0000-\u001F\u007F-\u009F\u2028\u2029]+/g, ' ')
      .replace(/[\\`*_{}[\]<>#|~&$]/g, (letter) => `\\${letter}`)
      .replace(/^(\s*)([-+=])/, '$1\\$2')
      .replace(/^(\s*\d+)([.)])(?=\s|$)/, '$1\\$2')
      .replace(/(https?):\/\//gi, '$1:\\/\\/')
      .replace(/www\./gi, 'www\\.')
      .replace(/@/g, '\\@')
  );
}

function runMarkdown(run: Run): string {
  if (run.text === '\n') return ' · ';
  const text = safeMarkdown(run.text);
  const inner = text.trim();
  if (inner === '') return text === '' ? '' : ' ';
  const before = text.startsWith(' ') ? ' ' : '';
  const after = text.endsWith(' ') ? ' ' : '';
  let marked = inner;
  if (run.emphasis) marked = `*${marked}*`;
  if (run.strong) marked = `**${marked}**`;
  if (run.href !== undefined) marked = `[${marked}](${encodeURI(run.href).replace(/[()]/g, '')})`;
  return `${before}${marked}${after}`;
}

const inline = (text: Inline): string => text.map(runMarkdown).join('');

function cellMarkdown(cell: Cell): string {
  const verdict =
    cell.verdict === undefined
      ? ''
      : ` ${verdictMarks[cell.verdict].shape} ${verdictMarks[cell.verdict].word}`;
  return `${inline(cell.text)}${verdict}`;
}

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

function table(
  columns: readonly { readonly title: string; readonly align: 'left' | 'right' }[],
  rows: readonly (readonly string[])[],
): string[] {
  return [
    row(columns.map((column) => safeMarkdown(column.title))),
    row(columns.map((column) => (column.align === 'right' ? '---:' : '---'))),
    ...rows.map(row),
  ];
}

const left = (title: string) => ({ title, align: 'left' as const });

function blockLines(block: Block): string[] {
  switch (block.kind) {
    case 'paragraph':
      return [inline(block.text)];
    case 'list':
      return block.items.map((item, index) => `${block.ordered ? `${index + 1}.` : '-'} ${inline(item)}`);
    case 'sides':
      return block.sides.flatMap((side) => [
        `**${safeMarkdown(side.title)}**`,
        '',
        ...side.items.map((item, index) => `${index + 1}. ${inline(item)}`),
        '',
      ]);
    case 'keyFigures':
      return table(
        ['Figure', 'Value', 'Limit', 'Margin', 'Verdict', 'Source'].map(left),
        block.items.map((figure) => [
          safeMarkdown(figure.label),
          safeMarkdown(figure.value),
          safeMarkdown(figure.limit),
          safeMarkdown(figure.margin),
          `${verdictMarks[figure.verdict].shape} ${verdictMarks[figure.verdict].word}`,
          safeMarkdown(`${citationText(figure.source)} (${figure.source.known})`),
        ]),
      );
    case 'table':
      return [
        `**${safeMarkdown(block.caption)}**`,
        '',
        ...table(
          block.columns,
          block.rows.map((cells) => cells.map(cellMarkdown)),
        ),
        ...(block.note === undefined ? [] : ['', `*${safeMarkdown(block.note)}*`]),
      ];
    case 'drawing':
      return [`*Drawing: ${safeMarkdown(block.caption)}*`];
    case 'plot':
      return [`*Plot: ${safeMarkdown(block.caption)}*`, '', ...blockLines(block.table)];
    case 'callout': {
      const mark = calloutMarks[block.level];
      const body = block.body.flatMap((part) => ['', ...blockLines(part)]);
      const defer = block.deferTo === undefined ? [] : ['', `To settle: ${safeMarkdown(block.deferTo)}.`];
      return [`${mark.shape} **${mark.word}: ${safeMarkdown(block.title)}**`, ...body, ...defer].map((line) =>
        `> ${line}`.trimEnd(),
      );
    }
    case 'steps':
      return block.items.flatMap((step) => [
        `${step.number}. **${safeMarkdown(step.title)}** (${safeMarkdown(step.who)}). ${safeMarkdown(step.text)}`,
        ...(step.weather === undefined ? [] : [`    - Weather: ${safeMarkdown(step.weather)}`]),
        ...(step.covers === undefined ? [] : [`    - Covered for good: ${safeMarkdown(step.covers)}`]),
        ...(step.hold === undefined
          ? []
          : [
              `    - ■ **Hold point ${safeMarkdown(step.hold.id)}: ${safeMarkdown(step.hold.title)}.** Pass: ${safeMarkdown(step.hold.pass)} Who looks: ${safeMarkdown(step.hold.who)}. Evidence: ${safeMarkdown(step.hold.evidence)}.`,
            ]),
      ]);
    case 'sourceList':
      return block.items.map((item) => {
        const clauses = item.clauses.length === 0 ? '' : ` Used here: ${item.clauses.join('; ')}.`;
        return `- **${safeMarkdown(item.id)}** ${safeMarkdown(`${item.text}. Known: ${item.known}.${clauses}`)}`;
      });
    case 'cards':
      return block.items.flatMap((card) => [
        `**${safeMarkdown(card.title)}**`,
        '',
        ...card.facts.map((fact) => `- ${safeMarkdown(fact.label)}: ${safeMarkdown(fact.value)}`),
        '',
        ...card.questions.map((question, index) => `${index + 1}. ${inline(question)}`),
        '',
      ]);
    case 'workings':
      return block.items.flatMap((item) => [
        `**${safeMarkdown(item.title)}**`,
        '',
        safeMarkdown(item.formula),
        '',
        ...table(
          ['Symbol', 'Meaning', 'Value'].map(left),
          item.inputs.map((input) => [input.symbol, input.meaning, input.value].map(safeMarkdown)),
        ),
        '',
        safeMarkdown(`${item.result.symbol} = ${item.result.value}, ${item.result.meaning}`),
        ...(item.limit === undefined
          ? []
          : [
              '',
              safeMarkdown(
                `${verdictMarks[item.limit.meets ? 'meets' : 'misses'].shape} ${verdictMarks[item.limit.meets ? 'meets' : 'misses'].word}: ${item.limit.meaning} ${item.limit.value}`,
              ),
            ]),
        '',
        safeMarkdown(`Source: ${citationText(item.source)} (${item.source.known})`),
        '',
      ]);
  }
}

function sectionLines(section: Section): string[] {
  return [
    `${section.level === 1 ? '##' : '###'} ${safeMarkdown(section.title)}`,
    '',
    ...section.blocks.flatMap((block) => [...blockLines(block), '']),
  ];
}

/** The whole report as one Markdown text ending in one line end. */
export function markdown(document: ReportDocument): string {
  const lines = [
    `# ${safeMarkdown(document.title)}`,
    '',
    safeMarkdown(document.subtitle),
    '',
    ...document.facts.map((fact) => `- ${safeMarkdown(fact.label)}: ${safeMarkdown(fact.value)}`),
    '',
    ...document.sections.flatMap(sectionLines),
  ];
  return `${lines
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trimEnd()}\n`;
}

/** One table as comma-separated values, for a spreadsheet. */
export function tableCsv(
  columns: readonly { readonly title: string }[],
  rows: readonly (readonly Cell[])[],
): string {
  const quoted = (text: string): string =>
    `"${(/^[=+\-@\t\r]/.test(text) ? `'${text}` : text).replaceAll('"', '""')}"`;
  const words = (cell: Cell): string =>
    cell.verdict === undefined
      ? plainText(cell.text)
      : `${plainText(cell.text)} ${verdictMarks[cell.verdict].word}`;
  return [
    columns.map((column) => quoted(column.title)),
    ...rows.map((cells) => cells.map((part) => quoted(words(part)))),
  ]
    .map((line) => line.join(','))
    .join('\r\n')
    .concat('\r\n');
}
