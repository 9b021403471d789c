/**
 * Makes sure that the packages of the lock file are installed, before anything that needs one is loaded.
 * Plain JavaScript without dependencies. Says what it does on standard error only.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Folder of package.json. */
export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

function readObject(...path) {
  try {
    return JSON.parse(readFileSync(join(root, ...path), 'utf8'));
  } catch (error) {
    if (error.code === 'ENOENT' || error instanceof SyntaxError) return undefined;
    throw error;
  }
}

/** The lowest Node that package.json asks for, as [major, minor]. */
function neededNode() {
  const [major, minor] = (readObject('package.json')?.engines?.node ?? '>=20.19').match(/\d+/g).map(Number);
  return [major, minor ?? 0];
}

function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  const [needMajor, needMinor] = neededNode();
  if (major > needMajor || (major === needMajor && minor >= needMinor)) return;
  process.stderr.write(
    `Overdeck needs Node ${needMajor}.${needMinor} or newer; this is Node ${process.versions.node}.\n`,
  );
  process.exit(1);
}

/** Packages that may be left out on this machine: made for another system, or optional. */
const mayBeMissing = (entry) => entry.optional || entry.devOptional || entry.os || entry.cpu;

/** Why an installation is needed, in words; undefined when what is installed agrees with the lock file. */
export function installReason() {
  const locked = readObject('package-lock.json')?.packages;
  if (locked === undefined) throw new Error('package-lock.json is missing or is not JSON');
  const installed = readObject('node_modules', '.package-lock.json')?.packages;
  if (installed === undefined) return 'no packages are installed yet';
  for (const [place, entry] of Object.entries(locked)) {
    if (place === '' || entry.link) continue;
    const there = installed[place];
    if (there === undefined && mayBeMissing(entry)) continue;
    if (there?.version !== entry.version || there?.integrity !== entry.integrity) {
      return `${place.replace(/^.*node_modules\//, '')} ${entry.version} is not installed`;
    }
  }
  return undefined;
}

/** npm as a program and its first arguments: the one that started us, else the one on the path. */
function npm() {
  const started = process.env.npm_execpath;
  if (started?.endsWith('.js') && /npm/.test(started)) return [process.execPath, [started]];
  return [process.platform === 'win32' ? 'npm.cmd' : 'npm', []];
}

/** Checks Node and installs what is missing from the lock file; ends the process when that fails. */
export function ensure() {
  checkNode();
  const reason = installReason();
  if (reason === undefined) return;
  process.stderr.write(`Installing the packages of package-lock.json (${reason}) …\n`);
  const [program, first] = npm();
  const { status, error } = spawnSync(
    program,
    [...first, 'ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'],
    { cwd: root, stdio: ['ignore', 2, 2], shell: program.endsWith('.cmd') },
  );
  if (status === 0) return;
  process.stderr.write(
    `The packages could not be installed${error === undefined ? '' : ` (${error.message})`}; see the lines above.\n`,
  );
  process.exit(1);
}
