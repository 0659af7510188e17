/**
 * Balls laid by hand into the hooks of needles that stand forward, from the
 * carriage's edge away, and cut after their last row or where the next one is
 * too far up.
 *
 * Where one ball ends right beside another, both yarns turn there and nothing
 * would hold their stitches together, so they are crossed: the one that is
 * laid later goes round the other (common practice, no source). A ball that
 * lies among the stitches of another floats behind them, or they behind it,
 * and no gap opens.
 */
import type { BallNumbers } from './ball-numbers.ts';
import { TAIL_MM } from './ends.ts';
import type { Laid } from './knitted-rows.ts';
import { waitsAfter, type NextUses } from './next-uses.ts';
import type { Work } from './work.ts';

export function layBalls(work: Work, numbers: BallNumbers): void {
  for (const { row, laid } of work.rows) {
    const before: { readonly ball: number; readonly laid: Laid }[] = [];
    for (const one of laid ?? []) {
      const { supply, needles } = one;
      const ball = numbers.get(supply) as number;
      work.do(row - 1, {
        kind: 'lay',
        ball,
        yarn: supply.yarn,
        needles: needles.map(({ first, last }) => ({ first, last })),
        crosses: before.flatMap((other) => (areBeside(other.laid, one) ? [other.ball] : [])),
      });
      before.push({ ball, laid: one });
    }
  }
}

/** Cuts the balls that the row before has laid and that no row is near enough to wait for. */
export function cutBalls(work: Work, uses: NextUses, numbers: BallNumbers): void {
  for (const { row, laid } of work.rows) {
    for (const { supply } of laid ?? []) {
      if (waitsAfter(work, uses, row, supply)) continue;
      work.do(row, { kind: 'cut', ball: numbers.get(supply) as number, yarn: supply.yarn, tailMm: TAIL_MM });
    }
  }
}

/** Whether all needles of one lie right beside all those of the other. */
function areBeside(one: Laid, other: Laid): boolean {
  const [left, right] = [one, other].map(({ needles }) => [needles[0]?.first ?? NaN, needles.at(-1)?.last ?? NaN]) as [
    [number, number],
    [number, number],
  ];
  return left[1] + 1 === right[0] || right[1] + 1 === left[0];
}
