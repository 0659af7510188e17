/** What the undo history keeps in memory, against the program with the same project and no history. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { makeGrid, patchCells, strokeCells } from '@shared/grid/index.ts';
import {
  changeOf,
  commit,
  MOST_STEPS,
  paintCells,
  projectAround,
  START_YARNS,
  startHistory,
  type History,
} from '@shared/project/index.ts';
import type { Bar } from './bar.ts';

const WIDTH = 200;
const HEIGHT = 1000;
/** Cells that one drag covers. */
const STROKE = 40;

/** 1,000 drags over a motif of 200 × 1000 cells. */
export function memoryBars(): Bar[] {
  const collect = collector();
  const project = projectAround('p', 'm', makeGrid(WIDTH, HEIGHT), 0, 'worn', START_YARNS);
  let history = startHistory(project);
  // Once beforehand, for the compiler's own memory to be there already.
  drawn(history);
  const empty = megabytes(collect);
  history = drawn(history);
  const full = megabytes(collect);
  if (history.past.length !== MOST_STEPS) throw new Error(`${history.past.length} steps are kept`);
  return [
    {
      name: `memory with ${MOST_STEPS} undo steps of ${STROKE} cells on ${WIDTH} × ${HEIGHT}, against an empty history`,
      kind: 'at most',
      limit: 3,
      ratio: full / empty,
      unit: 'MB',
      ours: full,
      against: empty,
    },
  ];
}

function drawn(start: History): History {
  let history = start;
  for (let step = 0; step < MOST_STEPS; step++) {
    const { grid, id } = history.project.motifs[0] as (typeof history.project.motifs)[number];
    const row = (step * 7) % HEIGHT;
    const from = { column: step % (WIDTH - STROKE), row };
    const line = strokeCells(from, { column: from.column + STROKE - 1, row: Math.min(HEIGHT - 1, row + 9) });
    const patch = patchCells(
      grid,
      line.map(
        ({ column, row: at }) => [at * WIDTH + column, 1 - (grid.cells[at * WIDTH + column] as number)] as const,
      ),
    );
    history = commit(history, changeOf('draw', paintCells(id, patch)));
  }
  return history;
}

/** What objects and buffers take after everything unused is gone, in MB. */
function megabytes(collect: () => void): number {
  for (let i = 0; i < 3; i++) collect();
  const { heapUsed, external } = process.memoryUsage();
  return (heapUsed + external) / 1e6;
}

/** The garbage collector as a function. */
function collector(): () => void {
  setFlagsFromString('--expose-gc');
  return runInNewContext('gc') as () => void;
}
