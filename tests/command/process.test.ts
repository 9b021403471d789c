/** The command line as a program of its own: what stands on which stream, and the code it ends with. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { readText, writeWhole } from '../../src/command/files.ts';
import { root } from './../support/arrows.ts';

const GENEROUS_MS = 120_000;
const NOBODY = 65534;
const program = join(root, 'src', 'command', 'overdeck.mjs');
const folder = mkdtempSync(join(tmpdir(), 'overdeck-process-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

function run(words: readonly string[], input: string) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    cwd: root,
    input,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

/** Calls as a user who owns nothing here: root may read and write everything. */
function asNobody(call: () => void): void {
  if (process.geteuid?.() !== 0) {
    call();
    return;
  }
  process.seteuid?.(NOBODY);
  try {
    call();
  } finally {
    process.seteuid?.(0);
  }
}

describe('the program', { timeout: GENEROUS_MS }, () => {
  it('reads standard input, prints only the result, and ends with 0', () => {
    const input = '{"insideTemperature_C": 20, "outsideTemperature_C": 0, "resistances_m2K_W": [1, 1]}';
    const { status, stdout, stderr } = run(['calc', 'interface-temperatures'], input);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(JSON.parse(stdout)).toEqual({ temperatures_C: [20, 10, 0] });
  });

  it('prints nothing on standard output for bad input, and ends with 2', () => {
    expect(
      run(['evaluate', '-'], '{"overdeck":1,"place":{"zone":"6A"},"roof":{"pitch_rise_per_12":31}}'),
    ).toEqual({
      status: 2,
      stdout: '',
      stderr: 'roof.pitch_rise_per_12: 31 is above 24\n',
    });
  });

  it('takes a reader that leaves early for no failure', async () => {
    const child = spawn(process.execPath, [program, 'evaluate', 'content/scenarios/1-ridge-cottage.json'], {
      cwd: root,
    });
    let errors = '';
    child.stderr.on('data', (chunk: Buffer) => (errors += chunk.toString()));
    child.stdout.once('data', () => child.stdout.destroy());
    const [code] = (await once(child, 'close')) as [number | null];
    expect({ code, errors }).toEqual({ code: 0, errors: '' });
  });
});

describe('a file without permission', () => {
  it('to read is a fault', () => {
    const path = join(folder, 'secret.json');
    writeFileSync(path, '{}', { mode: 0o000 });
    asNobody(() => {
      expect(() => readText(path)).toThrow(/may not be read: permission is missing$/);
    });
  });

  it('to write is a fault, and what stood there stays', () => {
    const path = join(folder, 'kept.json');
    writeFileSync(path, 'before');
    const closed = mkdtempSync(join(folder, 'closed-'));
    spawnSync('chmod', ['555', closed]);
    asNobody(() => {
      expect(() => writeWhole(join(closed, 'new.json'), 'after')).toThrow(/permission is missing$/);
    });
    expect(readFileSync(path, 'utf8')).toBe('before');
  });

  it('and a written file replaces the old one whole', () => {
    const path = join(folder, 'old.json');
    writeFileSync(path, 'a longer text than the new one', { mode: 0o640 });
    writeWhole(path, 'new');
    expect(readFileSync(path, 'utf8')).toBe('new');
  });
});

describe('anything else', () => {
  it('ends with 1: a missed check value, or a failure of ours', async () => {
    vi.resetModules();
    vi.doMock('../../src/command/check.ts', () => ({ check: () => ({ text: 'MISSES x\n', meets: false }) }));
    vi.doMock('../../src/command/schema.ts', () => ({
      schemaNames: ['case'],
      jsonSchema: () => {
        throw new TypeError('planted');
      },
    }));
    const { ending } = await import('../../src/command/run.ts');
    expect(await ending(['check'])).toEqual({ output: 'MISSES x\n', errors: '', code: 1 });
    const failure = await ending(['schema', 'case']);
    expect(failure.code).toBe(1);
    expect(failure.output).toBe('');
    expect(failure.errors).toMatch(/^Overdeck failed: TypeError: planted/);
    vi.doUnmock('../../src/command/check.ts');
    vi.doUnmock('../../src/command/schema.ts');
  });
});
