/** The whole check of content/, and how its faults are printed. */
import type { Facts } from '../../judgement/rules.ts';
import { readContent, type Content, type Fault } from './content.ts';
import { proseFaults } from './prose.ts';
import { realFacts, rulesFaults } from './rules.ts';
import { tableFaults } from './tables.ts';

/** Every fault of the content; empty when all is well. */
export function contentFaults(
  content: Content = readContent(),
  facts: readonly Facts[] = realFacts(),
): Fault[] {
  return [...tableFaults(content), ...rulesFaults(content, facts), ...proseFaults(content)];
}

/** `file, place: rule: hint`, one fault a line. */
export const lineOf = ({ file, path, rule, hint }: Fault): string =>
  `${file}${path === '' ? '' : ` ${path}`}: ${rule}: ${hint}`;
