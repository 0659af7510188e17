/**
 * Copies of one size that fill the plane: straight, in moved courses as bricks
 * lie, or in moved columns as in a half drop. The copy whose lower left cell is
 * column 0 of row 0 is the one that the others repeat.
 */
import { modulo } from '../transform.ts';
import type { Cell, CellBox } from './cell.ts';

/** How copies lie: on each other and side by side, in moved courses, or in moved columns. */
export type Laid = 'straight' | 'courses' | 'columns';

export interface Copies {
  readonly laid: Laid;
  /** Stitches and rows of one copy. */
  readonly width: number;
  readonly height: number;
  /** Stitches that each next course stands to the right, or rows that each next column stands higher; 0 where straight. */
  readonly step: number;
}

/** Copies side by side and on each other, as wide and as tall as `size`. */
export function straightCopies({ width, height }: Pick<Copies, 'width' | 'height'>): Copies {
  return { laid: 'straight', width, height, step: 0 };
}

/** The cell of the copy at the origin that a cell of the plane repeats. */
export function placeInCopy({ laid, width, height, step }: Copies, { column, row }: Cell): Cell {
  const across = laid === 'courses' ? column - Math.floor(row / height) * step : column;
  const up = laid === 'columns' ? row - Math.floor(column / width) * step : row;
  return { column: modulo(across, width), row: modulo(up, height) };
}

/**
 * Where the cell or the lower left cell of the box `at` stands in all copies
 * that reach into `area`, from the lowest course up or from the leftmost column.
 */
export function* placesInCopies({ laid, width, height, step }: Copies, at: CellBox, area: CellBox): Generator<Cell> {
  if (laid === 'columns') {
    // The same with rows and columns exchanged.
    const turned: Copies = { laid: 'courses', width: height, height: width, step };
    for (const { column, row } of placesInCopies(turned, exchanged(at), exchanged(area))) {
      yield { column: row, row: column };
    }
    return;
  }
  const firstCourse = firstReaching(at.row, at.height, area.row, height);
  for (let course = firstCourse; at.row + course * height < area.row + area.height; course++) {
    const left = at.column + course * step;
    const first = firstReaching(left, at.width, area.column, width);
    for (let copy = first; left + copy * width < area.column + area.width; copy++) {
      yield { column: left + copy * width, row: at.row + course * height };
    }
  }
}

/** How many times `by` the stretch `start` … `start + length` must be moved, at least, to reach past `from`. */
function firstReaching(start: number, length: number, from: number, by: number): number {
  return Math.floor((from - start - length) / by) + 1;
}

function exchanged({ column, row, width, height }: CellBox): CellBox {
  return { column: row, row: column, width: height, height: width };
}
