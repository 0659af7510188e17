/** Widths that even shaping cannot reach with both edges alike. */
import { MOST_STITCHES } from '../bed/index.ts';
import type { Shape } from './shape-model.ts';
import type { WidthAt } from './size.ts';

export interface OddDifference {
  /** The width that is reached by an odd number of stitches. */
  readonly at: Exclude<WidthAt, 'cast-on'>;
  /** The widths next to it that are reached by an even number, with the shape that has them. */
  readonly even: readonly { readonly stitches: number; readonly shape: Shape }[];
}

/**
 * Where a shape goes from one width to another by an odd number of stitches:
 * the last of them is changed at one edge alone. From the bottom up.
 */
export function oddDifferences(shape: Shape): OddDifference[] {
  switch (shape.kind) {
    case 'rectangle':
    case 'steps':
      return [];
    case 'tapered':
      return odd('top', shape.stitches, shape.stitchesAtTop, (stitchesAtTop) => ({ ...shape, stitchesAtTop }));
    case 'body': {
      const { stitches, stitchesAtWaist, stitchesAtChest } = shape;
      return [
        ...odd('waist', stitches, stitchesAtWaist, (to) => ({ ...shape, stitchesAtWaist: to })),
        ...odd('chest', stitchesAtWaist, stitchesAtChest, (to) => ({ ...shape, stitchesAtChest: to })),
      ];
    }
  }
}

function odd(at: OddDifference['at'], from: number, to: number, withWidth: (to: number) => Shape): OddDifference[] {
  if ((to - from) % 2 === 0) return [];
  const even = [to - 1, to + 1].filter((stitches) => stitches >= 1 && stitches <= MOST_STITCHES);
  return [{ at, even: even.map((stitches) => ({ stitches, shape: withWidth(stitches) })) }];
}
