/** What is said of a cell: to the ear where the keyboard is, to the eye where the pointer is. */
import { cellAt, type Cell, type Grid } from '@shared/grid/index.ts';
import type { Project } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { cellOnMotif, type Following } from '../editing/following.ts';

interface Told {
  readonly grid: Grid;
  readonly yarns: Project['yarns'];
  readonly mainYarn: number;
  /** With the copies around it, each cell of which is told by the one that it shows. */
  readonly following: Following;
}

export function cellWords({ grid, yarns, mainYarn, following }: Told): {
  heard(cell: Cell): string;
  status(cell: Cell): string;
} {
  const yarnAt = ({ column, row }: Cell): number => cellAt(grid, column, row);
  const nameAt = (cell: Cell): string => yarns[yarnAt(cell)]?.name ?? '';
  return {
    heard: (cell) => words.motif.stage.cell(cell.column, cell.row, nameAt(cell)),
    status(cell) {
      const own = cellOnMotif(grid, cell, following) ?? cell;
      const said = words.motif.point(own.column, own.row, nameAt(own), yarnAt(own) === mainYarn);
      return own === cell ? said : words.motif.stage.inCopy(said);
    },
  };
}
