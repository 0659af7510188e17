import { describe, expect, it } from 'vitest';
import { gridToText, makeGrid, type Cell, type CellBox } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { applyChange, emptyProject } from '@shared/project/index.ts';
import { WHOLE, type WholeName } from '../../../src-renderer/motif/editing/whole.ts';
import { drawnMotif } from './drawn-motif.ts';

/** The motif after the command, or null where it changes nothing. */
function after(
  name: WholeName,
  lines: readonly string[],
  cursor: Cell,
  colour = 1,
  selected: CellBox | null = null,
): string[] | null {
  const before = drawnMotif(lines);
  const change = WHOLE[name](before, { cursor, selected, colour, ground: 0 });
  if (!change) return null;
  const project = applyChange({ ...emptyProject('p', 'm'), motifs: [before] }, change);
  return gridToText((project.motifs[0] as Motif).grid, '.#o');
}

describe('a command for the whole motif', () => {
  const flag = ['##.', '#o.'];
  const corner = { column: 0, row: 0 };

  it.each<{ name: WholeName; at?: Cell; pen?: number; gives: string[] }>([
    { name: 'mirror-across', gives: ['.##', '.o#'] },
    { name: 'mirror-up', gives: ['#o.', '##.'] },
    { name: 'quarter-turn', gives: ['##', 'o#', '..'] },
    { name: 'shift-left', gives: ['#.#', 'o.#'] },
    { name: 'shift-right', gives: ['.##', '.#o'] },
    { name: 'shift-up', gives: ['#o.', '##.'] },
    { name: 'shift-down', gives: ['#o.', '##.'] },
    { name: 'insert-column', at: { column: 1, row: 0 }, gives: ['#.#.', '#.o.'] },
    { name: 'delete-column', at: { column: 1, row: 1 }, gives: ['#.', '#.'] },
    { name: 'insert-row', at: { column: 0, row: 1 }, gives: ['##.', '...', '#o.'] },
    { name: 'delete-row', at: { column: 0, row: 1 }, gives: ['#o.'] },
    { name: 'exchange-yarns', at: { column: 1, row: 0 }, gives: ['oo.', 'o#.'] },
    { name: 'invert', gives: ['..#', '..#'] },
    { name: 'invert', pen: 2, gives: ['..o', '..o'] },
    // A pen that holds the ground inverts to the figure's first yarn.
    { name: 'invert', pen: 0, gives: ['..#', '..#'] },
    { name: 'outline', pen: 2, gives: ['##o', '#oo'] },
  ])('$name gives $gives', ({ name, at = corner, pen, gives }) => {
    expect(after(name, flag, at, pen)).toEqual(gives);
  });

  it.each<{ name: WholeName; lines: string[]; pen?: number }>([
    { name: 'mirror-across', lines: ['#.#'] },
    { name: 'shift-up', lines: ['##', '##'] },
    { name: 'delete-column', lines: ['#', '.'] },
    { name: 'delete-row', lines: ['#.'] },
    { name: 'exchange-yarns', lines: ['#.'] },
    { name: 'invert', lines: ['..'], pen: 0 },
    { name: 'outline', lines: ['..'] },
  ])('$name on $lines is no step', ({ name, lines, pen }) => {
    expect(after(name, lines, corner, pen)).toBeNull();
  });

  it('mends the one cell that breaks the repeat', () => {
    const row = '#..'.repeat(8);
    const spoilt = [row, row, `##.${row.slice(3)}`, row];
    expect(after('mend-slips', spoilt, corner)).toEqual([row, row, row, row]);
    expect(after('mend-slips', [row, row, row, row], corner)).toBeNull();
  });

  it('crops to one repeat, with the blank columns where they are wanted', () => {
    const rows = ['#..o#..o#..o', '#...#...#...'];
    expect(after('crop-blank-first', rows, corner)).toEqual(['..o#', '...#']);
    expect(after('crop-blank-last', rows, corner)).toEqual(['o#..', '.#..']);
  });

  it('crops to one repeat that starts at the cursor and goes round', () => {
    const rows = ['#..o#..o#..o', '#...#...#...', '#..o#..o#..o', '#...#...#...'];
    expect(after('crop-at-cursor', rows, { column: 6, row: 1 })).toEqual(['..#.', '.o#.']);
    // One copy alone is turned round within itself.
    expect(after('crop-at-cursor', ['#..o'], { column: 3, row: 0 })).toEqual(['o#..']);
    expect(after('crop-at-cursor', ['#..o'], corner)).toBeNull();
  });

  it('trims blank edges, and leaves a chart without figure alone', () => {
    expect(after('trim-blank', ['....', '.#o.', '....'], corner)).toEqual(['#o']);
    expect(after('trim-blank', ['..', '..'], corner)).toBeNull();
  });

  it('does not pass the largest motif', () => {
    const place = { cursor: corner, selected: null, colour: 1, ground: 0 };
    const wide = { ...drawnMotif(['.']), grid: makeGrid(1000, 1) };
    const tall = { ...drawnMotif(['.']), grid: makeGrid(1, 4000) };
    expect(WHOLE['insert-column'](wide, place)).toBeNull();
    expect(WHOLE['insert-row'](tall, place)).toBeNull();
    expect(WHOLE['quarter-turn'](tall, place)).toBeNull();
  });

  it.each<{ name: WholeName; selected: CellBox; gives: string[] | null }>([
    { name: 'insert-column', selected: { column: 1, row: 0, width: 2, height: 1 }, gives: ['#..#.', '#..o.'] },
    { name: 'delete-column', selected: { column: 1, row: 1, width: 2, height: 1 }, gives: ['#', '#'] },
    { name: 'insert-row', selected: { column: 0, row: 0, width: 1, height: 2 }, gives: ['##.', '#o.', '...', '...'] },
    { name: 'delete-row', selected: { column: 0, row: 1, width: 3, height: 1 }, gives: ['#o.'] },
    { name: 'delete-row', selected: { column: 0, row: 0, width: 1, height: 2 }, gives: null },
    { name: 'delete-column', selected: { column: 0, row: 0, width: 3, height: 1 }, gives: null },
  ])('$name takes as many as are selected: $selected', ({ name, selected, gives }) => {
    expect(after(name, flag, corner, 1, selected)).toEqual(gives);
  });
});
