import { resolve } from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

const root = resolve(import.meta.dirname, '../..');

/** Tests of a copy of the tree in which a recipe was followed. Forms are looked at as the text of a page. */
export default defineConfig({
  root,
  plugins: [svelte({ configFile: false })],
  resolve: { alias: { '@shared': resolve(root, 'src-shared') } },
  test: { include: ['tests/**/*.test.ts'], isolate: false, maxWorkers: 1, testTimeout: 30_000 },
});
