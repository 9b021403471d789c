import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ending } from '../../src/command/run.ts';
import { sureCount } from '../../src/command/sure.ts';

const cottage = join('content', 'scenarios', '1-ridge-cottage.json');

describe('--sure', () => {
  it('takes a whole number from 0 to 1000, and may be left out', () => {
    expect(sureCount(undefined)).toBeUndefined();
    expect(sureCount('0')).toBe(0);
    expect(sureCount('1000')).toBe(1000);
  });

  it.each(['-1', '1001', '2.5', 'many', '1e2'])(
    'refuses %s with one line, and nothing on standard output',
    async (given) => {
      const { output, errors, code } = await ending(['evaluate', cottage, `--sure=${given}`]);
      expect(code).toBe(2);
      expect(output).toBe('');
      expect(errors).toBe(`--sure: "${given}" is not a whole number from 0 to 1000\n`);
    },
  );

  it('needs its number', async () => {
    const { errors, code } = await ending(['evaluate', cottage, '--sure']);
    expect(code).toBe(2);
    expect(errors).toBe('--sure: needs a value\n');
  });
});
