/**
 * Blocks: the pieces of equal size that a plane can be divided into, and how
 * much of the figure their borders cut.
 *
 * A stepped plane can be divided in two ways into blocks of one size. In
 * courses, as bricks lie: each next course is moved to the right. Or in columns
 * of blocks, as in a half drop: each next column is moved up. Whichever it is,
 * the plane is the same; but a border that goes through a leaf makes a block
 * that nobody would draw, so the way that cuts the figure least comes first.
 *
 * A border cuts the figure wherever two figure cells (no ground, of whatever
 * yarn) that share a side lie on both sides of it. Each border is counted with
 * one of its two blocks, so that the count is that of one block's share of the
 * plane, and ways with blocks of one size compare. Where as many are cut, cells
 * that touch at a corner across a border decide: a line drawn slantwise holds
 * together by those.
 */
import { modulo, type Copies, type Grid } from '../../grid/index.ts';
import type { Lattice } from './lattice.ts';

/** A block, and how the plane is laid with it. */
export interface Block extends Copies {
  /** Where on the drawing a block starts that cuts least: its lower left cell. The lowest such, of these the leftmost. */
  readonly column: number;
  readonly row: number;
  /** Pairs of figure cells side by side that one block's border parts. */
  readonly cuts: number;
  /** Pairs of figure cells that touch at a corner across it. */
  readonly corners: number;
}

type Count = Pick<Block, 'cuts' | 'corners'>;

/**
 * The blocks of the plane that `tile`, its true repeat, fills: one where copies
 * stand straight, else those in courses and those in columns. The one that cuts
 * the figure least comes first; of two that cut as much, the columns.
 */
export function blocksOf(tile: Grid, lattice: Lattice, ground: number): readonly Block[] {
  const touching = touchingOf(tile, ground);
  return shapesOf(tile, lattice)
    .map((shape) => leastCut(touching, shape))
    .sort(compareCuts);
}

/** Negative where `a` cuts the figure less than `b`. */
export function compareCuts(a: Count, b: Count): number {
  return a.cuts - b.cuts || a.corners - b.corners;
}

/** What the borders of a block cut that starts at a column and a row of its plane. */
export function cutsOf(tile: Grid, ground: number, shape: Copies, column: number, row: number): Count {
  return countAt(touchingOf(tile, ground), shape, modulo(column, tile.width), modulo(row, tile.height));
}

function shapesOf(tile: Grid, { across, rows, shift }: Lattice): Copies[] {
  if (rows === tile.height) return [{ laid: 'straight', width: across, height: rows, step: 0 }];
  const courses: Copies = { laid: 'courses', width: across, height: rows, step: shift };
  // Moves straight up: as many courses as bring the step round to 0. Moves across: what step and width have in common.
  const width = commonDivisor(across, shift);
  const turns = across / width;
  let times = 0;
  while ((times * shift) % across !== width % across) times++;
  const columns: Copies = { laid: 'columns', width, height: rows * turns, step: times * rows };
  return [columns, courses];
}

/** Where figure cells touch across the lines between rows (`level`) and between columns (`upright`) of the plane that a tile fills. */
interface Touching {
  readonly width: number;
  readonly height: number;
  readonly level: Lines;
  readonly upright: Lines;
}

/**
 * Lines between neighbours, line 0 below row 0 or at the left of column 0, each
 * as sums from its start on, so that a stretch of border costs one look. Corner
 * to corner counts at the place of the earlier of both cells.
 */
interface Lines {
  readonly length: number;
  readonly cuts: Int32Array;
  readonly corners: Int32Array;
}

function touchingOf({ width, height, cells }: Grid, ground: number): Touching {
  const byRows = new Uint8Array(cells.length);
  const byColumns = new Uint8Array(cells.length);
  for (let row = 0, at = 0; row < height; row++) {
    for (let column = 0; column < width; column++, at++) {
      const isFigure = cells[at] === ground ? 0 : 1;
      byRows[at] = isFigure;
      byColumns[column * height + row] = isFigure;
    }
  }
  return { width, height, level: linesBetween(byRows, height, width), upright: linesBetween(byColumns, width, height) };
}

/** The lines between `many` rows of `length` cells, which go round and round both ways. */
function linesBetween(isFigure: Uint8Array, many: number, length: number): Lines {
  const cuts = new Int32Array(many * (length + 1));
  const corners = new Int32Array(many * (length + 1));
  for (let line = 0; line < many; line++) {
    const here = line * length;
    const before = (line === 0 ? many - 1 : line - 1) * length;
    let [cut, corner] = [0, 0];
    for (let place = 0, sum = line * (length + 1); place < length; place++) {
      const next = place + 1 === length ? 0 : place + 1;
      const [a, b] = [isFigure[before + place] as number, isFigure[here + place] as number];
      cut += a & b;
      corner += (a & (isFigure[here + next] as number)) + ((isFigure[before + next] as number) & b);
      cuts[++sum] = cut;
      corners[sum] = corner;
    }
  }
  return { length, cuts, corners };
}

/** The sum of `many` places of a line from `from` on, round and round; `many` is at most the line's length. */
function stretch(upTo: Int32Array, length: number, line: number, from: number, many: number): number {
  const start = line * (length + 1);
  const end = start + from + many;
  const over = from + many - length;
  const sum = (upTo[over > 0 ? start + length : end] as number) - (upTo[start + from] as number);
  return over > 0 ? sum + (upTo[start + over] as number) : sum;
}

/**
 * What is cut by the lower and the left border of a block. Cells that touch
 * where two borders meet are counted once, with the border that goes on there:
 * the level one between courses, the upright one between columns.
 */
function countAt({ level, upright }: Touching, { laid, width, height }: Copies, column: number, row: number): Count {
  const across = laid === 'columns' ? width - 1 : width;
  const up = laid === 'columns' ? height : height - 1;
  return {
    cuts:
      stretch(level.cuts, level.length, row, column, width) +
      stretch(upright.cuts, upright.length, column, row, height),
    corners:
      stretch(level.corners, level.length, row, column, across) +
      stretch(upright.corners, upright.length, column, row, up),
  };
}

/** The block of this shape that starts where it cuts least. Starts further on are copies of those that are tried. */
function leastCut(touching: Touching, shape: Copies): Block {
  let best: Block | null = null;
  for (let row = 0; row < shape.height; row++) {
    for (let column = 0; column < shape.width; column++) {
      const count = countAt(touching, shape, column, row);
      if (!best || compareCuts(count, best) < 0) best = { ...shape, column, row, ...count };
    }
  }
  return best as Block;
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}
