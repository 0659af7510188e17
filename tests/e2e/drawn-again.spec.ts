/** What is drawn again as the pointer moves: what shows where it is, and not the whole drawing. */
import type { Locator } from '@playwright/test';
import { expect, statusLine, test } from './app.ts';
import { restingBox } from './at-rest.ts';

for (const [bench, key, of] of [
  ['Motif', '1', 'stitch'],
  ['Piece', '2', 'needle'],
] as const) {
  test(`on the ${bench} bench the cells are not, nor what the platform's appearance decides`, async ({
    page,
    start,
  }) => {
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
      const { clearRect } = prototype;
      const canvases = [...document.querySelectorAll('canvas')];
      const counted = window as unknown as { drawn: number[] };
      counted.drawn = [];
      prototype.clearRect = function (this: CanvasRenderingContext2D, ...box): void {
        counted.drawn.push(canvases.indexOf(this.canvas));
        clearRect.apply(this, box);
      };
    });
    for (let moved = 20; moved <= 100; moved += 20) await page.mouse.move(middle.x + moved, middle.y + moved / 2);
    await expect(statusLine(page)).not.toHaveText(said ?? '');
    const drawn = await page.evaluate(async () => {
      for (let frame = 0; frame < 2; frame++) await new Promise(requestAnimationFrame);
      return (window as unknown as { drawn: number[] }).drawn;
    });
    expect(drawn.filter((canvas) => canvas >= 0).length).toBeGreaterThan(0);
    expect(drawn).not.toContain(0);
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
