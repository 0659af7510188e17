/** What the eye makes of the spaces round a closed piece. The one judgement of it, for every view and sentence. */
import type { PlacementChoice } from './types.ts';

export type RoundJudgement =
  /** One group: there is nothing to compare the space across the seam with. */
  | { readonly kind: 'one-group' }
  /** The space across the seam is as wide as every gap. */
  | { readonly kind: 'even' }
  /** The gaps are alike; the space across the seam is so many stitches wider, or narrower where negative. */
  | { readonly kind: 'seam-differs'; readonly by: number }
  /** The widest gap is so many stitches wider than the narrowest. */
  | { readonly kind: 'gaps-differ'; readonly by: number };

/** What is seen of a placement when the piece is closed, whichever spaces were evened out: from figure to figure. */
export function seenRound({ figure: { margins, gaps }, reason: { seamAllowance } }: PlacementChoice): {
  readonly acrossSeam: number;
  readonly gaps: readonly number[];
} {
  return { acrossSeam: margins[0] + margins[1] - seamAllowance.left - seamAllowance.right, gaps };
}

/** `acrossSeam`: stitches from the last group over the seam to the first; `gaps`: between neighbouring groups. */
export function judgeRound(acrossSeam: number, gaps: readonly number[]): RoundJudgement {
  if (gaps.length === 0) return { kind: 'one-group' };
  const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
  if (least !== most) return { kind: 'gaps-differ', by: most - least };
  return acrossSeam === least ? { kind: 'even' } : { kind: 'seam-differs', by: acrossSeam - least };
}
