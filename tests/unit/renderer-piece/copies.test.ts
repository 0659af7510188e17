import { describe, expect, it } from 'vitest';
import { label } from '@shared/bed/index.ts';
import { startGroup } from '@shared/project/index.ts';
import { parseCopies, parseFirstNeedles, withCopies } from '../../../src-renderer/piece/panel/copies.ts';

describe('how many copies each group has, as it is written', () => {
  it.each([
    { text: '3, 3', copies: [3, 3] },
    { text: '3,3', copies: [3, 3] },
    { text: ' 2 1  2 ', copies: [2, 1, 2] },
    { text: '4;', copies: [4] },
    { text: '1000', copies: [1000] },
  ])('takes "$text" as $copies', ({ text, copies }) => {
    expect(parseCopies(text)).toEqual(copies);
  });

  it.each(['', ' , ', '0', '2, 0', '-1', '1.5', '2, x', '3/3', '1001', '00003'])('takes "%s" for no counts', (text) => {
    expect(parseCopies(text)).toBeNull();
  });

  it('keeps the motif and the copies upwards of groups that stay, and makes new ones like the last', () => {
    const groups = [
      { ...startGroup('a', 1), up: 2 },
      { ...startGroup('b', 1), up: 3 },
    ];
    expect(withCopies(groups, [4, 5, 6])).toEqual([
      { ...startGroup('a', 4), up: 2 },
      { ...startGroup('b', 5), up: 3 },
      { ...startGroup('b', 6), up: 3 },
    ]);
    expect(withCopies(groups, [7])).toEqual([{ ...startGroup('a', 7), up: 2 }]);
  });
});

describe('first needles, as they are written', () => {
  it('takes small letters, commas and blanks', () => {
    expect(parseFirstNeedles('l48, R12').map(label)).toEqual(['L48', 'R12']);
  });

  it('has no needle 0', () => {
    expect(() => parseFirstNeedles('L48, R0')).toThrow('needle-unknown');
  });
});
