import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

const root = resolve(import.meta.dirname, '..');

export default defineConfig({
  root,
  resolve: { alias: { '@shared': resolve(root, 'src-shared') } },
  test: {
    testTimeout: 90_000,
    hookTimeout: 90_000,
    // Vitest by itself leaves one core idle.
    maxWorkers: availableParallelism(),
    projects: [
      {
        extends: true,
        test: {
          name: 'ours',
          include: ['tests/{unit,property,faults,fuzz}/**/*.test.ts'],
          // One module graph for each process, not for each file: a third of the time goes into loading otherwise.
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'reference',
          include: ['tests/reference/**/*.test.ts'],
          // Libraries to compare with may replace what is global: one makes `JSON.stringify` a hundred times slower.
          isolate: true,
        },
      },
    ],
  },
});
