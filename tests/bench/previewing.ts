/**
 * The preview of a sheet of 30 pages in the built window, from the key that
 * opens the bench to its last page: the longest that the window is busy with one
 * thing, by Chromium's own trace, and so deaf to the hand. Run `npm run build`
 * first.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright';
import { startBrowserHost } from '../../src-main/browser-host/index.ts';
import { projectToText } from '@shared/project/index.ts';
import { CHROMIUM_FLAGS, chromiumPath } from '../chromium.ts';
import { FilePanel } from '../e2e/file-panel.ts';
import { median, type Bar } from './bar.ts';
import { PAGES, projectOfPages } from './sheet.ts';
import { tasksOf, type Task } from './tasks.ts';

const ROUNDS = 5;
/** What a person does not feel as a wait (RAIL: 50 ms for the answer to an event). */
const MOST_MS = 50;

export async function previewingBars(): Promise<Bar[]> {
  const folder = mkdtempSync(join(tmpdir(), 'walewright-previewing-'));
  const home = join(folder, 'home');
  mkdirSync(home);
  const project = projectOfPages(PAGES);
  writeFileSync(join(home, 'long.walewright'), projectToText(project));
  const host = await startBrowserHost({ dataFolder: join(folder, 'data'), homeFolder: home });
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: CHROMIUM_FLAGS });
  try {
    const rounds: Task[][] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
      const page = await context.newPage();
      await page.goto(await host.newAddress());
      await page.getByRole('button', { name: 'Commands' }).waitFor();
      await page.keyboard.press('Control+O');
      await new FilePanel(page).openProject('long.walewright', project.name);
      rounds.push(await tasksOf(page, () => showSheet(page)));
      await context.close();
    }
    const longest = (of: keyof Task): number =>
      median(rounds.map((tasks) => Math.max(...tasks.map((task) => task[of]))));
    const compared = (ms: number) => ({ ratio: ms / MOST_MS, ours: ms, against: MOST_MS });
    return [
      {
        name: `the longest task of the window while the preview of ${PAGES} pages is opened and drawn, against ${MOST_MS} ms`,
        kind: 'at most',
        limit: 1,
        ...compared(longest('ms')),
      },
      {
        name: 'what the longest of them has worked, the time left out in which a busy machine let it wait',
        kind: 'figure',
        limit: null,
        ...compared(longest('workedMs')),
      },
    ];
  } finally {
    await browser.close();
    await host.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Waits in the page: what asks it from outside again and again is work of the page too. */
async function showSheet(page: Page): Promise<void> {
  const drawn = page.evaluate(async (pages) => {
    while (document.querySelectorAll('[data-drawing] svg[role=document]').length < pages) {
      await new Promise(requestAnimationFrame);
    }
  }, PAGES);
  await page.keyboard.press('3');
  await drawn;
}
