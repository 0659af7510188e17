import { describe, expect, it } from 'vitest';
import { label } from '@shared/bed/index.ts';
import { gridFromText } from '@shared/grid/index.ts';
import {
  placementSheet,
  sheetFacts,
  type ChartSides,
  type SheetDocument,
  type SheetItem,
} from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { bandsOf, type Band } from '@shared/pattern/index.ts';
import { pieceIn, sampleProject, startAllOver, type ProjectAt, projectAt } from '@shared/project/index.ts';
import { TEST_DAY } from '../../day.ts';
import { wordsOn } from './items-of.ts';
import { filledProject, threeMotifsProject } from './projects.ts';

interface Chart {
  readonly items: readonly SheetItem[];
}

function sheetOf(project: ProjectAt, charts?: ChartSides): { document: SheetDocument; charts: Chart[] } {
  const plan = makePlan(pieceIn(project));
  const options = { paper: 'a4', date: TEST_DAY, ...(charts ? { charts } : {}) } as const;
  const document = placementSheet(sheetFacts(project), plan, options);
  return {
    document,
    charts: document.pages.flatMap(({ elements }) =>
      elements.flatMap((element) =>
        element.role === 'figure' && element.description.startsWith('Chart of') ? [{ items: element.items }] : [],
      ),
    ),
  };
}

const chartsOf = (project: ProjectAt, charts?: ChartSides): Chart[] => sheetOf(project, charts).charts;

/** The contrast cells of a chart: columns of each line from the top. */
function drawn({ items }: Chart): string[] {
  const lines = new Map<number, string[]>();
  for (const item of items) {
    if (item.kind !== 'cells') continue;
    for (const { line, column, length } of item.runs) {
      const row = lines.get(line) ?? Array.from({ length: 14 }, () => '.');
      lines.set(line, row.fill('X', column, column + length));
    }
  }
  return [...lines].sort(([a], [b]) => a - b).map(([, cells]) => cells.join(''));
}

const flipped = (lines: readonly string[]): string[] => lines.map((line) => [...line].reverse().join(''));

const text = (item: SheetItem): string => (item.kind === 'text' ? item.spans.map((span) => span.text).join('') : '');

