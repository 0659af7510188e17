/** The chart seen from the other side of the fabric: left and right change places. */
import { drawnFrom, type FinishedFace } from '@shared/bed/index.ts';
import { mirrorAcross, type Cell, type Grid } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import type { Piece } from '@shared/piece/index.ts';

const OTHER_WAY: { readonly [key: string]: string } = { ArrowLeft: 'ArrowRight', ArrowRight: 'ArrowLeft' };

export interface Turning {
  readonly isTurned: boolean;
  /** The cells as they are seen. */
  grid(grid: Grid): Grid;
  /** From a cell as it is drawn to where it is seen, and back. */
  cell(cell: Cell): Cell;
  /** What an arrow key that moves what is seen does to what is drawn. */
  key(key: string): string;
}

const STRAIGHT: Turning = { isTurned: false, grid: (grid) => grid, cell: (cell) => cell, key: (key) => key };

/** How a chart `width` columns wide is seen; `isTurned` from its other side. */
export function turning(isTurned: boolean, width: number): Turning {
  if (!isTurned) return STRAIGHT;
  return {
    isTurned: true,
    grid: mirrorAcross,
    cell: ({ column, row }) => ({ column: width - 1 - column, row }),
    key: (key) => OTHER_WAY[key] ?? key,
  };
}

/** True if the side of the fabric that is shown is not the one that the motif was drawn from; null: the chart is. */
export function isSeenTurned(
  { shows }: Pick<Motif, 'shows'>,
  { finishedFace }: Pick<Piece, 'finishedFace'>,
  fabric: FinishedFace | null,
): boolean {
  return fabric !== null && fabric !== drawnFrom(shows, finishedFace);
}
