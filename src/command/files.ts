/** Reads what a person names and writes what they ask for: the whole file or nothing. */
import { randomBytes } from 'node:crypto';
import { readFileSync, realpathSync, renameSync, rmSync, statSync, writeFileSync, type Stats } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { LARGEST_CASE_BYTES, sizeFault } from '../case/read.ts';
import { badInput } from './badInput.ts';
import { root } from './place.ts';

/** Length of the chance part of the neighbor file's name, in bytes. */
const NEIGHBOR_BYTES = 8;

/** npm starts a script in the package's folder; a path is meant from where the person stood. */
const standing = (): string =>
  process.cwd() === root && process.env['INIT_CWD'] !== undefined ? process.env['INIT_CWD'] : process.cwd();

export const pathFrom = (named: string): string => resolve(standing(), named);

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'does not exist',
  ENOTDIR: 'does not exist: part of the path is a file, not a folder',
  EISDIR: 'is a folder; a file is needed',
  EACCES: 'may not be read: permission is missing',
  EPERM: 'may not be read: permission is missing',
  ELOOP: 'is a link that leads back to itself',
  ENAMETOOLONG: 'is too long for a file name',
  ERR_INVALID_ARG_VALUE: 'is not a file name',
};

function reasonOf(error: unknown): string | undefined {
  return reasons[(error as NodeJS.ErrnoException).code ?? ''];
}

function textOf(bytes: Uint8Array, named: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw badInput(named, 'is not UTF-8 text; save it as UTF-8');
  }
}

/** The text of a file, of at most the size that a case may have. */
export const readText = (named: string): string => textOf(readBytes(named, sizeFault), named);

/** The bytes of a file whose size is within a limit: `faultOf` says in words why a size is not. */
export function readBytes(named: string, faultOf: (bytes: number) => string | undefined): Uint8Array {
  const path = pathFrom(named);
  try {
    const { size } = statSync(path);
    const tooLarge = faultOf(size);
    if (tooLarge !== undefined) throw badInput(named, tooLarge);
    return readFileSync(path);
  } catch (error) {
    const reason = reasonOf(error);
    if (reason === undefined) throw error;
    throw badInput(named, reason);
  }
}

/** What stands on standard input, read to its end unless it grows too large. */
export async function readStandardInput(): Promise<string> {
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of process.stdin) {
    chunks.push(chunk as Buffer);
    bytes += (chunk as Buffer).length;
    if (bytes > LARGEST_CASE_BYTES) {
      throw badInput(
        'standard input',
        `is longer than ${LARGEST_CASE_BYTES} bytes (2 MB), the most that is read`,
      );
    }
  }
  return textOf(Buffer.concat(chunks), 'standard input');
}

/** What lies at a path; nothing when it does not exist. */
function entryAt(path: string): Stats | undefined {
  try {
    return statSync(path);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR') return undefined;
    throw error;
  }
}

/** Refuses, before anything is computed, a place where no file can be written. */
export function checkWritable(named: string): void {
  const path = pathFrom(named);
  try {
    const folder = entryAt(dirname(path));
    if (folder === undefined) throw badInput('--out', `the folder of ${named} does not exist; make it first`);
    if (!folder.isDirectory()) throw badInput('--out', `${dirname(named)} is a file, not a folder`);
    if (entryAt(path)?.isDirectory()) throw badInput('--out', `${named} is a folder; a file name is needed`);
  } catch (error) {
    throw writeFault(error, named);
  }
}

const cannotWrite: Readonly<Record<string, string>> = {
  EACCES: 'may not be written: permission is missing',
  EPERM: 'may not be written: permission is missing',
  EROFS: 'may not be written: the disk is read-only',
  ENAMETOOLONG: 'is too long for a file name',
  ELOOP: 'is a link that leads back to itself',
  ERR_INVALID_ARG_VALUE: 'is not a file name',
};

function writeFault(error: unknown, named: string): unknown {
  const reason = cannotWrite[(error as NodeJS.ErrnoException).code ?? ''];
  return reason === undefined ? error : badInput('--out', `${named} ${reason}`);
}

/** Writes the whole file or leaves what was there: a neighbor file first, then one rename. */
export function writeWhole(named: string, content: string | Uint8Array): void {
  checkWritable(named);
  const there = entryAt(pathFrom(named));
  const path = there === undefined ? pathFrom(named) : realpathSync(pathFrom(named));
  const beside = join(dirname(path), `.${randomBytes(NEIGHBOR_BYTES).toString('hex')}.part`);
  try {
    if (there !== undefined && !there.isFile()) {
      writeFileSync(path, content);
      return;
    }
    writeFileSync(beside, content, { flag: 'wx', ...(there === undefined ? {} : { mode: there.mode }) });
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { force: true });
    throw writeFault(error, named);
  }
}
