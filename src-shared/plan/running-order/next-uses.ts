/** When each yarn is used again, out of a feeder or laid by hand, and whether it hangs there until then. */
import { isCarriedUp } from '../../strands/index.ts';
import type { KnittedRow, Supply } from './knitted-rows.ts';
import type { Work } from './work.ts';

/** For each row (index 0 is row 1) the next one that takes yarn from a supply of it, where there is one. */
export type NextUses = readonly ReadonlyMap<Supply, number>[];

export function nextUses(rows: readonly KnittedRow[]): NextUses {
  const found: ReadonlyMap<Supply, number>[] = [];
  const seen = new Map<Supply, number>();
  for (let index = rows.length - 1; index >= 0; index--) {
    const { row, first, second, laid } = rows[index] as KnittedRow;
    const next = new Map<Supply, number>();
    const use = (supply: Supply | null): void => {
      if (!supply) return;
      const later = seen.get(supply);
      if (later !== undefined) next.set(supply, later);
      seen.set(supply, row);
    };
    use(first);
    use(second);
    if (laid) for (const { supply } of laid) use(supply);
    found[index] = next;
  }
  return found;
}

/** Whether a supply of a row (1-based) waits for its next one: that is near enough to be carried up to. Else it is cut. */
export function waitsAfter({ plan }: Pick<Work, 'plan'>, uses: NextUses, row: number, supply: Supply): boolean {
  const next = uses[row - 1]?.get(supply);
  return next !== undefined && isCarriedUp(plan.gauges, row, next) && !isCutAside(plan, row, supply);
}

/** Whether a supply is cut after a row, since its next stitch is too far aside. */
export function isCutAside({ rows }: Pick<Work['plan'], 'rows'>, row: number, { yarn, group }: Supply): boolean {
  const cuts = rows[row - 1]?.cuts ?? [];
  return cuts.some(({ because, strand }) => because === 'far-aside' && strand.yarn === yarn && strand.group === group);
}
