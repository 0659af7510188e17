/**
 * Shaping that hands cannot do, or do unevenly: what an earlier program ordered,
 * each by its numbers. Rules: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { widthOf } from '@shared/bed/index.ts';
import { reshaped, stitchesAt, type Piece, type Shape } from '@shared/piece/index.ts';
import { runningOrderOf, type Act } from '@shared/plan/running-order/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { projectAt, pieceIn, sampleProject, START_PIECE, type ProjectAt } from '@shared/project/index.ts';
import { checkedPlan, onlyFindings } from './found.ts';

const plain = (shape: Shape, piece: Partial<Piece> = {}): ProjectAt => ({
  ...projectAt(sampleProject()),
  piece: { ...START_PIECE, ...piece, shape },
  patterns: [],
});

/** What is done before each row, by the row. */
function actsOf(project: ProjectAt): { readonly row: number | null; readonly acts: readonly Act[] }[] {
  const piece = pieceIn(project);
  const outcome = runningOrderOf(piece, makePlan(piece));
  if (!outcome.isKnittable) throw new Error(JSON.stringify(outcome.obstacles));
  return outcome.order.flatMap((part) => (part.kind === 'stop' ? [part] : []));
}
const isShaping = ({ kind }: Act): boolean => ['increase', 'decrease', 'cast-off', 'cast-on-more'].includes(kind);

describe('a taper of 20 to 10 stitches over 9 rows', () => {
  const stops = actsOf(plain({ kind: 'tapered', stitches: 20, stitchesAtTop: 10, rows: 9, straightRows: 0 }));

  it('casts on the 20 that it was given, never 18', () => {
    const castOn = stops.flatMap(({ acts }) => acts).filter((act) => act.kind === 'cast-on');
    expect(castOn.map(({ needles }) => widthOf(needles))).toEqual([20]);
    expect(stops.find(({ row }) => row === 1)?.acts.filter(isShaping)).toEqual([]);
  });

  it('shapes no last row', () => {
    const shaped = stops.filter(({ acts }) => acts.some(isShaping)).map(({ row }) => row);
    expect(shaped).toEqual([2, 3, 4, 6, 8]);
  });
});

describe('an odd difference of widths', () => {
  const odd = plain({ kind: 'tapered', stitches: 38, stitchesAtTop: 61, rows: 109, straightRows: 1 });

  it('offers the even ones beside it, and says on which row and at which edge one stitch is shaped alone', () => {
    const [found, ...others] = onlyFindings(checkedPlan(odd), 'odd-shaping');
    expect(others).toEqual([]);
    expect(found).toMatchObject({ at: 'top', edge: 'right', even: [60, 62] });
    // 11 a side in rows 2 to 108, the odd one on a row where nothing else is done.
    const row = found?.rows[0] as number;
    const { outline } = makePlan(pieceIn(odd));
    expect([row - 1, row, row + 1].map((at) => stitchesAt(outline, at) - stitchesAt(outline, row - 1))).toEqual([
      0, 1, 1,
    ]);
  });

  it('takes one stitch of a row of its own, at one edge', () => {
    const shaping = actsOf(odd).flatMap(({ row, acts }) => {
      const found = acts.filter(isShaping);
      return found.length === 0 ? [] : [{ row, edges: found.map((act) => ('edge' in act ? act.edge : null)) }];
    });
    const alone = shaping.filter(({ edges }) => edges.length === 1);
    expect(alone.map(({ edges }) => edges)).toEqual([['right']]);
    expect(shaping.filter(({ edges }) => edges.length === 2)).toHaveLength(11);
  });

  it('is found at the waist and at the chest, each on its rows', () => {
    const body: Shape = {
      kind: 'body',
      stitches: 120,
      stitchesAtWaist: 101,
      stitchesAtChest: 110,
      rowsToWaist: 60,
      rowsToChest: 60,
      rows: 200,
    };
    const found = onlyFindings(checkedPlan(plain(body)), 'odd-shaping');
    expect(found.map(({ at, even }) => [at, even])).toEqual([
      ['waist', [100, 102]],
      ['chest', [109, 111]],
    ]);
    expect(found.map(({ rows: [row] }) => row <= 60)).toEqual([true, false]);
  });

  it('is none where both edges are shaped alike, nor where a person wrote the rows', () => {
    expect(checkedPlan(projectAt(sampleProject())).findings.filter(({ code }) => code === 'odd-shaping')).toEqual([]);
    const rows = reshaped(odd.piece.shape, 'steps', odd.piece);
    expect(onlyFindings(checkedPlan(plain(rows)), 'odd-shaping')).toEqual([]);
  });
});

describe('a folded hem of 20 rows', () => {
  it('is hung loop by loop where the piece is shaped evenly: none of it is increased', () => {
    const sleeve: Shape = { kind: 'tapered', stitches: 62, stitchesAtTop: 90, rows: 100, straightRows: 10 };
    const stops = actsOf(plain(sleeve, { hemRows: 20 }));
    const hung = stops.flatMap(({ acts }) => acts).filter((act) => act.kind === 'hang-hem');
    expect(hung.map(({ loops, needles }) => [loops, widthOf(needles)])).toEqual([[62, 62]]);
  });

  it('is refused where 62 loops would have to be hung on 70 needles', () => {
    const steps = [4, 8, 12, 16].map((row) => ({ row, left: 1, right: 1 }));
    const project = plain({ kind: 'steps', stitches: 62, rows: 100, steps }, { hemRows: 20 });
    expect(onlyFindings(checkedPlan(project), 'hem-loops')).toMatchObject([{ loops: 62, hungOn: 70, rows: [20, 20] }]);
    const piece = pieceIn(project);
    expect(runningOrderOf(piece, makePlan(piece)).isKnittable).toBe(false);
  });
});
