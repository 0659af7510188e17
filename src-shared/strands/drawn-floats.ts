/** Floats of rows as they are drawn, before they stand on a piece. */
import type { Grid } from '../grid/index.ts';
import type { FloatLimit, Gauge } from '../piece/index.ts';
import { layStrands } from './floats.ts';
import type { Float } from './types.ts';

/**
 * The floats of each row of a drawing that is knitted as wide as it is drawn:
 * `ground` from edge to edge, every other yarn from its first stitch to its
 * last. Index 0 is the lowest row; needles are the drawing's columns.
 */
export function floatsOfDrawing(
  { width, height, cells }: Grid,
  ground: number,
  gauge: Gauge,
  floatLimit: FloatLimit,
): readonly (readonly Float[])[] {
  const { rows } = layStrands(
    { first: 0, width, rows: height, cells },
    {
      main: ground,
      outline: { rows: height, first: new Int32Array(height), last: new Int32Array(height).fill(width - 1) },
      ownBalls: [],
      startSide: 'left',
      gauges: [{ gauge, first: 1, last: height }],
      floatLimit,
    },
  );
  return rows.map(({ floats }) => floats);
}
