/** The beginning: stitches on all needles of row 1, the counter at 0, weights. */
import type { BallNumbers } from './ball-numbers.ts';
import { TAIL_MM } from './ends.ts';
import type { Work } from './work.ts';

/**
 * Rows of waste yarn below an open start (common practice, no source): some 8,
 * and an even number, so that the carriage ends where it began, at the start side.
 */
const WASTE_ROWS = 8;

export function castOn(work: Work, numbers: BallNumbers): void {
  const { piece, begins, rows } = work;
  const [lowest] = rows;
  if (!lowest) return;
  work.do(0, {
    kind: 'cast-on',
    needles: lowest.edges,
    yarn: castOnYarn(work),
    ball: begins === 'closed' && lowest.first ? (numbers.get(lowest.first) ?? null) : null,
    how: begins,
    wasteRows: begins === 'open' ? WASTE_ROWS : 0,
    wasteTension: begins === 'open' ? piece.tension.waste : '',
  });
  work.do(0, { kind: 'counter', reading: 0 });
}

/**
 * Cuts the yarn that was cast on with where no row knits it, as when all rows
 * are laid by hand in others. Stitches that were picked up or begun on waste
 * yarn were not made with it.
 */
export function cutCastOn(work: Work): void {
  if (work.begins !== 'closed') return;
  const yarn = castOnYarn(work);
  const isKnitted = work.rows.some(
    ({ first, second, laid }) =>
      first?.yarn === yarn || second?.yarn === yarn || laid?.some(({ supply }) => supply.yarn === yarn),
  );
  if (!isKnitted) work.do(0, { kind: 'cut', ball: null, yarn, tailMm: TAIL_MM });
}

/** That of the first row's feeder; main where the row is laid by hand. */
function castOnYarn({ piece, rows }: Work): number {
  return rows[0]?.first?.yarn ?? piece.mainYarn;
}
