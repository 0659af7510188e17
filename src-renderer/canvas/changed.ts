/** What differs between two states of a grid, so that no more than that is drawn again. */
import type { CellBox, Grid } from '@shared/grid/index.ts';

/** The smallest rectangle around all cells that differ; null if none does. The grids must be of one size. */
export function changedBox(before: Grid, after: Grid): CellBox | null {
  const { width } = after;
  const first = firstDifference(before.cells, after.cells);
  if (first < 0) return null;
  const last = lastDifference(before.cells, after.cells);
  const row = Math.floor(first / width);
  const lastRow = Math.floor(last / width);
  let left = width;
  let right = -1;
  for (let r = row; r <= lastRow; r++) {
    const start = r * width;
    for (let column = 0; column < left; column++) {
      if (before.cells[start + column] !== after.cells[start + column]) left = column;
    }
    for (let column = width - 1; column > right; column--) {
      if (before.cells[start + column] !== after.cells[start + column]) right = column;
    }
  }
  return { column: left, row, width: right - left + 1, height: lastRow - row + 1 };
}

/** The smallest rectangle around both. */
export function joinedBox(a: CellBox, b: CellBox): CellBox {
  const column = Math.min(a.column, b.column);
  const row = Math.min(a.row, b.row);
  return {
    column,
    row,
    width: Math.max(a.column + a.width, b.column + b.width) - column,
    height: Math.max(a.row + a.height, b.row + b.height) - row,
  };
}

/** The part of `box` inside `area`, or null. */
export function clippedBox(box: CellBox, area: CellBox): CellBox | null {
  const column = Math.max(box.column, area.column);
  const row = Math.max(box.row, area.row);
  const width = Math.min(box.column + box.width, area.column + area.width) - column;
  const height = Math.min(box.row + box.height, area.row + area.height) - row;
  return width > 0 && height > 0 ? { column, row, width, height } : null;
}

/** True if all of `box` lies inside `area`. */
export function isWithin(box: CellBox, area: CellBox): boolean {
  return (
    box.column >= area.column &&
    box.row >= area.row &&
    box.column + box.width <= area.column + area.width &&
    box.row + box.height <= area.row + area.height
  );
}

/** Four cells a step where both arrays are aligned: 200 × 1000 cells take about 0.05 ms. */
function firstDifference(a: Uint8Array, b: Uint8Array): number {
  let index = 0;
  if (a.byteOffset % 4 === 0 && b.byteOffset % 4 === 0) {
    const quads = a.length >>> 2;
    const aQuads = new Uint32Array(a.buffer, a.byteOffset, quads);
    const bQuads = new Uint32Array(b.buffer, b.byteOffset, quads);
    let quad = 0;
    while (quad < quads && aQuads[quad] === bQuads[quad]) quad++;
    index = quad * 4;
  }
  while (index < a.length && a[index] === b[index]) index++;
  return index < a.length ? index : -1;
}

function lastDifference(a: Uint8Array, b: Uint8Array): number {
  let index = a.length - 1;
  if (a.byteOffset % 4 === 0 && b.byteOffset % 4 === 0) {
    const whole = a.length & ~3;
    while (index >= whole && a[index] === b[index]) index--;
    if (index >= whole) return index;
    const aQuads = new Uint32Array(a.buffer, a.byteOffset, whole >>> 2);
    const bQuads = new Uint32Array(b.buffer, b.byteOffset, whole >>> 2);
    let quad = (whole >>> 2) - 1;
    while (quad >= 0 && aQuads[quad] === bQuads[quad]) quad--;
    index = quad * 4 + 3;
  }
  while (index >= 0 && a[index] === b[index]) index--;
  return index;
}
