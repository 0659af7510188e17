import { describe, expect, it } from 'vitest';
import { gridFromText } from '@shared/grid/index.ts';
import { measure } from '@shared/motif/repeat/index.ts';
import { plainText, words } from '@shared/words/index.ts';

const sentencesFor = (...rows: string[]): string[] =>
  words.measure.sentences(measure(gridFromText(rows, '.X'), 0)).map(plainText);

describe('what is said of a drawing', () => {
  it.each<[string, string[], string[]]>([
    [
      'that is its own repeat',
      ['XX.', 'X..'],
      [
        'The chart is 3 stitches × 2 rows.',
        'The repeat is 3 stitches × 2 rows, all that is drawn.',
        'The last column is blank all the way up: each figure is 2 columns wide, copies stand 1 apart.',
      ],
    ],
    [
      'that holds whole copies',
      ['.XX.XX', '.X..X.', '......'],
      [
        'The chart is 6 stitches × 3 rows.',
        'The repeat is 3 stitches × 3 rows.',
        'It is drawn 2 × 1 times.',
        'The first column is blank all the way up: each figure is 2 columns wide, copies stand 1 apart.',
        'Blank from edge to edge: 1 row at the bottom.',
      ],
    ],
    [
      'whose last copies are cut',
      ['X.X.X', '.....', 'X.X.X', '.....', 'X.X.X'],
      [
        'The chart is 5 stitches × 5 rows.',
        'The repeat is 2 stitches × 2 rows.',
        'It is drawn 2 × 2 times, and the last copy is cut at the right after 1 of its 2 stitches and at the top after 1 of its 2 rows.',
        'No edge column is blank.',
      ],
    ],
    [
      'whose copies touch',
      ['X.', '.X'],
      [
        'The chart is 2 stitches × 2 rows.',
        'The repeat is 2 stitches × 2 rows, all that is drawn.',
        'The copies are stepped by half: a half drop of 1 stitch × 2 rows, each next column of them 1 row higher; seen by rows, bricks of 2 stitches × 1 row. Both cut the figure at corners only.',
        'No edge column is blank: copies touch.',
      ],
    ],
    [
      'without a figure',
      ['..'],
      [
        'The chart is 2 stitches × 1 row.',
        'The repeat is 1 stitch × 1 row.',
        'It is drawn 2 × 1 times.',
        'There is no figure: every cell is ground.',
      ],
    ],
  ])('%s', (_, rows, sentences) => {
    expect(sentencesFor(...rows)).toEqual(sentences);
  });

  it.each([
    [['..X.'], 'The first 2 columns and the last one are blank'],
    [['.X..'], 'The first column and the last 2 are blank'],
    [['.X.'], 'The first and last columns are blank'],
    [['..X..'], 'The first 2 and last 2 columns are blank'],
    [['X..'], 'The last 2 columns are blank'],
    [['..X'], 'The first 2 columns are blank'],
  ])('with blank columns as in %j', (rows, start) => {
    expect(
      sentencesFor(...rows).find((sentence) => sentence.startsWith('The first') || sentence.startsWith('The last')),
    ).toContain(`${start} all the way up`);
  });

  it('that one cell breaks', () => {
    const rows = Array.from({ length: 12 }, (_, row) => (row === 5 ? 'X..XX.X..X..' : 'X..X..X..X..'));
    expect(sentencesFor(...rows)).toContain(
      'It nearly repeats every 3 stitches × 1 row: one cell breaks that, at row 7, stitch 5.',
    );
  });

  it('whose rows alone nearly repeat', () => {
    const band = ['XX.X...X', 'X..XX.XX'];
    const rows = Array.from({ length: 16 }, (_, row) => band[row % 2] ?? '');
    rows[3] = 'X..XX.X.';
    rows[8] = '.X.X...X';
    expect(sentencesFor(...rows)).toContain(
      'It nearly repeats every 2 rows: 2 cells break that, the first at row 8, stitch 1.',
    );
  });

  it.each([
    [
      'by a third',
      ['..X', '.X.', 'X..'],
      'The copies are stepped: blocks of 1 stitch × 3 rows, each next column of them 1 row higher; seen by rows, blocks of 3 stitches × 1 row. Both cut the figure at corners only.',
    ],
    [
      'as bricks, where a half drop would cut the figure',
      ['........', 'XXX..XXX', '........', '.XXXXXX.'],
      'The copies are stepped by half: bricks of 8 stitches × 2 rows, each next course 4 stitches to the right, leaving the figure whole; seen by columns, a half drop of 4 stitches × 4 rows, cutting the figure in 1 place.',
    ],
    [
      'as bricks that nothing cuts, and no half drop either',
      ['....', '..X.', '....', 'X...'],
      'The copies are stepped by half: a half drop of 2 stitches × 4 rows, each next column of them 2 rows higher; seen by rows, bricks of 4 stitches × 2 rows. Both leave the figure whole.',
    ],
    [
      'where either way cuts it as much',
      ['XX.X', 'XX..', '.XXX', '..XX'],
      'The copies are stepped by half: a half drop of 2 stitches × 4 rows, each next column of them 2 rows higher; seen by rows, bricks of 4 stitches × 2 rows. Both cut the figure in 1 place.',
    ],
  ])('whose copies move %s', (_, rows, sentence) => {
    expect(sentencesFor(...rows)).toContain(sentence);
  });

  it.each([
    [['XO.', 'XX.'], 'Row 2 holds more than two yarns.'],
    [['XO.', '.X.', 'XO.', 'XO.'], 'Rows 1–2 and 4 hold more than two yarns.'],
  ])('with three yarns in rows as in %j', (rows, sentence) => {
    const measured = measure(gridFromText(rows, '.XO'), 0);
    expect(words.measure.sentences(measured).map(plainText)).toContain(sentence);
  });
});
