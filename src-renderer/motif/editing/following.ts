/** Live symmetry and tiling: the cells that are painted along with those under the tool. */
import {
  isInside,
  modulo,
  placeInCopy,
  straightCopies,
  symmetricCells,
  type Cell,
  type Copies,
  type Grid,
  type Symmetry,
} from '@shared/grid/index.ts';
import { trueRepeat, type Measure } from '@shared/motif/repeat/index.ts';

export interface Following {
  readonly symmetry: Symmetry;
  /** The copy that all others follow and how these lie, or null: the motif is one drawing. */
  readonly tile: Copies | null;
  /** Copies that are drawn around a motif that is one drawing: a cell of theirs stands for the one that it shows. Null, or left out: nothing is drawn there. */
  readonly around?: Copies | null;
}

export const SYMMETRIES: readonly Symmetry[] = ['none', 'left-right', 'up-down', 'both', 'turning'];

/** The symmetry after this one, round and round. */
export function nextSymmetry(symmetry: Symmetry): Symmetry {
  return SYMMETRIES[(SYMMETRIES.indexOf(symmetry) + 1) % SYMMETRIES.length] ?? 'none';
}

/** The copy to start with: the repeat as it is drawn, or all of a motif that has no figure yet. */
export function tileToFollow({ repeat, blank, width, height }: Measure): Copies {
  return straightCopies(blank ? repeat : { width, height });
}

/** The step that is half a copy, as of a half drop and of bricks, in whole stitches or rows. */
export function halfStep({ laid, width, height }: Pick<Copies, 'laid' | 'width' | 'height'>): number {
  return laid === 'straight' ? 0 : Math.floor((laid === 'courses' ? width : height) / 2);
}

/** The copies as they are with some of it changed; a step by half stays one, and any other is kept as far as it goes. */
export function withCopies(before: Copies, to: Partial<Copies>): Copies {
  const next = { ...before, ...to };
  if (to.step !== undefined) return next;
  if (next.laid !== before.laid || before.step === halfStep(before)) return { ...next, step: halfStep(next) };
  return { ...next, step: Math.min(next.step, mostStep(next)) };
}

/** The largest step that is not a whole copy. */
export function mostStep({ laid, width, height }: Copies): number {
  return (laid === 'courses' ? width : height) - 1;
}

/** Nothing follows. */
export const ALONE: Following = { symmetry: 'none', tile: null };

/** What the axes of symmetry divide and the pen fills: one copy of many, or the whole motif. */
export function copiesOn(grid: Pick<Grid, 'width' | 'height'>, { tile }: Pick<Following, 'tile'>): Copies {
  if (!tile) return straightCopies(grid);
  return { ...tile, width: Math.min(tile.width, grid.width), height: Math.min(tile.height, grid.height) };
}

/** How the copies around a drawing lie: as they follow, or by its true repeat; `measured` is null for a drawing that is not measured, as while a shape is pulled. */
export function neighboursOf(grid: Grid, tile: Following['tile'], measured: Measure | null): Copies {
  // While a large drawing is being measured its old repeat may not fit any more.
  return copiesOn(grid, { tile: tile ?? straightCopies((measured ?? { repeat: trueRepeat(grid) }).repeat) });
}

/** The cell of the motif that a cell of the plane stands for; null where that is none. */
export function cellOnMotif(grid: Grid, cell: Cell, { tile, around }: Following): Cell | null {
  if (isInside(grid, cell.column, cell.row)) return cell;
  if (tile) return placeInCopy(copiesOn(grid, { tile }), cell);
  return around ? placeInCopy(around, cell) : null;
}

/**
 * Indices of `cells` and of all cells that follow them, each once. Where copies
 * follow, a cell over the edge stands for the one that the copy has there, so
 * that strokes come in on the other side; else it is left out.
 */
export function followedBy(grid: Grid, cells: readonly Cell[], following: Following): number[] {
  const copies = copiesOn(grid, following);
  const inCopy = new Set<number>();
  for (const cell of cells) {
    const own = cellOnMotif(grid, cell, following);
    if (!own) continue;
    for (const twin of symmetricCells(copies, placeInCopy(copies, own), following.symmetry)) {
      inCopy.add(twin.row * copies.width + twin.column);
    }
  }
  const found: number[] = [];
  for (const place of inCopy) addInAllCopies(found, grid, copies, place);
  return found;
}

/** Adds the index of the same place in every copy. Thousands of cells may follow one, so no object is made of each. */
function addInAllCopies(found: number[], grid: Grid, copies: Copies, place: number): void {
  const { width, height } = grid;
  const left = place % copies.width;
  const bottom = Math.floor(place / copies.width);
  if (copies.laid === 'columns') {
    for (let copy = 0; copy * copies.width + left < width; copy++) {
      const column = copy * copies.width + left;
      const first = modulo(bottom + copy * copies.step, copies.height);
      for (let row = first; row < height; row += copies.height) found.push(row * width + column);
    }
    return;
  }
  for (let course = 0; course * copies.height + bottom < height; course++) {
    const row = course * copies.height + bottom;
    const first = modulo(left + course * copies.step, copies.width);
    for (let column = first; column < width; column += copies.width) found.push(row * width + column);
  }
}
