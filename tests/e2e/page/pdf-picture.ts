/** Pages of a PDF as pictures, drawn by a reader that is not ours in a browser of its own. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, extname, join } from 'node:path';
import type { Page } from '@playwright/test';
import type * as Pdfjs from 'pdfjs-dist';

const require = createRequire(import.meta.url);
const READER = dirname(require.resolve('pdfjs-dist/legacy/build/pdf.mjs'));
const ORIGIN = 'http://pictures.test';
const TYPES: Readonly<Record<string, string>> = {
  '.mjs': 'text/javascript',
  '': 'text/html',
  '.pdf': 'application/pdf',
};

/** Where to look, in mm from the top left corner of a page, and the page, from 1. */
export interface Spot {
  readonly page: number;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * The colour that most of each spot has in pictures of the pages at `dpi`,
 * `#rrggbb`; thin strokes over a cell do not count.
 */
export async function coloursAt(page: Page, pdf: Uint8Array, spots: readonly Spot[], dpi: number): Promise<string[]> {
  await page.route(`${ORIGIN}/**`, (route) => {
    const { pathname } = new URL(route.request().url());
    const type = TYPES[extname(pathname)] ?? 'application/octet-stream';
    const body =
      pathname === '/'
        ? '<!doctype html><title>Pictures</title>'
        : pathname === '/sheet.pdf'
          ? Buffer.from(pdf)
          : readFileSync(join(READER, pathname));
    return route.fulfill({ body, contentType: type });
  });
  await page.goto(`${ORIGIN}/`);
  return page.evaluate(
    async ({ asked, scale }) => {
      const reader = '/pdf.mjs';
      const { getDocument, GlobalWorkerOptions } = (await import(reader)) as typeof Pdfjs;
      GlobalWorkerOptions.workerSrc = '/pdf.worker.mjs';
      const file = await getDocument({ url: '/sheet.pdf' }).promise;
      const found: string[] = [];
      for (const number of new Set(asked.map((spot) => spot.page))) {
        const drawn = await file.getPage(number);
        const viewport = drawn.getViewport({ scale });
        const canvas = document.createElement('canvas');
        [canvas.width, canvas.height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)];
        await drawn.render({ canvas, viewport }).promise;
        const context = canvas.getContext('2d');
        if (!context) throw new Error('No canvas');
        const perMm = canvas.width / (viewport.width / scale / 72) / 25.4;
        asked.forEach((spot, index) => {
          if (spot.page !== number) return;
          const [x, y] = [Math.ceil(spot.left * perMm), Math.ceil(spot.top * perMm)];
          const [width, height] = [Math.floor(spot.right * perMm) - x, Math.floor(spot.bottom * perMm) - y];
          const { data } = context.getImageData(x, y, width, height);
          const counts = new Map<string, number>();
          for (let at = 0; at < data.length; at += 4) {
            const colour = `#${[...data.slice(at, at + 3)].map((value) => value.toString(16).padStart(2, '0')).join('')}`;
            counts.set(colour, (counts.get(colour) ?? 0) + 1);
          }
          found[index] = [...counts].reduce((most, each) => (each[1] > most[1] ? each : most))[0];
        });
      }
      return found;
    },
    { asked: spots, scale: dpi / 72 },
  );
}
