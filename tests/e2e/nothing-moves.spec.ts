/**
 * While one draws, nothing outside the chart moves: measured in every frame,
 * for each control by itself, on a chart whose findings come and go.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CDPSession, Page } from '@playwright/test';
import { projectAround, projectToText, START_YARNS } from '@shared/project/index.ts';
import { chanceOf } from '../kills/chance.ts';
import { expect, test } from './app.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';

const COLUMNS = 24;
const ROWS = 16;
const STROKES = 200;
/** As many are undone again, two by two. */
const TRIED = 40;
/** As many of the others are sent at once; then the page is looked at. */
const AT_ONCE = 20;
/** So long the hand rests between them. */
const REST_MS = 120;

/**
 * A tile drawn again and again, so that a stroke breaks its repeat and another
 * one mends it; and a third yarn that hardly shows against the ground, so that
 * rows come to hold more than two yarns.
 */
function tiled(): string {
  const cells = Uint8Array.from({ length: COLUMNS * ROWS }, (_, at) =>
    (at % COLUMNS) % 6 < 2 && Math.floor(at / COLUMNS) % 4 < 2 ? 1 : 0,
  );
  const yarns = [...START_YARNS, { name: 'dusk', colour: '#5a6f8c', count: null, onHand: null }];
  return projectToText(projectAround('tiled', 'tiled', { width: COLUMNS, height: ROWS, cells }, 0, 'worn', yarns));
}

/** What was seen in the page, frame by frame. */
interface Watched {
  frames: number;
  controls: number;
  /** Controls that moved, changed their size, came or went; the first few. */
  moved: string[];
  /** Different things that were said of the drawing. */
  said: string[];
  /** Whether mending could be used. */
  couldMend: boolean[];
  stop: boolean;
}

