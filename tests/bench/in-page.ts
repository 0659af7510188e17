/** A page of its own in a headless Chromium, for what can only be timed there. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium, type Page } from 'playwright';
import { build, preview, type InlineConfig } from 'vite';
import { CHROMIUM_FLAGS, headlessPath } from '../chromium.ts';
import { isSlowed, SLOW_FRAME_MS } from './slowed.ts';

/** Builds the page, serves it to a Chromium, and cleans up whatever happens. */
export async function withPage<T>(use: (page: Page) => Promise<T>): Promise<T> {
  const outDir = mkdtempSync(join(tmpdir(), 'walewright-bench-'));
  const config: InlineConfig = {
    configFile: false,
    root: resolve(import.meta.dirname, 'page'),
    logLevel: 'error',
    resolve: { alias: { '@shared': resolve(import.meta.dirname, '../../src-shared') } },
    build: { outDir, emptyOutDir: true },
    preview: {
      host: '127.0.0.1',
      port: 0,
      // A page that is isolated from others gets a clock of 5 µs; otherwise its clock ticks every 100.
      headers: { 'Cross-Origin-Opener-Policy': 'same-origin', 'Cross-Origin-Embedder-Policy': 'require-corp' },
    },
  };
  try {
    await build(config);
    const server = await preview(config);
    const browser = await chromium.launch({
      executablePath: headlessPath(),
      args: CHROMIUM_FLAGS,
    });
    try {
      const page = await browser.newPage({ viewport: { width: 1280, height: 1500 } });
      if (isSlowed()) await page.addInitScript(`globalThis.slowFrameMs = ${SLOW_FRAME_MS}`);
      page.on('pageerror', (error) => console.error(error));
      await page.goto(server.resolvedUrls?.local[0] ?? '');
      await page.waitForFunction(() => 'bench' in globalThis);
      return await use(page);
    } finally {
      await browser.close();
      await server.close();
    }
  } finally {
    rmSync(outDir, { recursive: true, force: true });
  }
}
