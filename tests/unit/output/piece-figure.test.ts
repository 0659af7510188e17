/** The figure of a shaped piece: margins where they hold, and every needle that must be found. */
import { describe, expect, it } from 'vitest';
import { placementSheet, sheetFacts, type PathItem, type SheetItem, type SheetPage } from '@shared/output/index.ts';
import { marksFor } from '@shared/output/chart/marks.ts';
import { outlines } from '@shared/output/piece/hatching.ts';
import { motifNames } from '@shared/output/piece/motif-names.ts';
import { needleRuler } from '@shared/output/piece/needles.ts';
import { stacked, widthChanges } from '@shared/output/piece/row-marks.ts';
import { pieceFigure } from '@shared/output/piece/piece-figure.ts';
import { rowNumbers } from '@shared/output/piece/rows.ts';
import { spaceLines } from '@shared/output/piece/space-lines.ts';
import { spaceStrips } from '@shared/output/piece/spaces.ts';
import { PieceView } from '@shared/output/piece/view.ts';
import { actNames } from '@shared/output/steps/names.ts';
import { edgesAt } from '@shared/piece/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, sampleProject, type ProjectAt, projectAt } from '@shared/project/index.ts';
import { bandsOf, type Band } from '@shared/pattern/index.ts';
import { textOf } from '@shared/words/index.ts';
import { TEST_DAY } from '../../day.ts';
import { wordsOn } from './items-of.ts';
import { threeMotifsProject } from './projects.ts';

/** A sleeve of 96 stitches at the cast-on, 100 on row 25, where its groups stand at L39 and R11. */
function figureOf(project: ProjectAt) {
  const plan = makePlan(pieceIn(project));
  const view = PieceView.within(plan, 150, 150);
  return { plan, view, edges: edgesAt(plan.outline, 25) };
}

const textsIn = (items: readonly SheetItem[]): string[] =>
  items.flatMap((item) => (item.kind === 'text' ? [textOf(item.spans)] : []));
const pathsIn = (items: readonly SheetItem[]): PathItem[] => items.filter((item) => item.kind === 'path');

describe('the spaces of a sleeve', () => {
  it('are drawn on the row where they hold, from edge to edge of it', () => {
    const { plan, view, edges } = figureOf(projectAt(sampleProject()));
    const items = spaceLines(plan, view);
    const points = pathsIn(items).flatMap(({ lines }) => lines.flat());
    expect(Math.min(...points.map(([x]) => x))).toBeCloseTo(view.x(edges.first, 25));
    expect(Math.max(...points.map(([x]) => x))).toBeCloseTo(view.x(edges.last + 1, 25));
    // Every line lies in row 25; its stops reach a little over it.
    for (const { lines } of pathsIn(items)) {
      const [along] = lines;
      for (const [, y] of along ?? []) {
        expect(y).toBeLessThan(view.y(25));
        expect(y).toBeGreaterThan(view.y(26));
      }
    }
    expect(textsIn(items)).toEqual(['12', '22', '12']);
  });

  it('are told with the row, and what the seam leaves of the margins', () => {
    const { plan, view } = figureOf(projectAt(sampleProject()));
    const texts = textsIn(spaceStrips(plan, view, 0, 0).items);
    expect(texts).toEqual(expect.arrayContaining(['row 25, visible', 'row 25, blocks']));
    const wide = PieceView.within(plan, 600, 600);
    expect(textsIn(spaceStrips(plan, wide, 0, 0).items)).toContain('12 (11 clear of the seam)');
  });

  it('leave the numbers to the lower of two bands that are too near each other', () => {
    const sample = projectAt(sampleProject());
    const [band] = bandsOf(sample) as [Band];
    const above = { ...band, position: { kind: 'from-row' as const, row: 44 } };
    const { plan, view } = figureOf({ ...sample, patterns: [band, above] });
    expect(spaceLines(plan, view)).toHaveLength(
      2 * spaceLines({ ...plan, patterns: bandsOf(plan).slice(0, 1) }, view).length,
    );
    // A quarter as large, row 44 lies within the numbers of row 25.
    const small = PieceView.within(plan, 35, 35);
    const rows = spaceLines(plan, small).flatMap((item) => (item.kind === 'text' ? [item.y] : []));
    expect(rows).not.toHaveLength(0);
    expect(Math.min(...rows)).toBeGreaterThan(small.y(44));
  });
});

