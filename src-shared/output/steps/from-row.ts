/** The running order from a row on. */
import { opposite } from '../../bed/index.ts';
import type { RunningOrder, Stop } from '../../plan/index.ts';

/** From the reading below `row` (1-based), which is a stop there though nothing be done at it. Throws `RangeError` for a row beyond the order. */
export function orderFromRow(order: RunningOrder, row: number): RunningOrder {
  const at = order.findIndex((item) =>
    item.kind === 'stop' ? item.row === row : item.first <= row && row <= item.last,
  );
  const item = order[at];
  if (!item) throw new RangeError(`The order has no row ${row}`);
  const above = order.slice(at + 1);
  if (item.kind === 'stop') return [item, ...above];
  const { kind: _, first, last, carriageAt: before, ...holding } = item;
  const carriageAt = (row - first) % 2 === 0 ? before : opposite(before);
  const stop: Stop = { kind: 'stop', id: `at-${row - 1}`, counter: row - 1, row, carriageAt, acts: [], ...holding };
  if (row === last) return [stop, ...above];
  return [stop, { ...item, first: row + 1, carriageAt: opposite(carriageAt) }, ...above];
}
