/** Pages that stand upright and pages that are turned. */
import { describe, expect, it } from 'vitest';
import { makeGrid } from '@shared/grid/index.ts';
import { placementSheet, sheetFacts, type PaperSize, type SheetPage } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { projectAt, pieceIn, sampleProject, startBand, type ProjectAt } from '@shared/project/index.ts';
import { TEST_DAY } from '../../day.ts';
import { itemBox, itemsOf, wordsOn } from './items-of.ts';

/** A motif of that size, in a piece of that size (28 × 40 to 10 cm: 4 stitches are as wide as 5.7 rows are tall). */
function projectOf(piece: { stitches: number; rows: number }, motif: { width: number; height: number }): ProjectAt {
  const sample = projectAt(sampleProject());
  const [drawn] = sample.motifs as [ProjectAt['motifs'][number]];
  const grid = makeGrid(motif.width, motif.height);
  // No smaller repeat: a diagonal, and one cell that breaks it.
  for (let row = 0; row < motif.height; row++) grid.cells[row * motif.width + ((row * 3) % motif.width)] = 1;
  grid.cells[motif.width - 1] = 1;
  return {
    ...sample,
    motifs: [{ ...drawn, id: 'm', grid }],
    piece: {
      ...sample.piece,
      hem: { ...sample.piece.hem },
      hemRows: 0,
      sections: [],
      shape: { kind: 'rectangle', ...piece },
    },
    patterns: [{ ...startBand('m', [1]), unit: 'whole', position: { kind: 'from-row', row: 1 } }],
  } as ProjectAt;
}

function pagesOf(project: ProjectAt, paper: PaperSize): readonly SheetPage[] {
  return placementSheet(sheetFacts(project), makePlan(pieceIn(project)), { paper, date: TEST_DAY }).pages;
}

const isTurned = ({ widthMm, heightMm }: SheetPage): boolean => widthMm > heightMm;
const chartPagesIn = (pages: readonly SheetPage[]): SheetPage[] => pages.filter((page) => /Chart/.test(wordsOn(page)));

describe.each(['a4', 'letter'] as const)('on %s', (paper) => {
  it('a sheet of a usual piece and motif is upright throughout', () => {
    expect(pagesOf(projectAt(sampleProject()), paper).filter(isTurned)).toEqual([]);
  });

  it('a wide piece is drawn on a page in landscape, larger than it would be upright, and the steps are upright', () => {
    const [first, second, ...others] = pagesOf(
      projectOf({ stitches: 200, rows: 60 }, { width: 14, height: 18 }),
      paper,
    );
    expect(isTurned(first as SheetPage)).toBe(true);
    expect([second, ...others].filter((page) => isTurned(page as SheetPage))).toEqual([]);
    // The figure alone stands to the right of where an upright page ends.
    const rightmost = Math.max(...itemsOf(first as SheetPage).map((item) => itemBox(item).right));
    expect(rightmost).toBeGreaterThan((second as SheetPage).widthMm);
  });

  it('a chart that is wide has pages in landscape, and one that is tall has upright ones', () => {
    const wide = chartPagesIn(pagesOf(projectOf({ stitches: 120, rows: 140 }, { width: 50, height: 30 }), paper));
    expect(wide.map(isTurned)).toEqual([true, true]);
    const tall = chartPagesIn(pagesOf(projectOf({ stitches: 120, rows: 140 }, { width: 30, height: 60 }), paper));
    expect(tall.map(isTurned)).toEqual([false, false]);
  });

  it('nothing stands outside the margins of a page, whichever way round', () => {
    for (const motif of [
      { width: 110, height: 40 },
      { width: 190, height: 55 },
    ]) {
      for (const page of pagesOf(projectOf({ stitches: 200, rows: 60 }, motif), paper)) {
        for (const item of itemsOf(page)) {
          const { left, right, top, bottom } = itemBox(item);
          expect(
            left >= 15.9 && right <= page.widthMm - 15.9 && top >= 7 && bottom <= page.heightMm - 13.9,
            page.title,
          ).toBe(true);
        }
      }
    }
  });
});
