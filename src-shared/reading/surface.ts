/** A smooth surface over the cells of a chart, laid through differences between cells. */
import { Matrix, solve } from 'ml-matrix';

/** Two cells, by how much something rises from one to the other, and how much the pair counts, 0 … 1. */
export interface Pair {
  readonly one: number;
  readonly other: number;
  readonly difference: number;
  readonly weight: number;
}

/** Cells are compared with those at these distances: alike cells are near even in a chessboard. */
const NEIGHBOURS: readonly (readonly [number, number])[] = [
  [1, 0],
  [0, 1],
  [1, 1],
  [1, -1],
  [2, 0],
  [0, 2],
];

/** Pairs of neighbours, at most about `most`; `heights` and what each cell counts are given row by row. */
export function pairsOf(heights: Float64Array, counts: Float64Array, columns: number, most: number): Pair[] {
  const pairs: Pair[] = [];
  const rows = heights.length / columns;
  // Every so many cells; a step that shares no divisor with the width, or whole columns would be left out.
  let step = Math.max(1, Math.ceil((heights.length * NEIGHBOURS.length) / most));
  while (step > 1 && columns % step === 0) step++;
  for (let cell = 0; cell < heights.length; cell += step) {
    const column = cell % columns;
    const row = (cell - column) / columns;
    for (const [dx, dy] of NEIGHBOURS) {
      if (column + dx < 0 || column + dx >= columns || row + dy < 0 || row + dy >= rows) continue;
      const other = cell + dy * columns + dx;
      const difference = (heights[other] as number) - (heights[cell] as number);
      pairs.push({ one: cell, other, difference, weight: Math.min(counts[cell] as number, counts[other] as number) });
    }
  }
  return pairs;
}

/** What bending costs against all pairs together; little, so that a soft shadow is followed. */
const BEND_COST = 2e-5;

/** A surface over the cells, straight between its nodes. */
export class Surface {
  private readonly across: number;
  private readonly up: number;
  /** For each cell the four nodes around it and how much each counts there. */
  private readonly nodes: Int32Array;
  private readonly shares: Float64Array;
  private heights: Float64Array;

  /** At most `most` nodes across, and as many up. */
  constructor(columns: number, rows: number, most: number) {
    this.across = Math.max(2, Math.min(most, Math.floor(columns / 3)));
    this.up = Math.max(2, Math.min(most, Math.floor(rows / 3)));
    this.heights = new Float64Array(this.across * this.up);
    this.nodes = new Int32Array(columns * rows * 4);
    this.shares = new Float64Array(columns * rows * 4);
    for (let cell = 0; cell < columns * rows; cell++) {
      const column = cell % columns;
      const x = ((column + 0.5) / columns) * (this.across - 1);
      const y = (((cell - column) / columns + 0.5) / rows) * (this.up - 1);
      const left = Math.min(Math.floor(x), this.across - 2);
      const below = Math.min(Math.floor(y), this.up - 2);
      const node = below * this.across + left;
      this.nodes.set([node, node + 1, node + this.across, node + this.across + 1], cell * 4);
      const [fx, fy] = [x - left, y - below];
      this.shares.set([(1 - fx) * (1 - fy), fx * (1 - fy), (1 - fx) * fy, fx * fy], cell * 4);
    }
  }

  at(cell: number): number {
    let height = 0;
    for (let i = cell * 4; i < cell * 4 + 4; i++) {
      height += (this.shares[i] as number) * (this.heights[this.nodes[i] as number] as number);
    }
    return height;
  }

  /** Lays the surface through the slopes of the pairs, each counting by how well it agrees already (Cauchy's weights). */
  fit(pairs: readonly Pair[], scale: number): void {
    const size = this.heights.length;
    const left = new Float64Array(size * size);
    const right = new Float64Array(size);
    const nodes = new Int32Array(8);
    const shares = new Float64Array(8);
    let total = 0;
    for (const { one, other, difference, weight } of pairs) {
      const off = difference - (this.at(other) - this.at(one));
      const counts = weight / (1 + (off / scale) ** 2);
      total += counts;
      for (let i = 0; i < 4; i++) {
        nodes[i] = this.nodes[other * 4 + i] as number;
        shares[i] = this.shares[other * 4 + i] as number;
        nodes[i + 4] = this.nodes[one * 4 + i] as number;
        shares[i + 4] = -(this.shares[one * 4 + i] as number);
      }
      for (let i = 0; i < 8; i++) {
        const row = nodes[i] as number;
        const share = counts * (shares[i] as number);
        right[row] = (right[row] as number) + share * difference;
        for (let j = 0; j < 8; j++) {
          const at = row * size + (nodes[j] as number);
          left[at] = (left[at] as number) + share * (shares[j] as number);
        }
      }
    }
    this.addStiffness(left, BEND_COST * total);
    // The constant is free: hold every height near zero, a very little.
    for (let i = 0; i < size; i++) left[i * size + i] = (left[i * size + i] as number) + 1e-6 * total + 1e-9;
    this.heights = Float64Array.from(
      solve(Matrix.from1DArray(size, size, left), Matrix.columnVector(right)).to1DArray(),
    );
  }

  /** Second differences between neighbouring nodes, squared, are what bending costs. */
  private addStiffness(left: Float64Array, cost: number): void {
    const size = this.heights.length;
    const bend = (...nodes: readonly [number, number, number]): void => {
      nodes.forEach((row, i) =>
        nodes.forEach((column, j) => {
          const at = row * size + column;
          left[at] = (left[at] as number) + cost * (i === 1 ? -2 : 1) * (j === 1 ? -2 : 1);
        }),
      );
    };
    for (let v = 0; v < this.up; v++) {
      for (let u = 0; u < this.across; u++) {
        const node = v * this.across + u;
        if (u + 2 < this.across) bend(node, node + 1, node + 2);
        if (v + 2 < this.up) bend(node, node + this.across, node + 2 * this.across);
      }
    }
  }
}
