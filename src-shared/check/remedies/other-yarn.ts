/** Cells drawn in another yarn of their row, so that one pass of the carriage feeds all of it. */
import type { PlacedCopies } from '../../fabric/index.ts';
import { applyPatch, patchCells, type Grid, type Patch } from '../../grid/index.ts';
import type { MotifId } from '../../motif/index.ts';
import { trueRepeat } from '../../motif/repeat/index.ts';
import { copiesIn, stripeAt, type Stripe } from '../../pattern/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { KnitMotif } from '../../project/piece-in.ts';
import { isOfManyYarns, keptYarns, spareYarns } from '../colours.ts';
import type { MotifSetting } from '../setting.ts';
import type { RemedyKind } from './kind.ts';

/** In one row of a motif as it is drawn, from 0, cells of one palette index become another. */
export interface RowInOtherYarn {
  readonly motif: MotifId;
  readonly row: number;
  readonly drawn: number;
  readonly instead: number;
}

export interface OtherYarn {
  readonly code: 'other-yarn';
  readonly rows: readonly RowInOtherYarn[];
}

export const otherYarn: RemedyKind<OtherYarn> = {
  isForManyYarns: true,
  keepsPlaces: false,
  changesCells: true,
  propose: ({ piece, plan }) => {
    const rows = rowsToChange(plan);
    // What merges may repeat in fewer columns, and its copies would stand elsewhere.
    const repeating = copiesIn({ patterns: piece.patterns.filter(({ unit }) => unit === 'repeat') });
    const isNarrowed = repeating.some(
      ({ motif }) => trueRepeat(gridAfter(motif, rows)).width !== trueRepeat(motif.grid).width,
    );
    return rows.length > 0 && !isNarrowed ? [{ code: 'other-yarn', rows }] : [];
  },
  setting: (piece, { rows }) => {
    const motifs = new Map(copiesIn(piece).map(({ motif }) => [motif.id, motif]));
    const changed = [...motifs.values()].flatMap((motif): MotifSetting[] => {
      const cells = patchOf(motif, rows);
      return cells.at.length > 0 ? [{ motif: motif.id, cells }] : [];
    });
    return changed.length > 0 ? { change: 'other-yarn', motifs: changed } : null;
  },
};

/** For the yarns that a row has too many of the one that most of its contrast is knitted in. */
function rowsToChange(plan: Plan): RowInOtherYarn[] {
  const changes = new Map<string, RowInOtherYarn>();
  for (const row of plan.rows.filter(isOfManyYarns)) {
    const spare = spareYarns(row).map(({ yarn }) => yarn);
    const kept = keptYarns(row).at(-1)?.yarn;
    if (kept === undefined) continue;
    for (const place of copiesIn(plan)) {
      if (row.row < place.firstRow || row.row > place.lastRow) continue;
      for (const { drawn, instead } of drawnFor(place, row.row, spare, kept)) {
        const inMotif = (row.row - place.firstRow) % place.copy.height;
        const key = `${place.motif} ${inMotif} ${drawn}`;
        // A row of a motif comes again with each copy above; what its lowest one asks for goes for all.
        if (!changes.has(key)) changes.set(key, { motif: place.motif, row: inMotif, drawn, instead });
      }
    }
  }
  return [...changes.values()];
}

/** The palette indices that are knitted in the spare yarns on a row of the copies, and what to draw for `kept` there. */
function drawnFor(
  { colours, ground, copy, firstRow }: PlacedCopies,
  row: number,
  spare: readonly number[],
  kept: number,
): { readonly drawn: number; readonly instead: number }[] {
  const stripe = colours && stripeAt(colours.order, row - colours.from);
  const start = ((row - firstRow) % copy.height) * copy.width;
  const inRow = new Set(copy.cells.subarray(start, start + copy.width));
  inRow.delete(ground);
  const others = [kept, ...(stripe?.yarns.map(({ drawn }) => drawn) ?? [])];
  const instead = others.find((drawn) => drawn !== ground && knittedFor(drawn, stripe) === kept);
  if (instead === undefined) return [];
  return [...inRow].filter((drawn) => spare.includes(knittedFor(drawn, stripe))).map((drawn) => ({ drawn, instead }));
}

function knittedFor(drawn: number, stripe: Stripe | null): number {
  return stripe?.yarns.find((each) => each.drawn === drawn)?.knitted ?? drawn;
}

/** The cells of a motif that change; those of rows that it has no more are left out. */
function patchOf({ id, grid }: KnitMotif, rows: readonly RowInOtherYarn[]): Patch {
  const { width, height, cells } = grid;
  const changes: [index: number, to: number][] = [];
  for (const { motif, row, drawn, instead } of rows) {
    if (motif !== id || row >= height) continue;
    for (let index = row * width; index < (row + 1) * width; index++) {
      if (cells[index] === drawn) changes.push([index, instead]);
    }
  }
  return patchCells(grid, changes);
}

function gridAfter(motif: KnitMotif, rows: readonly RowInOtherYarn[]): Grid {
  return applyPatch(motif.grid, patchOf(motif, rows));
}
