import { defineConfig } from '@playwright/test';
import endToEnd from '../playwright.config.ts';

/** One long run, with the same browser and the same start as the end-to-end tests. */
export default defineConfig({
  ...endToEnd,
  testDir: import.meta.dirname,
  testMatch: 'long-run.ts',
  // It ends by its own clock; what it waits for on the way must come.
  timeout: 0,
  use: { ...endToEnd.use, actionTimeout: 30_000 },
  workers: 1,
  reporter: 'list',
});
