/** Where the package lies on this machine. */
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Folder of package.json. */
export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
