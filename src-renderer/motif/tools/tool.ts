/** What the pointer and the space key do to cells. */
import type { Cell } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import type { Following } from '../editing/following.ts';
import type { PaintChange } from '../editing/strokes.ts';

/** What a tool works with. */
export interface Drawing {
  readonly motif: Motif;
  /** Palette index of the yarn in the pen. */
  readonly colour: number;
  /** Palette index of the main yarn. */
  readonly ground: number;
  readonly following: Following;
  /** Shapes are filled, not outlined. */
  readonly isFilled: boolean;
  /** Filling takes all cells of a colour, not only those that hang together. */
  readonly fillsEverywhere: boolean;
}

/**
 * A tool by how it takes its cells. Each change is null where nothing would
 * change.
 * - `stroke`: every cell that the pointer passes, at once;
 * - `span`: two corners, shown until the second one is set;
 * - `spot`: one cell;
 * - `pick`: takes the colour of a cell and changes none;
 * - `select`: two corners of what is selected, or a drag of it;
 * - `stamp`: lays a copy of another motif, which is held under the pointer until then;
 * - `trace`: moves the picture behind the chart and changes no cell.
 */
export type Tool =
  | { readonly kind: 'stroke'; change(drawing: Drawing, cells: readonly Cell[]): PaintChange | null }
  | {
      readonly kind: 'span';
      /** Its shapes are drawn outlined or filled. */
      readonly canFill: boolean;
      change(drawing: Drawing, from: Cell, to: Cell): PaintChange | null;
    }
  | { readonly kind: 'spot'; change(drawing: Drawing, cell: Cell): PaintChange | null }
  | { readonly kind: 'pick' | 'select' | 'stamp' | 'trace' };
