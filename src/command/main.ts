/** The entry of the command line. */
import { ending } from './run.ts';

/** A reader that stops early, as `head` does, is no failure. */
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit();
    throw error;
  });
}

const { output, errors, code } = await ending(process.argv.slice(2));
process.exitCode = code;
if (output.length > 0) process.stdout.write(output);
if (errors !== '') process.stderr.write(errors);
