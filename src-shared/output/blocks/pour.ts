/** Filling columns and pages with blocks. */
import type { SheetElement } from '../model.ts';
import type { Block } from './block.ts';

/** A rectangle of a page that blocks are poured into, in mm. */
export interface Frame {
  /** Index of the page. */
  readonly page: number;
  readonly x: number;
  readonly y: number;
  readonly heightMm: number;
}

/** Where pouring stopped: the next block may go on here. */
export interface Pool {
  readonly frame: Frame;
  /** What is used of the frame from its top. */
  readonly usedMm: number;
}

/** Elements of a page, in the order of reading. */
export type Placed = (page: number, elements: readonly SheetElement[]) => void;

/**
 * Sets blocks down one below the other, asking for another frame where one is
 * full. A block that asks to stay with the next does. Throws `RangeError` if a
 * block that cannot be split is taller than an empty frame.
 */
export function pour(blocks: readonly Block[], start: Pool, nextFrame: (last: Frame) => Frame, placed: Placed): Pool {
  let { frame, usedMm } = start;
  const waiting = [...blocks];
  let emptyFrames = 0;
  while (waiting.length > 0) {
    const block = waiting[0] as Block;
    const above = usedMm === 0 ? 0 : block.spaceAboveMm;
    const free = frame.heightMm - usedMm - above;
    if (neededMm(waiting) > free + EPSILON_MM) {
      // Two frames in a row may be short (the rest of a first page); a third cannot be.
      if (usedMm === 0 && ++emptyFrames > 3) throw new RangeError(`A block of ${block.leastMm} mm fits on no page`);
      frame = nextFrame(frame);
      usedMm = 0;
      continue;
    }
    emptyFrames = 0;
    waiting.shift();
    const fits = block.heightMm <= free + EPSILON_MM;
    const [part, rest] = fits ? [block, null] : block.split(free);
    placed(frame.page, part.draw(frame.x, frame.y + usedMm + above));
    usedMm += above + part.heightMm;
    if (rest) {
      waiting.unshift(rest);
      frame = nextFrame(frame);
      usedMm = 0;
    }
  }
  return { frame, usedMm };
}

const EPSILON_MM = 1e-6;

/** Height that must be free for the first block: with those it stays with, and the beginning of the one after. */
function neededMm(waiting: readonly Block[]): number {
  let sum = 0;
  for (const [index, block] of waiting.entries()) {
    if (index > 0) sum += block.spaceAboveMm;
    if (!block.keepsWithNext) return sum + block.leastMm;
    sum += block.heightMm;
  }
  return sum;
}
