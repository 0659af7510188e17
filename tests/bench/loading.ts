/** What a browser is sent before a person can draw, as the browser host sends it. */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright';
import { startBrowserHost } from '../../src-main/browser-host/index.ts';
import { CHROMIUM_FLAGS, headlessPath } from '../chromium.ts';
import type { Bar } from './bar.ts';

/** The most that the first load may take, as sent, in kB. */
const MOST_KB = 250;

export async function loadingBars(): Promise<Bar[]> {
  const kilobytes = await firstLoadKb();
  return [
    {
      name: 'first load, as the browser host sends it',
      kind: 'at most',
      limit: 1,
      ratio: kilobytes / MOST_KB,
      ours: kilobytes,
      against: MOST_KB,
      unit: 'kB',
    },
  ];
}

/** Head and body of every answer until the window can be worked in and its fonts are there, in kB. */
async function firstLoadKb(): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), 'walewright-loading-'));
  mkdirSync(join(folder, 'home'));
  const host = await startBrowserHost({ dataFolder: join(folder, 'data'), homeFolder: join(folder, 'home') });
  const browser = await chromium.launch({ executablePath: headlessPath(), args: CHROMIUM_FLAGS });
  try {
    const page = await browser.newPage();
    const network = await page.context().newCDPSession(page);
    await network.send('Network.enable');
    let bytes = 0;
    network.on('Network.loadingFinished', ({ encodedDataLength }) => (bytes += encodedDataLength));
    await page.goto(await host.newAddress());
    await page.getByRole('button', { name: 'Commands' }).waitFor();
    await page.evaluate(() => document.fonts.ready);
    return bytes / 1000;
  } finally {
    await browser.close();
    await host.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
