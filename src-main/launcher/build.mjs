/** `npm run build`: builds every part of the program, whatever was built before. */
import { join } from 'node:path';
import { build } from './fresh-build.mjs';

process.exitCode = build(join(import.meta.dirname, '..', '..'), console.error) ? 0 : 1;
