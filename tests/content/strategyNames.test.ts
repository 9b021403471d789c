/** The names of the strategies in code are the titles of their files. */
import { describe, expect, it } from 'vitest';
import { strategies, strategyNames } from '../../src/catalog/sets.ts';
import { parseWords } from '../../src/catalog/words.ts';
import { readContent } from '../../src/command/contentCheck/content.ts';

const reading = parseWords(
  Object.fromEntries(
    Object.entries(readContent().markdown).filter(([path]) => path.startsWith('content/strategies/')),
  ),
);

describe('the name of a strategy', () => {
  it.each(strategies)('is the title of its file: %s', (strategy) => {
    expect(reading.ok && reading.words.strategies[strategy]?.title).toBe(strategyNames[strategy]);
  });
});
