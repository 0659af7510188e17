import { describe, expect, it } from 'vitest';
import { gridToText } from '@shared/grid/index.ts';
import { readMotifPicture } from '@shared/picture/index.ts';
import { pngOf, rawPng } from './pictures.ts';

const read = (bytes: Uint8Array): { rows: string[]; colours: readonly string[] } => {
  const { grid, colours } = readMotifPicture(bytes);
  return { rows: gridToText(grid, '.X23456789'), colours };
};

describe('reading a PNG with one pixel for each cell', () => {
  it('puts the topmost pixels on the last row', () => {
    const { grid } = readMotifPicture(
      pngOf([
        ['#000000', '#ffffff'],
        ['#ffffff', '#ffffff'],
      ]),
    );
    expect([...grid.cells]).toEqual([0, 0, 1, 0]);
  });

  it('lists the ground first, then the colours as knitting meets them from the bottom left', () => {
    const slate = '#5d7591';
    const picture = pngOf([
      [slate, '#aa0000', slate],
      [slate, slate, slate],
      ['#00aa00', slate, '#0000aa'],
    ]);
    expect(read(picture)).toEqual({
      rows: ['.3.', '...', 'X.2'],
      colours: [slate, '#00aa00', '#0000aa', '#aa0000'],
    });
  });

  // Every colour type and depth that the standard allows (PNG, ISO/IEC 15948).
  // Each picture holds black, white, black in its only row, or as near as its palette goes.
  it.each([
    { kind: 'grey, 1 bit', depth: 1, colourType: 0, rows: [[0b01000000]] },
    { kind: 'grey, 2 bits', depth: 2, colourType: 0, rows: [[0b00110000]] },
    { kind: 'grey, 4 bits', depth: 4, colourType: 0, rows: [[0x0f, 0x00]] },
    { kind: 'grey, 8 bits', depth: 8, colourType: 0, rows: [[0, 255, 0]] },
    { kind: 'grey, 16 bits', depth: 16, colourType: 0, rows: [[0, 0, 255, 255, 0, 0]] },
    { kind: 'grey with alpha, 8 bits', depth: 8, colourType: 4, rows: [[0, 255, 0, 0, 0, 255]] },
    {
      kind: 'grey with alpha, 16 bits',
      depth: 16,
      colourType: 4,
      rows: [[0, 0, 255, 255, 9, 9, 0, 0, 0, 0, 255, 255]],
    },
    { kind: 'colour, 8 bits', depth: 8, colourType: 2, rows: [[0, 0, 0, 255, 255, 255, 0, 0, 0]] },
    {
      kind: 'colour, 16 bits',
      depth: 16,
      colourType: 2,
      rows: [[0, 0, 0, 0, 0, 0, 255, 255, 255, 255, 255, 255, 0, 0, 0, 0, 0, 0]],
    },
    { kind: 'colour with alpha, 8 bits', depth: 8, colourType: 6, rows: [[0, 0, 0, 255, 7, 7, 7, 0, 0, 0, 0, 255]] },
    { kind: 'palette, 1 bit', depth: 1, colourType: 3, rows: [[0b01000000]], palette: [0, 0, 0, 255, 255, 255] },
    { kind: 'palette, 2 bits', depth: 2, colourType: 3, rows: [[0b00010000]], palette: [0, 0, 0, 255, 255, 255] },
    { kind: 'palette, 4 bits', depth: 4, colourType: 3, rows: [[0x01, 0x00]], palette: [0, 0, 0, 255, 255, 255] },
    { kind: 'palette, 8 bits', depth: 8, colourType: 3, rows: [[0, 1, 0]], palette: [0, 0, 0, 255, 255, 255] },
    { kind: 'grey with one clear shade', depth: 8, colourType: 0, rows: [[0, 99, 0]], transparency: [0, 99] },
    {
      kind: 'colour with one clear colour',
      depth: 8,
      colourType: 2,
      rows: [[0, 0, 0, 1, 2, 3, 0, 0, 0]],
      transparency: [0, 1, 0, 2, 0, 3],
    },
    {
      kind: 'palette with a clear entry',
      depth: 8,
      colourType: 3,
      rows: [[0, 1, 0]],
      palette: [0, 0, 0, 200, 0, 0],
      transparency: [255, 0],
    },
  ])('reads $kind', (picture) => {
    expect(read(rawPng({ width: 3, height: 1, ...picture }))).toEqual({
      rows: ['X.X'],
      colours: ['#ffffff', '#000000'],
    });
  });

  it('reads rows that do not end at a whole byte', () => {
    const rows = [
      [0b10000000, 0b10000000],
      [0b01111111, 0b00000000],
    ];
    expect(read(rawPng({ width: 9, height: 2, depth: 1, colourType: 0, rows })).rows).toEqual([
      '.XXXXXXX.',
      'X.......X',
    ]);
  });

  it('lays what is half see-through on white', () => {
    expect(read(pngOf([['#000000ff', '#00000080', '#00000000']])).colours).toContain('#7f7f7f');
  });

  it('reads an interlaced picture of whole bytes', () => {
    // The seven passes of a 3 × 1 picture: column 0, then column 2, then column 1.
    const rows = [[255], [0], [255]];
    const picture = rawPng({ width: 3, height: 1, depth: 8, colourType: 0, rows, isInterlaced: true });
    expect(read(picture).rows).toEqual(['..X']);
  });

  it('is not stopped by a comment or colour profile that makes no sense', () => {
    const chunks = [
      ['tEXt', [0, 1, 2]],
      ['iCCP', [65, 0, 0, 1, 2, 3]],
      ['pHYs', [0, 0]],
    ] as const;
    const picture = rawPng({ width: 1, height: 1, depth: 8, colourType: 0, rows: [[0]], chunks });
    expect(read(picture).rows).toEqual(['X']);
  });
});
