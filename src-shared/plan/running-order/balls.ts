/** Balls laid by hand into the hooks of needles that stand forward, from the carriage's edge away. */
import type { Supply } from './knitted-rows.ts';
import type { Work } from './work.ts';

export function layBalls(work: Work): void {
  const numbers = new Map<Supply, number>();
  for (const { row, laid } of work.rows) {
    for (const { supply, needles } of laid ?? []) {
      const ball = numbers.get(supply) ?? numbers.size + 1;
      numbers.set(supply, ball);
      work.do(row - 1, {
        kind: 'lay',
        ball,
        yarn: supply.yarn,
        needles: needles.map(({ first, last }) => ({ first, last })),
      });
    }
  }
}
