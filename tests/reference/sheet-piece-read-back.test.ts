/** The piece on the printed sheet, found again in the PDF's own graphics: each stitch where the gauge of its section puts it. */
import { beforeAll, describe, expect, it } from 'vitest';
import { gridFromText } from '@shared/grid/index.ts';
import { placementSheet, sheetFacts } from '@shared/output/index.ts';
import { edgesAt } from '@shared/piece/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, sampleProject, startBand, startGroup, START_PIECE, projectAt } from '@shared/project/index.ts';
import { sheetToPdf } from '../../src-main/services/export/index.ts';
import { TEST_DAY } from '../day.ts';
import { readPdf, type PageRead } from '../pdf.ts';
import { fillAt, graphicsOf, type DrawnPath, type PointMm } from '../pdf-graphics.ts';
import { writtenProject } from '../written-projects.ts';

const sample = projectAt(sampleProject());
const [MAIN, CONTRAST] = ['#2f4858', '#f5f1e6'];

/** A rib of 14 stitches and 20 rows in 10 cm, 20 rows high, under a body of 28 and 40, 40 rows high; one motif on both. */
const ribbed = writtenProject({
  name: 'Ribbed',
  notes: '',
  machine: sample.machine,
  yarns: [
    { name: 'slate', colour: MAIN, count: null, onHand: null },
    { name: 'chalk', colour: CONTRAST, count: null, onHand: null },
  ],
  mainYarn: 0,
  motifs: [
    {
      id: 'm',
      name: 'step',
      grid: gridFromText(['#..', '##.', '###'], '.#'),
      shows: 'needles',
      isLettering: false,
      underlay: null,
    },
  ],
  piece: {
    ...START_PIECE,
    gauge: { stitches: 28, rows: 40 },
    shape: { kind: 'rectangle', stitches: 120, rows: 60 },
    sections: [{ name: 'rib', rows: 20, isLined: false, gauge: { stitches: 14, rows: 20 }, tension: '' }],
  },
  patterns: [
    { ...startBand('m', [2, 2]), position: { kind: 'from-row', row: 9 } },
    { ...startBand('m', [2]), groups: [{ ...startGroup('m', 3), up: 2 }], position: { kind: 'from-row', row: 31 } },
    // Half of it on the rib.
    { ...startBand('m', [1]), groups: [{ ...startGroup('m', 1), up: 2 }], position: { kind: 'from-row', row: 18 } },
  ],
});
const plan = makePlan(pieceIn(ribbed));

let drawn: readonly DrawnPath[];
let page: PageRead;
/** The drawing is one to this, as it says. */
let scale: number;
let outline: readonly PointMm[];
/** Of the piece as it is drawn. */
let box: { left: number; right: number; top: number; bottom: number };

