import { describe, expect, it } from 'vitest';
import { gridFromText, gridToText, type Grid } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { measure } from '@shared/motif/repeat/index.ts';
import { applyChange, projectAround, START_YARNS } from '@shared/project/index.ts';
import { askedPlace, settleChange, shownOfCopy } from '../../../src-renderer/motif/editing/differing-copies.ts';

// Two copies of 8 × 8 side by side: stitch 8 of row 3 is figure in the right-hand one, stitch 1 of row 7 in the left-hand one.
const LINES = ['................', '#.XX......XX....', '.XXXX....XXXX...', '...XXX.....XXX..', '..XXXXX...XXXXX.']
  .concat(['...XXXX....XXXX#', '....X.......X...', '...XX......XX...'])
  .map((line) => line.replaceAll('X', '#'));
const grid = gridFromText(LINES, '.#');
const measured = measure(grid, 0);

function motifOf(drawn: Grid): { motif: Motif; after: (change: ReturnType<typeof settleChange>) => string[] | null } {
  const project = projectAround('birds', 'birds', drawn, 0, 'worn', START_YARNS);
  const motif = project.motifs[0] as Motif;
  return {
    motif,
    after: (change) => change && gridToText((applyChange(project, change).motifs[0] as Motif).grid, '.#'),
  };
}

describe('the place that is asked about', () => {
  it('is the first whose copies differ, by rows', () => {
    expect(askedPlace(grid, measured, { column: 0, row: 0 })).toMatchObject({
      cell: { column: 7, row: 2 },
      versions: [
        { colour: 0, copies: 1, first: { column: 7, row: 2 } },
        { colour: 1, copies: 1, first: { column: 15, row: 2 } },
      ],
    });
  });

  it.each([
    { column: 0, row: 6 },
    { column: 8, row: 6 },
  ])('is that of the cursor where it stands in either copy: $column, $row', (cursor) => {
    expect(askedPlace(grid, measured, cursor)?.cell).toEqual({ column: 0, row: 6 });
  });

  it('passes over what was settled since the drawing was measured', () => {
    const { motif } = motifOf(grid);
    const near = measured.near ?? expect.fail('no near repeat');
    const settled = gridFromText(motifOf(grid).after(settleChange(motif, near, { column: 7, row: 2 }, 0)) ?? [], '.#');
    expect(askedPlace(settled, measured, { column: 7, row: 2 })?.cell).toEqual({ column: 0, row: 6 });
    expect(askedPlace(gridFromText(['..'], '.#'), measured, { column: 0, row: 0 })).toBeNull();
  });
});

describe('settling it', () => {
  it.each([{ colour: 0 }, { colour: 1 }])('makes both copies yarn $colour', ({ colour }) => {
    const { motif, after } = motifOf(grid);
    const near = measured.near ?? expect.fail('no near repeat');
    const lines = after(settleChange(motif, near, { column: 15, row: 2 }, colour)) ?? [];
    const row = lines[5] ?? '';
    expect([row[7], row[15]]).toEqual(colour === 0 ? ['.', '.'] : ['#', '#']);
    expect(lines.filter((_, at) => at !== 5)).toEqual(LINES.filter((_, at) => at !== 5));
  });

  it('is no step where they are alike', () => {
    const { motif } = motifOf(grid);
    const near = measured.near ?? expect.fail('no near repeat');
    expect(settleChange(motif, near, { column: 3, row: 0 }, 1)).toBeNull();
  });
});

describe('what is shown of a copy', () => {
  it('is the copy', () => {
    expect(shownOfCopy({ width: 6, height: 5 }, { column: 11, row: 2 })).toEqual({
      column: 6,
      row: 0,
      width: 6,
      height: 5,
    });
  });

  it.each([
    { column: 200, from: 200 },
    { column: 250, from: 238 },
    { column: 299, from: 276 },
  ])('is what is around the cell, of a large one: column $column', ({ column, from }) => {
    expect(shownOfCopy({ width: 100, height: 3 }, { column, row: 4 })).toEqual({
      column: from,
      row: 3,
      width: 24,
      height: 3,
    });
  });
});
