/** Other colours up the rows of a pattern: which stripe a row lies in. */
import type { Grid } from '../grid/index.ts';
import type { ColourOrder, Stripe } from './model.ts';

/** Rows of all stripes together, once. */
export function rowsOfOrder({ stripes }: Pick<ColourOrder, 'stripes'>): number {
  return stripes.reduce((sum, { rows }) => sum + rows, 0);
}

/** The stripe that a row lies in, counted from 0 at the pattern's first row; null above the last. */
export function stripeAt({ stripes, repeats }: ColourOrder, row: number): Stripe | null {
  let left = repeats ? row % rowsOfOrder({ stripes }) : row;
  for (const stripe of stripes) {
    if (left < stripe.rows) return stripe;
    left -= stripe.rows;
  }
  return null;
}

/** A stripe where it lies: its rows from 0 at the pattern's first row, and which of the order it is. */
export interface StripeRun {
  readonly stripe: Stripe;
  readonly index: number;
  readonly first: number;
  readonly last: number;
}

/** The stripes over so many rows from the first upwards, the last as far as it goes. */
export function stripesOver({ stripes, repeats }: ColourOrder, rows: number): StripeRun[] {
  const runs: StripeRun[] = [];
  let first = 0;
  do {
    for (const [index, stripe] of stripes.entries()) {
      if (first >= rows) return runs;
      runs.push({ stripe, index, first, last: Math.min(rows, first + stripe.rows) - 1 });
      first += stripe.rows;
    }
  } while (repeats);
  return runs;
}

/**
 * Knits other yarns for those that are drawn: in place, in cells of one row.
 * The ground is the fabric's and stays, whatever a stripe says of it.
 */
export function recolour(cells: Uint8Array, { yarns }: Stripe, ground: number): void {
  const others = yarns.filter(({ drawn }) => drawn !== ground);
  if (others.length === 0) return;
  for (let at = 0; at < cells.length; at++) {
    const other = others.find(({ drawn }) => drawn === cells[at]);
    if (other) cells[at] = other.knitted;
  }
}

/** The lowest `rows` rows of copies of a drawing one above the other, as they are knitted in the order. */
export function drawnInOrder({ width, height, cells }: Grid, rows: number, order: ColourOrder, ground: number): Grid {
  const knitted = new Uint8Array(width * rows);
  for (let row = 0; row < rows; row++) {
    const from = (row % height) * width;
    const line = knitted.subarray(row * width, (row + 1) * width);
    line.set(cells.subarray(from, from + width));
    const stripe = stripeAt(order, row);
    if (stripe) recolour(line, stripe, ground);
  }
  return { width, height: rows, cells: knitted };
}
