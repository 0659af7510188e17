/**
 * What is seen of the cells of a lattice: along each of their sides whether
 * there is a line, in their middles whether they are filled.
 */
import type { LatticeModel } from './lattice-model.ts';
import { nthOf } from './nth.ts';
import type { Picture } from './picture.ts';

/** Columns and rows of a lattice: those with `left <= column < right` and `top <= row < bottom`. */
export interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What is seen of the cells of a part of a lattice. */
export interface CellSides {
  readonly within: Bounds;
  readonly columns: number;
  readonly rows: number;
  /** How much darker it is along the left side of each cell, of three times 256; row by row, one more than columns in each. */
  readonly upright: Float32Array;
  /** … and along the upper side of each cell, one more row than there are rows. */
  readonly level: Float32Array;
  /** In the order of these: how much darker than the darker of both sides, which the rim of a sheet on a table is not. */
  readonly uprightRidge: Float32Array;
  readonly levelRidge: Float32Array;
  /** How much darker by chance, where there is no line. */
  readonly chance: number;
  /** Mean colour of the middle of each cell, three numbers. */
  readonly middles: Float32Array;
  /** Whether the cell is darker than the paper around it. */
  readonly filled: Uint8Array;
  /** Whether it is so evenly, as a stroke of writing through a cell never makes it. */
  readonly isEven: Uint8Array;
  /** Whether the cell lies in the picture. */
  readonly isSeen: Uint8Array;
}

/** Looks a cell, each way. */
export const LOOKS = 10;

/** Looks in the middle of a cell. */
const MIDDLE_LOOKS = (LOOKS - 6) ** 2;

/** Looks at every side of the cells of `within`. */
export function sidesOf(picture: Picture, model: LatticeModel, within: Bounds): CellSides {
  const columns = within.right - within.left;
  const rows = within.bottom - within.top;
  const { colours, isSeen } = straightened(picture, model, within);
  const width = columns * LOOKS;
  const height = rows * LOOKS;
  const middles = new Float32Array(columns * rows * 3);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      for (let y = 3; y < LOOKS - 3; y++) {
        for (let x = 3; x < LOOKS - 3; x++) {
          const at = ((row * LOOKS + y) * width + column * LOOKS + x) * 3;
          for (let c = 0; c < 3; c++) {
            const to = (row * columns + column) * 3 + c;
            middles[to] = (middles[to] as number) + (colours[at + c] as number) / MIDDLE_LOOKS;
          }
        }
      }
    }
  }
  const { filled, paper } = filledOf(columns, rows, middles);
  const upright = linesAcross(
    colours,
    width,
    height,
    3,
    width * 3,
    (row, column) => filled[row * columns + column] === 1,
  );
  const level = linesAcross(
    colours,
    height,
    width,
    width * 3,
    3,
    (column, row) => filled[row * columns + column] === 1,
  );
  // Those of level sides come line by line; turned to lie row by row.
  const turned = (shares: Float32Array): Float32Array =>
    Float32Array.from(
      { length: (rows + 1) * columns },
      (_, side) => shares[(side % columns) * (rows + 1) + Math.floor(side / columns)] as number,
    );
  return {
    within,
    columns,
    rows,
    upright: upright.shares,
    level: turned(level.shares),
    uprightRidge: upright.ridges,
    levelRidge: turned(level.ridges),
    chance: Math.max(upright.chance, level.chance),
    middles,
    filled,
    isEven: evenlyFilled(colours, columns, filled, paper),
    isSeen,
  };
}

