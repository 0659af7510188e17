/** What shaping costs on a machine whose forward needles cannot be seen, and so not be pushed. */
import { makeFabric, withEndNeedles } from '../fabric/index.ts';
import { edgesAt, isStraight, type Piece } from '../piece/index.ts';
import { copiesIn } from '../pattern/index.ts';
import type { Finding, Sewn } from './finding.ts';
import type { Inspected } from './inspected.ts';

/** Own balls are laid by hand, which such a machine cannot knit at all. */
const NONE_PARTED: ReadonlySet<number> = new Set();

/** A seam takes half a stitch to two at each edge: common practice, no source. */
const MOST_IN_SEAM = 2;

/**
 * `edges-unseen`: shaped rows that a machine whose needles can be seen would
 * knit otherwise, because its edge needles are put right by hand, and at which
 * that does not vanish into the seam; all of the piece in one finding.
 */
export function edgesUnseen({ piece, plan, outline, fabric, endNeedleRows }: Inspected): Finding[] {
  if (piece.machine.chooses !== 'ahead-unseen' || isStraight(outline)) return [];
  const drawn = makeFabric(outline, copiesIn(plan), piece.mainYarn);
  const selecting = {
    outline,
    main: piece.mainYarn,
    on: endNeedleRows,
    parted: NONE_PARTED,
    chooses: 'ahead-seen',
  } as const;
  const seen = withEndNeedles(drawn, selecting).fabric;
  const missed: number[] = [];
  const deepest = { left: 0, right: 0 };
  for (let row = 2; row <= fabric.rows; row++) {
    const [before, now] = [edgesAt(outline, row - 1), edgesAt(outline, row)];
    if (before.first === now.first && before.last === now.last) continue;
    const start = (row - 1) * fabric.width;
    let isSeen = false;
    for (let needle = now.first; needle <= now.last; needle++) {
      const at = start + needle - fabric.first;
      if (fabric.cells[at] === seen.cells[at]) continue;
      const [fromLeft, fromRight] = [needle - now.first + 1, now.last - needle + 1];
      const [side, depth] = fromLeft <= fromRight ? (['left', fromLeft] as const) : (['right', fromRight] as const);
      isSeen ||= depth > piece.seamAllowance[side];
      deepest[side] = Math.max(deepest[side], depth);
    }
    if (isSeen) missed.push(row);
  }
  const [first, last] = [missed[0], missed.at(-1)];
  if (first === undefined || last === undefined) return [];
  return [{ code: 'edges-unseen', rows: [first, last], count: missed.length, seam: seamOver(deepest, piece) }];
}

/** The seam that takes so many stitches at each edge, as many at both that need one; null where no seam does. */
function seamOver(deepest: Sewn, { seamAllowance: now }: Pick<Piece, 'seamAllowance'>): Sewn | null {
  const open = (['left', 'right'] as const).filter((side) => deepest[side] > now[side]);
  const stitches = Math.max(...open.map((side) => deepest[side]));
  if (stitches > MOST_IN_SEAM) return null;
  const { left, right } = now;
  return open.reduce((seam, side) => ({ ...seam, [side]: stitches }), { left, right });
}
