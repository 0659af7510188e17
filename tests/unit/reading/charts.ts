/** Charts on paper as they come: printed, drawn, coloured in, and cards with holes. */
import type { ChartReading, Levels } from '@shared/reading/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import type { ChartStyle } from './chart-photo.ts';

const PAPER = [235, 230, 220] as const;
const INK = [60, 55, 60] as const;

export interface Chart {
  readonly name: string;
  readonly style: ChartStyle;
  readonly levels: Levels;
}

const ink: Levels = { kind: 'ink', figure: 'dark' };
const found: Levels = { kind: 'colours', count: null };

export const charts: readonly Chart[] = [
  {
    name: 'graph paper, inked in',
    levels: ink,
    style: { colours: [PAPER, INK], line: 0.08, lineColour: [150, 150, 160], thickEvery: 10 },
  },
  {
    name: 'a printed chart of four yarns',
    levels: found,
    style: {
      colours: [PAPER, [60, 55, 160], [180, 40, 40], [40, 120, 60]],
      line: 0.06,
      lineColour: [90, 90, 90],
      cellHeight: 0.7,
    },
  },
  {
    name: 'faint lines, pencilled in',
    levels: ink,
    style: { colours: [PAPER, [130, 128, 126]], line: 0.06, lineColour: [205, 200, 200] },
  },
  {
    name: 'thick lines, some missing',
    levels: ink,
    style: { colours: [PAPER, INK], line: 0.2, lineColour: [110, 110, 110], broken: 0.2 },
  },
  {
    name: 'cells without lines',
    levels: found,
    style: {
      colours: [
        [200, 190, 170],
        [40, 50, 100],
        [190, 60, 50],
      ],
      line: 0,
    },
  },
  {
    name: 'crosses in the cells',
    levels: ink,
    style: { colours: [PAPER, INK], line: 0.06, lineColour: [150, 150, 150], mark: 'cross' },
  },
  {
    name: 'dots in the cells',
    levels: ink,
    style: { colours: [PAPER, INK], line: 0.06, lineColour: [150, 150, 150], mark: 'dot', cellHeight: 0.7 },
  },
  {
    name: 'a punched card on a dark table',
    levels: ink,
    style: { colours: [[225, 220, 200], INK], line: 0, mark: 'hole', surround: [45, 40, 40] },
  },
  {
    name: 'six yarns, two of them greys',
    levels: { kind: 'colours', count: 6 },
    style: {
      colours: [
        [225, 215, 195],
        [40, 50, 100],
        [190, 60, 50],
        [230, 180, 60],
        [70, 130, 80],
        [150, 150, 155],
      ],
      line: 0.06,
      lineColour: [110, 110, 110],
      cellHeight: 0.7,
    },
  },
];

export interface Outcome {
  readonly wrong: number;
  readonly wrongButSure: number;
  readonly doubtful: number;
}

/**
 * A reading against the chart. Yarns are matched by their colours being most
 * often at the same place, one to one, since a reading names them by its own
 * order.
 */
export function compare(reading: ChartReading, grid: Grid): Outcome {
  const counts = new Map<string, number>();
  reading.grid.cells.forEach((yarn, cell) => {
    const pair = `${yarn} ${grid.cells[cell]}`;
    counts.set(pair, (counts.get(pair) ?? 0) + 1);
  });
  const meant = new Map<number, number>();
  for (const [pair] of [...counts].sort((a, b) => b[1] - a[1])) {
    const [yarn, index] = pair.split(' ').map(Number) as [number, number];
    if (!meant.has(yarn) && ![...meant.values()].includes(index)) meant.set(yarn, index);
  }
  let wrong = 0;
  let wrongButSure = 0;
  let doubtful = 0;
  reading.grid.cells.forEach((yarn, cell) => {
    const isWrong = meant.get(yarn) !== grid.cells[cell];
    const isDoubtful = reading.doubtful[cell] === 1;
    if (isWrong) wrong++;
    if (isWrong && !isDoubtful) wrongButSure++;
    if (isDoubtful) doubtful++;
  });
  return { wrong, wrongButSure, doubtful };
}
