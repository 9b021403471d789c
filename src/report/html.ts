/** The report as one self-contained HTML page: inline style, no script, no outside request, print rules for Letter and A4. */
import type {
  Block,
  Callout,
  Cards,
  Cell,
  Citation,
  DrawingBlock,
  Inline,
  KeyFigures,
  PlotBlock,
  ReportDocument,
  Run,
  Section,
  Steps,
  Table,
  Verdict,
  Workings,
} from './document.ts';
import { calloutMarks, citationText, verdictMarks } from './document.ts';
import { reportStyle } from './htmlStyle.ts';
import { toSvg } from '../drawing/svg.ts';

/** Control characters (but tab and line ends), noncharacters and halves of surrogate pairs are illegal in HTML. */
const controls =
  /[^\P{Cc}\t\n\r]|[\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/gu;

/** Text made safe for element content and double-quoted attributes. */
export function escaped(text: string): string {
  return text
    .replace(controls, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}

function runHtml(run: Run): string {
  if (run.text === '\n') return '<br>';
  let html = escaped(run.text);
  if (run.code) html = `<code>${html}</code>`;
  if (run.emphasis) html = `<em>${html}</em>`;
  if (run.strong) html = `<strong>${html}</strong>`;
  if (run.citation) {
    return `<a class="source" href="#source-${escaped(run.citation.source)}">${html}</a>`;
  }
  if (run.term) return `<a class="term" href="#term-${escaped(run.term)}">${html}</a>`;
  if (run.href) {
    const outside = run.href.startsWith('#') ? '' : ' rel="noopener noreferrer"';
    return `<a href="${escaped(run.href)}"${outside}>${html}</a>`;
  }
  return html;
}

/** User text may be of any script: each run is isolated, so that its direction does not leak. */
const inlineHtml = (inline: Inline): string => inline.map(runHtml).join('');
const isolated = (text: string): string => `<bdi>${escaped(text)}</bdi>`;

function verdictHtml(verdict: Verdict): string {
  const mark = verdictMarks[verdict];
  return `<span class="verdict ${verdict}"><span aria-hidden="true">${mark.shape}</span> ${mark.word}</span>`;
}

const citationHtml = (citation: Citation): string =>
  `<a class="source" href="#source-${escaped(citation.source)}">${escaped(citationText(citation))}</a> <span class="known">(${escaped(citation.known)})</span>`;

function figuresHtml(block: KeyFigures): string {
  const items = block.items.map(
    (figure) => `<li id="figure-${escaped(figure.id)}">
<p class="label">${escaped(figure.label)}</p>
<p class="value">${escaped(figure.value)}</p>
<p>${verdictHtml(figure.verdict)}: ${escaped(figure.limit)}; ${escaped(figure.margin)}</p>
<p class="from">${citationHtml(figure.source)}</p>
</li>`,
  );
  return `<ul class="figures">${items.join('\n')}</ul>`;
}

function cellHtml(cell: Cell, heading: boolean, align: 'left' | 'right'): string {
  const verdict = cell.verdict === undefined ? '' : ` ${verdictHtml(cell.verdict)}`;
  const body = `${inlineHtml(cell.text)}${verdict}`;
  return heading ? `<th scope="row" class="${align}">${body}</th>` : `<td class="${align}">${body}</td>`;
}

function tableHtml(table: Table): string {
  const head = table.columns
    .map((column) => `<th scope="col" class="${column.align}">${escaped(column.title)}</th>`)
    .join('');
  const rows = table.rows.map((row, index) => {
    const cells = row.map((part, place) =>
      cellHtml(part, place === 0, table.columns[place]?.align ?? 'left'),
    );
    const strong = table.strongRows?.includes(index) ? ' class="sum"' : '';
    return `<tr${strong}>${cells.join('')}</tr>`;
  });
  const note = table.note === undefined ? '' : `<p class="note">${escaped(table.note)}</p>`;
  return `<div class="scroll" tabindex="0" role="region" aria-label="${escaped(table.caption)}"><table id="${escaped(table.id)}"><caption>${escaped(table.caption)}</caption>
<thead><tr>${head}</tr></thead>
<tbody>${rows.join('\n')}</tbody></table></div>${note}`;
}

function drawingHtml(block: DrawingBlock): string {
  return `<figure id="${escaped(block.id)}">${toSvg(block.shapes, 'print')}<figcaption>${escaped(block.caption)}</figcaption></figure>`;
}

/** Both widths of a plot; the style shows one. The table stands closed behind it. */
const plotHtml = (block: PlotBlock): string =>
  `<div id="${escaped(block.id)}" class="plot"><figure><div class="wide">${toSvg(block.picture, 'print')}</div><div class="narrow">${toSvg(block.narrow, 'print')}</div><figcaption>${escaped(block.caption)}</figcaption></figure>
<details><summary>The numbers of this plot</summary>${tableHtml(block.table)}</details></div>`;

function calloutHtml(callout: Callout): string {
  const mark = calloutMarks[callout.level];
  const defer =
    callout.deferTo === undefined ? '' : `<p class="defer">To settle: ${escaped(callout.deferTo)}.</p>`;
  return `<div class="callout ${callout.level}" role="note" id="${escaped(callout.id)}">
<p class="what"><span aria-hidden="true">${mark.shape}</span> ${mark.word}: <strong>${escaped(callout.title)}</strong></p>
${callout.body.map(blockHtml).join('\n')}${defer}</div>`;
}

function stepsHtml(steps: Steps): string {
  const items = steps.items.map((step) => {
    const weather =
      step.weather === undefined ? '' : `<p class="weather">Weather: ${escaped(step.weather)}</p>`;
    const covers =
      step.covers === undefined ? '' : `<p class="covers">Covered for good: ${escaped(step.covers)}</p>`;
    const hold =
      step.hold === undefined
        ? ''
        : `<div class="hold"><p><strong>■ Hold point ${escaped(step.hold.id)}: ${escaped(step.hold.title)}</strong></p>
<p>Pass: ${escaped(step.hold.pass)}</p><p>Who looks: ${escaped(step.hold.who)}. Evidence: ${escaped(step.hold.evidence)}.</p>
<p class="sign">Signed <span class="line"></span> Date <span class="line"></span></p></div>`;
    return `<li value="${step.number}"><p><strong>${escaped(step.title)}</strong> <span class="who">${escaped(step.who)}</span></p>
<p>${escaped(step.text)}</p>${weather}${covers}${hold}</li>`;
  });
  return `<ol class="steps">${items.join('\n')}</ol>`;
}

function cardsHtml(cards: Cards): string {
  return cards.items
    .map((card) => {
      const facts = card.facts
        .map((fact) => `<div><dt>${escaped(fact.label)}</dt><dd>${isolated(fact.value)}</dd></div>`)
        .join('');
      const questions = card.questions.map((question) => `<li>${inlineHtml(question)}</li>`).join('\n');
      return `<div class="card" id="${escaped(card.id)}" role="group" aria-label="${escaped(card.title)}"><p class="title"><strong>${escaped(card.title)}</strong></p>
<dl class="facts">${facts}</dl><ol>${questions}</ol></div>`;
    })
    .join('\n');
}

function workingsHtml(workings: Workings): string {
  return workings.items
    .map((item) => {
      const inputs = item.inputs
        .map(
          (input) =>
            `<tr><th scope="row"><var>${escaped(input.symbol)}</var></th><td>${escaped(input.meaning)}</td><td class="right">${escaped(input.value)}</td></tr>`,
        )
        .join('\n');
      const limit =
        item.limit === undefined
          ? ''
          : `<p>${verdictHtml(item.limit.meets ? 'meets' : 'misses')}: ${escaped(item.limit.meaning)} ${escaped(item.limit.value)}</p>`;
      const again =
        item.calculation === undefined ? '' : `<pre><code>${escaped(item.calculation)}</code></pre>`;
      const note = item.note === undefined ? '' : `<p class="note">${escaped(item.note)}</p>`;
      return `<div class="working" id="working-${escaped(item.id)}"><p class="title"><strong>${escaped(item.title)}</strong></p>
<p class="formula">${escaped(item.formula)}</p>
<table><caption>Inputs of ${escaped(item.title)}</caption><thead><tr><th scope="col">Symbol</th><th scope="col">Meaning</th><th scope="col" class="right">Value</th></tr></thead><tbody>${inputs}</tbody></table>
<p class="result"><var>${escaped(item.result.symbol)}</var> = <strong>${escaped(item.result.value)}</strong> ${escaped(item.result.meaning)}</p>
${limit}<p class="from">${citationHtml(item.source)}</p>${again}${note}</div>`;
    })
    .join('\n');
}

function blockHtml(block: Block): string {
  switch (block.kind) {
    case 'paragraph':
      return `<p${block.tone === undefined ? '' : ` class="${block.tone}"`}>${inlineHtml(block.text)}</p>`;
    case 'list': {
      const tag = block.ordered ? 'ol' : 'ul';
      return `<${tag}>${block.items.map((item) => `<li>${inlineHtml(item)}</li>`).join('\n')}</${tag}>`;
    }
    case 'sides':
      return `<div class="sides">${block.sides
        .map(
          (side) =>
            `<div><p><strong>${escaped(side.title)}</strong></p><ol>${side.items
              .map((item) => `<li>${inlineHtml(item)}</li>`)
              .join('\n')}</ol></div>`,
        )
        .join('\n')}</div>`;
    case 'keyFigures':
      return figuresHtml(block);
    case 'table':
      return tableHtml(block);
    case 'drawing':
      return drawingHtml(block);
    case 'plot':
      return plotHtml(block);
    case 'callout':
      return calloutHtml(block);
    case 'steps':
      return stepsHtml(block);
    case 'cards':
      return cardsHtml(block);
    case 'workings':
      return workingsHtml(block);
    case 'sourceList':
      return `<dl class="sources">${block.items
        .map((item) => {
          const clauses = item.clauses.length === 0 ? '' : ` Used here: ${item.clauses.join('; ')}.`;
          return `<div id="source-${escaped(item.id)}"><dt>${escaped(item.id)}</dt><dd>${escaped(item.text)}. Known: ${escaped(item.known)}.${escaped(clauses)}</dd></div>`;
        })
        .join('\n')}</dl>`;
  }
}

function sectionHtml(section: Section): string {
  const tag = section.level === 1 ? 'h2' : 'h3';
  const page = section.newPage ? ' class="new-page"' : '';
  return `<section id="${escaped(section.id)}"${page} aria-labelledby="heading-${escaped(section.id)}">
<${tag} id="heading-${escaped(section.id)}">${escaped(section.title)}</${tag}>
${section.blocks.map(blockHtml).join('\n')}
</section>`;
}

/** The parts inside `<main>`, for a page that brings its own head and style. */
export function htmlBody(document: ReportDocument): string {
  const facts = document.facts
    .map((fact) => `<div><dt>${escaped(fact.label)}</dt><dd>${isolated(fact.value)}</dd></div>`)
    .join('');
  const contents = document.sections
    .filter((section) => section.level === 1)
    .map((section) => `<li><a href="#${escaped(section.id)}">${escaped(section.title)}</a></li>`)
    .join('\n');
  return `<header><h1>${isolated(document.title)}</h1><p class="lead">${isolated(document.subtitle)}</p>
<dl class="facts">${facts}</dl></header>
<nav aria-label="Contents"><p class="label">Contents</p><ol>${contents}</ol></nav>
${document.sections.map(sectionHtml).join('\n')}`;
}

/** The whole page as one file that a browser can open from anywhere. */
export function html(document: ReportDocument): string {
  return `<!doctype html>
<html lang="${document.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<title>${escaped(document.title)}</title>
<style>${reportStyle}</style>
</head>
<body>
<main class="report ${document.role}">
${htmlBody(document)}
</main>
</body>
</html>
`;
}
