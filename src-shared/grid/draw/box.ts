/** Rectangles and ellipses of cells, outlined or filled. */
import type { Cell, CellBox } from './cell.ts';

/** All cells of a box, or only those of its rim. */
export function rectangleCells(box: CellBox, isFilled: boolean): Cell[] {
  return cellsWhere(box, (x, y) => {
    const isRim = x === 0 || y === 0 || x === box.width - 1 || y === box.height - 1;
    return isFilled || isRim;
  });
}

/**
 * The ellipse that touches the sides of a box: the cells whose centres lie in
 * it, and the cells on its two axes, so that a thin one reaches its ends; or
 * only those of them beside a cell that does not. In whole numbers, so that
 * both mirror images are exact.
 */
export function ellipseCells(box: CellBox, isFilled: boolean): Cell[] {
  const { width, height } = box;
  const isIn = (x: number, y: number): boolean => {
    if (x < 0 || y < 0 || x >= width || y >= height) return false;
    const fromAxisX = Math.abs(2 * x + 1 - width);
    const fromAxisY = Math.abs(2 * y + 1 - height);
    if (fromAxisX <= 1 || fromAxisY <= 1) return true;
    const across = fromAxisX * height;
    const up = fromAxisY * width;
    return across * across + up * up <= (width * height) ** 2;
  };
  return cellsWhere(box, (x, y) => {
    if (!isIn(x, y)) return false;
    return isFilled || !(isIn(x - 1, y) && isIn(x + 1, y) && isIn(x, y - 1) && isIn(x, y + 1));
  });
}

function cellsWhere(box: CellBox, isTaken: (x: number, y: number) => boolean): Cell[] {
  const cells: Cell[] = [];
  for (let y = 0; y < box.height; y++) {
    for (let x = 0; x < box.width; x++) {
      if (isTaken(x, y)) cells.push({ column: box.column + x, row: box.row + y });
    }
  }
  return cells;
}
