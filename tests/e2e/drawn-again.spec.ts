/** What is drawn again: no more than has changed, and as if all of it had been. */
import type { Locator, Page } from '@playwright/test';
import { expect, statusLine, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { Chart } from './chart.ts';

const MOVES = 5;

for (const [bench, key, of] of [
  ['Motif', '1', 'stitch'],
  ['Piece', '2', 'needle'],
] as const) {
  test(`on the ${bench} bench it is no more than what the pointer left and came to`, async ({ page, start }) => {
    await start();
    await page.keyboard.press(key);
    const { x, y, width, height } = await restingBox(page.getByRole('grid'));
    const middle = { x: x + width / 2, y: y + height / 2 };
    await page.mouse.move(middle.x, middle.y);
    await expect(statusLine(page)).toContainText(of, { ignoreCase: true });
    const said = await statusLine(page).textContent();
    await page.evaluate(async () => {
      // What the move before has asked for is drawn in the next frame.
      for (let frame = 0; frame < 2; frame++) await new Promise(requestAnimationFrame);
      const { prototype } = CanvasRenderingContext2D;
      const { fillText } = prototype;
      const counted = window as unknown as { written: number };
      counted.written = 0;
      prototype.fillText = function (this: CanvasRenderingContext2D, ...text): void {
        counted.written++;
        fillText.apply(this, text);
      };
    });
    /** How often something was written since this was asked last. */
    const written = (): Promise<number> =>
      page.evaluate(async () => {
        for (let frame = 0; frame < 2; frame++) await new Promise(requestAnimationFrame);
        const counted = window as unknown as { written: number };
        const now = counted.written;
        counted.written = 0;
        return now;
      });
    for (let move = 1; move <= MOVES; move++) await page.mouse.move(middle.x + 20 * move, middle.y + 10 * move);
    await expect(statusLine(page)).not.toHaveText(said ?? '');
    const byMoves = await written();
    await page.evaluate(() => document.fonts.dispatchEvent(new Event('loadingdone')));
    const whole = await written();
    // The numbers around it and the names on it are not written anew with each.
    expect(byMoves / MOVES).toBeLessThan(whole / 2);
  });
}

/** How far the bench's canvases as they are differ, 0 … 255, from what they are when all of it is drawn. */
async function fromDrawnWhole(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const seen = async (): Promise<ImageDataArray[]> => {
      for (let frame = 0; frame < 2; frame++) await new Promise(requestAnimationFrame);
      return [...document.querySelectorAll<HTMLCanvasElement>('[data-drawing] canvas')].flatMap((canvas) => {
        const { width, height } = canvas;
        const context = canvas.getContext('2d');
        return context && width * height > 0 ? [context.getImageData(0, 0, width, height).data] : [];
      });
    };
    const before = await seen();
    // With whatever font comes, all is drawn again.
    document.fonts.dispatchEvent(new Event('loadingdone'));
    const after = await seen();
    if (before.length === 0 || before.length !== after.length) return Infinity;
    let most = 0;
    before.forEach((pixels, canvas) =>
      pixels.forEach((value, at) => (most = Math.max(most, Math.abs(value - (after[canvas]?.[at] ?? Infinity))))),
    );
    return most;
  });
}

/** Letters over cells are smoothed in two steps where they were kept as a picture, and rounded twice. */
const ROUNDED_TWICE = 3;

for (const deviceScaleFactor of [1, 1.5]) {
  test.describe(`at ${deviceScaleFactor} pixels to a pixel`, () => {
    test.use({ deviceScaleFactor });

    test('a chart that was drawn on part by part is the same as if it were drawn whole', async ({ page, start }) => {
      await start();
      const chart = new Chart(page);
      const expectAlike = async (of: string): Promise<void> =>
        test.step(of, async () => {
          expect(await fromDrawnWhole(page)).toBeLessThanOrEqual(ROUNDED_TWICE);
        });
      await chart.hover(3, 4);
      await chart.hover(9, 12);
      await expectAlike('the pointer on another cell');
      await page.keyboard.press(']');
      await chart.drag([2, 2], [9, 5], [5, 16]);
      await expectAlike('a stroke');
      await chart.grid.focus();
      for (const key of ['ArrowLeft', 'ArrowUp', 'ArrowUp', ' ']) await page.keyboard.press(key);
      await chart.hover(1, 1);
      await expectAlike('the cursor of the keyboard, and the pointer on the first cell');
      await chart.click(1, 1);
      await chart.hover(14, 18);
      await expectAlike('a cell at the edge of the chart');
      await page.mouse.move(0, 0);
      await expectAlike('no pointer');
      await page.keyboard.press('Control+Z');
      await expectAlike('the cell undone');
    });

    test('and so is a piece over which the pointer goes', async ({ page, start }) => {
      await start();
      await page.keyboard.press('2');
      const grid = page.getByRole('grid');
      const { x, y, width, height } = await restingBox(grid);
      for (const [across, down] of [
        [0.5, 0.5],
        [0.4, 0.7],
        [0.55, 0.35],
      ] as const) {
        await page.mouse.move(x + width * across, y + height * down);
      }
      expect(await fromDrawnWhole(page)).toBeLessThanOrEqual(ROUNDED_TWICE);
      await grid.focus();
      await page.keyboard.press('ArrowUp');
      expect(await fromDrawnWhole(page)).toBeLessThanOrEqual(ROUNDED_TWICE);
    });
  });
}

test('on every bench the drawing is as sharp as the screen that the window is moved to', async ({ page, start }) => {
  // Another screen is told of by a query of its resolution. Chromium without a screen takes another density
  // and tells nobody, so that is done for it.
  await page.addInitScript(() => {
    const { matchMedia } = window;
    const asked: MediaQueryList[] = [];
    window.matchMedia = (query) => {
      const list = matchMedia.call(window, query);
      if (query.includes('resolution')) asked.push(list);
      return list;
    };
    Object.assign(window, { tell: () => asked.forEach((list) => list.dispatchEvent(new Event('change'))) });
  });
  await start();
  const { width, height } = page.viewportSize() ?? { width: 0, height: 0 };
  const screen = await page.context().newCDPSession(page);
  /** Looks at the first canvas in it on a screen of twice as many pixels, and on one of as many as before. */
  const expectSharp = async (place: Locator): Promise<void> => {
    for (const deviceScaleFactor of [2, 1]) {
      await screen.send('Emulation.setDeviceMetricsOverride', { width, height, deviceScaleFactor, mobile: false });
      await expect.poll(async () => page.evaluate(() => window.devicePixelRatio)).toBe(deviceScaleFactor);
      await page.evaluate(() => (window as unknown as { tell: () => void }).tell());
      const canvas = place.locator('canvas').first();
      await expect
        .poll(async () =>
          canvas.evaluate((shown: HTMLCanvasElement) => shown.width / shown.getBoundingClientRect().width),
        )
        .toBeCloseTo(deviceScaleFactor, 1);
    }
  };
  for (const key of ['1', '2', 'c']) {
    await page.keyboard.press(key);
    await expectSharp(page.locator('body'));
  }
  await page.keyboard.press('1');
  await page.getByRole('grid').press('a');
  await expectSharp(page.getByRole('dialog', { name: 'Lettering' }));
});
