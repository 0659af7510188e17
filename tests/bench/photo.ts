/**
 * A 12-megapixel photo of a chart in the built window: the longest task from
 * where it is opened until its chart is found and read, and from where a corner is
 * taken until the cells are read anew. How soon there are answers, photo-answers.ts tells.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { encode } from 'jpeg-js';
import type { Page } from 'playwright';
import { sampleProject } from '@shared/project/index.ts';
import { restingBox } from '../e2e/at-rest.ts';
import { FilePanel } from '../e2e/file-panel.ts';
import { photograph } from '../unit/reading/chart-photo.ts';
import { blobs } from '../unit/reading/motifs.ts';
import type { Bar } from './bar.ts';
import { withStand } from './built-window.ts';
import { longestBars } from './longest.ts';
import { photoAnswerBars } from './photo-answers.ts';
import { tasksOf, type Task } from './tasks.ts';

const MOST_MS = 20;
const ROUNDS = 3;
const FILE = 'chart.jpg';
/** Moves of the hand on a corner, there and back. */
const MOVES = 40;

const WIDTH = 4000;
const HEIGHT = 3000;

/** A printed chart of 80 × 60 cells in three colours on a sheet, as a hand holds the camera, lit from one side. */
function photo(): Buffer {
  const grid = blobs(80, 60, 3, 7);
  const printed = {
    colours: [
      [246, 243, 235],
      [52, 68, 120],
      [190, 70, 60],
    ],
    line: 0.06,
    lineColour: [120, 120, 125],
    thickEvery: 10,
  } as const;
  const camera = { width: WIDTH, height: HEIGHT, roll: 3, tilt: 9, pan: -6, fill: 0.86 };
  const wear = { blur: 1.5, noise: 4, light: (x: number, y: number) => 1 - 0.25 * x - 0.1 * y };
  return encode({ width: WIDTH, height: HEIGHT, data: photograph(grid, printed, camera, wear).picture.rgba }, 85).data;
}

/** Resolves once the cells stand there and nothing has been worked out for half a second. */
async function isRead(page: Page): Promise<void> {
  await page.evaluate(async () => {
    for (let quiet = 0; quiet < 10;) {
      await new Promise((resolve) => setTimeout(resolve, 50));
      const cells = document.querySelector('section[aria-labelledby=cells]');
      const stands =
        cells?.querySelector('[role=grid]') &&
        /exactly\.$/.test(cells.querySelector('[role=status]')?.textContent ?? '');
      quiet = stands === true && document.querySelector('dialog progress') === null ? quiet + 1 : 0;
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
  return withStand(async (stand) => {
    const { home, open } = stand;
    const file = photo();
    writeFileSync(join(home, FILE), file);
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
    const name = `a photo of ${(WIDTH * HEIGHT) / 1e6} megapixels`;
    return [
      ...longestBars(`while ${name} is opened and read`, MOST_MS, opened),
      ...longestBars(`while a corner is moved on ${name}`, MOST_MS, moved),
      ...(await photoAnswerBars(stand, FILE, file)),
    ];
  });
}
