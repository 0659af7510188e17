/** Bands of groups put on their rows and needles. */
import type { Run } from '../bed/index.ts';
import { edgesAt, firstRowAt, type Outline, type SectionSpan } from '../piece/index.ts';
import { solvePlacement, type PlacementQuestion } from '../placement/index.ts';
import { problemError } from '../problem/index.ts';
import type { MotifId } from '../motif/index.ts';
import type { KnitBand, KnitPiece } from '../project/index.ts';
import { clippedCopiesOf, leftOutOf } from './clipped-copies.ts';
import { copyOnNeedles, type Copy } from './copy.ts';
import { setUpBefore } from './set-up.ts';
import type { MotifExtent, PlacedBand, PlacedGroup } from './types.ts';

/** How many ranked placements are kept for a person to choose from. */
const MOST_CHOICES = 8;

/**
 * Puts one band on the piece: its first row from the position, its needles
 * from the ranked placements on the edges of that row. Throws `no-figure`,
 * `section-missing`, `motif-taller-than-section`, `motif-leaves-section`,
 * `rows-outside-piece`, `choice-unknown` and what placing throws.
 */
export function placeBand(
  piece: KnitPiece,
  index: number,
  outline: Outline,
  sections: readonly SectionSpan[],
  extents: ReadonlyMap<MotifId, MotifExtent>,
): PlacedBand {
  const band = piece.bands[index] as KnitBand;
  const copies = band.groups.map(({ motif, isMirrored }) =>
    copyOnNeedles(motif, extents.get(motif.id) as MotifExtent, band.unit, piece, isMirrored),
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
    const last = first + (heights[g] as number) - 1;
    const place = { block, motif: motif.id, copy, ground, isMirrored, across, firstRow: first, lastRow: last };
    const clipped = clippedCopiesOf(place, outline);
    return { ...place, figure, band: index, up, clipped, leftOut: leftOutOf(clipped, band.cutCopies) };
  });
  const setUpAt = setUpBefore(firstRow, piece.machine);
  return { question, choices, taken: band.choice, groups, firstRow, lastRow, setUpAt };
}

/** Throws `bands-overlap` if two bands want the same needle on the same row. */
export function assertApart(bands: readonly PlacedBand[]): void {
  bands.forEach((one, i) => {
    for (let j = i + 1; j < bands.length; j++) {
      const other = bands[j] as PlacedBand;
      if (one.firstRow > other.lastRow || other.firstRow > one.lastRow) continue;
      for (const a of one.groups) for (const b of other.groups) assertGroupsApart(a, b);
    }
  });
}

function assertGroupsApart(a: PlacedGroup, b: PlacedGroup): void {
  const first = Math.max(a.firstRow, b.firstRow);
  const last = Math.min(a.lastRow, b.lastRow);
  if (first > last || a.block.first > b.block.last || b.block.first > a.block.last) return;
  throw problemError('bands-overlap', { one: a.band + 1, other: b.band + 1, first, last });
}
