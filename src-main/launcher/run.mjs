/**
 * Runs a built part of the program, built anew first where it is not what the
 * sources say: `node src-main/launcher/run.mjs launcher`, `… cli measure motif.png`.
 */
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { ensureBuilt } from './fresh-build.mjs';

const root = join(import.meta.dirname, '..', '..');
const [node, , part = '', ...given] = process.argv;
if (ensureBuilt(root, (line) => process.stderr.write(`${line}\n`))) {
  const entry = join(root, 'out', 'main', `${part}.cjs`);
  // The part reads what it was given as if it had been started itself.
  process.argv = [node ?? process.execPath, entry, ...given];
  createRequire(import.meta.url)(entry);
} else {
  process.exitCode = 1;
}
