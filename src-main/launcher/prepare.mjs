/**
 * Runs after an install (npm's `prepare`): builds the program, so that it can be started at once.
 * An install without the tools to build, for production, is left as it is.
 */
import { join } from 'node:path';
import { build, builderIn } from './fresh-build.mjs';

const root = join(import.meta.dirname, '..', '..');
if (builderIn(root) !== null && !build(root, console.error)) process.exitCode = 1;
