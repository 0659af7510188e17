import { describe, expect, it } from 'vitest';
import { gridToText } from '@shared/grid/index.ts';
import { readMotifPicture } from '@shared/picture/index.ts';
import { bytesOf } from './pictures.ts';

const rowsOf = (text: string): string[] => gridToText(readMotifPicture(bytesOf(text)).grid, '.X');

describe('reading a PBM', () => {
  // The example of the Netpbm format description: the letter J.
  const letter = `P1
# This is an example bitmap of the letter "J"
6 10
0 0 0 0 1 0
0 0 0 0 1 0
0 0 0 0 1 0
0 0 0 0 1 0
0 0 0 0 1 0
0 0 0 0 1 0
1 0 0 0 1 0
0 1 1 1 0 0
0 0 0 0 0 0
0 0 0 0 0 0
`;
  const asDrawn = ['....X.', '....X.', '....X.', '....X.', '....X.', '....X.', 'X...X.', '.XXX..', '......', '......'];

  it('takes 1 as the figure and white as the ground', () => {
    const picture = readMotifPicture(bytesOf(letter));
    expect(gridToText(picture.grid, '.X')).toEqual(asDrawn);
    expect(picture).toMatchObject({ colours: ['#ffffff', '#000000'], ground: 0 });
  });

  it('has both colours even where it uses one', () => {
    expect(readMotifPicture(bytesOf('P1 2 1 1 1')).colours).toEqual(['#ffffff', '#000000']);
    expect(rowsOf('P1 2 1 1 1')).toEqual(['XX']);
  });

  it.each([
    ['digits without blanks between them', 'P1\n3 2\n101010', ['X.X', '.X.']],
    ['a comment in the middle of the pixels', 'P1 3 1 1 # left edge\n0 1', ['X.X']],
    ['a comment between width and height', 'P1 3 # wide\n1 1 0 1', ['X.X']],
    ['lines that end in carriage returns', 'P1\r\n3 1\r\n1 0 1\r\n', ['X.X']],
    ['packed rows, most significant bit first', 'P4\n3 2\n\xa0\x40', ['X.X', '.X.']],
    ['packed rows of more than a byte', 'P4 9 1\n\x80\x80', ['X.......X']],
    ['packed pixels that look like blanks and comments', 'P4 8 3\n\x20\x23\x0a', ['..X.....', '..X...XX', '....X.X.']],
    ['a comment before packed pixels', 'P4 8 1# narrow\n\x81', ['X......X']],
    ['padding bits that are set', 'P4 3 1\n\xbf', ['X.X']],
    ['a second picture behind the first', 'P4 8 1\n\x81P4 8 1\n\xff', ['X......X']],
  ])('reads %s', (_, text, rows) => {
    expect(rowsOf(text)).toEqual(rows);
  });
});
