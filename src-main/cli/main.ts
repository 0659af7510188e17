/** The command line's entry: `node out/main/cli.cjs COMMAND …`. */
import process from 'node:process';
import { useKeptCode } from './kept-code.ts';

// A reader that has seen enough (`… | head`) closes the pipe; that is no error of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

useKeptCode(import.meta.dirname);
// All else is loaded after that.
void import('./run.ts')
  .then(({ run }) =>
    run(process.argv.slice(2), {
      out: (text) => process.stdout.write(`${text}\n`),
      warn: (text) => process.stderr.write(`${text}\n`),
      passing: (text) => {
        // Over the line before; in a file or a pipe it would be one line after the other.
        if (process.stderr.isTTY) process.stderr.write(`\r\u001b[K${text}`);
      },
    }),
  )
  .then((status) => {
    // Set, not exited with: what is still on its way out is written first.
    process.exitCode = status;
  });
