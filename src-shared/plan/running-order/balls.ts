/**
 * Balls laid by hand into the hooks of needles that stand forward, from the
 * carriage's edge away.
 *
 * Where one ball ends right beside another, both yarns turn there and nothing
 * would hold their stitches together, so they are crossed: the one that is
 * laid later goes round the other (common practice, no source). A ball that
 * lies among the stitches of another floats behind them, or they behind it,
 * and no gap opens.
 */
import type { KnittedRow, Laid, Supply } from './knitted-rows.ts';
import type { Work } from './work.ts';

/** What they are called: from 1, in the order in which they are laid for the first time. */
export function ballNumbers(rows: readonly KnittedRow[]): ReadonlyMap<Supply, number> {
  const numbers = new Map<Supply, number>();
  for (const { laid } of rows) {
    for (const { supply } of laid ?? []) {
      if (!numbers.has(supply)) numbers.set(supply, numbers.size + 1);
    }
  }
  return numbers;
}

export function layBalls(work: Work): void {
  const numbers = ballNumbers(work.rows);
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

/** Whether all needles of one lie right beside all those of the other. */
function areBeside(one: Laid, other: Laid): boolean {
  const [left, right] = [one, other].map(({ needles }) => [needles[0]?.first ?? NaN, needles.at(-1)?.last ?? NaN]) as [
    [number, number],
    [number, number],
  ];
  return left[1] + 1 === right[0] || right[1] + 1 === left[0];
}
