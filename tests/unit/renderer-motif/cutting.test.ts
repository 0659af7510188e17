import { describe, expect, it } from 'vitest';
import { gridToText, mirrorAcross } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { applyChange, emptyProject, type Change } from '@shared/project/index.ts';
import {
  cutBox,
  cutChange,
  cutColour,
  holds,
  layChange,
  type Cutting,
} from '../../../src-renderer/motif/editing/cutting.ts';
import { drawnMotif } from './drawn-motif.ts';

const flag = drawnMotif(['##..', '#o..']);
const place = (column: number, row: number) => ({ column, row });
const some = (cutting: Cutting | null): Cutting => {
  if (!cutting) throw new Error('Nothing was cut');
  return cutting;
};
const drawn = (change: Change | null): string[] | null => {
  if (!change) return null;
  const project = applyChange({ ...emptyProject('p', 'm'), motifs: [flag] }, change);
  return gridToText((project.motifs[0] as Motif).grid, '.#o');
};

describe('a cutting', () => {
  const box = some(cutBox(flag.grid, place(1, 1), place(-3, 0)));

  it('takes the part of a box that lies on the motif', () => {
    expect(box.at).toEqual(place(0, 0));
    expect(gridToText(box.cells, '.#o')).toEqual(['##', '#o']);
    expect(cutBox(flag.grid, place(-3, 0), place(-1, 1))).toBeNull();
  });

  it('leaves its place to the ground when cut', () => {
    expect(drawn(cutChange(flag, 0, box))).toEqual(['....', '....']);
  });

  it('moved leaves its place to the ground, copied does not, and what lies outside is left out', () => {
    expect(drawn(layChange(flag, 0, { ...box, at: place(1, 0), name: 'move', from: box }))).toEqual(['.##.', '.#o.']);
    expect(drawn(layChange(flag, 0, { ...box, at: place(2, 0), name: 'paste' }))).toEqual(['####', '#o#o']);
    expect(drawn(layChange(flag, 0, { ...box, at: place(3, 1), name: 'move', from: box }))).toEqual(['...#', '....']);
    expect(layChange(flag, 0, { ...box, name: 'move', from: box })).toBeNull();
  });

  it('of one colour covers nothing with what lies between', () => {
    const chalk = some(cutColour(flag.grid, 1));
    expect(holds(chalk, place(0, 0))).toBe(true);
    expect(holds(chalk, place(1, 0))).toBe(false);
    expect(drawn(layChange(flag, 0, { ...chalk, at: place(1, 0), name: 'paste' }))).toEqual(['###.', '##..']);
    const mirrored = { ...chalk, cells: mirrorAcross(chalk.cells), name: 'move' as const, from: chalk };
    expect(drawn(layChange(flag, 0, mirrored))).toEqual(['##..', '.#..']);
    expect(cutColour(drawnMotif(['..']).grid, 1)).toBeNull();
  });
});
