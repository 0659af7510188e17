/**
 * A 12-megapixel photo of a chart in the built window: the longest task from
 * where it is opened until its chart is found and read, and from where a corner is
 * taken until the cells are read anew.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { encode } from 'jpeg-js';
import type { Page } from 'playwright';
import { sampleProject } from '@shared/project/index.ts';
import { restingBox } from '../e2e/at-rest.ts';
import { FilePanel } from '../e2e/file-panel.ts';
import type { Bar } from './bar.ts';
import { withStand } from './built-window.ts';
import { longestBars } from './longest.ts';
import { chartPhoto } from './reading.ts';
import { tasksOf, type Task } from './tasks.ts';

const MOST_MS = 20;
const ROUNDS = 3;
const FILE = 'chart.jpg';
/** Moves of the hand on a corner, there and back. */
const MOVES = 40;

/** Resolves once the cells stand there and nothing has been worked out for half a second. */
async function isRead(page: Page): Promise<void> {
  await page.evaluate(async () => {
    for (let quiet = 0; quiet < 10;) {
      await new Promise((resolve) => setTimeout(resolve, 50));
      const stands = document.querySelector('section[aria-labelledby=cells] [role=grid]') !== null;
      quiet = stands && document.querySelector('dialog progress') === null ? quiet + 1 : 0;
    }
  });
}

async function openPhoto(page: Page): Promise<void> {
  await page.keyboard.press('Control+Shift+G');
  await new FilePanel(page).open(FILE);
  await isRead(page);
}

async function moveCorner(page: Page, { x, y }: { readonly x: number; readonly y: number }): Promise<void> {
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let move = 1; move <= MOVES; move++) {
    // Frame after frame, as a hand does.
    await page.evaluate(() => new Promise(requestAnimationFrame));
    const by = 20 * Math.sin((move / MOVES) * Math.PI);
    await page.mouse.move(x - by, y - by);
  }
  await page.mouse.up();
  await isRead(page);
}

export async function photoBars(): Promise<Bar[]> {
  return withStand(async ({ home, open }) => {
    const { width, height, rgba } = chartPhoto();
    writeFileSync(join(home, FILE), encode({ width, height, data: rgba }, 85).data);
    const opened: Task[][] = [];
    const moved: Task[][] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const page = await open(sampleProject());
      await page.waitForTimeout(1000);
      opened.push(await tasksOf(page, () => openPhoto(page)));
      const ring = await restingBox(page.getByRole('button', { name: /^top left corner/ }));
      const at = { x: ring.x + ring.width / 2, y: ring.y + ring.height / 2 };
      moved.push(await tasksOf(page, () => moveCorner(page, at)));
      await page.context().close();
    }
    const photo = `a photo of ${(width * height) / 1e6} megapixels`;
    return [
      ...longestBars(`while ${photo} is opened and read`, MOST_MS, opened),
      ...longestBars(`while a corner is moved on ${photo}`, MOST_MS, moved),
    ];
  });
}
