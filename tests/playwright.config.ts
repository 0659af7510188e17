import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import { defineConfig } from '@playwright/test';
import { CHROMIUM_FLAGS, headlessPath } from './chromium.ts';

/** End-to-end tests drive the built page in a real Chromium, against the browser host and real services. */
export default defineConfig({
  testDir: resolve(import.meta.dirname, 'e2e'),
  outputDir: resolve(import.meta.dirname, '..', 'test-results'),
  fullyParallel: true,
  forbidOnly: true,
  workers: Math.min(4, availableParallelism()),
  timeout: 90_000,
  expect: { timeout: 20_000 },
  reporter: 'list',
  use: {
    viewport: { width: 1280, height: 800 },
    colorScheme: 'light',
    // What is looked at stands still; motion.spec.ts looks at what moves.
    contextOptions: { reducedMotion: 'reduce' },
    launchOptions: { executablePath: headlessPath(), args: CHROMIUM_FLAGS },
  },
});
