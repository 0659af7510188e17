/** The window as it comes up: part by part, so that no task of it is long. */
import { addressOf, expect, test } from './app.ts';

test('comes up with its frame first, then the drawing, then what stands beside it', async ({ page, start }) => {
  await page.addInitScript(() => {
    const parts = {
      frame: 'header',
      drawing: 'main [role=grid]',
      summary: 'aside section',
      motifs: 'aside section ~ section ~ section ~ section',
    };
    const seen: string[][] = [];
    Object.assign(window, { seen });
    // Is told once in each task what came in it.
    new MutationObserver(() => {
      const before = new Set(seen.flat());
      const now = Object.entries(parts).flatMap(([name, part]) =>
        !before.has(name) && document.querySelector(part) ? [name] : [],
      );
      if (now.length > 0) seen.push(now);
    }).observe(document, { childList: true, subtree: true });
  });
  await start();
  const seen = await page.evaluate(() => (window as unknown as { seen: string[][] }).seen);
  expect(seen).toEqual([['frame'], ['drawing'], ['summary'], ['motifs']]);
});

test('goes to another bench while it comes up', async ({ page, host }) => {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: 6 });
  await page.goto(await addressOf(host), { waitUntil: 'commit' });
  await page.locator('.window').waitFor();
  await page.keyboard.press('2');
  await expect(page.getByRole('heading', { name: 'Before you knit' })).toBeVisible();
  await page.locator('.window:not([aria-busy])').waitFor();
  await page.keyboard.press('1');
  await expect(page.getByRole('grid')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Motifs', exact: true })).toBeVisible();
});
