/** `npm run -s bench`: installs what is missing, then measures. */
import { ensure } from './ensure.mjs';

ensure();
const { register } = await import('tsx/esm/api');
register();
await import('./bench.ts');
