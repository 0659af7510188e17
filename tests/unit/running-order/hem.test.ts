/** Running orders of folded hems, worked by hand. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { BLANK_FIRST_12_BY_31, projectWith } from '../fabric/pieces.ts';
import { actsAt, linesOf, readingsOf } from './order-lines.ts';

describe('a hem of 100 rows with a motif of 31 on its outside', () => {
  const project = projectWith({
    motif: BLANK_FIRST_12_BY_31,
    copies: [3, 3],
    stitches: 120,
    rows: 160,
    piece: { hemRows: 100 },
  });

  it('begins on waste yarn, the carriage ending where it starts', () => {
    expect(actsAt(project, 0)).toEqual([
      'cast on L60–R60 slate open, 8 rows of waste',
      'counter 0',
      'tension facing',
      'weights hang',
      'thread 1 slate',
    ]);
  });

  it('has selecting switched on at 59, and the contrast comes in at 60', () => {
    expect(actsAt(project, 59)).toEqual(['row 61 from L48–L13, R12–R47', 'end-needles off', 'selecting on']);
    // The weights were hung 150 mm below.
    expect(actsAt(project, 60).slice(0, 3)).toEqual(['weights move', 'carriage pattern', 'thread 2 chalk']);
    expect(readingsOf(project, 'selecting')).toEqual([59, 91]);
  });

  it('ends its pattern at 91', () => {
    expect(actsAt(project, 91).slice(0, 3)).toEqual([
      'carriage plain',
      'selecting off',
      'unthread 2 chalk, cut to 150 mm',
    ]);
  });

  it('is hung at 100 with the weights off, and joined by a looser plain row, after which the waste comes out', () => {
    expect(actsAt(project, 100)).toEqual([
      'weights off',
      'hang 120 loops on L60–R60, half loop left',
      'weights hang',
      'tension joiningRow',
    ]);
    expect(actsAt(project, 101)).toEqual(['remove waste', 'tension main']);
  });

  it('is cast off from where the carriage stands, with four times the width of yarn', () => {
    // 120 stitches of 28 in 10 cm are 428.6 mm; four times that and a tail of 150 mm.
    expect(actsAt(project, 160)).toEqual([
      'unthread 1 slate, cut to 1870 mm',
      'weights off',
      'finish cast-off L60–R60 from the right, 1870 mm',
    ]);
    expect(readingsOf(project, 'tension').at(-1)).toBe(159);
  });
});

it('a turning row of 11 rows is the sixth: five, the turning row, five', () => {
  const project = projectWith({ motif: ['X'], copies: [1], stitches: 10, rows: 40, piece: { hemRows: 11 } });
  const turning = { ...project, piece: { ...project.piece, hem: { turning: 'eyelets' as const, gauge: null } } };
  expect(linesOf(turning, 'eyelets')).toEqual(['5: eyelets 4, from L4']);
  expect(linesOf(turning, 'hang-hem')).toEqual(['11: hang 10 loops on L5–R5, half loop left']);
});
