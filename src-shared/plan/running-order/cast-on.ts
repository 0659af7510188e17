/** The beginning: stitches on all needles of row 1, the counter at 0, weights. */
import type { Work } from './work.ts';

/**
 * Rows of waste yarn below an open start (common practice, no source): some 8,
 * and an even number, so that the carriage ends where it began, at the start side.
 */
const WASTE_ROWS = 8;

export function castOn(work: Work): void {
  const { piece, begins, rows } = work;
  const [lowest] = rows;
  if (!lowest) return;
  work.do(0, {
    kind: 'cast-on',
    needles: lowest.edges,
    yarn: lowest.first?.yarn ?? piece.mainYarn,
    how: begins,
    wasteRows: begins === 'open' ? WASTE_ROWS : 0,
    wasteTension: begins === 'open' ? piece.tension.waste : '',
  });
  work.do(0, { kind: 'counter', reading: 0 });
}
