/**
 * Runs after an install (npm's `prepare`): builds the program, so that it can be started at once.
 * An install without the tools to build, for production, is left as it is.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..', '..');
const builder = join(root, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js');
if (existsSync(builder)) {
  const { status } = spawnSync(process.execPath, [builder, 'build', '--logLevel', 'error'], {
    cwd: root,
    stdio: 'inherit',
  });
  process.exitCode = status ?? 1;
}
