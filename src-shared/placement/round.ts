/** What the eye makes of the spaces round a closed piece. The one judgement of it, for every view and sentence. */

export type RoundJudgement =
  /** One group: there is nothing to compare the space across the seam with. */
  | { readonly kind: 'one-group' }
  /** The space across the seam is as wide as every gap. */
  | { readonly kind: 'even' }
  /** The gaps are alike; the space across the seam is so many stitches wider, or narrower where negative. */
  | { readonly kind: 'seam-differs'; readonly by: number }
  /** The widest gap is so many stitches wider than the narrowest. */
  | { readonly kind: 'gaps-differ'; readonly by: number };

/** `acrossSeam`: stitches from the last group over the seam to the first; `gaps`: between neighbouring groups. */
export function judgeRound(acrossSeam: number, gaps: readonly number[]): RoundJudgement {
  if (gaps.length === 0) return { kind: 'one-group' };
  const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
  if (least !== most) return { kind: 'gaps-differ', by: most - least };
  return acrossSeam === least ? { kind: 'even' } : { kind: 'seam-differs', by: acrossSeam - least };
}
