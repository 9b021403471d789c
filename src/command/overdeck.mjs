/** `npm run -s overdeck -- COMMAND …`: installs what is missing, then runs the command line. */
import { ensure } from './ensure.mjs';

ensure();
const { register } = await import('tsx/esm/api');
register();
await import('./main.ts');
