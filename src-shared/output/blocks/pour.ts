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
 * full. A block that asks to stay with the next does, and no short block at the end stands
 * alone in a frame. Throws `RangeError` if a
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
    if (neededMm(waiting, frame.heightMm) > free + EPSILON_MM) {
      // Two frames in a row may be short (the rest of a first page); a third cannot be.
      if (usedMm === 0 && ++emptyFrames > 3) throw new RangeError(`A block of ${block.leastMm} mm fits on no page`);
      frame = nextFrame(frame);
      usedMm = 0;
      continue;
    }
    emptyFrames = 0;
    waiting.shift();
    const fits = block.heightMm <= free + EPSILON_MM;
    // What ends it takes some of a block that can be split over with it.
    const isHeld = isBeforeEnd(block, waiting) && canSplit(block) && !fitsWith(block, waiting, free);
    const most = isHeld ? block.heightMm - LEAST_END_MM : free;
    const [part, rest] = fits && !isHeld ? [block, null] : block.split(Math.min(free, most));
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
/** No page has less than this, three lines or so, of the end of what is poured. */
const LEAST_END_MM = 14;

/** True for a block that is followed by a short last one alone. */
function isBeforeEnd(block: Block, [end, ...more]: readonly Block[]): boolean {
  return end !== undefined && more.length === 0 && end.heightMm < LEAST_END_MM && !block.keepsWithNext;
}

function fitsWith(block: Block, [end]: readonly Block[], free: number): boolean {
  return block.heightMm + (end ? end.spaceAboveMm + end.heightMm : 0) <= free + EPSILON_MM;
}

function canSplit({ leastMm, heightMm }: Block): boolean {
  return leastMm < heightMm - LEAST_END_MM;
}

/**
 * Height that must be free for the first block: with those it stays with, and the
 * beginning of the one after; with what ends it too where that would stand alone,
 * if a frame of `frameMm` has room for both.
 */
function neededMm(waiting: readonly Block[], frameMm: number): number {
  let sum = 0;
  for (const [index, block] of waiting.entries()) {
    if (index > 0) sum += block.spaceAboveMm;
    const after = waiting.slice(index + 1, index + 3);
    if (!block.keepsWithNext) {
      const [end] = after;
      const both = sum + block.heightMm + (end ? end.spaceAboveMm + end.heightMm : 0);
      return isBeforeEnd(block, after) && !canSplit(block) && both <= frameMm ? both : sum + block.leastMm;
    }
    sum += block.heightMm;
  }
  return sum;
}
