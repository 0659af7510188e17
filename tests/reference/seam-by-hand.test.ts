/** How the edges of a fill meet, on pieces so small that they can be looked at by hand. */
import { describe, expect, it } from 'vitest';
import { seamFits } from '@shared/check/index.ts';
import { seamMatchingOf, type PlacedAllOver } from '@shared/fabric/index.ts';
import { gridFromText } from '@shared/grid/index.ts';
import type { Shape } from '@shared/piece/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { allOversOf, type AllOver } from '@shared/pattern/index.ts';
import { pieceIn, START_PIECE, startAllOver, type ProjectAt } from '@shared/project/index.ts';
import { projectOf, seenOf } from './seam-tube.ts';

describe('by hand', () => {
  const rectangle = (stitches: number, seam = 0): ProjectAt['piece'] => ({
    ...START_PIECE,
    shape: { kind: 'rectangle', stitches, rows: 3 },
    seamAllowance: { left: seam, right: seam },
  });
  const matching = (rows: readonly string[], piece: ProjectAt['piece'], fill: Partial<AllOver> = {}) => {
    const project = projectOf(gridFromText(rows, '.X'), piece, {
      ...startAllOver('m', 1),
      endNeedles: false,
      unit: 'whole',
      ...fill,
    });
    const plan = makePlan(pieceIn(project));
    const [placed] = allOversOf(plan) as [PlacedAllOver];
    const seam = seamMatchingOf(placed, plan.outline);
    return { plan, seam, runs: seam.runs, fits: seamFits(pieceIn(project), plan, placed) };
  };
  const TALL: Shape = { kind: 'rectangle', stitches: 22, rows: 4 };
  const CHECKS = ['XX..', 'XX..', '..XX', '..XX'];
  /** On 22 stitches, copies of 4 from the left edge on: 11 stitches left of the middle are 3 copies less 1. */
  const FROM_EDGE = { centre: 'between', shift: 1 } as const;

  it('goes on where the stitches seen are whole repeats', () => {
    // 6 stitches, 24 of them seen: 4 repeats round the tube. XX.X.. has no mirror image in itself.
    expect(matching(['XX.X..'], rectangle(24)).runs).toEqual([{ first: 1, last: 3, meeting: { kind: 'continues' } }]);
    // A stitch at each edge goes into the seam: 26 are to be knitted.
    expect(matching(['XX.X..'], rectangle(26, 1)).runs[0]?.meeting).toEqual({ kind: 'continues' });
  });

  it('is off by the stitches that are over, or missing where that is less', () => {
    // 26 = 4 × 6 + 2; 29 = 5 × 6 - 1; 27 is 3 from either.
    expect(matching(['XX.X..'], rectangle(26)).runs[0]?.meeting).toEqual({ kind: 'off', by: 2 });
    expect(matching(['XX.X..'], rectangle(29)).runs[0]?.meeting).toEqual({ kind: 'off', by: -1 });
    expect(matching(['XX.X..'], rectangle(27)).runs[0]?.meeting).toEqual({ kind: 'off', by: 3 });
  });

  it('is a mirror where both edges cut a figure alike, which is no match', () => {
    // A copy in the middle of 23 stitches: from there outwards both sides are alike, so the two edges are;
    // 23 is no multiple of 5.
    const cut = matching(['.XXX.'], rectangle(23));
    expect(cut.runs[0]?.meeting).toEqual({ kind: 'mirrors' });
    expect(cut.seam).toMatchObject({ matching: 0, mirrored: 3, off: 0 });
    // 20 and 25 are whole repeats.
    expect([cut.fits.fewer?.by, cut.fits.more?.by]).toEqual([-3, 2]);
    // Moved by one stitch it is no mirror, and 23 = 5 × 5 - 2.
    const moved = matching(['.XXX.'], rectangle(23), { shift: 1 });
    expect(moved.runs[0]?.meeting).toEqual({ kind: 'off', by: -2 });
    expect([moved.fits.fewer?.by, moved.fits.more?.by]).toEqual([-3, 2]);
  });

  it('makes a bar of 4 of two bars of 2, which is no match', () => {
    // Common practice, no source. Checks of 2 stitches and 2 rows on 22: each row begins and ends with the same
    // 2 stitches, so the seam shows 4 of one yarn side by side, where the pattern has 2.
    const { plan, seam, fits } = matching(CHECKS, { ...rectangle(22), shape: TALL }, FROM_EDGE);
    for (let row = 1; row <= 4; row++) {
      const seen = seenOf(plan, row, { left: 0, right: 0 });
      expect(new Set([...seen.slice(-2), ...seen.slice(0, 2)]).size).toBe(1);
    }
    expect(seam).toMatchObject({ matching: 0, mirrored: 4, off: 0 });
    expect([fits.fewer?.by, fits.more?.by]).toEqual([-2, 2]);
    // Two stitches fewer and it goes on.
    const shape = { ...TALL, stitches: 20 };
    expect(matching(CHECKS, { ...rectangle(20), shape }).seam).toMatchObject({
      matching: 4,
      mirrored: 0,
      off: 0,
    });
  });

  it('asks a row that repeats sooner to go on together with the rows beside it', () => {
    // On 21 stitches: 6 does not go into it and leaves 3. The row of XX. repeats after 3 and would go on by itself,
    // between rows that jump by 3.
    expect(matching(['XX.X..', 'XX.XX.'], rectangle(21)).runs).toEqual([
      { first: 1, last: 3, meeting: { kind: 'off', by: 3 } },
    ]);
    // Rows of one yarn between them part them: the eye has nothing to hold the one against the other.
    expect(matching(['XX.X..', '......', 'XX.XX.'], rectangle(21)).runs).toEqual([
      { first: 1, last: 2, meeting: { kind: 'continues' } },
      { first: 3, last: 3, meeting: { kind: 'off', by: 3 } },
    ]);
  });

  it('lets a row match that goes on where shaping puts the next one off', () => {
    const shape: Shape = { kind: 'steps', stitches: 24, rows: 3, steps: [{ row: 3, left: 1, right: 0 }] };
    expect(matching(['XX.X..'], { ...START_PIECE, shape }).runs).toEqual([
      { first: 1, last: 2, meeting: { kind: 'continues' } },
      { first: 3, last: 3, meeting: { kind: 'off', by: 1 } },
    ]);
  });

  it('shows nothing on rows of one yarn, which go with those below, or above at the bottom', () => {
    const { runs } = matching(['......', 'XX.X..', '......'], rectangle(26));
    expect(runs).toEqual([{ first: 1, last: 3, meeting: { kind: 'off', by: 2 } }]);
    expect(matching(['XXXXXX', '......'], rectangle(26)).runs).toEqual([
      { first: 1, last: 3, meeting: { kind: 'continues' } },
    ]);
  });

  it('changes row by row on a sleeve, which no stitch count can match', () => {
    const shape: Shape = { kind: 'tapered', stitches: 24, stitchesAtTop: 28, rows: 7, straightRows: 1 };
    // Increases on rows 3 and 6: 24, 24, 26, 26, 26, 28, 28 stitches.
    const { runs, fits } = matching(['XX.X..'], { ...START_PIECE, shape });
    expect(runs).toEqual([
      { first: 1, last: 2, meeting: { kind: 'continues' } },
      { first: 3, last: 5, meeting: { kind: 'off', by: 2 } },
      { first: 6, last: 7, meeting: { kind: 'off', by: -2 } },
    ]);
    expect(fits).toEqual({ fewer: null, more: null });
  });

  it('offers the nearest whole repeats', () => {
    const { fits } = matching(['XX.X..'], rectangle(26));
    expect([fits.fewer?.by, fits.more?.by]).toEqual([-2, 4]);
    expect(fits.fewer?.intent).toEqual({ code: 'widen', by: -2 });
  });

  it('is plain where the border ends short of the seam, by as much as is seen of it', () => {
    // The seam takes 1 of 3 plain stitches at the left and both at the right.
    const piece = { ...rectangle(26), seamAllowance: { left: 1, right: 2 } };
    expect(matching(['XX.X..'], piece, { border: { left: 3, right: 2 } }).runs[0]?.meeting).toEqual({
      kind: 'plain',
      stitches: 2,
    });
    // A border that the seam takes whole shows nothing of itself: 26 - 3 seen stitches are 4 × 6 - 1.
    expect(matching(['XX.X..'], piece, { border: { left: 1, right: 2 } }).runs[0]?.meeting).toEqual({
      kind: 'off',
      by: -1,
    });
  });

  it('is plain where the copies at the edges are left out', () => {
    // 4 whole copies and 1 stitch at each edge, whose copies are left out.
    const { runs } = matching(['XXXXXX'], rectangle(26), { centre: 'between', cutCopies: 'left-out' });
    expect(runs[0]?.meeting).toEqual({ kind: 'plain', stitches: 2 });
  });
});
