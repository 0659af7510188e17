/**
 * What hands cannot do: a piece with an obstacle has no running order.
 *
 * Facts, as codes and numbers; `check/` makes a finding of each that blocks.
 * Rows count from 1, bottom to top.
 */
import type { Run, Side, Slot } from '../../bed/index.ts';

export type Obstacle =
  /** Rows `first` … `last` (the outermost of them) have needles that the bed has not. */
  | { readonly code: 'off-the-bed'; readonly first: number; readonly last: number; readonly bed: Run }
  /** Row 1 is in pattern, no pass before it chooses its needles (the piece does not begin on waste yarn), and none can be pushed by hand. */
  | { readonly code: 'pattern-on-first-row'; readonly row: 1 }
  /** The row that joins the hem is knitted plain; `row` is in pattern. A pattern above the hem begins at the earliest on the row above it. */
  | { readonly code: 'pattern-on-joining-row'; readonly row: number }
  /** The row that joins the hem is shaped. */
  | { readonly code: 'shaping-on-joining-row'; readonly row: number }
  /** The loops of a hem's open start are hung, after `row`, on another number of needles. */
  | {
      readonly code: 'hem-loops-differ';
      readonly row: number;
      readonly loops: number;
      readonly needles: number;
    }
  /** Rows of more yarns than two feeders hold, or of several balls, on a machine whose forward needles cannot be seen. */
  | {
      readonly code: 'balls-unseen';
      readonly first: number;
      readonly last: number;
      readonly rows: number;
      /** Main included; of the row with most. */
      readonly yarns: number;
    }
  /** On `row` the needles `one` and `other`, whole repeats of the machine apart, would be chosen differently. */
  | {
      readonly code: 'off-fixed-places';
      readonly row: number;
      readonly one: Slot;
      readonly other: Slot;
      /** The machine's repeat, in needles. */
      readonly repeat: number;
    }
  /** Stitches that are made or cast off with the carriage's yarn, on the last row, at the edge away from it. */
  | {
      readonly code: 'shaping-away-from-carriage';
      readonly row: number;
      readonly edge: Side;
      readonly stitches: number;
    };

export type ObstacleCode = Obstacle['code'];
