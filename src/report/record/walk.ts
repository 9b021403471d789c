/** Walks over the tree: every run of text, every citation, every target of a link. */
import type { Block, Citation, Inline, ReportDocument, Section } from '../document.ts';

/** All runs of a block in reading order. */
export function inlinesIn(block: Block): Inline[] {
  const say = (...texts: (string | undefined)[]): Inline[] =>
    texts.flatMap((text) => (text === undefined || text === '' ? [] : [[{ text }]]));
  switch (block.kind) {
    case 'paragraph':
      return [block.text];
    case 'list':
      return [...block.items];
    case 'sides':
      return block.sides.flatMap((side) => [...say(side.title), ...side.items]);
    case 'keyFigures':
      return block.items.flatMap((item) => say(item.label, item.value, item.limit, item.margin));
    case 'table':
      return [
        ...say(block.caption, ...block.columns.map((column) => column.title)),
        ...block.rows.flatMap((row) => row.map((cell) => cell.text)),
        ...say(block.note),
      ];
    case 'drawing':
      return say(block.caption);
    case 'plot':
      return [...say(block.caption), ...inlinesIn(block.table)];
    case 'callout':
      return [...say(block.title), ...block.body.flatMap(inlinesIn), ...say(block.deferTo)];
    case 'steps':
      return block.items.flatMap((step) =>
        say(
          step.title,
          step.who,
          step.text,
          step.weather,
          step.hold?.title,
          step.hold?.pass,
          step.hold?.who,
          step.hold?.evidence,
        ),
      );
    case 'sourceList':
      return block.items.flatMap((item) => say(item.text));
    case 'cards':
      return block.items.flatMap((card) => [
        ...say(card.title, ...card.facts.flatMap((fact) => [fact.label, fact.value])),
        ...card.questions,
      ]);
    case 'workings':
      return block.items.flatMap((item) =>
        say(
          item.title,
          item.formula,
          ...item.inputs.flatMap((input) => [input.meaning, input.value]),
          item.result.meaning,
          item.result.value,
          item.note,
        ),
      );
  }
}

export function citationsIn(sections: readonly Section[]): Citation[] {
  return sections
    .flatMap((section) => section.blocks)
    .flatMap((block): Citation[] => {
      const runs = inlinesIn(block).flatMap((inline) => inline.flatMap((run) => run.citation ?? []));
      switch (block.kind) {
        case 'keyFigures':
        case 'workings':
          return [...runs, ...block.items.map((item) => item.source)];
        case 'steps':
          return [...runs, ...block.items.flatMap((step) => step.hold?.source ?? [])];
        default:
          return runs;
      }
    });
}

/** Every `id` that a link inside the document may name. */
export function anchorsIn(sections: readonly Section[]): Set<string> {
  const ids = new Set<string>();
  for (const section of sections) {
    ids.add(section.id);
    for (const block of section.blocks) {
      if (block.kind === 'table' || block.kind === 'drawing' || block.kind === 'callout') ids.add(block.id);
      if (block.kind === 'plot') ids.add(block.id).add(block.table.id);
      if (block.kind === 'sourceList') block.items.forEach((item) => ids.add(`source-${item.id}`));
      if (block.kind === 'cards') block.items.forEach((item) => ids.add(item.id));
      if (block.kind === 'workings') block.items.forEach((item) => ids.add(`working-${item.id}`));
      if (block.kind === 'keyFigures') block.items.forEach((item) => ids.add(`figure-${item.id}`));
    }
  }
  return ids;
}

/** The letters of the whole document, for word searches. */
export const textOf = (sections: readonly Section[]): string =>
  sections
    .flatMap((section) => [
      section.title,
      ...section.blocks.flatMap(inlinesIn).map((inline) => inline.map((run) => run.text).join('')),
    ])
    .join('\n');

/** Links to places that this document does not have become plain text. */
export function withoutDeadLinks(sections: readonly Section[]): Section[] {
  const anchors = anchorsIn(sections);
  const clean = (inline: Inline): Inline =>
    inline.map((run) => {
      const { href, term, citation, ...rest } = run;
      return {
        ...rest,
        ...(href !== undefined && (!href.startsWith('#') || anchors.has(href.slice(1))) ? { href } : {}),
        ...(term !== undefined && anchors.has(`term-${term}`) ? { term } : {}),
        ...(citation !== undefined && anchors.has(`source-${citation.source}`) ? { citation } : {}),
      };
    });
  const block = <B extends Block>(one: B): B => {
    switch (one.kind) {
      case 'paragraph':
        return { ...one, text: clean(one.text) };
      case 'list':
        return { ...one, items: one.items.map(clean) };
      case 'table':
        return {
          ...one,
          rows: one.rows.map((row) => row.map((cell) => ({ ...cell, text: clean(cell.text) }))),
        };
      case 'callout':
        return { ...one, body: one.body.map(block) };
      case 'cards':
        return {
          ...one,
          items: one.items.map((card) => ({ ...card, questions: card.questions.map(clean) })),
        };
      default:
        return one;
    }
  };
  return sections.map((section) => ({ ...section, blocks: section.blocks.map(block) }));
}

export type { ReportDocument };
