/** Where pages end: nothing is left alone on one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placementSheet, sheetFacts, type PaperSize, type SheetElement, type SheetPage } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { ProblemError } from '@shared/problem/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { TEST_DAY } from '../../day.ts';
import { anyFilledProject } from '../../property/filled-projects.ts';
import { anyProject } from '../../property/projects.ts';
import { itemBox, itemsOf, wordsOn } from './items-of.ts';
import { plainProject, PROJECTS } from './projects.ts';

const PAPERS: readonly PaperSize[] = ['a4', 'letter'];

function pagesOf(project: ProjectAt, paper: PaperSize): readonly SheetPage[] {
  return placementSheet(sheetFacts(project), makePlan(pieceIn(project)), { paper, date: TEST_DAY }).pages;
}

const read = ({ elements }: SheetPage): SheetElement[] => elements.filter(({ role }) => role !== 'decoration');

/** Heights at which something is written, the running head apart. */
function linesOn(page: SheetPage): number {
  const items = itemsOf({ ...page, elements: read(page) });
  return new Set(items.flatMap((item) => (item.kind === 'text' ? [item.y.toFixed(1)] : []))).size;
}

/** Room to write in. */
function isRuled(page: SheetPage): boolean {
  const ys = itemsOf(page).flatMap((item) => (item.kind === 'path' ? item.lines.flat().map(([, y]) => y) : []));
  return Math.max(...ys) - Math.min(...ys) > 40;
}

/** The first line below the running head. */
function firstLineOf(page: SheetPage): string {
  return wordsOn({ ...page, elements: read(page).slice(0, 1) });
}

/** How much of the height of a page is taken, its margins apart (16 mm above, 14 below). */
function takenOf(page: SheetPage): number {
  const bottoms = itemsOf({ ...page, elements: read(page) }).map((item) => itemBox(item).bottom);
  return (Math.max(16, ...bottoms) - 16) / (page.heightMm - 30);
}

/** What is wrong where pages end: said with the page, so that it can be found. */
function faultsOf(pages: readonly SheetPage[]): string[] {
  return pages.flatMap((page, index) => {
    const found: string[] = [];
    const own = read(page);
    const before = read(pages[index - 1] ?? { ...page, elements: [] });
    if (own.length === 0) found.push('is empty');
    if (!own.some(({ role }) => role === 'figure') && !isRuled(page) && linesOn(page) < 3)
      found.push(`has ${linesOn(page)} lines`);
    if (own.at(-1)?.role === 'heading') found.push('ends with a heading');
    const next = pages[index + 1];
    const isFollowed = next && /^(To have at hand|Row list)$/.test(firstLineOf(next));
    if (isFollowed && next.heightMm === page.heightMm && takenOf(page) < 0.45)
      found.push('is left nearly empty for what follows it');
    const [first, last] = [own[0], before.at(-1)];
    if (first?.role === 'table' && last?.role === 'table' && first.title === last.title) {
      const rows = (table: typeof first): number => table.rows.filter(({ isHeader }) => !isHeader).length;
      const isTall = (table: typeof first): boolean =>
        table.rows.some(({ cells }) => cells.some((cell) => cell.length > 3));
      if (rows(first) < 2 && !isTall(first)) found.push(`begins with one row of ${first.title}`);
      if (rows(last) < 2 && !isTall(last)) found.push(`follows one row of ${last.title}`);
    }
    if (first?.role === 'list' && last?.role === 'list' && linesIn(first) < 2)
      found.push('begins with one line of a list');
    return found.map((fault) => `${page.title} ${fault}: ${wordsOn(page).slice(0, 300)}`);
  });
}

function linesIn(list: SheetElement & { role: 'list' }): number {
  return list.entries.reduce((sum, { body }) => sum + body.length, 0);
}

describe('where pages end', () => {
  it.each(Object.keys(PROJECTS).flatMap((name) => PAPERS.map((paper) => ({ name, paper }))))(
    'nothing is left alone in the sheet of the $name project on $paper',
    ({ name, paper }) => {
      expect(faultsOf(pagesOf((PROJECTS[name] as () => ProjectAt)(), paper))).toEqual([]);
    },
  );

  it.each(PAPERS)('nothing is left alone where a wide piece has nothing on it, on %s', (paper) => {
    const plain = plainProject();
    const piece = { ...plain.piece, shape: { kind: 'rectangle', stitches: 198, rows: 60 } as const };
    expect(faultsOf(pagesOf({ ...plain, piece }, paper))).toEqual([]);
  });

  it('nothing is left alone in the sheets of random projects', () => {
    const projects = fc.sample(fc.oneof(anyProject, anyFilledProject), { numRuns: 120, seed: 20260102 });
    let made = 0;
    const faults = projects.flatMap((project, index) => {
      const paper = PAPERS[index % 2] as PaperSize;
      try {
        makePlan(pieceIn(project));
      } catch (error) {
        // Not every project that a file can hold can be planned.
        if (!(error instanceof ProblemError)) throw error;
        return [];
      }
      made++;
      return faultsOf(pagesOf(project, paper));
    });
    expect(made).toBeGreaterThan(30);
    expect(faults).toEqual([]);
  });
});
