/** What is computed from a project, against one read of every cell. */
import { findingsOf } from '@shared/check/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import { measure, trueRepeat } from '@shared/motif/repeat/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { runningOrderOf } from '@shared/plan/running-order/index.ts';
import {
  projectAt,
  pieceIn,
  sampleProject,
  START_PIECE,
  startBand,
  startAllOver,
  startGroup,
  type ProjectAt,
} from '@shared/project/index.ts';
import type { Bar } from './bar.ts';
import { holdUp } from './slowed.ts';
import { gridOf, numbers, ratioBar, readEveryCell, timed } from './timing.ts';

const WIDTH = 200;
const HEIGHT = 1000;

function bar(name: string, limit: number, cells: Uint8Array, rounds: number, work: () => number): Bar {
  return ratioBar({ name, limit, rounds, work, against: () => readEveryCell(cells) });
}

/**
 * How the cost grows from a part of the work to all of it. Each is taken at its
 * quickest: a long run is interrupted more often than a short one, which is the
 * machine's growth and not the program's.
 */
function growthBar(name: string, limit: number, rounds: number, all: () => number, part: () => number): Bar {
  for (let i = 0; i < 20; i++) timed(() => all() + part());
  let ours = Infinity;
  let against = Infinity;
  for (let i = 0; i < rounds; i++) {
    against = Math.min(against, timed(part));
    ours = Math.min(
      ours,
      timed(all, () => holdUp(limit, against)),
    );
  }
  return { name, limit, kind: 'at most', ratio: ours / against, ours, against };
}

/** A pattern of 20 × 25 without end, and the same stepped by half. */
function patterns(random: () => number): Record<'straight' | 'stepped', (column: number, row: number) => number> {
  const tile = gridOf(20, 25, () => (random() < 0.4 ? 1 : 0));
  const straight = (column: number, row: number): number => tile.cells[(row % 25) * 20 + (column % 20)] as number;
  return { straight, stepped: (column, row) => straight(column + 10 * (Math.floor(row / 25) % 2), row) };
}

/** Drawings of 200 × 1000 that ask for different amounts of checking. */
export function repeatBars(): Bar[] {
  const random = numbers();
  const { straight: tiled } = patterns(random);
  const drawings: [string, Grid][] = [
    ['without a repeat', gridOf(WIDTH, HEIGHT, () => (random() < 0.4 ? 1 : 0))],
    ['tiled 20 × 25', gridOf(WIDTH, HEIGHT, tiled)],
    [
      'tiled 20 × 25 but for its last cell',
      gridOf(WIDTH, HEIGHT, (c, r) => (c + r === 1198 ? 1 - tiled(c, r) : tiled(c, r))),
    ],
    ['all ground', gridOf(WIDTH, HEIGHT, () => 0)],
  ];
  return drawings.map(([name, grid]) =>
    bar(`true repeat of 200 × 1000, ${name}, against one read of every cell`, 12, grid.cells, 60, () => {
      const { width, height } = trueRepeat(grid);
      return width + height;
    }),
  );
}

/** Drawings of a size that are hard to measure in different ways: nothing repeats, all repeats, or nearly so. */
function drawingsToMeasure(width: number, height: number): [string, Grid][] {
  const random = numbers();
  const { straight, stepped } = patterns(random);
  const withSlips =
    (cell: (column: number, row: number) => number) =>
    (column: number, row: number): number =>
      random() < 0.005 ? 1 - cell(column, row) : cell(column, row);
  return [
    ['without a repeat', gridOf(width, height, () => (random() < 0.4 ? 1 : 0))],
    ['tiled 20 × 25', gridOf(width, height, straight)],
    ['tiled 20 × 25 with slips', gridOf(width, height, withSlips(straight))],
    ['stepped by half', gridOf(width, height, stepped)],
    ['stepped by half with slips', gridOf(width, height, withSlips(stepped))],
    ['all ground', gridOf(width, height, () => 0)],
  ];
}

function measured(grid: Grid): number {
  const { repeat, slips } = measure(grid, 0);
  return repeat.width + repeat.height + slips.length;
}

/** All there is to say about a drawing: against one read of every cell, and against a quarter of its rows. */
export function measureBars(): Bar[] {
  const all = drawingsToMeasure(WIDTH, HEIGHT).map(([name, grid]) =>
    bar(`all that is measured of 200 × 1000, ${name}, against one read of every cell`, 80, grid.cells, 30, () =>
      measured(grid),
    ),
  );
  const quarters = drawingsToMeasure(WIDTH, HEIGHT / 4);
  const growth = drawingsToMeasure(WIDTH, HEIGHT).map(([name, grid], at) => {
    const quarter = (quarters[at] as [string, Grid])[1];
    return growthBar(
      `all that is measured of 200 × 1000, ${name}, against 200 × 250`,
      4.6,
      60,
      () => measured(grid),
      () => measured(quarter),
    );
  });
  return [...all, ...growth];
}

/** A piece of 200 needles and 1000 rows, covered with copies of a motif. */
export function planBars(): Bar[] {
  const lighthouse = (projectAt(sampleProject()).motifs[0] as Motif).grid;
  const random = numbers();
  const motifs: [string, Grid][] = [
    ['lighthouses all over', lighthouse],
    ['random cells all over', gridOf(25, 50, () => (random() < 0.4 ? 1 : 0))],
  ];
  const cells = gridOf(WIDTH, HEIGHT, () => (random() < 0.4 ? 1 : 0)).cells;
  return motifs.map(([name, grid]) => {
    const project = coveredWith(grid);
    return bar(`plan of 200 needles and 1000 rows, ${name}, against one read of every cell`, 60, cells, 60, () => {
      const plan = makePlan(pieceIn(project));
      return plan.rows.length + findingsOf(pieceIn(project), plan).length;
    });
  });
}

/** From casting on to casting off: the same pieces, and one all over with end needles on. */
export function runningOrderBars(): Bar[] {
  const lighthouse = (projectAt(sampleProject()).motifs[0] as Motif).grid;
  const random = numbers();
  const speckled = coveredWith(gridOf(25, 50, () => (random() < 0.4 ? 1 : 0)));
  const projects: [string, ProjectAt][] = [
    ['lighthouses all over', coveredWith(lighthouse)],
    ['random cells all over', speckled],
    ['an all-over of random cells', { ...speckled, patterns: [startAllOver((speckled.motifs[0] as Motif).id, 3)] }],
  ];
  const cells = gridOf(WIDTH, HEIGHT, () => (random() < 0.4 ? 1 : 0)).cells;
  return projects.map(([name, project]) => {
    const piece = pieceIn(project);
    const plan = makePlan(piece);
    return bar(
      `running order of 200 needles and 1000 rows, ${name}, against one read of every cell`,
      10,
      cells,
      60,
      () => {
        // A plan keeps its order, so each is asked of a new one.
        const outcome = runningOrderOf(piece, { ...plan });
        return outcome.isKnittable ? outcome.order.length : 0;
      },
    );
  });
}

function coveredWith(grid: Grid): ProjectAt {
  const sample = projectAt(sampleProject());
  const [motif] = sample.motifs as [Motif];
  const across = Math.floor(WIDTH / grid.width);
  const up = Math.floor((HEIGHT - 1) / grid.height);
  return {
    ...sample,
    motifs: [{ ...motif, grid }],
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: WIDTH, rows: HEIGHT } },
    patterns: [
      {
        ...startBand(motif.id, [across]),
        groups: [{ ...startGroup(motif.id, across), up }],
        position: { kind: 'from-row', row: 2 },
      },
    ],
  };
}