/** The cells with {@link LOOKS} looks each way: three numbers a look, row by row. */
export function straightened(
  { width, height, rgba }: Picture,
  model: LatticeModel,
  { left, top, right, bottom }: Bounds,
): { colours: Float32Array; isSeen: Uint8Array } {
  const columns = right - left;
  const rows = bottom - top;
  const colours = new Float32Array(columns * LOOKS * rows * LOOKS * 3);
  const isSeen = new Uint8Array(columns * rows);
  let above = Array.from({ length: columns + 1 }, (_, i) => model.at(left + i, top));
  for (let row = 0; row < rows; row++) {
    const below = Array.from({ length: columns + 1 }, (_, i) => model.at(left + i, top + row + 1));
    for (let column = 0; column < columns; column++) {
      const [a, b] = [above[column], above[column + 1]] as [{ x: number; y: number }, { x: number; y: number }];
      const [d, c] = [below[column], below[column + 1]] as [{ x: number; y: number }, { x: number; y: number }];
      const isIn = [a, b, c, d].every(({ x, y }) => x >= 0 && y >= 0 && x <= width && y <= height);
      isSeen[row * columns + column] = isIn ? 1 : 0;
      for (let v = 0; v < LOOKS; v++) {
        const fv = (v + 0.5) / LOOKS;
        let to = ((row * LOOKS + v) * columns + column) * LOOKS * 3;
        for (let u = 0; u < LOOKS; u++) {
          const fu = (u + 0.5) / LOOKS;
          let x = (a.x * (1 - fu) + b.x * fu) * (1 - fv) + (d.x * (1 - fu) + c.x * fu) * fv - 0.5;
          let y = (a.y * (1 - fu) + b.y * fu) * (1 - fv) + (d.y * (1 - fu) + c.y * fu) * fv - 0.5;
          x = x < 0 ? 0 : x > width - 1.001 ? width - 1.001 : x;
          y = y < 0 ? 0 : y > height - 1.001 ? height - 1.001 : y;
          const px = x | 0;
          const py = y | 0;
          const fx = x - px;
          const fy = y - py;
          const gx = 1 - fx;
          const gy = 1 - fy;
          const i = (py * width + px) * 4;
          const under = i + width * 4;
          for (let k = 0; k < 3; k++) {
            const upper = (rgba[i + k] as number) * gx + (rgba[i + 4 + k] as number) * fx;
            const lower = (rgba[under + k] as number) * gx + (rgba[under + 4 + k] as number) * fx;
            colours[to++] = upper * gy + lower * fy;
          }
        }
      }
    }
    above = below;
  }
  return { colours, isSeen };
}

/** Looks at a line, and at the paper to both sides of it, are two each, from here on, counted from its beginning. */
const ON_LINE = -1;
const BEFORE = -4;
const AFTER = 2;

/**
 * For each cell's thickness of the picture, and each line across it, by how
 * much it is darker there than to both sides; where one of the cells is
 * filled and the other is not, by how much they differ if they do so there.
 * Measured with a sign: where there is nothing, chance makes as much of either.
 */
function linesAcross(
  colours: Float32Array,
  length: number,
  thickness: number,
  step: number,
  side: number,
  isFilled: (run: number, cell: number) => boolean,
): { shares: Float32Array; ridges: Float32Array; chance: number } {
  const cells = length / LOOKS;
  const runs = thickness / LOOKS;
  const means = new Float32Array(length);
  const shares = new Float32Array(runs * (cells + 1));
  const ridges = new Float32Array(runs * (cells + 1));
  const middles: number[] = [];
  for (let run = 0; run < runs; run++) {
    means.fill(0);
    // The line's own ends, where others cross it, are left out.
    for (let line = 1; line < LOOKS - 1; line++) {
      for (let place = 0; place < length; place++) {
        const at = (run * LOOKS + line) * side + place * step;
        const bright = (colours[at] as number) + (colours[at + 1] as number) + (colours[at + 2] as number);
        means[place] = (means[place] as number) + bright / (LOOKS - 2);
      }
    }
    for (let line = 1; line < cells; line++) {
      const isOne = isFilled(run, line - 1) !== isFilled(run, line);
      // A sign in the cell may reach near to the line: the brighter of two places is paper.
      const at = line * LOOKS;
      const before = brighterOf(means, at + BEFORE);
      const after = brighterOf(means, at + AFTER);
      const on = meanOf(means, at + ON_LINE);
      const dark = (before + after) / 2 - on;
      ridges[run * (cells + 1) + line] = Math.min(before, after) - on;
      // Half of all that changes from one cell's middle to the next should change at the line.
      const near = meanOf(means, at + 1);
      const nearBefore = meanOf(means, at - 3);
      const stepped =
        Math.abs(near - nearBefore) -
        Math.abs(near - meanOf(means, at + 4)) -
        Math.abs(nearBefore - meanOf(means, at - 6));
      shares[run * (cells + 1) + line] = isOne ? Math.max(dark, stepped / 2) : dark;
      if (!isFilled(run, line)) {
        const middle = (brighterOf(means, at + 1) + brighterOf(means, at + 7)) / 2 - meanOf(means, at + 4);
        middles.push(Math.abs(middle));
      }
    }
  }
  return { shares, ridges, chance: nthOf(middles, middles.length >> 1) ?? 0 };
}

