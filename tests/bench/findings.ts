/** From a painted cell to findings that are right again: an all-over of 200 needles and 1000 rows, against one read of every cell. */
import { findingsOf } from '@shared/check/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { pieceIn, projectAt, sampleProject, startAllOver, START_PIECE, type ProjectAt } from '@shared/project/index.ts';
import type { Bar } from './bar.ts';
import { gridOf, numbers, ratioBar, readEveryCell } from './timing.ts';

const WIDTH = 200;
const HEIGHT = 1000;

export function findingsBars(): Bar[] {
  const sample = projectAt(sampleProject());
  const [motif] = sample.motifs;
  if (!motif) throw new Error('The sample has a motif');
  const random = numbers();
  const { cells } = gridOf(WIDTH, HEIGHT, () => (random() < 0.4 ? 1 : 0));
  const allOver = (grid: Grid): ProjectAt => ({
    ...sample,
    motifs: [{ ...motif, grid }],
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: WIDTH, rows: HEIGHT } },
    patterns: [startAllOver(motif.id, 2)],
  });
  const motifs: [string, Grid][] = [
    ['of lighthouses', motif.grid],
    ['of one motif without a repeat', gridOf(WIDTH, HEIGHT - 1, () => (random() < 0.4 ? 1 : 0))],
  ];
  return motifs.map(([name, grid]): Bar => {
    const whole = allOver(grid);
    let { cells: painted } = grid;
    let last: Plan | null = null;
    let at = Math.floor(painted.length / 2);
    return ratioBar({
      name: `after one cell is painted, findings of an all-over of 200 × 1000 ${name}, against reads of every cell`,
      limit: 3,
      rounds: 200,
      work: () => {
        // Another cell each time, so that no state of the motif comes again.
        painted = painted.slice();
        at = (at + 1) % painted.length;
        painted[at] = 1 - (painted[at] as number);
        // As the window does it: nothing but the motif is another, and the plan is made from the one before.
        const piece = pieceIn({ ...whole, motifs: [{ ...motif, grid: { ...grid, cells: painted } }] });
        const before = last;
        last = makePlan(piece, undefined, before);
        return findingsOf(piece, last, before).length;
      },
      against: () => readEveryCell(cells),
    });
  });
}
