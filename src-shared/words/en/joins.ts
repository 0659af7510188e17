/** How a further photo of a chart goes on from what was read before. */
import type { JoinSide, Overlap } from '../../reading/index.ts';
import { numbers as n } from './numbers.ts';

const sides: Readonly<Record<JoinSide, string>> = {
  above: 'above',
  below: 'below',
  left: 'at the left',
  right: 'at the right',
};

const isUpright = (side: JoinSide): boolean => side === 'above' || side === 'below';

const onBoth = ({ side, shared }: Overlap): string => `${isUpright(side) ? n.rows(shared) : n.columns(shared)} on both`;

const alike = (differing: number): string =>
  differing === 0 ? 'all alike' : `${n.count(differing, 'cell')} of them ${differing === 1 ? 'differs' : 'differ'}`;

export const joins = {
  sides,
  isUpright,

  /** `above with 4 rows on both` */
  way: (way: Overlap): string => `${sides[way.side]} with ${onBoth(way)}`,

  /** `above, with 4 rows on both, all alike` */
  said: (way: Overlap, differing: number): string => `${sides[way.side]}, with ${onBoth(way)}, ${alike(differing)}`,
};