beforeAll(async () => {
  const bytes = await sheetToPdf(placementSheet(sheetFacts(ribbed), plan, { paper: 'a4', date: TEST_DAY }));
  page = (await readPdf(bytes))[0] as PageRead;
  const all = (await graphicsOf(bytes, (number) => number === 1))[0] as DrawnPath[];
  const isPiece = ({ tag, fill }: DrawnPath): boolean => tag === 'Figure' && fill === MAIN;
  drawn = all.filter(({ part }) => part === all.find(isPiece)?.part);
  scale = Number(/drawn at 1 : ([\d.]+)/.exec(page.texts.map(({ text }) => text).join(' '))?.[1]);
  outline = drawn.find(({ fill }) => fill === MAIN)?.lines[0] ?? [];
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  box = { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
});

/** Where a stitch lies by the gauge of its row, in mm on the page: the rib's rows are 5 mm, the body's 2.5. */
function middleOf(needle: number, row: number): PointMm {
  const isRib = row <= 20;
  const stitchMm = 100 / (isRib ? 14 : 28);
  const up = isRib ? (row - 0.5) * 5 : 100 + (row - 20.5) * 2.5;
  return [(box.left + box.right) / 2 + ((needle + 0.5) * stitchMm) / scale, box.bottom - up / scale];
}

describe('a rib of half as many stitches and rows in 10 cm', () => {
  it('is twice as wide as the body above it and, of half as many rows, as tall, at the scale that stands above it', () => {
    // 120 stitches: 120 × 100 / 14 = 857.1 mm, 120 × 100 / 28 = 428.6 mm; 20 × 5 mm + 40 × 2.5 mm = 200 mm.
    expect(box.right - box.left).toBeCloseTo(857.142857 / scale, 2);
    expect(box.bottom - box.top).toBeCloseTo(200 / scale, 2);
    const upper = outline.filter(([, y]) => y < (box.top + box.bottom) / 2 - 0.1).map(([x]) => x);
    expect(Math.max(...upper) - Math.min(...upper)).toBeCloseTo(428.571429 / scale, 2);
    // They meet half way up.
    expect(new Set(outline.map(([, y]) => y.toFixed(2)))).toEqual(
      new Set([box.top, (box.top + box.bottom) / 2, box.bottom].map((y) => y.toFixed(2))),
    );
  });

  it('has each stitch in its yarn where its gauge puts it, as the body has', () => {
    const { fabric } = plan;
    let told = 0;
    const wrong: string[] = [];
    for (let row = 1; row <= 60; row++) {
      const { first, last } = edgesAt(plan.outline, row);
      for (let needle: number = first; needle <= last; needle++) {
        const yarn = fabric.cells[(row - 1) * fabric.width + (needle - fabric.first)];
        const seen = fillAt(drawn, ...middleOf(needle, row));
        // Numbers and names stand on paper.
        if (seen === '#ffffff') continue;
        told++;
        if (seen !== (yarn === 0 ? MAIN : CONTRAST)) wrong.push(`needle ${needle}, row ${row}: ${seen ?? 'nothing'}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(told).toBeGreaterThan(0.9 * 60 * 120);
  });

  it('is told: the ruler below stands as on row 1', () => {
    expect(page.texts.map(({ text }) => text).join(' ')).toContain(
      'each section by its own gauge; the ruler below is that of row 1',
    );
  });
});

describe('what must be found on the needles', () => {
  it('hangs below the needle as it stands on row 1, and is led up to its row without crossing another', () => {
    const lines = drawn
      .filter(({ fill, stroke }) => fill === null && stroke && stroke.colour !== '#ffffff' && !stroke.isDashed)
      .flatMap(({ lines: own }) => own)
      .filter((line) => (line.at(-1)?.[1] ?? 0) > box.bottom + 1 && (line[0]?.[1] ?? Infinity) <= box.bottom + 0.01);
    expect(lines.length).toBeGreaterThanOrEqual(8);
    const first = (group: number): number => plan.groups[group]?.block.first ?? NaN;
    const upper = plan.groups.findIndex(({ firstRow }) => firstRow === 31);
    const [top, below] = [middleOf(first(upper), 31), middleOf(first(upper), 1)];
    const found = lines.find(([from]) => from && Math.abs(from[0] - top[0]) < 0.01 && from[1] < box.bottom - 1);
    // It begins at the lower edge of row 31, half a row of 2.5 mm below its middle, and ends under row 1's needle.
    expect(found?.[0]?.[1]).toBeCloseTo(top[1] + 1.25 / scale, 2);
    expect(found?.at(-1)?.[0]).toBeCloseTo(below[0], 2);
    // Left to right they keep their order at every height that two of them pass.
    const at = (line: readonly PointMm[], y: number): number | null => {
      for (let index = 1; index < line.length; index++) {
        const [from, to] = [line[index - 1] as PointMm, line[index] as PointMm];
        if (from[1] <= y && to[1] >= y && to[1] > from[1])
          return from[0] + ((y - from[1]) / (to[1] - from[1])) * (to[0] - from[0]);
      }
      return null;
    };
    for (const one of lines) {
      for (const other of lines) {
        const end = Math.sign((one.at(-1)?.[0] as number) - (other.at(-1)?.[0] as number));
        for (let y = box.top; y < box.bottom; y += 0.25) {
          const [a, b] = [at(one, y), at(other, y)];
          if (a !== null && b !== null && Math.abs(a - b) > 1e-6) expect(Math.sign(a - b)).toBe(end);
        }
      }
    }
  });

  it('has its row beside it: the first row of the body where the rib ends', () => {
    const number = page.texts.find(({ text, x }) => text === '21' && x > box.right);
    // The baseline of a number of 10 pt stands within 2 mm of the middle of its row.
    expect(Math.abs((number?.y ?? 0) - middleOf(0, 21)[1])).toBeLessThan(2);
  });

  it('has the spaces of a band from edge to edge of the rows it stands on', () => {
    const across = (row: number): PointMm[] =>
      drawn
        .filter(({ stroke }) => stroke && !stroke.isDashed && stroke.colour !== '#ffffff')
        .flatMap(({ lines }) => lines)
        .filter(
          ([from, to]) =>
            from && to && Math.abs(from[1] - to[1]) < 1e-3 && Math.abs(from[1] - middleOf(0, row)[1]) < 0.02,
        )
        .flat();
    for (const row of [9, 31]) {
      const xs = across(row)
        .map(([x]) => x)
        .filter((x) => x <= box.right + 0.01);
      const half = (60 * 100) / (row <= 20 ? 14 : 28) / scale;
      const middle = (box.left + box.right) / 2;
      expect(Math.min(...xs)).toBeCloseTo(middle - half, 2);
      expect(Math.max(...xs)).toBeCloseTo(middle + half, 2);
    }
  });

  it('has nothing beyond the width of the page', () => {
    for (const { lines } of drawn) for (const [x] of lines.flat()) expect(x).toBeLessThan(page.widthMm - 10);
    for (const { x, widthMm } of page.texts) expect(x + widthMm).toBeLessThan(page.widthMm - 10);
  });
});
