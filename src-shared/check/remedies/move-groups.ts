/** Groups moved closer to each other by hand, so that what runs between them is within the limit. */
import type { Slot } from '../../bed/index.ts';
import type { PlacedBand } from '../../fabric/index.ts';
import { bandsOf, type ByHand } from '../../pattern/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { KnitPiece } from '../../project/piece-in.ts';
import { longestBetween } from '../../strands/index.ts';
import { indexOfBand } from '../setting.ts';
import type { RemedyKind } from './kind.ts';
import { bandsAt, isBesideGroups } from './where.ts';

export interface MoveGroups {
  readonly code: 'move-groups';
  readonly bands: readonly {
    /** From 0. */
    readonly band: number;
    /** The needles on which its groups begin then. */
    readonly first: readonly Slot[];
  }[];
}

export const moveGroups: RemedyKind<MoveGroups> = {
  keepsPlaces: false,
  propose: ({ piece, plan, gathered }) => {
    if (!isBesideGroups(plan, gathered)) return [];
    const bands = bandsAt(plan, gathered).flatMap((band) => {
      const first = closer(piece, plan, bandsOf(plan)[band] as PlacedBand);
      return first ? [{ band, first }] : [];
    });
    return bands.length > 0 ? [{ code: 'move-groups', bands }] : [];
  },
  setting: (piece, { bands }) => {
    const patterns = bands.flatMap(({ band, first }) => {
      const there = bandsOf(piece)[band];
      if (there?.groups.length !== first.length) return [];
      const { rule, choice } = there;
      const before = rule.kind === 'by-hand' ? rule.before : { rule, choice };
      const byHand: ByHand = before ? { kind: 'by-hand', first, before } : { kind: 'by-hand', first };
      return [{ index: indexOfBand(piece.patterns, band) as number, to: { rule: byHand, choice: 0 } }];
    });
    return patterns.length > 0 ? { change: 'move-group', patterns } : null;
  },
};

/** Where the groups of a band begin once each gap is as much smaller as its longest float is too long, about the same middle; null where none can be. */
function closer(piece: KnitPiece, plan: Plan, { groups, firstRow, lastRow }: PlacedBand): Slot[] | null {
  const limit = longestBetween(piece.floatLimit, plan.gauges, firstRow, lastRow);
  let moved = 0;
  const shifts = groups.map(({ block }, index) => {
    const before = groups[index - 1];
    if (!before) return 0;
    const gap = block.first - before.block.last - 1;
    const excess = longestAcross(plan, before.block.last, block.first, firstRow, lastRow) - limit;
    moved += Math.max(0, Math.min(gap, excess));
    return moved;
  });
  if (moved === 0) return null;
  const half = Math.floor(moved / 2);
  return groups.map(({ block }, index) => (block.first - (shifts[index] as number) + half) as Slot);
}

/** The longest float of contrast over all needles between two, in stitches. */
function longestAcross({ rows }: Plan, left: Slot, right: Slot, firstRow: number, lastRow: number): number {
  let longest = 0;
  for (const { floats } of rows.slice(firstRow - 1, lastRow)) {
    for (const { strand, first, last, stitches } of floats) {
      if (strand.role === 'contrast' && first <= left + 1 && last >= right - 1) longest = Math.max(longest, stitches);
    }
  }
  return longest;
}
