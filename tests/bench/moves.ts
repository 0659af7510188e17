/** Moves of the pointer over a drawing, as a hand makes them. */
import type { Page } from 'playwright';

/** In pixels of the window. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Of the part of the drawing that is crossed: the middle three fifths. */
const SHARE = 0.6;
/** Along a line: each move waits for its frame, and takes twenty milliseconds. */
const MOST_STEPS = 30;

/** Where the drawing of a bench stands. */
export async function drawingBox(page: Page): Promise<Box> {
  const box = await page.locator('[data-drawing]').first().boundingBox();
  if (!box) throw new Error('The bench has no drawing');
  return box;
}

export interface Sweep {
  readonly box: Box;
  /** From one move to the next, in pixels. */
  readonly step: number;
  /** Lines that are crossed, one below the other. */
  readonly lines: number;
  /** The button is held down along each line. */
  readonly draws: boolean;
}

/** Crosses the middle of a box line by line; gives how many moves that were. */
export async function sweep(page: Page, { box, step, lines, draws }: Sweep): Promise<number> {
  const left = box.x + (box.width * (1 - SHARE)) / 2;
  const top = box.y + (box.height * (1 - SHARE)) / 2;
  const steps = Math.min(MOST_STEPS, Math.floor((box.width * SHARE) / step));
  for (let line = 0; line < lines; line++) {
    const y = top + ((box.height * SHARE) / lines) * (line + 0.5);
    await page.mouse.move(left, y);
    if (draws) await page.mouse.down();
    for (let at = 1; at <= steps; at++) await page.mouse.move(left + at * step, y);
    if (draws) await page.mouse.up();
  }
  return steps * lines;
}
