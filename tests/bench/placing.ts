/** Finding the best placement against scoring placements taken at random. */
import type { Slot } from '@shared/bed/index.ts';
import { layOut } from '@shared/placement/layout.ts';
import { scoreOf } from '@shared/placement/order.ts';
import { demandOf } from '@shared/placement/rules/index.ts';
import { solvePlacement, type GroupOnNeedles, type PlacementQuestion } from '@shared/placement/index.ts';
import type { SolvedRule } from '@shared/pattern/index.ts';
import { numbers, ratioBar } from './timing.ts';
import type { Bar } from './bar.ts';

const STITCHES = 200;
const AT_RANDOM = 10_000;

/** Nine groups of unlike widths, 134 needles in all, with blank columns at either or both edges. */
const GROUPS: readonly GroupOnNeedles[] = [
  { width: 24, blankLeft: 1, blankRight: 0 },
  { width: 7, blankLeft: 0, blankRight: 2 },
  { width: 13, blankLeft: 2, blankRight: 1 },
  { width: 18, blankLeft: 0, blankRight: 0 },
  { width: 5, blankLeft: 1, blankRight: 1 },
  { width: 21, blankLeft: 3, blankRight: 0 },
  { width: 11, blankLeft: 0, blankRight: 1 },
  { width: 16, blankLeft: 1, blankRight: 2 },
  { width: 19, blankLeft: 0, blankRight: 4 },
];

const RULES: readonly SolvedRule[] = [
  { kind: 'seam' },
  { kind: 'even' },
  { kind: 'margins', stitches: 5 },
  { kind: 'gaps', stitches: 6 },
];

/** Placements of the groups in their order, the free needles shared out at random. */
function placementsAtRandom(count: number): Slot[][] {
  const random = numbers();
  const free = STITCHES - GROUPS.reduce((sum, { width }) => sum + width, 0);
  return Array.from({ length: count }, () => {
    const cuts = GROUPS.map(() => Math.floor(random() * (free + 1))).sort((a, b) => a - b);
    let taken = -STITCHES / 2;
    return GROUPS.map(({ width }, group) => {
      const first = taken + (cuts[group] as number);
      taken += width;
      return first as Slot;
    });
  });
}

/** All eight choices, exact, under each rule. */
export function placingBars(): Bar[] {
  const placements = placementsAtRandom(AT_RANDOM);
  return RULES.map((rule) => {
    const question: PlacementQuestion = {
      edges: { first: (-STITCHES / 2) as Slot, last: (STITCHES / 2 - 1) as Slot },
      groups: GROUPS,
      seamAllowance: { left: 1, right: 1 },
      rule,
      judge: 'figure',
    };
    const demand = demandOf(rule);
    return ratioBar({
      name: `nine unlike groups placed on 200 needles, rule "${rule.kind}", against scoring 10,000 placements`,
      limit: 1,
      rounds: 40,
      work: () => solvePlacement(question).reduce((sum, { imbalance }) => sum + imbalance, 0),
      against: () =>
        placements.reduce((sum, first) => sum + scoreOf(layOut(question, first).judged, demand).imbalance, 0),
    });
  });
}
