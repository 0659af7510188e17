/**
 * Which needles stand forward for a row, and what has to be pushed by hand.
 *
 * The pass of row n − 1 brings the needles of row n forward as far as they are
 * in work by then, and with end-needle selection the outermost two. So after an
 * increase the old edge needle goes back unless it has figure, and the new one
 * forward if it has; after a decrease the new edge needle goes forward. Where
 * nothing is chosen by the machine, all are pushed: on every row by hand, and
 * on a row 1 in pattern where no waste yarn has a pass before it.
 */
import type { Slot } from '../../bed/index.ts';
import { yarnsOf, type KnittedRow } from './knitted-rows.ts';
import type { Obstacle } from './obstacles.ts';
import type { Work } from './work.ts';

/** Puts the needles right that the pass before cannot have chosen as the row wants them. */
export function pushNeedles(work: Work): void {
  for (const row of work.rows) {
    if (row.carriage === 'plain') continue;
    const { forward, back } = work.isChosenAhead(row.row) ? toPush(work, row) : { forward: forwardOn(row), back: [] };
    if (back.length > 0) work.do(row.row - 1, { kind: 'push-back', needles: back });
    if (forward.length > 0) work.do(row.row - 1, { kind: 'push-forward', needles: forward });
  }
}

/** Counts the needles that stand forward before a row, where something is done before it anyway. */
export function checkNeedles(work: Work): void {
  if (work.piece.machine.chooses !== 'ahead-seen') return;
  work.rows.forEach(({ row, carriage, contrast, forward, laid }, index) => {
    const [first, last] = [contrast[0]?.first, contrast.at(-1)?.last];
    if (carriage === 'plain' || first === undefined || last === undefined) return;
    const hasActs = work.actsAt(row - 1) !== undefined || laid !== null || work.plan.rows[index]?.wraps.length !== 0;
    if (hasActs) work.do(row - 1, { kind: 'check', forward, first, last });
  });
}

/** Rows on which yarn would have to be laid into the hooks of needles, where none stands forward to be seen. */
export function unseenObstacles(work: Work): Obstacle[] {
  const obstacles: Obstacle[] = [];
  if (work.piece.machine.chooses !== 'ahead-unseen') return obstacles;
  const laid = work.rows.filter((row) => row.laid !== null);
  if (laid.length > 0) {
    const yarns = Math.max(...laid.map((row) => yarnsOf(row, work.piece.mainYarn)));
    obstacles.push({ code: 'balls-unseen', ...spanOf(laid), yarns });
  }
  return obstacles;
}

function spanOf(rows: readonly KnittedRow[]): { readonly first: number; readonly last: number; readonly rows: number } {
  return { first: rows[0]?.row ?? 0, last: rows.at(-1)?.row ?? 0, rows: rows.length };
}

const NOTHING: { readonly forward: readonly Slot[]; readonly back: readonly Slot[] } = { forward: [], back: [] };

function toPush(work: Work, row: KnittedRow): typeof NOTHING {
  const { edges } = row;
  // The waste rows' last pass chooses the first row: the same needles are in work.
  const before = work.row(row.row - 1)?.edges ?? edges;
  if (before.first === edges.first && before.last === edges.last) return NOTHING;
  const selectsEnds = work.plan.endNeedleRows.has(row.row);
  const forward: Slot[] = [];
  const back: Slot[] = [];
  for (const needle of shapedNeedles(before.first, edges.first, before.last, edges.last)) {
    if (needle < edges.first || needle > edges.last) continue;
    const wasInWork = needle >= before.first && needle <= before.last;
    const isOuter = needle === before.first || needle === before.last;
    const isChosen = wasInWork && ((selectsEnds && isOuter) || isFigure(work, row, needle));
    const isWanted = isForward(row, needle);
    if (isWanted && !isChosen) forward.push(needle);
    if (isChosen && !isWanted) back.push(needle);
  }
  return { forward, back };
}

/** The needles from the old to the new edge, at both edges, from left to right. */
function shapedNeedles(left: Slot, newLeft: Slot, right: Slot, newRight: Slot): readonly Slot[] {
  const needles = new Set<Slot>();
  for (let needle = Math.min(left, newLeft); needle <= Math.max(left, newLeft); needle++) needles.add(needle as Slot);
  for (let needle = Math.min(right, newRight); needle <= Math.max(right, newRight); needle++) {
    needles.add(needle as Slot);
  }
  return [...needles].sort((a, b) => a - b);
}

function forwardOn({ contrast }: KnittedRow): Slot[] {
  const needles: Slot[] = [];
  for (const { first, last } of contrast) for (let at: number = first; at <= last; at++) needles.push(at as Slot);
  return needles;
}

function isForward({ contrast }: KnittedRow, needle: Slot): boolean {
  return contrast.some(({ first, last }) => needle >= first && needle <= last);
}

/** Whether a needle is forward because of the pattern itself, not as an end needle. */
function isFigure(work: Work, row: KnittedRow, needle: Slot): boolean {
  const ends = work.plan.rows[row.row - 1]?.endNeedles;
  return isForward(row, needle) && !ends?.needles.includes(needle);
}
