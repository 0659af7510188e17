import { describe, expect, it } from 'vitest';
import { gridFromText, type Cell } from '@shared/grid/index.ts';
import { measure } from '@shared/motif/repeat/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { applyChange, emptyProject } from '@shared/project/index.ts';
import { trimsOf } from '../../../src-renderer/motif/editing/trims.ts';
import { WHOLE } from '../../../src-renderer/motif/editing/whole.ts';
import { drawnMotif } from './drawn-motif.ts';

const drawings: [string, string[]][] = [
  ['copies with blank columns between', ['.X..X.', '......']],
  ['copies that touch', ['X.X.', '.X.X']],
  ['one copy', ['.X.', 'XX.']],
  ['a last copy that is cut', ['X..X.', 'X..X.']],
  ['blank edges all round', ['....', '.X..', '....']],
];

describe('what is said to come out of a trim', () => {
  it.each(drawings)('does come out, from %s', (_, rows) => {
    const grid = gridFromText(rows, '.X');
    const motif = drawnMotif(grid);
    for (const cursor of [
      { column: 0, row: 0 },
      { column: 2, row: 0 },
    ] satisfies Cell[]) {
      for (const { name, width, height, changes } of trimsOf(measure(grid, 0), cursor)) {
        const change = WHOLE[name](motif, { cursor, selected: null, colour: 1, ground: 0 });
        if (changes && change) {
          const { grid: after } = applyChange({ ...emptyProject('p', 'm'), motifs: [motif] }, change)
            .motifs[0] as Motif;
          expect([name, after.width, after.height]).toEqual([name, width, height]);
        }
        if (!changes) expect([name, change]).toEqual([name, null]);
      }
    }
  });

  it('offers nothing for a chart without figure, and no blank columns where copies touch', () => {
    expect(trimsOf(measure(gridFromText(['..'], '.X'), 0), { column: 0, row: 0 })).toEqual([]);
    const names = trimsOf(measure(gridFromText(['X.', '.X'], '.X'), 0), { column: 0, row: 0 }).map(({ name }) => name);
    expect(names).toEqual(['crop-at-cursor', 'trim-blank']);
  });
});
