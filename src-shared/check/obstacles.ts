/** What hands cannot do, so that the piece has no running order: these findings block. */
import { obstaclesOf, type Obstacle } from '../plan/running-order/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/** One finding for each obstacle, but for a piece beside the bed, of which `wider-than-bed` has more to say. */
export function obstacles({ piece, plan }: Inspected): Finding[] {
  return obstaclesOf(piece, plan).flatMap((obstacle): Finding[] =>
    obstacle.code === 'off-the-bed' ? [] : [findingOf(obstacle)],
  );
}

function findingOf(obstacle: Exclude<Obstacle, { readonly code: 'off-the-bed' }>): Finding {
  switch (obstacle.code) {
    case 'pattern-on-first-row':
      return { code: 'no-set-up-row', rows: [1, 1] };
    case 'hem-loops-differ': {
      const { row, loops, needles } = obstacle;
      return { code: 'hem-loops', rows: [row, row], loops, hungOn: needles };
    }
    case 'pattern-on-joining-row':
    case 'shaping-on-joining-row':
      return { code: obstacle.code, rows: [obstacle.row, obstacle.row] };
    case 'shaping-away-from-carriage': {
      const { code, row, edge, stitches } = obstacle;
      return { code, rows: [row, row], edge, stitches };
    }
    case 'balls-unseen': {
      const { code, first, last, rows, yarns } = obstacle;
      return { code, rows: [first, last], count: rows, yarns };
    }
    case 'off-fixed-places': {
      const { code, row, one, other, repeat } = obstacle;
      return { code, rows: [row, row], one, other, repeat };
    }
  }
}