describe('the ruler of a sleeve', () => {
  it('names both needles of every block and of what is seen of it, and the edges of the row and of the cast-on', () => {
    const { plan, view } = figureOf(projectAt(sampleProject()));
    const { items, left } = needleRuler(plan, view, 200);
    expect(left).toBe(0);
    // Blocks L39–L12 and R11–R38 with a blank needle at the left; 100 stitches on row 25, 96 cast on.
    expect(textsIn(items)).toEqual(
      expect.arrayContaining(['L39', 'L12', 'R11', 'R38', 'L38', 'R12', 'L50', 'R50', 'L48', 'R48']),
    );
  });

  it('leads from the edge needles up to their row', () => {
    const { plan, view, edges } = figureOf(projectAt(sampleProject()));
    const lines = pathsIn(needleRuler(plan, view, 200).items)
      .filter(({ stroke }) => stroke?.paint !== 'paper')
      .flatMap(({ lines }) => lines);
    for (const slot of [edges.first, edges.last]) {
      const x = view.x(slot, 25) + view.at(25).cellWidth / 2;
      const up = lines.filter(([from]) => from && Math.abs(from[0] - x) < 1e-6 && from[1] < 200);
      expect(up.map(([from]) => from?.[1])).toEqual([view.y(25)]);
    }
  });
});

describe('the rows beside a piece', () => {
  /** All that is written beside the piece, and the rows that ticks stand at. */
  function rowsOf(project: ProjectAt, heightMm: number) {
    const plan = makePlan(pieceIn(project));
    const view = PieceView.within(plan, 1000, heightMm);
    const items = rowNumbers(plan, view, view.right);
    const ticks = pathsIn(items).flatMap(({ lines }) =>
      lines.flatMap(([from, to]) => (from && to && from[1] === to[1] ? [from[1]] : [])),
    );
    const rows = new Set(ticks.map((y) => Math.round((view.y(1) - y) / view.at(1).cellHeight + 0.5)));
    return { plan, view, items, texts: textsIn(items), rows };
  }

  it('are numbered at every change of width, of section and of a pattern', () => {
    const sample = projectAt(sampleProject());
    const project = { ...sample, piece: { ...sample.piece, hemRows: 12 } };
    const { texts, rows, plan } = rowsOf(project, 150);
    // Read from the outline itself: rows whose needles are not those of the row below.
    const { first, last } = plan.outline;
    const widths = Array.from(first, (_, index) => index + 1).filter(
      (row) => row > 1 && (first[row - 1] !== first[row - 2] || last[row - 1] !== last[row - 2]),
    );
    expect(widths.length).toBeGreaterThan(10);
    // Cast on, fold, join, first and last pattern row, end.
    for (const row of [1, 7, 13, 25, 42, 140, ...widths]) {
      expect(texts).toContain(String(row));
      expect(rows).toContain(row);
    }
  });

  it('are told as steps where they are too many to be numbered one by one, and never one over another', () => {
    const sample = projectAt(sampleProject());
    const shape = { kind: 'tapered', stitches: 60, stitchesAtTop: 120, rows: 140, straightRows: 0 } as const;
    const { texts, rows, plan, items } = rowsOf({ ...sample, piece: { ...sample.piece, shape } }, 60);
    expect(texts.join(' ')).toMatch(/\d+–\d+ every \d(nd|rd|th)/);
    for (const row of widthChanges(plan.outline)) expect(rows).toContain(row);
    expect(texts).toEqual(expect.arrayContaining(['25', '42']));
    const ys = items.flatMap((item) => (item.kind === 'text' ? [item.y] : [])).sort((a, b) => a - b);
    for (const [index, y] of ys.slice(1).entries()) expect(y - (ys[index] as number)).toBeGreaterThan(3.4);
  });

  it('stand as near to their rows as others leave room', () => {
    expect(
      stacked(
        [
          { at: 10, height: 4 },
          { at: 30, height: 4 },
        ],
        0,
        40,
      ),
    ).toEqual([10, 30]);
    expect(
      stacked(
        [
          { at: 10, height: 4 },
          { at: 11, height: 4 },
        ],
        0,
        40,
      ),
    ).toEqual([8.5, 12.5]);
    expect(
      stacked(
        [
          { at: 0, height: 4 },
          { at: 1, height: 4 },
          { at: 39, height: 4 },
        ],
        0,
        40,
      ),
    ).toEqual([2, 6, 38]);
  });
});

