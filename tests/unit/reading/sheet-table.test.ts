/** What the sheet lies on, seen to the edge of all that is looked at or to the edge of the photo. */
import { describe, expect, it } from 'vitest';
import { tableOf } from '../../../src-shared/reading/sheet-table.ts';

const PAPER = 230;
const DARK = 60;

/** `#` is dark, a blank lies beyond the photo, all else is paper; all sides in such rows are lines, so dark. */
function table(
  lines: readonly string[],
  lined: { readonly rows: readonly number[]; readonly dark: number } = { rows: [], dark: 0 },
): string[] {
  const [columns, rows] = [(lines[0] as string).length, lines.length];
  const cells = lines.join('');
  const at = (is: (cell: string) => boolean): Uint8Array => Uint8Array.from(cells, (cell) => (is(cell) ? 1 : 0));
  const within = { left: 0, top: 0, right: columns, bottom: rows };
  const upright = new Float32Array((columns + 1) * rows);
  const level = new Float32Array(columns * (rows + 1));
  for (const row of lined.rows) {
    upright.fill(lined.dark, row * (columns + 1), (row + 1) * (columns + 1));
    level.fill(lined.dark, row * columns, (row + 2) * columns);
  }
  const sides = {
    within,
    columns,
    rows,
    upright,
    level,
    uprightRidge: upright,
    levelRidge: level,
    chance: 0,
    middles: Float32Array.from({ length: cells.length * 3 }, (_, i) =>
      cells[Math.floor(i / 3)] === '#' ? DARK : PAPER,
    ),
    filled: at((cell) => cell === '#'),
    isEven: at((cell) => cell === '#'),
    isSeen: at((cell) => cell !== ' '),
  };
  const found = tableOf(sides, within, 60);
  return lines.map((_, row) => [...found.slice(row * columns, (row + 1) * columns)].join(''));
}

describe('what the sheet lies on', () => {
  it('is dark from the rim of all that is looked at inwards, but not what lies within the sheet', () => {
    expect(table(['#####', '#...#', '#.#.#', '#...#', '#####'])).toEqual(['11111', '10001', '10001', '10001', '11111']);
  });

  it('is dark from the edge of the photo inwards, where more is looked at than the photo shows', () => {
    expect(table(['       ', ' ##### ', ' #...# ', ' #.#.# ', ' #...# ', ' ##### ', '       '])).toEqual([
      '0000000',
      '0111110',
      '0100010',
      '0100010',
      '0100010',
      '0111110',
      '0000000',
    ]);
  });

  it('is not a row of cells in a shadow, whose lines are darker by a share of the light that is left there', () => {
    // Lines usually show 60; in a quarter of the light they show 15, below a third of that.
    const sheet = ['.....', '.....', '.....', '#####', '#####'];
    expect(table(sheet, { rows: [3], dark: 15 })).toEqual(['00000', '00000', '00000', '00000', '11111']);
    expect(table(sheet)).toEqual(['00000', '00000', '00000', '11111', '11111']);
  });
});
