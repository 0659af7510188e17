/** Painting with the pointer in a headless Chromium, against simpler ways to draw the same. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium, type Page } from 'playwright';
import { build, preview, type InlineConfig } from 'vite';
import { CHROMIUM_FLAGS, chromiumPath } from '../chromium.ts';
import { median, quantile, type Bar } from './bar.ts';
import type { PaintingBench } from './page/painting-page.ts';

const ROUNDS = 9;
const FRAMES = 200;
const FRAMES_OF_NODES = 5;

declare const bench: PaintingBench;

export async function paintingBars(): Promise<Bar[]> {
  return await withPage(async (page) => {
    const rounds = [];
    for (let round = 0; round < ROUNDS; round++) {
      rounds.push(await page.evaluate((frames) => bench.paintInTurn(frames), FRAMES));
    }
    const nodes = await page.evaluate((frames) => bench.paintNodes(frames), FRAMES_OF_NODES);
    const late = rounds.map((times) => ({
      program: quantile(times.program, 0.95),
      bare: quantile(times.bare, 0.95),
      bareCell: quantile(times.bareCell, 0.95),
    }));
    const lateMs = median(late.map(({ program }) => program));
    const usualMs = median(rounds.map(({ program }) => median(program)));
    return [
      {
        name: 'pointer painting on 200 × 1000, 95 of 100 frames, against the view drawn on a bare 2D canvas',
        kind: 'at most',
        limit: 1.3,
        ratio: median(late.map(({ program, bare }) => program / bare)),
        oursMs: lateMs,
        againstMs: median(late.map(({ bare }) => bare)),
      },
      {
        name: 'the same, against a bare 2D canvas that draws no more than the changed cell',
        kind: 'figure',
        limit: null,
        ratio: median(late.map(({ program, bareCell }) => program / bareCell)),
        oursMs: lateMs,
        againstMs: median(late.map(({ bareCell }) => bareCell)),
      },
      {
        name: 'pointer painting on 200 × 1000, median frame, against one Konva node a cell',
        kind: 'at least',
        limit: 300,
        ratio: median(nodes) / usualMs,
        oursMs: usualMs,
        againstMs: median(nodes),
      },
    ];
  });
}

/** Builds the page, serves it to a Chromium, and cleans up whatever happens. */
async function withPage<T>(use: (page: Page) => Promise<T>): Promise<T> {
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
      executablePath: chromiumPath(),
      args: CHROMIUM_FLAGS,
    });
    try {
      const page = await browser.newPage({ viewport: { width: 1280, height: 1500 } });
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
