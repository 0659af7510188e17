/** What stands on the needles, by the fabric of a plan. */
import { allOversOf } from '@shared/pattern/index.ts';
import type { Plan } from '@shared/plan/index.ts';

/**
 * What a motif looks like on the needles, read from the fabric of the plan: the
 * lowest of its copies that is whole. Each row from the bottom, palette indices.
 */
export function onNeedles(plan: Plan, motif: string): number[][] {
  const { fabric } = plan;
  const at = (row: number, slot: number): number =>
    fabric.cells[(row - 1) * fabric.width + (slot - fabric.first)] as number;
  const group = plan.groups.find((one) => one.motif === motif && one.clipped.length === 0);
  if (group) {
    const { copy, block, firstRow } = group;
    return Array.from({ length: copy.height }, (_, row) =>
      Array.from({ length: copy.width }, (_, column) => at(firstRow + row, block.first + column)),
    );
  }
  const fill = allOversOf(plan).find((one) => one.motif === motif);
  if (!fill) throw new RangeError(`${motif} stands nowhere`);
  return Array.from({ length: fill.copy.height }, (_, row) =>
    Array.from({ length: fill.copy.width }, (_, column) => {
      const slot = fill.origin + column;
      return at(fill.firstRow + row, slot);
    }),
  );
}
