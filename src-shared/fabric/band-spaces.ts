/** The spaces of a band as placed, on the row where they hold: that on which its lowest groups stand. */
import type { Run } from '../bed/index.ts';
import { edgesAt, type Outline } from '../piece/index.ts';
import type { PlacedBand, PlacedGroup } from './types.ts';

/** Needles without figure between two things, `first` … `last`; empty if last = first − 1. */
export interface Space {
  readonly first: number;
  readonly last: number;
  readonly stitches: number;
  /** What the seam takes of a margin; null of a gap, and where it takes nothing. */
  readonly seam: SeamInMargin | null;
}

export interface SeamInMargin {
  /** Stitches of the margin that the seam leaves; negative where it takes some of the figure. */
  readonly clear: number;
  /** The needle right of the line along which it is sewn. */
  readonly sewnBefore: number;
}

export interface BandSpaces {
  /** The row, and its first and last needle. On other rows of a shaped piece the margins are others. */
  readonly row: number;
  readonly edges: Run;
  /** Margin, gap, …, gap, margin, from the left on the needles. */
  readonly spaces: readonly Space[];
  readonly acrossSeam: number;
}

/** The spaces of the placement taken, to the visible figure or to the pattern blocks; null without a placement. */
export function bandSpaces(band: PlacedBand, judge: 'figure' | 'blocks', outline: Outline): BandSpaces | null {
  const choice = band.choices[band.taken];
  if (!choice || choice.groups.length === 0) return null;
  const { left: takenLeft, right: takenRight } = band.question.seamAllowance;
  const edges = edgesAt(outline, band.firstRow);
  const things = choice.groups.map((group) => (judge === 'figure' ? group.figure : group.block));
  const seamIn = (index: number, first: number, last: number): SeamInMargin | null => {
    if (index === 0 && takenLeft > 0) return { clear: last - first + 1 - takenLeft, sewnBefore: first + takenLeft };
    if (index !== things.length || takenRight === 0) return null;
    return { clear: last - first + 1 - takenRight, sewnBefore: last + 1 - takenRight };
  };
  const starts = [edges.first, ...things.map(({ last }) => last + 1)];
  const ends = [...things.map(({ first }) => first - 1), edges.last];
  const spaces = starts.map((first, index): Space => {
    const last = ends[index] as number;
    return { first, last, stitches: last - first + 1, seam: seamIn(index, first, last) };
  });
  return { row: band.firstRow, edges, spaces, acrossSeam: choice.acrossSeam };
}

/** The needles without figure between neighbouring copies of a group, from the left; none where its copies touch. */
export function copyGaps({
  figure,
  copy,
  across,
}: Pick<PlacedGroup, 'figure' | 'across'> & { readonly copy: { readonly width: number } }): Space[] {
  // Each copy has its figure in the same columns.
  const own = figure.last - figure.first + 1 - (across - 1) * copy.width;
  const stitches = copy.width - own;
  if (stitches <= 0) return [];
  return Array.from({ length: across - 1 }, (_, index): Space => {
    const first = figure.first + own + index * copy.width;
    return { first, last: first + stitches - 1, stitches, seam: null };
  });
}
