/**
 * The sizes of a project side by side: for each, its numbers, and where the
 * one rule puts the groups on it.
 *
 * Only placing is worked out, not the rows: a millisecond a size or so, where
 * a plan takes many.
 */
import { needlesOf, widthOf, type Run, type Slot } from '../bed/index.ts';
import { bandsOf } from '../pattern/index.ts';
import { beyondBed, edgesAt, gaugesOf, sizeOf, type Outline, type PieceSize, type Shape } from '../piece/index.ts';
import type { Spaces } from '../placement/index.ts';
import { outcome, type Outcome } from '../problem/index.ts';
import { currentSize, inSize, pieceIn, type KnitGroup, type KnitPiece, type ProjectAt } from '../project/index.ts';
import { placePatterns } from './place-patterns.ts';
import type { PlacedBand } from './types.ts';

export interface SizeColumn {
  readonly name: string;
  readonly isCurrent: boolean;
  readonly shape: Shape;
  readonly hemRows: number;
  readonly measures: PieceSize;
  /** The groups of each band, as this size has them. */
  readonly groups: readonly (readonly KnitGroup[])[];
  /** What stands in the way, where this size cannot be placed. */
  readonly placed: Outcome<SizePlaced>;
}

export interface SizePlaced {
  readonly bands: readonly BandInSize[];
  /** The needles of the widest row that leaves the bed, or null. */
  readonly beyondBed: Run | null;
}

export interface BandInSize {
  readonly firstRow: number;
  readonly lastRow: number;
  /** Reading of the row counter at which to knit the set-up row, or null if there is no row for it. */
  readonly setUpAt: number | null;
  readonly firstNeedles: readonly Slot[];
  /** As judged: to what the eye sees, or to the pattern blocks. */
  readonly spaces: Spaces;
  readonly acrossSeam: number;
  /** How far from the rule whole needles keep it, in stitches, and how unlike the two sides are. */
  readonly fromRule: number;
  readonly imbalance: number;
  /** Copies as wide as those of the first group that the row holds side by side. */
  readonly holds: number;
}

/** One size of the piece that is looked at, by its index among the project's. */
export function sizeColumn(project: ProjectAt, index: number): SizeColumn {
  const piece = pieceIn(inSize(project, index));
  return {
    name: project.sizes[index]?.name ?? '',
    isCurrent: index === currentSize(project),
    shape: piece.shape,
    hemRows: piece.hemRows,
    measures: sizeOf(piece.shape, gaugesOf(piece)),
    groups: bandsOf(piece).map(({ groups }) => groups),
    placed: outcome(() => placedIn(piece)),
  };
}

/** All sizes, smallest first. */
export function sizesTable(project: ProjectAt): SizeColumn[] {
  return project.sizes.map((_, index) => sizeColumn(project, index));
}

function placedIn(piece: KnitPiece): SizePlaced {
  const placed = placePatterns(piece);
  const { outline } = placed;
  const { needles } = piece.machine.bed;
  return {
    bands: bandsOf(placed).map((band) => bandIn(band, outline)),
    beyondBed: needles === null ? null : (beyondBed(outline, needlesOf(needles))?.edges ?? null),
  };
}

function bandIn(placed: PlacedBand, outline: Outline): BandInSize {
  const { question, choices, taken, groups, firstRow, lastRow, setUpAt } = placed;
  const choice = choices[taken];
  if (!choice) throw new RangeError(`Choice ${taken} of ${choices.length}`);
  const copyWidth = groups[0]?.copy.width ?? 1;
  return {
    firstRow,
    lastRow,
    setUpAt,
    firstNeedles: choice.groups.map(({ block }) => block.first),
    spaces: choice[question.judge],
    acrossSeam: choice.acrossSeam,
    fromRule: choice.fromRule,
    imbalance: choice.imbalance,
    holds: Math.floor(widthOf(edgesAt(outline, firstRow)) / copyWidth),
  };
}