/** Looks in every frame where each control outside the chart is, as to a pixel. Runs in the page. */
function watch(): void {
  const seen: Watched = { frames: 0, controls: 0, moved: [], said: [], couldMend: [], stop: false };
  Object.assign(window, { watched: seen });
  const shown = 'button, select, input, textarea, summary, a[href], [tabindex], [role="slider"]';
  const boxes = (): Map<Element, string> =>
    new Map(
      [...document.querySelectorAll<HTMLElement>(shown)]
        .filter((control) => control.closest('[data-drawing]') === null && control.checkVisibility())
        .map((control) => {
          const { x, y, width, height } = control.getBoundingClientRect();
          return [control, [x, y, width, height].join(' ')];
        }),
    );
  const nameOf = (control: Element): string =>
    control.getAttribute('aria-label') ?? (control.textContent.trim() || control.outerHTML.slice(0, 80));
  const first = boxes();
  seen.controls = first.size;
  const look = (): void => {
    const now = boxes();
    for (const control of new Set([...first.keys(), ...now.keys()])) {
      const [was, is] = [first.get(control) ?? 'not there', now.get(control) ?? 'gone'];
      if (was !== is && seen.moved.length < 10) seen.moved.push(`${nameOf(control)}: ${was} → ${is}`);
    }
    const said = document.querySelector('aside section')?.textContent ?? '';
    if (!seen.said.includes(said)) seen.said.push(said);
    const mend = document.querySelector<HTMLButtonElement>('[aria-label^="Mend"]');
    if (mend && !seen.couldMend.includes(!mend.disabled)) seen.couldMend.push(!mend.disabled);
    seen.frames++;
    if (!seen.stop) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

/** Sends what a hand does without waiting for each of it, in order. */
class Hand {
  #sent: Promise<unknown>[] = [];

  constructor(private readonly glass: CDPSession) {}

  mouse(type: 'mouseMoved' | 'mousePressed' | 'mouseReleased', x: number, y: number, button: 'left' | 'right'): void {
    const buttons = type === 'mouseReleased' ? 0 : button === 'left' ? 1 : 2;
    this.#sent.push(this.glass.send('Input.dispatchMouseEvent', { type, x, y, button, buttons, clickCount: 1 }));
  }

  /** Ctrl and Z. */
  undo(): void {
    const key = { key: 'z', code: 'KeyZ', modifiers: 2, windowsVirtualKeyCode: 90 };
    for (const type of ['keyDown', 'keyUp'] as const)
      this.#sent.push(this.glass.send('Input.dispatchKeyEvent', { type, ...key }));
  }

  /** All that was sent has been taken by the page. */
  async rests(): Promise<void> {
    await Promise.all(this.#sent);
    this.#sent = [];
  }
}

/** Strokes between cells at random, with the pen and with the ground; now and then they are undone, or another yarn is taken. */
async function strokes(page: Page, seed: number): Promise<void> {
  const chart = new Chart(page);
  await chart.grid.focus();
  const corner = await chart.at(1, 1);
  const { width, height } = await chart.cellSize();
  const chance = chanceOf(seed);
  const whole = (below: number): number => Math.floor(chance() * below);
  const hand = new Hand(await page.context().newCDPSession(page));
  for (let stroke = 0; stroke < STROKES; stroke++) {
    const button = chance() < 0.5 ? 'left' : 'right';
    const from = { column: whole(COLUMNS), row: whole(ROWS) };
    const to = { column: from.column + whole(5) - 2, row: from.row + whole(5) - 2 };
    const [[x, y], [endX, endY]] = [from, to].map(({ column, row }): [number, number] => [
      corner.x + width * Math.min(Math.max(column, 0), COLUMNS - 1),
      corner.y - height * Math.min(Math.max(row, 0), ROWS - 1),
    ]) as [[number, number], [number, number]];
    hand.mouse('mousePressed', x, y, button);
    hand.mouse('mouseMoved', endX, endY, button);
    hand.mouse('mouseReleased', endX, endY, button);
    if (stroke % 40 === 39) await page.keyboard.press(']');
    // At first the tile comes back after every other stroke, then it is drawn over more and more.
    const isTried = stroke < TRIED;
    if ((stroke + 1) % (isTried ? 2 : AT_ONCE) !== 0) continue;
    await hand.rests();
    // The hand rests for longer than the panel waits, so that it says what was drawn; its timer ends before this one.
    await page.evaluate((ms) => new Promise((rested) => setTimeout(rested, ms)), REST_MS);
    await page.evaluate(() => new Promise(requestAnimationFrame));
    if (!isTried) continue;
    for (let step = 0; step < 2; step++) hand.undo();
  }
  await hand.rests();
}

test.describe('at 1280 × 800', () => {
  test.use({ viewport: { width: 1280, height: 800 } });

  test(`nothing outside the chart moves while ${STROKES} strokes are drawn`, async ({ page, start, home }) => {
    writeFileSync(join(home, 'tiled.walewright'), tiled());
    await start('empty');
    await page.keyboard.press('Control+O');
    await new FilePanel(page).open('tiled.walewright');
    await expect(page.getByText('The repeat is 6 stitches × 4 rows.')).toBeVisible();
    // A sentence of what was opened stands above the benches until it is closed.
    await expect(page.getByRole('dialog')).toHaveCount(0);

    // What the hand needs is in view, without scrolling.
    for (const name of ['Symmetry', 'Cell shape', 'Shown as'])
      await expect(page.getByRole('combobox', { name })).toBeInViewport({ ratio: 1 });
    for (const name of ['All copies follow', 'Show neighbours', 'Drawing on a drawn cell takes it away'])
      await expect(page.getByRole('switch', { name })).toBeInViewport({ ratio: 1 });
    for (const name of ['Flip and shift', 'Columns and rows', 'Recolour', 'Selection', 'Change dusk'])
      await expect(page.getByRole('button', { name, exact: true })).toBeInViewport({ ratio: 1 });

    await page.evaluate(watch);
    await strokes(page, 20260116);
    const seen = await page.evaluate(async () => {
      const { watched } = window as unknown as { watched: Watched };
      // What the last stroke did is laid out in the next frame.
      const { frames } = watched;
      while (watched.frames < frames + 2) await new Promise(requestAnimationFrame);
      watched.stop = true;
      return watched;
    });
    expect(seen.moved).toEqual([]);
    expect(seen.controls).toBeGreaterThan(40);
    expect(seen.frames).toBeGreaterThan(TRIED / 2);
    // It was looked at while there was something to say, and while there was not.
    expect(seen.said.length).toBeGreaterThan(10);
    expect([...seen.couldMend].sort()).toEqual([false, true]);
    await expect(page.getByRole('button', { name: /^Undo (draw|erase)/ })).toBeEnabled();
  });
});
