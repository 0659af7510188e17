import { describe, expect, it } from 'vitest';
import {
  columnOfNeedle,
  isMirroredOnNeedles,
  isMirroredWhenWorn,
  label,
  needleOfColumn,
  parseNeedle,
  slot,
  widthOf,
  type FinishedFace,
  type Shows,
} from '@shared/bed/index.ts';
import { edgesOf } from '@shared/piece/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';

describe('needles', () => {
  // Common practice, no source: numbered from the centre outwards, and there is no needle 0.
  it('are numbered from the centre outwards without a 0', () => {
    expect([-3, -2, -1, 0, 1, 2].map((position) => label(slot(position)))).toEqual([
      'L3',
      'L2',
      'L1',
      'R1',
      'R2',
      'R3',
    ]);
  });

  it('come back from their labels', () => {
    for (let position = -300; position <= 300; position++) {
      expect(parseNeedle(label(slot(position)))).toBe(position);
    }
  });

  it.each([
    ['l48', 'L48'],
    [' R12 ', 'R12'],
    ['r1', 'R1'],
  ])('"%s" is taken for %s', (text, needle) => {
    expect(label(parseNeedle(text))).toBe(needle);
  });

  it.each(['0', 'L0', 'R0', 'l00'])('"%s" is refused, for there is no needle 0', (text) => {
    const parsed = outcome(() => parseNeedle(text));
    expect(parsed).toMatchObject({ ok: false, problem: { code: 'needle-unknown' } });
    if (!parsed.ok) expect(words.problems.say(parsed.problem).what).toContain('there is no needle 0');
  });

  it.each(['', 'L', '48', 'X3', 'L-3', 'L3.5', 'R 1', 'L01', 'L48-L40', 'R9999999'])('"%s" names none', (text) => {
    expect(outcome(() => parseNeedle(text))).toMatchObject({ ok: false, problem: { code: 'needle-unknown' } });
  });

  it('have no position between them', () => {
    expect(() => slot(0.5)).toThrow(RangeError);
  });

  // Common practice, no source.
  it('L40 to R40 hold 80 stitches', () => {
    expect(widthOf({ first: parseNeedle('L40'), last: parseNeedle('R40') })).toBe(80);
  });
});

describe('a piece on the bed', () => {
  it.each([
    [120, 'right', 0, 'L60', 'R60'],
    [121, 'right', 0, 'L60', 'R61'],
    [121, 'left', 0, 'L61', 'R60'],
    [1, 'right', 0, 'R1', 'R1'],
    [1, 'left', 0, 'L1', 'L1'],
    [80, 'right', 5, 'L35', 'R45'],
    [80, 'right', -50, 'L90', 'L11'],
  ] as const)(
    'of %i stitches, the odd one on the %s, %i needles off, stands on %s to %s',
    (stitches, oddStitch, offset, first, last) => {
      const edges = edgesOf(stitches, { oddStitch, offset });
      expect([label(edges.first), label(edges.last)]).toEqual([first, last]);
      expect(widthOf(edges)).toBe(stitches);
    },
  );
});

describe('a chart on the needles', () => {
  // On a single bed the purl side faces the knitter, so what is worn on the
  // knit side lies mirrored (common practice, no source).
  it.each<[Shows, FinishedFace, boolean]>([
    ['worn', 'knit', true],
    ['worn', 'purl', false],
    ['needles', 'knit', false],
    ['needles', 'purl', false],
  ])('drawn as %s for a %s face is mirrored: %s', (shows, face, mirrored) => {
    expect(isMirroredOnNeedles(shows, face)).toBe(mirrored);
  });

  // Whoever sees the bed sees the purl side; turned round, the knit side has left and right exchanged.
  it.each<[Shows, FinishedFace, boolean]>([
    ['worn', 'knit', false],
    ['worn', 'purl', false],
    ['needles', 'knit', true],
    ['needles', 'purl', false],
  ])('drawn as %s for a %s face reads mirrored when worn: %s', (shows, face, mirrored) => {
    expect(isMirroredWhenWorn(shows, face)).toBe(mirrored);
  });

  it('mirrored, has its first column on the last needle of a copy', () => {
    const first = parseNeedle('L12');
    expect(label(needleOfColumn(0, 12, first, true))).toBe('L1');
    expect(label(needleOfColumn(11, 12, first, true))).toBe('L12');
    expect(label(needleOfColumn(0, 12, first, false))).toBe('L12');
  });

  it.each([true, false])('finds the column above a needle again (mirrored: %s)', (mirrored) => {
    for (let column = 0; column < 7; column++) {
      const needle = needleOfColumn(column, 7, slot(-3), mirrored);
      expect(columnOfNeedle(needle, 7, slot(-3), mirrored)).toBe(column);
    }
  });
});
