/**
 * Which doubtful cells of a chart that was read are still open after a change of
 * its motif, and where they are then. Pure.
 *
 * A cell that got another yarn is settled: whoever changed it has looked at it.
 * Where the motif is mirrored, turned or shifted the doubts go with their cells.
 * Other changes of the whole motif (cropped, resized, columns or rows in or out)
 * leave nobody knowing which cell was which.
 */
import { mirrorAcross, mirrorUp, quarterTurn, sameGrid, shiftAround, type Grid } from '@shared/grid/index.ts';
import type { ChangeName } from '@shared/project/index.ts';

/** An open doubt: its number among those of the reading, and the place of its cell in the motif's grid now. */
export interface OpenDoubt {
  readonly doubt: number;
  readonly at: number;
}

/** The open doubts in the order of their numbers; `lost` where cells went nobody knows where, `over` where the motif is another drawing. */
export type OpenDoubts = readonly OpenDoubt[] | 'lost' | 'over';

/** Changes that move cells in a way that can be followed: the ways they may have gone. */
const MOVES: { readonly [Name in ChangeName]?: readonly ((grid: Grid) => Grid)[] } = {
  'mirror-across': [mirrorAcross],
  'mirror-up': [mirrorUp],
  'quarter-turn': [quarterTurn],
  shift: [
    (grid) => shiftAround(grid, -1, 0),
    (grid) => shiftAround(grid, 1, 0),
    (grid) => shiftAround(grid, 0, 1),
    (grid) => shiftAround(grid, 0, -1),
  ],
};

/** Changes after which a cell may be anywhere, or gone. */
const LOSES: ReadonlySet<ChangeName> = new Set<ChangeName>([
  'insert-column',
  'delete-column',
  'insert-row',
  'delete-row',
  'crop',
  'crop-at-cursor',
  'trim',
  'resize-motif',
]);

/** Changes that put another drawing in its place. */
const REPLACES: ReadonlySet<ChangeName> = new Set<ChangeName>(['import-motif', 'read-picture', 'read-chart']);

/** Changes of all cells of a yarn: nobody looked at one of them. */
const OF_YARNS: ReadonlySet<ChangeName> = new Set<ChangeName>(['exchange-yarns', 'invert', 'yarns', 'set-ground']);

/** Of `open` in `before`, those that are open in `now`, which a change of that name made of it. */
export function stillOpen(open: readonly OpenDoubt[], before: Grid, now: Grid, name: ChangeName | null): OpenDoubts {
  if (now === before) return open;
  const moves = name === null ? undefined : MOVES[name];
  if (moves) {
    const way = moves.find((move) => sameGrid(move(before), now));
    return way ? moved(open, before, way) : 'lost';
  }
  if (name !== null && REPLACES.has(name)) return 'over';
  if ((name !== null && LOSES.has(name)) || now.width !== before.width || now.height !== before.height) return 'lost';
  if (name !== null && OF_YARNS.has(name)) return open;
  const left = open.filter(({ at }) => now.cells[at] === before.cells[at]);
  return left.length === open.length ? open : left;
}

/** Each where `way` takes its cell: by a drawing of the numbers of its cells, digit by digit. */
function moved(open: readonly OpenDoubt[], { width, height, cells }: Grid, way: (grid: Grid) => Grid): OpenDoubts {
  const digits = [0, 8, 16].map(
    (shift) => way({ width, height, cells: cells.map((_, at) => (at >> shift) & 0xff) }).cells,
  );
  const to = new Uint32Array(cells.length);
  for (let at = 0; at < cells.length; at++) {
    const [low = 0, middle = 0, high = 0] = digits.map((digit) => digit[at]);
    to[low + (middle << 8) + (high << 16)] = at;
  }
  return open.map(({ doubt, at }) => ({ doubt, at: to[at] as number }));
}
