import { describe, expect, it } from 'vitest';
import { gridToText } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { applyChange, emptyProject } from '@shared/project/index.ts';
import { layChange } from '../../../src-renderer/motif/editing/cutting.ts';
import { centredOn, stampOf } from '../../../src-renderer/motif/editing/stamp.ts';
import { drawnMotif } from './drawn-motif.ts';

const full = drawnMotif(['ooooo', 'ooooo', 'ooooo', 'ooooo'], 'full');
const gull = drawnMotif(['#.#', '.#.'], 'gull');

/** The full chart after the gull is stamped with its middle on a cell. */
function stamped(isFigureOnly: boolean, column: number, row: number): string[] {
  const cells = stampOf(gull.grid, 0, isFigureOnly);
  const change = layChange(full, 0, { name: 'stamp', cells, at: centredOn(cells, { column, row }) });
  if (!change) return [];
  const after = applyChange({ ...emptyProject('p', 'm'), motifs: [full, gull] }, change);
  return gridToText((after.motifs[0] as Motif).grid, '.#o');
}

describe('a stamp', () => {
  it('lays the figure alone and leaves the ground under it as it is', () => {
    expect(stamped(true, 2, 1)).toEqual(['ooooo', 'o#o#o', 'oo#oo', 'ooooo']);
  });

  it('lays all cells where that is asked for', () => {
    expect(stamped(false, 2, 1)).toEqual(['ooooo', 'o#.#o', 'o.#.o', 'ooooo']);
  });

  it('is cut at the edge of the chart', () => {
    expect(stamped(true, 0, 3)).toEqual(['#oooo', 'ooooo', 'ooooo', 'ooooo']);
    expect(stamped(true, 9, 9)).toEqual([]);
  });
});
