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
      for (const { name, width, height, standing } of trimsOf(measure(grid, 0), cursor)) {
        const change = WHOLE[name](motif, { cursor, selected: null, colour: 1, ground: 0 });
        if (standing === 'offered' && change) {
          const { grid: after } = applyChange({ ...emptyProject('p', 'm'), motifs: [motif] }, change)
            .motifs[0] as Motif;
          expect([name, after.width, after.height]).toEqual([name, width, height]);
        }
        if (standing === 'as-drawn') expect([name, change]).toEqual([name, null]);
      }
    }
  });

  it('offers nothing for a chart without figure, and no blank columns where copies touch', () => {
    const standings = (...rows: string[]): string[] =>
      trimsOf(measure(gridFromText(rows, '.X'), 0), { column: 0, row: 0 }).map(
        ({ name, standing }) => `${name}: ${standing}`,
      );
    expect(standings('..')).toEqual([
      'crop-blank-first: empty',
      'crop-blank-last: empty',
      'crop-at-cursor: empty',
      'trim-blank: empty',
    ]);
    expect(standings('X.X.', '.X.X')).toEqual([
      'crop-blank-first: no-blank',
      'crop-blank-last: no-blank',
      'crop-at-cursor: offered',
      'trim-blank: as-drawn',
    ]);
  });
});
