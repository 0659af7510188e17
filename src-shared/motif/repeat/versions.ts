/**
 * What the copies of a repeat have at one place of it, and how a knitter who
 * knows which of them is right settles it for all.
 */
import type { Cell, Grid } from '../../grid/index.ts';
import type { NearRepeat } from './near.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** What some of the copies have at a place: a yarn, by its palette index. */
export interface Version {
  readonly colour: number;
  /** How many copies have it. */
  readonly copies: number;
  /** Where it is drawn first, counted by rows from the bottom and from the left. */
  readonly first: Cell;
}

/** The versions of the place of `repeat` that `cell` stands in: most copies first, of as many the one drawn first. */
export function versionsAt(grid: Grid, repeat: Size, cell: Cell): readonly Version[] {
  const found = new Map<number, { copies: number; readonly first: Cell }>();
  for (const { column, row } of copiesOf(grid, repeat, cell)) {
    const colour = grid.cells[row * grid.width + column] as number;
    const known = found.get(colour);
    if (known) known.copies++;
    else found.set(colour, { copies: 1, first: { column, row } });
  }
  // The order of a map is that in which its keys came, and sorting keeps it among equals.
  return [...found].map(([colour, rest]) => ({ colour, ...rest })).sort((a, b) => b.copies - a.copies);
}

/** The version that more copies have than any other: what is proposed; null where none has. */
export function proposedOf([first, second]: readonly Version[]): Version | null {
  return first && first.copies > (second?.copies ?? 0) ? first : null;
}

/** The versions of every place of the near repeat where copies differ, in the order of the first slip in it. */
export function differencesOf({ near }: { readonly near: NearRepeat | null }, grid: Grid): (readonly Version[])[] {
  if (!near) return [];
  const seen = new Set<number>();
  return near.slips.flatMap((slip) => {
    const place = (slip.row % near.height) * near.width + (slip.column % near.width);
    if (seen.has(place)) return [];
    seen.add(place);
    return [versionsAt(grid, near, slip)];
  });
}

/** The drawing with `colour` in every copy of a cell. */
export function settleCopies(grid: Grid, repeat: Size, cell: Cell, colour: number): Grid {
  const cells = grid.cells.slice();
  for (const { column, row } of copiesOf(grid, repeat, cell)) cells[row * grid.width + column] = colour;
  return { ...grid, cells };
}

/** All that the repeat makes copies of a cell, itself among them. */
function* copiesOf(grid: Size, repeat: Size, cell: Cell): Iterable<Cell> {
  for (let row = cell.row % repeat.height; row < grid.height; row += repeat.height)
    for (let column = cell.column % repeat.width; column < grid.width; column += repeat.width) yield { column, row };
}
