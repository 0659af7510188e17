/** What undo keeps in memory: the cells and fields that changed, and nothing of what did not. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { makeGrid, patchCells, strokeCells } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import {
  addSection,
  applyChange,
  changeOf,
  commit,
  MOST_STEPS,
  paintCells,
  projectAround,
  projectAt,
  renameSection,
  renameSize,
  setMotif,
  setProject,
  START_YARNS,
  startHistory,
  undo,
  undoName,
  type Change,
  type Project,
} from '@shared/project/index.ts';
import { yarnChange } from '../../../src-renderer/motif/editing/palette.ts';

const WIDTH = 200;
const HEIGHT = 1000;
/** Cells that one drag covers. */
const STROKE = 40;
const MOST_BYTES = 2_000_000;

/** What has a name, renamed in turn. */
const RENAMES: readonly ((project: Project, name: string) => Change)[] = [
  ({ motifs }, name) => changeOf('rename-motif', setMotif(motifs[0]?.id ?? '', { name })),
  (project, name) => yarnChange(project, 1, { name }),
  (_, name) => changeOf('rename-project', setProject({ name })),
  (project, name) => renameSection(projectAt(project), 0, name),
  (project, name) => renameSize(projectAt(project), 0, name),
];

function start(): Project {
  const plain = projectAround('p', 'm', makeGrid(WIDTH, HEIGHT), 0, 'worn', START_YARNS);
  return applyChange(plain, addSection(projectAt(plain), () => 'rib').change);
}

/** A stroke and a rename in turn, as many as are kept. */
function worked() {
  let history = startHistory(start());
  for (let step = 0; step < MOST_STEPS; step++) {
    const { project } = history;
    const rename = RENAMES[(step >> 1) % RENAMES.length] as (typeof RENAMES)[number];
    history = commit(history, step % 2 === 0 ? stroke(project, step) : rename(project, `name ${step}`));
  }
  return history;
}

function stroke({ motifs }: Project, step: number): Change {
  const { grid, id } = motifs[0] as Motif;
  const row = (step * 7) % (HEIGHT - 10);
  const from = { column: step % (WIDTH - STROKE), row };
  const line = strokeCells(from, { column: from.column + STROKE - 1, row: row + 9 });
  const cells = line.map(({ column, row: at }) => at * WIDTH + column);
  const patch = patchCells(
    grid,
    cells.map((cell) => [cell, 1 - (grid.cells[cell] as number)] as const),
  );
  return changeOf('draw', paintCells(id, patch));
}

/** The garbage collector, as a function. */
const collect = (() => {
  setFlagsFromString('--expose-gc');
  return runInNewContext('gc') as () => void;
})();

/** What objects and buffers take once everything unused is gone. */
function bytesInUse(): number {
  for (let i = 0; i < 4; i++) collect();
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

describe('a full history of a motif of 200 × 1000', () => {
  it('takes at most 2 MB, with strokes and renames in turn', () => {
    // Once beforehand, for what the engine itself keeps of the code to be there already.
    worked();
    const kept = { history: worked() };
    expect(kept.history.past).toHaveLength(MOST_STEPS);
    const full = bytesInUse();
    kept.history = startHistory(kept.history.project);
    expect(full - bytesInUse()).toBeLessThanOrEqual(MOST_BYTES);
  });

  it('leads back to the beginning', () => {
    let history = worked();
    while (undoName(history) !== null) history = undo(history);
    expect(history.project).toStrictEqual(start());
  });
});