describe('the charts of a sheet', () => {
  const sample = projectAt(sampleProject());

  it('show the motif as it lies on the needles, and as worn', () => {
    const [onNeedles, worn, ...others] = chartsOf(sample) as [Chart, Chart];
    expect(others).toEqual([]);
    expect(drawn(onNeedles)).toEqual(flipped(drawn(worn)));
    // Row 25 of the plan is the lowest of the chart: its first copy begins at L39.
    const contrast = makePlan(pieceIn(sample)).rows[24]?.contrast ?? [];
    const inCopy = contrast.filter(({ last }) => last < -39 + 14).map(({ first, last }) => [first + 39, last + 39]);
    const lowest = drawn(onNeedles).at(-1) ?? '';
    const expected = Array.from({ length: 14 }, (_, at) =>
      inCopy.some(([from = 0, to = 0]) => from <= at && at <= to) ? 'X' : '.',
    );
    expect(lowest).toBe(expected.join(''));
  });

  it('are the one that is asked for', () => {
    const both = chartsOf(sample).map(drawn);
    expect(chartsOf(sample, 'needles').map(drawn)).toEqual([both[0]]);
    expect(chartsOf(sample, 'worn').map(drawn)).toEqual([both[1]]);
  });

  it('are one where the purl side is worn', () => {
    const purl = { ...sample, piece: { ...sample.piece, finishedFace: 'purl' } } as const;
    expect(chartsOf(purl)).toHaveLength(1);
  });

  const lettersOf = ({ items }: Chart): { text: string; x: number }[] =>
    items.flatMap((item) =>
      item.kind === 'text' && ['L', 'R'].includes(text(item)) ? [{ text: text(item), x: Math.round(item.x) }] : [],
    );
  /** The letters of each column, from the left, each from the lowest row up. */
  const columnsOf = (chart: Chart): string[] => {
    const columns = new Map<number, string>();
    for (const { text, x } of lettersOf(chart)) columns.set(x, (columns.get(x) ?? '') + text);
    return [...columns].sort(([a], [b]) => a - b).map(([, letters]) => letters);
  };
  /** The side that the carriage leaves from before each of some rows: the start side before row 1, then by turns. */
  const sides = (project: ProjectAt, first: number, count: number): string =>
    Array.from({ length: count }, (_, row) =>
      ((first + row) % 2 === 1) === (project.piece.startSide === 'left') ? 'L' : 'R',
    ).join('');
  const [band] = bandsOf(sample) as [Band];
  const at = (row: number, up = 1): Band => ({
    ...band,
    position: { kind: 'from-row', row },
    groups: band.groups.map((group) => ({ ...group, up })),
  });

  it('say for each row the side of the bed that its carriage leaves from, as on the needles and as worn', () => {
    for (const chart of chartsOf(sample)) expect(columnsOf(chart)).toEqual([sides(sample, 25, 18)]);
    expect(chartsOf(sample)).toHaveLength(2);
  });

  it('say the sides and the counter of both places where a motif stands on two', () => {
    const project = { ...sample, patterns: [at(25), at(62)] };
    for (const chart of chartsOf(project)) {
      expect(columnsOf(chart)).toEqual([sides(project, 25, 18), sides(project, 62, 18)]);
      expect(chart.items.map(text)).toEqual(expect.arrayContaining(['42', '79']));
    }
  });

  it('say the sides of either kind of rows where it stands on more', () => {
    const project = { ...sample, patterns: [at(25), at(62), at(83), at(104)] };
    const { document, charts } = sheetOf(project);
    for (const chart of charts) {
      // 25 and 83 begin with one side, 62 and 104 with the other.
      expect(columnsOf(chart)).toEqual([sides(project, 25, 18), sides(project, 62, 18)]);
      expect(chart.items.map(text)).toEqual(expect.arrayContaining(['a', 'b']));
    }
    expect(document.pages.map(wordsOn).join(' ').replaceAll('\n', ' ')).toContain(
      'At the left: a where it begins on rows 25 and 83 and b where it begins on rows 62 and 104.',
    );
  });

  it('say in which groups and fills they stand, few groups with their needles', () => {
    const said = (project: ProjectAt): string =>
      sheetOf(project).document.pages.map(wordsOn).join(' ').replaceAll('\n', ' ');
    expect(said(sample)).toContain('It stands in group 1 (L39–L12) and group 2 (R11–R38).');
    const many = { ...sample, patterns: [at(25), at(62), at(83)] };
    expect(said(many)).toContain('It stands in groups 1–6.');
    const three = threeMotifsProject();
    const plan = makePlan(pieceIn(three));
    for (const [index, { block }] of plan.groups.entries()) {
      expect(said(three)).toContain(`group ${index + 1} (${label(block.first)}–${label(block.last)})`);
    }
    // As the paragraphs on the first page call them.
    expect(said(filledProject())).toContain('It stands in all-overs 1–2.');
  });

  it('say the sides of copies above each other, and of fills', () => {
    const odd = { ...sample.motifs[0], grid: gridFromText(['.XX', 'X..', 'XX.'], '.X') } as ProjectAt['motifs'][number];
    const stacked = { ...sample, motifs: [odd], patterns: [at(25, 2)] };
    for (const chart of chartsOf(stacked))
      expect(columnsOf(chart)).toEqual([sides(stacked, 25, 3), sides(stacked, 28, 3)]);
    const filled = { ...sample, motifs: [odd], patterns: [startAllOver(odd.id, 2)] };
    for (const chart of chartsOf(filled)) expect(columnsOf(chart)).toEqual([sides(filled, 2, 3), sides(filled, 5, 3)]);
    expect(chartsOf(filled)).not.toHaveLength(0);
  });
});
