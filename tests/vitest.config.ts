import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

const root = resolve(import.meta.dirname, '..');

export default defineConfig({
  root,
  resolve: { alias: { '@shared': resolve(root, 'src-shared') } },
  test: {
    include: ['tests/{unit,property,reference,faults,fuzz}/**/*.test.ts'],
    testTimeout: 30_000,
    hookTimeout: 30_000,
    // One module graph for each process, not for each file: a third of the time goes into loading otherwise.
    isolate: false,
    // Vitest by itself leaves one core idle.
    maxWorkers: availableParallelism(),
  },
});
