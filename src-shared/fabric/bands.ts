/** Bands: where their groups go is solved. */
import type { Run } from '../bed/index.ts';
import { edgesAt, firstRowAt } from '../piece/index.ts';
import { solvePlacement, type PlacementQuestion } from '../placement/index.ts';
import { problemError } from '../problem/index.ts';
import type { KnitBand, KnitPiece } from '../project/index.ts';
import { clippingOf } from './clipped-copies.ts';
import { copyOnNeedles, type Copy } from './copy.ts';
import type { PaintedCopies } from './painted.ts';
import { setUpBefore } from './set-up.ts';
import type { MotifExtent, PlacedBand, PlacedGroup, PlacedPatterns } from './types.ts';

/** How many ranked placements are kept for a person to choose from. */
const MOST_CHOICES = 8;

/** Groups stay plain nowhere: the piece ends, or they do. */
export const NO_BORDER = { left: 0, right: 0 };

/**
 * Puts one band on the piece: its first row from the position, its needles
 * from the ranked placements on the edges of that row. Throws `no-figure`,
 * `section-missing`, `motif-taller-than-section`, `motif-leaves-section`,
 * `rows-outside-piece`, `choice-unknown` and what placing throws. `before`: its
 * groups before their motifs were painted.
 */
export function placeBand(
  piece: KnitPiece,
  band: KnitBand,
  number: number,
  { outline, sections, extents }: Omit<PlacedPatterns, 'patterns'>,
  before: readonly PaintedCopies[] = [],
): PlacedBand {
  const copies = band.groups.map(({ motif, isMirrored }, g) =>
    copyOnNeedles(motif, extents.get(motif.id) as MotifExtent, band.unit, piece, isMirrored, before[g]),
  );
  const heights = band.groups.map(({ up }, g) => up * (copies[g] as Copy).grid.height);
  const lowest = Math.min(...band.groups.map(({ rise }) => rise));
  const rises = band.groups.map(({ rise }) => rise - lowest);
  const height = Math.max(...heights.map((own, g) => (rises[g] as number) + own));
  const firstRow = firstRowAt(band.position, height, sections);
  const lastRow = firstRow + height - 1;
  if (firstRow < 1 || lastRow > outline.rows) {
    throw problemError('rows-outside-piece', { first: firstRow, last: lastRow, rows: outline.rows });
  }

  const question: PlacementQuestion = {
    edges: edgesAt(outline, firstRow),
    groups: band.groups.map(({ across }, g) => {
      const { grid, blankLeft, blankRight } = copies[g] as Copy;
      return { width: across * grid.width, blankLeft, blankRight };
    }),
    seamAllowance: piece.seamAllowance,
    rule: band.rule,
    judge: band.judge,
  };
  const choices = solvePlacement(question, MOST_CHOICES);
  const taken = choices[band.choice];
  if (!taken) throw problemError('choice-unknown', { given: band.choice + 1, choices: choices.length });

  const groups = band.groups.map(({ motif, across, up }, g): PlacedGroup => {
    const { grid: copy, ground, isMirrored } = copies[g] as Copy;
    const { block, figure } = taken.groups[g] as { block: Run; figure: Run };
    const first = firstRow + (rises[g] as number);
    const place = {
      motif: motif.id,
      copy,
      ground,
      isMirrored,
      firstRow: first,
      lastRow: first + (heights[g] as number) - 1,
      origin: block.first,
      step: 0,
      block,
      border: NO_BORDER,
      colours: band.colourOrder && { order: band.colourOrder, from: firstRow },
    };
    const clipping = clippingOf(place, across, outline, band.cutCopies, before[g]);
    return { ...place, figure, band: number, across, up, ...clipping };
  });
  const setUpAt = setUpBefore(firstRow, piece.machine);
  return { kind: 'band', number, question, choices, taken: band.choice, groups, firstRow, lastRow, setUpAt };
}
