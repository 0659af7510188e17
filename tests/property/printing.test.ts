/** Whatever a project may hold can be printed, on either paper, inside its margins. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseNeedle, MOST_STITCHES } from '@shared/bed/index.ts';
import { makeGrid, type Grid } from '@shared/grid/index.ts';
import { placementSheet, sheetFacts, type SheetDocument, type SheetItem } from '@shared/output/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { MOST_PIECE_ROWS } from '@shared/piece/index.ts';
import {
  projectAt,
  pieceIn,
  sampleProject,
  START_PIECE,
  startBand,
  startAllOver,
  type ProjectAt,
  type Yarn,
} from '@shared/project/index.ts';
import { sheetWords } from '@shared/words/sheet.ts';
import { TEST_DAY } from '../day.ts';
import { itemBox, itemsOf, wordsOn } from '../unit/output/items-of.ts';

const count = (min: number, max: number) => fc.integer({ min, max });

/** Cells at random, by a generator that starts from `seed` (a linear congruence, Numerical Recipes). */
function scattered(width: number, height: number, yarns: number, seed: number): Grid {
  const grid = makeGrid(width, height);
  let state = seed;
  for (let at = 0; at < grid.cells.length; at++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    grid.cells[at] = Math.floor((state / 2 ** 32) * yarns);
  }
  // Never without figure.
  grid.cells[0] = 1;
  return grid;
}

function yarnsOf(number: number, letters: number): Yarn[] {
  return Array.from({ length: number }, (_, index) => ({
    name: `${index} ${'W'.repeat(letters)}`.slice(0, 80),
    colour: `#${(index * 0x030507).toString(16).padStart(6, '0').slice(-6)}`,
    count: null,
    onHand: null,
  }));
}

interface Printed {
  readonly stitches: number;
  readonly rows: number;
  readonly grid: Grid;
  readonly yarns: readonly Yarn[];
  readonly isAllOver: boolean;
  readonly gauge: { readonly stitches: number; readonly rows: number };
}

function projectOf({ stitches, rows, grid, yarns, isAllOver, gauge }: Printed): ProjectAt {
  const sample = projectAt(sampleProject());
  const [motif] = sample.motifs as [ProjectAt['motifs'][number]];
  return {
    ...sample,
    machine: { ...sample.machine, bed: { needles: null, pitchMm: 4.5 } },
    yarns,
    motifs: [{ ...motif, id: 'm', name: 'motif', grid }],
    piece: {
      ...START_PIECE,
      shape: { kind: 'rectangle', stitches, rows },
      // On waste yarn, whose last pass chooses the needles of row 1.
      begins: 'open',
      gauge,
    },
    patterns: [
      isAllOver
        ? { ...startAllOver('m', 1), unit: 'whole' }
        : { ...startBand('m', [1]), unit: 'whole', position: { kind: 'from-row', row: 1 } },
    ],
  };
}

function sheetOf(project: ProjectAt, paper: 'a4' | 'letter' = 'a4'): SheetDocument {
  return placementSheet(sheetFacts(project), makePlan(pieceIn(project)), { paper, date: TEST_DAY });
}

/** Prints it; gives the words of all pages. */
function printed(project: ProjectAt, paper: 'a4' | 'letter'): string {
  const { pages } = sheetOf(project, paper);
  for (const page of pages) {
    for (const item of itemsOf(page)) {
      const { left, right, top, bottom } = itemBox(item);
      if (left < 15.9 || right > page.widthMm - 15.9 || top < 7 || bottom > page.heightMm - 13.9) {
        expect({ page: page.title, left, right, top, bottom, item: item.kind }).toBe('inside the margins');
      }
    }
  }
  return pages.map(wordsOn).join('\n');
}

const anyPrinted: fc.Arbitrary<Printed> = fc
  .record({
    stitches: fc.oneof(count(1, 60), count(600, MOST_STITCHES)),
    rows: count(1, 30),
    width: fc.oneof(count(1, 16), count(1, MOST_STITCHES)),
    height: count(1, 12),
    yarns: fc.oneof(count(2, 4), count(40, 64)),
    letters: fc.constantFrom(1, 80),
    seed: count(1, 1e6),
    isAllOver: fc.boolean(),
    gauge: fc.oneof(
      { arbitrary: fc.constant({ stitches: 28, rows: 40 }), weight: 3 },
      fc.record({ stitches: count(1, 200), rows: count(1, 300) }),
    ),
  })
  .map(({ width, height, yarns, letters, seed, ...piece }) => ({
    ...piece,
    grid: scattered(
      piece.isAllOver ? width : Math.min(width, piece.stitches),
      piece.isAllOver ? height : Math.min(height, piece.rows),
      yarns,
      seed,
    ),
    yarns: yarnsOf(yarns, letters),
  }));

