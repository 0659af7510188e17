import { describe, expect, it } from 'vitest';
import { gridFromText } from '@shared/grid/index.ts';
import { measure } from '@shared/repeat/index.ts';
import { words } from '@shared/words/index.ts';
import { plainText } from '@shared/words/marked.ts';

const said = (...rows: string[]): string[] =>
  words.measure.sentences(measure(gridFromText(rows, '.X'), 0)).map(plainText);

describe('what is said of a drawing', () => {
  it.each<[string, string[], string[]]>([
    [
      'that is its own repeat',
      ['XX.', 'X..'],
      [
        'The chart is 3 stitches × 2 rows.',
        'The repeat is 3 stitches × 2 rows, all that is drawn.',
        'The last column is blank all the way up: each figure shows as 2 stitches, copies stand 1 apart.',
      ],
    ],
    [
      'that holds whole copies',
      ['.XX.XX', '.X..X.', '......'],
      [
        'The chart is 6 stitches × 3 rows.',
        'The repeat is 3 stitches × 3 rows.',
        'It is drawn 2 × 1 times.',
        'The first column is blank all the way up: each figure shows as 2 stitches, copies stand 1 apart.',
        'Blank from edge to edge: 1 row at the bottom.',
      ],
    ],
    [
      'whose last copies are cut',
      ['X.X.X', '.....', 'X.X.X', '.....', 'X.X.X'],
      [
        'The chart is 5 stitches × 5 rows.',
        'The repeat is 2 stitches × 2 rows.',
        'It is drawn 2 × 2 times, and 1 column of one more at the right and 1 row of one more at the top: the last copy is cut.',
        'No edge column is blank.',
      ],
    ],
    [
      'whose copies touch',
      ['X.', '.X'],
      [
        'The chart is 2 stitches × 2 rows.',
        'The repeat is 2 stitches × 2 rows, all that is drawn.',
        'The copies are stepped: 1 row up, the pattern stands 1 stitch to the right.',
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
    expect(said(...rows)).toEqual(sentences);
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
      said(...rows).find((sentence) => sentence.startsWith('The first') || sentence.startsWith('The last')),
    ).toContain(`${start} all the way up`);
  });

  it('that one cell breaks', () => {
    const rows = Array.from({ length: 12 }, (_, row) => (row === 5 ? 'X..XX.X..X..' : 'X..X..X..X..'));
    expect(said(...rows)).toContain('One cell breaks a repeat of 3 stitches × 1 row: column 5, row 7.');
  });
});
