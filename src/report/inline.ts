/** Markdown texts of content/ into blocks of the tree. Raw HTML and images are dropped, links keep only safe addresses. */
import { marked, type Token, type Tokens } from 'marked';
import type { Inline, List, Paragraph, Run } from './document.ts';

/** Only these may leave the document; `#` stays inside it. */
const safeAddress = /^(https?:\/\/|#[A-Za-z])/;
/** Terms are written `[fascia](term:fascia)` or `[fascia](../glossary/fascia.md)`. */
const termAddress = /^(?:term:|(?:\.\.\/)?glossary\/)([a-z0-9-]+)(?:\.md)?$/;

type Marks = Pick<Run, 'strong' | 'emphasis' | 'code' | 'href' | 'term'>;

function linkMarks(href: string, marks: Marks): Marks {
  const term = termAddress.exec(href)?.[1];
  if (term !== undefined) return { ...marks, term };
  return safeAddress.test(href) ? { ...marks, href } : marks;
}

/** marked escapes quotes and angle brackets in text tokens; the tree holds the letters themselves. */
function unescaped(text: string): string {
  return text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');
}

function runs(tokens: readonly Token[], marks: Marks): Run[] {
  return tokens.flatMap((token): Run[] => {
    switch (token.type) {
      case 'strong':
        return runs((token as Tokens.Strong).tokens, { ...marks, strong: true });
      case 'em':
        return runs((token as Tokens.Em).tokens, { ...marks, emphasis: true });
      case 'link':
        return runs((token as Tokens.Link).tokens, linkMarks((token as Tokens.Link).href, marks));
      case 'codespan':
        return [{ text: (token as Tokens.Codespan).text, ...marks, code: true }];
      case 'br':
        return [{ text: ' ', ...marks }];
      case 'html':
      case 'image':
        return [];
      default: {
        const inner = (token as Tokens.Text).tokens;
        if (inner !== undefined) return runs(inner, marks);
        const text = 'text' in token && typeof token.text === 'string' ? token.text : token.raw;
        return [{ text: unescaped(text).replace(/\s+/g, ' '), ...marks }];
      }
    }
  });
}

/** One line of Markdown as runs. */
export function inlineOf(markdown: string): Inline {
  return runs(
    marked.lexer(markdown).flatMap((token) => ('tokens' in token ? (token.tokens ?? []) : [])),
    {},
  );
}

/**
 * Markdown as paragraphs and lists. Headings become strong paragraphs, tables one line per row,
 * since a content text may not change the outline of the report.
 */
export function blocksOf(markdown: string): (Paragraph | List)[] {
  return marked.lexer(markdown).flatMap((token): (Paragraph | List)[] => {
    switch (token.type) {
      case 'paragraph':
      case 'text':
        return [{ kind: 'paragraph', text: runs((token as Tokens.Paragraph).tokens ?? [token], {}) }];
      case 'heading':
        return [{ kind: 'paragraph', text: runs((token as Tokens.Heading).tokens, { strong: true }) }];
      case 'list': {
        const list = token as Tokens.List;
        const items = list.items.flatMap((item) => itemLines(item.tokens));
        return [{ kind: 'list', ordered: list.ordered, items }];
      }
      case 'blockquote':
        return blocksOf((token as Tokens.Blockquote).text);
      case 'table': {
        const table = token as Tokens.Table;
        const items = table.rows.map((row) =>
          row.flatMap((part, index) => [...(index === 0 ? [] : [{ text: ' · ' }]), ...runs(part.tokens, {})]),
        );
        return [{ kind: 'list', ordered: false, items }];
      }
      default:
        return [];
    }
  });
}

/** A list item's own line, then the lines of lists inside it. */
function itemLines(tokens: readonly Token[]): Inline[] {
  const own = tokens.filter((token) => token.type !== 'list');
  const nested = tokens.filter((token): token is Tokens.List => token.type === 'list');
  return [runs(own, {}), ...nested.flatMap((list) => list.items.flatMap((item) => itemLines(item.tokens)))];
}

/** Fill `{name}` slots of a text; a slot without a value stays visible, so that a test finds it. */
export function filled(text: string, facts: Readonly<Record<string, string>>): string {
  return text.replace(/\{([A-Za-z_][A-Za-z0-9_]*)\}/g, (slot, name: string) => facts[name] ?? slot);
}
