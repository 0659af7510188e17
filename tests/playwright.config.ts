import { resolve } from 'node:path';
import { defineConfig } from '@playwright/test';
import { CHROMIUM_FLAGS, chromiumPath } from './chromium.ts';

/** End-to-end tests drive the built page in a real Chromium, against the browser host and real services. */
export default defineConfig({
  testDir: resolve(import.meta.dirname, 'e2e'),
  outputDir: resolve(import.meta.dirname, '..', 'test-results'),
  fullyParallel: true,
  forbidOnly: true,
  workers: 2,
  timeout: 120_000,
  reporter: 'list',
  use: {
    // A fresh page costs more than most tests do. Each test has a host, and so an origin and a storage, of its own.
    reuseContext: true,
    viewport: { width: 1280, height: 800 },
    colorScheme: 'light',
    screenshot: 'only-on-failure',
    launchOptions: { executablePath: chromiumPath(), args: CHROMIUM_FLAGS },
  },
});