describe('the names of motifs on a piece', () => {
  function namesOf(project: ProjectAt, widthMm: number) {
    const piece = pieceIn(project);
    const plan = makePlan(piece);
    const view = PieceView.within(plan, widthMm, 95);
    return { plan, view, ...motifNames(plan, actNames(piece).motif, view, spaceLines(plan, view)) };
  }

  it('stand at every group of three unlike motifs, over no block and over no other', () => {
    const project = threeMotifsProject();
    const { plan, view, items, lettered } = namesOf(project, 140);
    const texts = textsIn(items);
    expect(lettered).toEqual([]);
    const called = new Map(project.motifs.map(({ id, name }) => [id, name]));
    expect([...texts].sort()).toEqual(plan.groups.map(({ motif }) => called.get(motif)).sort());
    const chips = items.flatMap((item) => (item.kind === 'rectangle' ? [item] : []));
    const lines = items.filter((item) => item.kind === 'text');
    for (const { block, firstRow, lastRow, motif } of plan.groups) {
      const [left, right] = [view.x(block.first, firstRow), view.x(block.last + 1, firstRow)];
      const [top, bottom] = [view.y(lastRow + 1), view.y(firstRow)];
      // Its name is next above or below it.
      const near = chips.filter(
        (chip) => chip.x < right && chip.x + chip.width > left && chip.y < bottom + 1 && chip.y + chip.height > top - 1,
      );
      const own = near.map((chip) =>
        lines.find(({ x, y }) => x > chip.x && x < chip.x + chip.width && y > chip.y && y < chip.y + chip.height),
      );
      expect(own.map((line) => (line ? textOf(line.spans) : ''))).toContain(called.get(motif));
      for (const chip of chips) {
        const isOver = chip.x < right && chip.x + chip.width > left && chip.y < bottom && chip.y + chip.height > top;
        expect(isOver).toBe(false);
      }
    }
  });

  it('are letters, told below the piece, where there is no room for a name', () => {
    const project = threeMotifsProject();
    const motifs = project.motifs.map((motif) => ({
      ...motif,
      name: `${motif.name} ${'of the far north '.repeat(4)}`,
    }));
    const { items, lettered, plan } = namesOf({ ...project, motifs }, 100);
    expect(lettered.map(({ letter }) => letter)).toEqual(['A', 'B', 'C']);
    expect(lettered.map(({ name }) => name).sort()).toEqual(motifs.map(({ name }) => name).sort());
    expect(textsIn(items)).toHaveLength(plan.groups.length);
    const sheet = placementSheet(sheetFacts({ ...project, motifs }), plan, { paper: 'a4', date: TEST_DAY });
    expect(wordsOn(sheet.pages[0] as SheetPage)).toMatch(/^A lighthouse/m);
  });
});

describe('a yarn that lightness does not tell from the main one', () => {
  it('has a line round each of its cells on the piece', () => {
    const { yarns, ...project } = threeMotifsProject();
    const plan = makePlan(pieceIn({ ...project, yarns }));
    const view = PieceView.within(plan, 140, 95);
    const { cells, width, rows } = plan.fabric;
    const rust = yarns.findIndex(({ name }) => name === 'rust');
    const isRust = (column: number, row: number): boolean =>
      column >= 0 && column < width && row >= 0 && row < rows && cells[row * width + column] === rust;
    let around = 0;
    for (let row = 0; row <= rows; row++) {
      for (let column = 0; column <= width; column++) {
        if (isRust(column, row) !== isRust(column, row - 1)) around += view.at(1).cellWidth;
        if (isRust(column, row) !== isRust(column - 1, row)) around += view.at(1).cellHeight;
      }
    }
    expect(around).toBeGreaterThan(20);
    const lines = pathsIn(outlines(plan.fabric, yarns, [rust], view)).flatMap((path) => path.lines);
    const length = lines.reduce(
      (sum, [from, to]) => sum + (from && to ? Math.hypot(to[0] - from[0], to[1] - from[1]) : 0),
      0,
    );
    expect(length).toBeCloseTo(around, 6);
    const figure = pieceFigure(pieceIn({ ...project, yarns }), plan, marksFor([1, rust], 0), 178, 95).draw(0, 0);
    const drawn = figure.flatMap((element) => (element.role === 'figure' ? pathsIn(element.items) : []));
    expect(drawn.filter(({ stroke }) => stroke?.width === 0.1)).toHaveLength(1);
  });
});
