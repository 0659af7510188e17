/** The balls to wind before knitting, each with what it is for. */
import type { KnitPiece } from '../project/index.ts';
import { gramsOf, texOf } from '../yarn/index.ts';
import { ballNumbers } from './running-order/ball-numbers.ts';
import { knittedRowsOf, type Supply } from './running-order/knitted-rows.ts';
import { nextUses } from './running-order/next-uses.ts';
import type { Plan } from './types.ts';

export interface BallToWind {
  /** Palette index. */
  readonly yarn: number;
  readonly role: 'main' | 'contrast';
  /** Its number, as the running order calls it; null for one that its yarn alone tells. */
  readonly number: number | null;
  /** On some of its rows it is laid by hand; on all others the carriage feeds it. */
  readonly isLaid: boolean;
  /** Index of the group whose own ball it is; null for one that serves all others. */
  readonly group: number | null;
  /** The rows that it is knitted on, from the first to the last. */
  readonly firstRow: number;
  readonly lastRow: number;
  readonly mm: number;
  /** Null where the yarn's tex is not known. */
  readonly grams: number | null;
}

/** Main first, then each contrast by palette index, its balls in the order in which they are used. `plan` is that of `piece`. */
export function ballsToWind(piece: KnitPiece, plan: Plan): BallToWind[] {
  const knitted = knittedRowsOf(plan, piece.mainYarn);
  const told = ballNumbers({ plan, rows: knitted }, nextUses(knitted));
  const numbers = new Map([...told].map(([supply, number]) => [keyOf(supply), number]));
  const laidByHand = new Set(knitted.flatMap(({ laid }) => (laid ?? []).map(({ supply }) => keyOf(supply))));
  const rows = new Map<string, { firstRow: number; lastRow: number }>();
  for (const { row, first, second, laid } of knitted) {
    for (const supply of [first, second, ...(laid ?? []).map((part) => part.supply)]) {
      if (supply === null) continue;
      const known = rows.get(keyOf(supply));
      if (known) known.lastRow = row;
      else rows.set(keyOf(supply), { firstRow: row, lastRow: row });
    }
  }
  return plan.yarn.uses.flatMap(({ yarn, role, balls }) =>
    balls.map(({ group, totalMm }): BallToWind => {
      const key = keyOf({ yarn, group });
      const { firstRow = 1, lastRow = plan.rows.length } = rows.get(key) ?? {};
      const grams = gramsOf(totalMm, texOf(piece.yarns[yarn]));
      const isLaid = laidByHand.has(key);
      return { yarn, role, number: numbers.get(key) ?? null, isLaid, group, firstRow, lastRow, mm: totalMm, grams };
    }),
  );
}

function keyOf({ yarn, group }: Supply): string {
  return `${yarn} ${group}`;
}
