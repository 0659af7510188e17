/** Pictures that are taken, and what the process that shows the page grows to meanwhile. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from '@playwright/test';
import { expect, test } from './app.ts';
import { FilePanel } from './file-panel.ts';
import { noisyPhoto } from './noisy-photo.ts';
import { noisyPng } from './noisy-png.ts';

/** What a picture that is taken may cost. */
const MOST_MB = 600;

/** The most that any process which shows a page has had in memory, in MB: VmHWM of proc(5). */
async function peakOf(browser: Browser): Promise<() => number> {
  const devtools = await browser.newBrowserCDPSession();
  const { processInfo } = await devtools.send('SystemInfo.getProcessInfo');
  const shown = processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => `/proc/${id}/status`);
  let most = 0;
  // Chromium sets the mark back from time to time, so it is asked for again and again.
  return () => {
    for (const status of shown) {
      const [, kilobytes] = /^VmHWM:\s*(\d+) kB$/m.exec(readFileSync(status, 'utf8')) ?? [];
      most = Math.max(most, Number(kilobytes) / 1024);
    }
    return most;
  };
}

const PICTURES: readonly { name: string; what: string; make: () => Buffer; least: number }[] = [
  {
    name: 'photo.jpg',
    what: 'a photo of 12 million pixels and 15 MB',
    make: () => noisyPhoto(4000, 3000, 75),
    least: 13_000_000,
  },
  {
    // As many pixels as are kept whole, and nearly as many bytes as a picture file may have.
    name: 'noise.png',
    what: 'noise near the limit of 64 MB',
    make: () => noisyPng(4000, 3900),
    least: 62_000_000,
  },
];

for (const { name, what, make, least } of PICTURES) {
  test(`takes ${what} within ${MOST_MB} MB`, async ({ browser, page, start, home }) => {
    test.skip(process.platform !== 'linux', 'only Linux tells the most that a process has had in memory');
    const picture = make();
    expect(picture.length).toBeGreaterThan(least);
    writeFileSync(join(home, name), picture);
    await start();
    const peak = await peakOf(browser);
    const before = peak();
    expect(before).toBeGreaterThan(20);

    await page.keyboard.press('Control+Shift+G');
    await new FilePanel(page).open(name);
    // The way of a motif out of a picture: its corners are there once it can be cropped.
    const watch = setInterval(peak, 25);
    await page.getByRole('button', { name: /^top left corner/ }).waitFor();
    clearInterval(watch);
    expect(peak()).toBeGreaterThan(before);
    expect(peak()).toBeLessThan(MOST_MB);
  });
}
