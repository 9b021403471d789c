import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { interviewDiagram } from '../../src/command/interviewDiagram.ts';

it('the text diagram of the interview equals the reviewed one (npm run -s chart > tests/interview/diagram.golden.txt)', () => {
  const golden = readFileSync(new URL('./diagram.golden.txt', import.meta.url), 'utf8');
  expect(interviewDiagram()).toBe(golden);
});
