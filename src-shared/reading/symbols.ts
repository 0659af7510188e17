/**
 * What is drawn into each cell of a straightened chart, as a small picture of
 * its own: how dark it is in 6 × 6 places, against the paper that the cell
 * shows beside the symbol. Light needs no other care: paper and symbol lie in it
 * together.
 */
import type { Drift } from './drift.ts';
import type { Picture } from './picture.ts';
import { luma } from './luma.ts';
import type { Steps } from './steps.ts';

/** Places across and up. */
export const SYMBOL_SIDE = 6;

/** Numbers a cell: darkness 0 … about 1, the top row first, from the left. */
export const SYMBOL_NUMBERS = SYMBOL_SIDE * SYMBOL_SIDE;

/** How far what is looked at reaches from the middle of the cell, in cells: its lines are left out. */
const REACH = 0.36;

/** Paper is as light as this share of the cell's pixels is not; specks of glare lie above. */
const PAPER_SHARE = 0.85;

/** Cells around one, to each side, whose symbols say where it lies; and how far off it may lie, in cells. */
const AROUND = 3;

/** Rounds in which cells are looked for anew. */
const ROUNDS = 2;

const MOST_OFF = 0.3;

/** Darkness that paper has by itself, and ink, summed over the places, that makes a symbol. */
const GRAIN = 0.12;
const LEAST_INK = 1.5;

const ROWS_A_STEP = 16;

export function* lookAtSymbols(straight: Picture, columns: number, rows: number, drift: Drift): Steps<Float64Array> {
  const cellWidth = straight.width / columns;
  const cellHeight = straight.height / rows;
  const look = lookerAt(straight, cellWidth * REACH, cellHeight * REACH);
  const count = columns * rows;
  const symbols = new Float64Array(count * SYMBOL_NUMBERS);
  const off = new Float64Array(count * 2);
  // Symbols stand in the middle of their cells: where those around a cell all lie to one side, so does the cell.
  for (let round = 0; round <= ROUNDS; round++) {
    for (let cell = 0; cell < count; cell++) {
      const [column, fromTop] = [cell % columns, rows - 1 - Math.floor(cell / columns)];
      const [x, y] = [(column + 0.5) / columns, (fromTop + 0.5) / rows];
      const right = (column + 0.5 + drift.across(x, y) + (off[cell * 2] as number)) * cellWidth;
      const down = (fromTop + 0.5 + drift.up(x, y) + (off[cell * 2 + 1] as number)) * cellHeight;
      symbols.set(look(right, down), cell * SYMBOL_NUMBERS);
      if (cell % (ROWS_A_STEP * columns) === 0) {
        yield { stage: 'sample', done: (round + cell / count) / (ROUNDS + 1) };
      }
    }
    if (round < ROUNDS) addOffsets(off, symbols, columns, rows);
  }
  return symbols;
}

/** Adds by what part of a cell symbols lie to the right of and below where they were looked for: two numbers a cell. */
function addOffsets(off: Float64Array, symbols: Float64Array, columns: number, rows: number): void {
  const count = columns * rows;
  const found: (readonly [number, number] | null)[] = Array.from({ length: count }, (_, cell) =>
    middleOfInk(symbols.subarray(cell * SYMBOL_NUMBERS, (cell + 1) * SYMBOL_NUMBERS)),
  );
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const near: (readonly [number, number])[] = [];
      for (let y = Math.max(0, row - AROUND); y <= Math.min(rows - 1, row + AROUND); y++) {
        for (let x = Math.max(0, column - AROUND); x <= Math.min(columns - 1, column + AROUND); x++) {
          const there = found[y * columns + x];
          if (there) near.push(there);
        }
      }
      for (const axis of [0, 1] as const) {
        const middle = near.map((place) => place[axis]).sort((a, b) => a - b)[near.length >> 1] ?? 0;
        const at = (row * columns + column) * 2 + axis;
        off[at] = Math.max(-MOST_OFF, Math.min(MOST_OFF, (off[at] as number) + middle));
      }
    }
  }
}

/** The middle of the ink of a symbol, in cells to the right and down; null where there is hardly any. */
function middleOfInk(symbol: Float64Array): readonly [number, number] | null {
  let [ink, right, down] = [0, 0, 0];
  symbol.forEach((value, place) => {
    // Grain of the paper is everywhere; only what stands out pulls.
    const dark = Math.max(0, value - GRAIN);
    ink += dark;
    right += dark * ((place % SYMBOL_SIDE) + 0.5 - SYMBOL_SIDE / 2);
    down += dark * (Math.floor(place / SYMBOL_SIDE) + 0.5 - SYMBOL_SIDE / 2);
  });
  if (ink < LEAST_INK) return null;
  const place = (2 * REACH) / SYMBOL_SIDE;
  return [(right / ink) * place, (down / ink) * place];
}

/** Looks around a place in pixels; what it returns is good until it looks again. */
function lookerAt(
  { width, height, rgba }: Picture,
  reachX: number,
  reachY: number,
): (x: number, y: number) => Float64Array {
  const sums = new Float64Array(SYMBOL_NUMBERS);
  const shares = new Float64Array(SYMBOL_NUMBERS);
  const levels: number[] = [];
  return (x, y) => {
    sums.fill(0);
    shares.fill(0);
    levels.length = 0;
    const [left, right] = [Math.max(0, Math.floor(x - reachX)), Math.min(width, Math.ceil(x + reachX))];
    const [top, bottom] = [Math.max(0, Math.floor(y - reachY)), Math.min(height, Math.ceil(y + reachY))];
    for (let py = top; py < bottom; py++) {
      for (let px = left; px < right; px++) {
        const at = (py * width + px) * 4;
        const level = luma(rgba, at);
        levels.push(level);
        // A pixel counts in the two places across and up that it lies between: a symbol a little off looks a little other.
        spread(
          sums,
          shares,
          ((px + 0.5 - x) / reachX + 1) * (SYMBOL_SIDE / 2) - 0.5,
          ((py + 0.5 - y) / reachY + 1) * (SYMBOL_SIDE / 2) - 0.5,
          level,
        );
      }
    }
    levels.sort((a, b) => a - b);
    const paper = Math.max(1, levels[Math.floor(levels.length * PAPER_SHARE)] ?? 1);
    return sums.map((sum, place) => {
      const share = shares[place] as number;
      return share === 0 ? 0 : Math.max(0, 1 - sum / share / paper);
    });
  };
}

function spread(sums: Float64Array, shares: Float64Array, u: number, v: number, level: number): void {
  const [left, top] = [Math.floor(u), Math.floor(v)];
  for (let dy = 0; dy < 2; dy++) {
    for (let dx = 0; dx < 2; dx++) {
      const [column, row] = [left + dx, top + dy];
      if (column < 0 || row < 0 || column >= SYMBOL_SIDE || row >= SYMBOL_SIDE) continue;
      const share = (dx === 0 ? 1 - (u - left) : u - left) * (dy === 0 ? 1 - (v - top) : v - top);
      const place = row * SYMBOL_SIDE + column;
      sums[place] = (sums[place] as number) + share * level;
      shares[place] = (shares[place] as number) + share;
    }
  }
}
