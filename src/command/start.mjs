/** `npm start`: installs what is missing, builds, serves the app on 127.0.0.1 and prints the address. */
import { join } from 'node:path';
import { ensure, root } from './ensure.mjs';

const USUAL_PORT = 4173;
const HIGHEST_PORT = 65535;

function stop(message) {
  process.stderr.write(`${message}\n`);
  process.exit(1);
}

const wanted = process.env.PORT;
const port = wanted === undefined || wanted === '' ? USUAL_PORT : Number(wanted);
if (!Number.isInteger(port) || port < 0 || port > HIGHEST_PORT) {
  stop(`PORT is "${wanted}"; a whole number from 0 to ${HIGHEST_PORT} is allowed.`);
}

ensure();
const { build, preview } = await import('vite');
process.stdout.write('Building …\n');
const configFile = join(root, 'vite.config.ts');
await build({ configFile, logLevel: 'warn' });
try {
  const server = await preview({
    root,
    logLevel: 'warn',
    preview: { host: '127.0.0.1', port, strictPort: true },
  });
  process.stdout.write(`Overdeck is at ${server.resolvedUrls.local[0]}\nStop it with Ctrl+C.\n`);
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.on(signal, () => {
      server.close().finally(() => process.exit(0));
    });
  }
} catch (error) {
  if (error.code === 'EADDRINUSE' || /already in use/.test(error.message)) {
    stop(`Port ${port} is taken. Choose another: PORT=${port + 1} npm start`);
  }
  throw error;
}
