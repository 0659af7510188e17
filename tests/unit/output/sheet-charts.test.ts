import { describe, expect, it } from 'vitest';
import { placementSheet, sheetFacts, type ChartSides, type SheetItem } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, sampleProject, type Project } from '@shared/project/index.ts';
import { TEST_DAY } from '../../day.ts';

interface Chart {
  readonly items: readonly SheetItem[];
}

function chartsOf(project: Project, charts?: ChartSides): Chart[] {
  const plan = makePlan(pieceIn(project));
  const options = { paper: 'a4', date: TEST_DAY, ...(charts ? { charts } : {}) } as const;
  return placementSheet(sheetFacts(project), plan, options).pages.flatMap(({ elements }) =>
    elements.flatMap((element) =>
      element.role === 'figure' && element.description.startsWith('Chart of') ? [{ items: element.items }] : [],
    ),
  );
}

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
  const sample = sampleProject();

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

  it('say for each row on the needles the side that its carriage leaves from', () => {
    const [onNeedles, worn] = chartsOf(sample) as [Chart, Chart];
    const letters = ({ items }: Chart): string[] => items.map(text).filter((said) => said === 'L' || said === 'R');
    const from = makePlan(pieceIn(sample))
      .rows.slice(24, 42)
      .map((row) => (row.from === 'left' ? 'L' : 'R'));
    expect(letters(onNeedles)).toEqual(from);
    expect(letters(worn)).toEqual([]);
  });
});
