/**
 * A drawing in cells. Declared by hand, on purpose: a file has lines of letters,
 * from which `gridSchema` (model.ts) decodes bytes that no schema describes.
 *
 * Row 0 is the first knitted row (the bottom of the chart) and column 0 the
 * left edge as drawn. Cells are palette indices, row-major. A grid is never
 * changed in place once it is part of a project.
 */
export interface Grid {
  readonly width: number;
  readonly height: number;
  readonly cells: Uint8Array;
}
