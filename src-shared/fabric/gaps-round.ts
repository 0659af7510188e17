/** The gaps round the closed piece: across the seam, and between the groups. */
import type { Run } from '../bed/index.ts';
import { bandsOf } from '../pattern/index.ts';
import { gaugesOf, placeRound, tubeOf, type Ring, type Tube } from '../piece/index.ts';
import type { KnitPiece } from '../project/index.ts';
import type { PlacedBand, PlacedPatterns } from './types.ts';

/** Ground from figure to figure, on places counted from the seam; the one across the seam goes on past the last place. */
export interface RoundGap {
  readonly from: number;
  readonly to: number;
  readonly isAcrossSeam: boolean;
}

/** What is seen of a band when the piece is closed. */
export interface BandRound {
  /** Its rows that are seen. */
  readonly rows: { readonly first: number; readonly last: number };
  /** Stitches across the seam on the first of these rows, less than 0 where the seam takes some of the figure. */
  readonly acrossSeam: number;
  /** Where shaping makes that gap differ most, if it does. */
  readonly shaped: { readonly row: number; readonly stitches: number } | null;
  /** Stitches between neighbouring groups, from the seam to the right as seen. */
  readonly gaps: readonly number[];
}

/** The rows that lie inside a folded hem. */
export function rowsInside({ sections }: Pick<PlacedPatterns, 'sections'>): number {
  return sections.find(({ name }) => name === 'hem-back')?.last ?? 0;
}

/** The closed piece. */
export function closedPiece(patterns: PlacedPatterns, piece: KnitPiece): Tube {
  return tubeOf(patterns.outline, { ...piece, gauges: gaugesOf(piece) }, rowsInside(patterns));
}

/** The gaps between figures on a ring, from the seam to the right as seen, the one across the seam last. */
export function gapsOnRing(tube: Tube, ring: Ring, figures: readonly Run[]): RoundGap[] {
  const seen = figures
    .map(({ first, last }) => [placeRound(tube, ring, first), placeRound(tube, ring, last)])
    .map((places) => ({ from: Math.min(...places), to: Math.max(...places) + 1 }))
    .sort((one, other) => one.from - other.from);
  return seen.map(({ to }, index) => {
    const next = seen[index + 1];
    const roundAgain = ring.stitches + (seen[0] as { from: number }).from;
    return { from: to, to: next?.from ?? roundAgain, isAcrossSeam: !next };
  });
}

/** The figures of a band as placed, left to right on the needles. */
export function figuresOf({ choices, taken }: PlacedBand): Run[] {
  return choices[taken]?.groups.map(({ figure }) => figure) ?? [];
}

/** The rings on which a band is seen. */
export function ringsOf({ firstRow, lastRow }: PlacedBand, tube: Tube): readonly Ring[] {
  return tube.rings.filter(({ row }) => row >= firstRow && row <= lastRow);
}

/** Each band as it is seen round the tube, judged by the visible figure; null where all of it lies inside. */
export function bandsRound(patterns: PlacedPatterns, tube: Tube): (BandRound | null)[] {
  return bandsOf(patterns).map((band) => {
    const figures = figuresOf(band);
    const rings = ringsOf(band, tube);
    const [foot] = rings;
    const head = rings.at(-1);
    if (!foot || !head) return null;
    const across = (ring: Ring): number => stitchesIn(gapsOnRing(tube, ring, figures).at(-1) as RoundGap);
    const acrossSeam = across(foot);
    const offFoot = (ring: Ring): number => Math.abs(across(ring) - acrossSeam);
    const most = rings.reduce((most, ring) => (offFoot(ring) > offFoot(most) ? ring : most));
    return {
      rows: { first: foot.row, last: head.row },
      acrossSeam,
      shaped: offFoot(most) === 0 ? null : { row: most.row, stitches: across(most) },
      gaps: gapsOnRing(tube, foot, figures).slice(0, -1).map(stitchesIn),
    };
  });
}

export function stitchesIn({ from, to }: RoundGap): number {
  return to - from;
}

/** Bands that show the same gaps all the way up, each once with how many more there are like it. */
export function alikeRound(bands: readonly BandRound[]): { readonly band: BandRound; readonly more: number }[] {
  const alike = new Map<string, { band: BandRound; more: number }>();
  for (const band of bands) {
    // Where shaping moves the edges, each band has rows of its own to tell of.
    const kind = JSON.stringify([band.acrossSeam, band.gaps, band.shaped]);
    const before = alike.get(kind);
    if (before) before.more++;
    else alike.set(kind, { band, more: 0 });
  }
  return [...alike.values()];
}
