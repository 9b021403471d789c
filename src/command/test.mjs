/**
 * `npm test`: installs what is missing, then every check, in the order in which a mistake is cheapest to find.
 * Stops at the first failing step. The last line is always `N passed, N failed`.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensure, root } from './ensure.mjs';

ensure();
const reports = mkdtempSync(join(tmpdir(), 'overdeck-tests-'));
const report = (name) => join(reports, `${name}.json`);
const vitest = (project, ...more) => [
  'vitest/vitest.mjs',
  'run',
  '--project',
  project,
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${report(project)}`,
  ...more,
];

/** Each step: its heading, the program below node_modules with its arguments, and the report it leaves. */
const steps = [
  { title: 'Types', run: ['typescript/bin/tsc', '--noEmit'] },
  {
    title: 'Types in Svelte files',
    run: ['svelte-check/bin/svelte-check', '--tsconfig', './tsconfig.json', '--fail-on-warnings'],
  },
  { title: 'Lint', run: ['eslint/bin/eslint.js', '.'] },
  { title: 'Format', run: ['prettier/bin/prettier.cjs', '--check', '--log-level', 'warn', '.'] },
  { title: 'Unit, reference and property tests', run: vitest('unit', '--coverage'), report: 'unit' },
  { title: 'Build', run: ['vite/bin/vite.js', 'build', '--logLevel', 'warn'] },
  { title: 'Browser tests', run: vitest('browser'), report: 'browser' },
];

function counts(name) {
  try {
    const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(report(name), 'utf8'));
    return { passed: numPassedTests, failed: numFailedTests };
  } catch (error) {
    if (error.code === 'ENOENT') return { passed: 0, failed: 0 };
    throw error;
  }
}

let passed = 0;
let failed = 0;
let stoppedAt;
for (const step of steps) {
  process.stdout.write(`\n== ${step.title} ==\n`);
  const [program, ...rest] = step.run;
  const { status, signal } = spawnSync(process.execPath, [join(root, 'node_modules', program), ...rest], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  const counted = step.report === undefined ? { passed: 0, failed: 0 } : counts(step.report);
  passed += counted.passed;
  failed += counted.failed;
  if (status === 0 && (step.report === undefined || counted.passed > 0)) continue;
  if (status === 0) process.stdout.write('No test ran in this step, which counts as a failure.\n');
  if (signal !== null) process.stdout.write(`The step was ended by ${signal}.\n`);
  stoppedAt = step.title;
  failed = Math.max(failed, 1);
  break;
}
rmSync(reports, { recursive: true, force: true });
if (stoppedAt !== undefined) process.stdout.write(`\n== Stopped at: ${stoppedAt} ==\n`);
process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exit(stoppedAt === undefined ? 0 : 1);
