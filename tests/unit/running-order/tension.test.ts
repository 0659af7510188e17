/** Which tension is told where, worked by hand. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { START_PIECE, type ProjectAt } from '@shared/project/index.ts';
import { projectWith } from '../fabric/pieces.ts';
import { linesOf } from './order-lines.ts';

type Given = Partial<Parameters<typeof projectWith>[0]['piece'] & object>;

describe('the tension at which a piece begins', () => {
  const piece = (given: Given): ProjectAt =>
    projectWith({ motif: ['X.X', '.X.'], copies: [1], stitches: 9, rows: 20, piece: given });
  const told = (given: Given): string[] => linesOf(piece(given), 'tension');

  it('is told where the last row is looser, since the piece before has left the machine there', () => {
    expect(told({ ends: 'cast-off' })).toEqual(['0: tension main', '19: tension lastRow']);
  });

  it('is told with its number', () => {
    const tension = { ...START_PIECE.tension, main: '6', lastRow: '9' };
    expect(told({ ends: 'cast-off', tension })).toEqual(['0: tension main 6', '19: tension lastRow 9']);
    expect(told({ ends: 'on-a-thread', tension })).toEqual(['0: tension main 6']);
  });

  it('is not told where all of it is knitted as the swatch was', () => {
    expect(told({ ends: 'on-a-thread' })).toEqual([]);
  });
});
