/**
 * `npm run screens`: a picture of every view, empty and with the sample, light
 * and dark, in two sizes, into ./screens for people to look at. `-- --readme`
 * makes the two pictures of the README anew instead.
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium, type Browser } from 'playwright';
import { startBrowserHost, type BrowserHost } from '../../src-main/browser-host/index.ts';
import { CHROMIUM_FLAGS, chromiumPath } from '../chromium.ts';
import { VIEWS } from './views.ts';

const ROOT = resolve(import.meta.dirname, '..', '..');
const isReadme = process.argv.includes('--readme');
const OUT = join(ROOT, isReadme ? 'resources/readme' : 'screens');
/** What the README shows: the sample, light, in the smaller window. */
const IN_README: readonly string[] = ['motif', 'piece'];
const SIZES = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
] as const;
const THEMES = ['light', 'dark'] as const;
const PROJECTS = ['sample', 'empty'] as const;

interface Setting {
  readonly project: (typeof PROJECTS)[number];
  readonly theme: (typeof THEMES)[number];
  readonly size: (typeof SIZES)[number];
}

const SETTINGS: readonly Setting[] = PROJECTS.flatMap((project) =>
  THEMES.flatMap((theme) => SIZES.map((size) => ({ project, theme, size }))),
);

/** Pictures all views that belong to a setting, in one window; returns how many. */
async function picture(browser: Browser, host: BrowserHost, { project, theme, size }: Setting): Promise<number> {
  const context = await browser.newContext({ viewport: size, colorScheme: theme });
  const page = await context.newPage();
  const address = new URL(await host.newAddress());
  if (project === 'empty') address.search = 'empty';
  await page.goto(address.href);
  await page.getByRole('button', { name: 'Commands' }).waitFor();
  await page.evaluate(() => document.fonts.ready);
  const views = VIEWS.filter(({ name, of }) => of.includes(project) && (!isReadme || IN_README.includes(name)));
  for (const { name, show } of views) {
    await show(page);
    // Canvases are drawn on the next frame, and short transitions end.
    await page.waitForTimeout(250);
    const file = isReadme ? `${name}.png` : `${name}-${project}-${theme}-${size.width}x${size.height}.png`;
    await page.screenshot({ path: join(OUT, file) });
    console.log(file);
  }
  await context.close();
  return views.length;
}

async function main(): Promise<void> {
  rmSync(OUT, { recursive: true, force: true });
  mkdirSync(OUT);
  const scratch = mkdtempSync(join(tmpdir(), 'walewright-screens-'));
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: CHROMIUM_FLAGS });
  let pictures = 0;
  try {
    for (const setting of isReadme ? SETTINGS.slice(0, 1) : SETTINGS) {
      // A host of its own, or unsaved work of one window would come back in the next.
      const data = mkdtempSync(join(scratch, 'data-'));
      const host = await startBrowserHost({ dataFolder: data, homeFolder: scratch });
      pictures += await picture(browser, host, setting);
      await host.close();
    }
  } finally {
    await browser.close();
    rmSync(scratch, { recursive: true, force: true });
  }
  console.log(`${pictures} pictures in ${OUT}`);
}

await main();