/** Of two looks from `at` on. */
function meanOf(looks: Float32Array, at: number): number {
  return ((looks[at] as number) + (looks[at + 1] as number)) / 2;
}

function brighterOf(looks: Float32Array, at: number): number {
  return Math.max(looks[at] as number, looks[at + 1] as number);
}

/** Cells within this many of another tell what paper is like there. */
const PAPER_AROUND = 4;

/** Darker than this share of the paper around, a cell is filled. */
const FILLED_BELOW = 0.8;

/** Which cells are darker than the paper around them, and how bright that is, of three times 256. */
function filledOf(
  columns: number,
  rows: number,
  middles: Float32Array,
): { readonly filled: Uint8Array; readonly paper: Float32Array } {
  const bright = Float32Array.from(
    { length: columns * rows },
    (_, i) => (middles[3 * i] as number) + (middles[3 * i + 1] as number) + (middles[3 * i + 2] as number),
  );
  const paper = brightestAround(brightestAround(bright, columns, rows, true), columns, rows, false);
  const filled = Uint8Array.from(bright, (value, i) => (value < FILLED_BELOW * (paper[i] as number) ? 1 : 0));
  return { filled, paper };
}

/** A cell's looks but those so near to its sides, where lines are. */
const INWARDS = 2;

/**
 * Looks of an even cell stray from their mean by at most this share of what the paper is brighter. Strokes on a share
 * p of a cell make it the root of (1 - p) / p: strokes on nine tenths are still uneven.
 */
const EVEN = 0.3;

/** Which of the cells that are filled have one brightness all over. */
function evenlyFilled(colours: Float32Array, columns: number, filled: Uint8Array, paper: Float32Array): Uint8Array {
  return filled.map((is, cell) => {
    if (is === 0) return 0;
    const [left, top] = [(cell % columns) * LOOKS, Math.floor(cell / columns) * LOOKS];
    let [sum, squares, looks] = [0, 0, 0];
    for (let y = top + INWARDS; y < top + LOOKS - INWARDS; y++) {
      for (let x = left + INWARDS; x < left + LOOKS - INWARDS; x++) {
        const at = (y * columns * LOOKS + x) * 3;
        const bright = (colours[at] as number) + (colours[at + 1] as number) + (colours[at + 2] as number);
        sum += bright;
        squares += bright * bright;
        looks++;
      }
    }
    const mean = sum / looks;
    const stray = Math.sqrt(Math.max(0, squares / looks - mean * mean));
    return stray <= EVEN * ((paper[cell] as number) - mean) ? 1 : 0;
  });
}

function brightestAround(values: Float32Array, columns: number, rows: number, isAcross: boolean): Float32Array {
  return values.map((_, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const [place, count, step] = isAcross ? [column, columns, 1] : [row, rows, columns];
    let most = 0;
    for (let k = Math.max(0, place - PAPER_AROUND); k <= Math.min(count - 1, place + PAPER_AROUND); k++) {
      most = Math.max(most, values[i + (k - place) * step] as number);
    }
    return most;
  });
}
