/** Anchors of an all-over that covers 200 needles and 1000 rows, against one read of every cell. */
import { withAnchors } from '@shared/anchors/index.ts';
import { endNeedleRowsOf, makeFabric, placePatterns, withEndNeedles } from '@shared/fabric/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import { copiesIn, type AnchorWish } from '@shared/pattern/index.ts';
import {
  pieceIn,
  projectAt,
  sampleProject,
  startAllOver,
  START_PIECE,
  type KnitPiece,
  type ProjectAt,
} from '@shared/project/index.ts';
import type { Bar } from './bar.ts';
import { gridOf, numbers, ratioBar, readEveryCell } from './timing.ts';

const WIDTH = 200;
const HEIGHT = 1000;
const WISH: AnchorWish = { longest: 5, isBehindFigure: false, byHand: [] };

/** An all-over of a motif, on all rows but the first. */
function covered(grid: Grid): ProjectAt {
  const sample = projectAt(sampleProject());
  const [motif] = sample.motifs;
  if (!motif) throw new Error('The sample has a motif');
  return {
    ...sample,
    motifs: [{ ...motif, grid }],
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: WIDTH, rows: HEIGHT } },
    patterns: [{ ...startAllOver(motif.id, 2), anchors: WISH }],
  };
}

/** What anchors alone are worked out of: all else of a plan is there. */
function before(piece: KnitPiece) {
  const placed = placePatterns(piece);
  const main = piece.mainYarn;
  const drawn = makeFabric(placed.outline, copiesIn(placed), main);
  const endNeedleRows = endNeedleRowsOf(piece, placed);
  const { chooses } = piece.machine;
  const selecting = { outline: placed.outline, main, on: endNeedleRows, parted: new Set<number>(), chooses };
  const { fabric } = withEndNeedles(drawn, selecting);
  return { fabric, drawn, anchoring: { placed, wishes: [WISH], main, ownBalls: [], endNeedleRows, chooses } };
}

function anchored({ fabric, drawn, anchoring }: ReturnType<typeof before>): number {
  return withAnchors(fabric, drawn, anchoring).rows.length;
}

export function anchorsBars(): Bar[] {
  const [lighthouse] = projectAt(sampleProject()).motifs;
  if (!lighthouse) throw new Error('The sample has a motif');
  const random = numbers();
  const motifs: [string, Grid][] = [
    ['of lighthouses', lighthouse.grid],
    ['of a motif of 20 × 25 with long floats', gridOf(20, 25, () => (random() < 0.06 ? 1 : 0))],
  ];
  const { cells } = gridOf(WIDTH, HEIGHT, () => (random() < 0.4 ? 1 : 0));
  const against = (): number => readEveryCell(cells);
  return motifs.flatMap(([name, grid]): Bar[] => {
    // One cell is painted, and taken away again: each time the motif is another.
    const other = grid.cells.slice();
    const at = Math.floor(other.length / 2);
    other[at] = 1 - (other[at] as number);
    const pieces = [before(pieceIn(covered(grid))), before(pieceIn(covered({ ...grid, cells: other })))] as const;
    let turn = 0;
    const fresh = numbers();
    return [
      ratioBar({
        name: `anchors of an all-over of 200 × 1000 ${name}, nothing known of it, against one read of every cell`,
        limit: 40,
        rounds: 60,
        work: () => {
          // Nobody has asked for these limits or cells before.
          const byHand = [{ motif: 'none', column: Math.floor(fresh() * 1e6), row: 0, is: 'never' as const }];
          const [piece] = pieces;
          return withAnchors(piece.fabric, piece.drawn, { ...piece.anchoring, wishes: [{ ...WISH, byHand }] }).rows
            .length;
        },
        against,
      }),
      ratioBar({
        name: `the same after one cell of the motif is painted, against one read of every cell`,
        limit: 3,
        rounds: 60,
        work: () => anchored(pieces[turn++ % 2 === 0 ? 0 : 1]),
        against,
      }),
    ];
  });
}