describe('any piece', () => {
  it('can be printed: wide or narrow, regular or not, in few yarns or many', () => {
    fc.assert(
      fc.property(anyPrinted, fc.constantFrom('a4' as const, 'letter' as const), (given, paper) => {
        const printedWords = printed(projectOf(given), paper);
        for (let row = 1; row <= given.rows; row++) {
          expect(printedWords).toMatch(new RegExp(`^(${row}|\\d+–\\d+)$`, 'm'));
        }
      }),
      { numRuns: 30 },
    );
  });

  it.each([
    { stitches: MOST_STITCHES, rows: 6, width: MOST_STITCHES, height: 6, why: 'the widest, every row another' },
    { stitches: MOST_STITCHES, rows: 40, width: 2, height: 2, why: 'the widest, all over' },
    { stitches: 2, rows: MOST_PIECE_ROWS, width: 2, height: 3, why: 'the longest' },
    { stitches: 1, rows: 1, width: 1, height: 1, why: 'the smallest' },
  ])('can be printed at the bounds: $why', ({ stitches, rows, width, height }) => {
    const gauge = { stitches: 28, rows: 40 };
    const grid = scattered(width, height, 2, 7);
    for (const paper of ['a4', 'letter'] as const) {
      printed(projectOf({ stitches, rows, grid, yarns: yarnsOf(2, 1), isAllOver: true, gauge }), paper);
    }
  });
});

describe('an all-over on many needles', () => {
  const allOver = (stitches: number, grid: Grid) =>
    projectOf({
      stitches,
      rows: 30,
      grid,
      yarns: yarnsOf(2, 1),
      isAllOver: true,
      gauge: { stitches: 28, rows: 40 },
    });

  it('of one repeat takes no more pages where it is wider', () => {
    const repeat = scattered(8, 4, 2, 3);
    const pages = [200, 700, MOST_STITCHES].map((stitches) => sheetOf(allOver(stitches, repeat)).pages.length);
    expect(Math.max(...pages) - Math.min(...pages)).toBeLessThanOrEqual(1);
  });

  it('whose rows are told stitch by stitch goes on over the page, names the row again, and loses nothing of it', () => {
    const project = allOver(MOST_STITCHES, scattered(MOST_STITCHES, 30, 2, 5));
    const { pages } = sheetOf(project);
    const lines = pages.flatMap(({ elements }) =>
      elements.flatMap((element) =>
        element.role === 'table' && element.title === sheetWords.rowList.title
          ? element.rows.map(({ cells }) => cells.map(textIn))
          : [],
      ),
    );
    const goingOn = lines.flatMap(([, name = '']) => (/^\d+ …$/.test(name) ? [Number.parseInt(name)] : []));
    expect(goingOn.length).toBeGreaterThan(5);
    const plan = makePlan(pieceIn(project));
    for (const row of goingOn) {
      const parts = lines.filter((cells) => cells.length === 6 && (cells[1] === `${row}` || cells[1] === `${row} …`));
      expect(parts.length).toBeGreaterThan(1);
      const contrast = (plan.rows[row - 1] as Plan['rows'][number]).contrast.flatMap(({ first, last }) =>
        Array.from({ length: last - first + 1 }, (_, at) => first + at),
      );
      expect(needlesIn(parts.map((cells) => cells[4]).join(' '))).toEqual(contrast);
    }
  });

  it('with a row taller than two pages is printed too', () => {
    const yarns = yarnsOf(64, 80);
    const gauge = { stitches: 28, rows: 40 };
    const grid = scattered(MOST_STITCHES, 1, 64, 11);
    const { pages } = sheetOf(projectOf({ stitches: MOST_STITCHES, rows: 3, grid, yarns, isAllOver: true, gauge }));
    const named = pages.filter((page) => /^1( …)?$/m.test(wordsOn(page)) && /^W+:?$|: L/m.test(wordsOn(page)));
    expect(named.length).toBeGreaterThanOrEqual(2);
  });
});

/** The needles of a row as it is printed: `L48–L40, L38; L30, and so on every 2 needles up to R7`. */
function needlesIn(text: string): number[] {
  return text.split('; ').flatMap((part) => {
    const [, unit = part, every, last] = /^(.*), and so on every (\d+) needles up to (\S+)$/.exec(part) ?? [];
    const needles = unit.split(', ').flatMap((run) => {
      const [from, to] = run.split('–').map((name): number => parseNeedle(name)) as [number, number?];
      return Array.from({ length: (to ?? from) - from + 1 }, (_, at) => from + at);
    });
    if (every === undefined || last === undefined) return needles;
    const found: number[] = [];
    for (let by = 0; (needles[0] as number) + by <= parseNeedle(last); by += Number(every)) {
      found.push(...needles.map((needle) => needle + by).filter((needle) => needle <= parseNeedle(last)));
    }
    return found;
  });
}

function textIn(items: readonly SheetItem[]): string {
  return items.flatMap((item) => (item.kind === 'text' ? [item.spans.map(({ text }) => text).join('')] : [])).join(' ');
}
