/**
 * What would be better: how many copies fit, and on how many stitches the rule
 * would come out exactly.
 */
import { widthOf, type Slot } from '../bed/index.ts';
import { outcome } from '../problem/index.ts';
import { solvePlacement } from './solve.ts';
import type { GroupOnNeedles, PlacementChoice, PlacementQuestion } from './types.ts';

/** Copies that stand one by one, and the best way to place them. */
export interface CountThatFits {
  readonly copies: number;
  readonly choice: PlacementChoice;
  /** True if the rule is met and both sides are alike. */
  readonly isExact: boolean;
}

/** A piece near the one asked about on which the rule comes out exactly. */
export interface ExactWidth {
  readonly stitches: number;
  readonly choice: PlacementChoice;
}

/** True if a choice meets its rule and both sides are alike. */
export function isExact({ imbalance, fromRule }: PlacementChoice): boolean {
  return imbalance === 0 && fromRule === 0;
}

/**
 * For 1, 2, … copies of `copy`, each standing by itself, the best placement
 * under the question's rule; as many as the piece holds, `most` at most. Counts
 * that the rule's fixed spaces leave no room for are left out. A rule by hand
 * says nothing about other counts, so there the seam continues.
 */
export function countsThatFit(question: PlacementQuestion, copy: GroupOnNeedles, most: number): CountThatFits[] {
  const rule = question.rule.kind === 'by-hand' ? ({ kind: 'seam' } as const) : question.rule;
  const holds = Math.min(most, Math.floor(widthOf(question.edges) / copy.width));
  const found: CountThatFits[] = [];
  for (let copies = 1; copies <= holds; copies++) {
    const groups = new Array<GroupOnNeedles>(copies).fill(copy);
    const choice = bestOf({ ...question, groups, rule });
    if (choice) found.push({ copies, choice, isExact: isExact(choice) });
  }
  return found;
}

/**
 * The nearest narrower and the nearest wider piece, no more than `reach`
 * stitches away, on which the question's groups meet its rule exactly and which
 * `isPossible`; the narrower first. The widths are those of the row that the
 * groups stand on, as the question's. Empty where they do already, and by hand,
 * where nothing is asked.
 */
export function nearestExactWidths(
  question: PlacementQuestion,
  reach: number,
  isPossible: (stitches: number) => boolean,
): ExactWidth[] {
  if (question.rule.kind === 'by-hand') return [];
  const here = bestOf(question);
  if (here && isExact(here)) return [];
  const stitches = widthOf(question.edges);
  return [-1, 1].flatMap((step) => {
    for (let away = 1; away <= reach; away++) {
      const width = stitches + step * away;
      if (width < 1) break;
      const last = (question.edges.first + width - 1) as Slot;
      const choice = bestOf({ ...question, edges: { ...question.edges, last } });
      if (choice && isExact(choice) && isPossible(width)) return [{ stitches: width, choice }];
    }
    return [];
  });
}

/** The best placement, or null where the groups or the rule's spaces have no room. */
function bestOf(question: PlacementQuestion): PlacementChoice | null {
  const solved = outcome(() => solvePlacement(question, 1)[0] ?? null);
  return solved.ok ? solved.value : null;
}
