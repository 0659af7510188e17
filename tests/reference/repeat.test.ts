import { describe, expect, it } from 'vitest';
import { borderTable, periodsOf, trueRepeat } from '@shared/motif/repeat/index.ts';

/** All words over two letters of a length, as arrays of 0 and 1. */
function* binaryWords(length: number): Generator<number[]> {
  for (let bits = 0; bits < 2 ** length; bits++) {
    yield Array.from({ length }, (_, i) => Math.floor(bits / 2 ** i) % 2);
  }
}

/** Every p from 1 below the length such that each letter equals the one p further on. */
function periodsByEye(word: readonly number[]): number[] {
  const periods: number[] = [];
  for (let p = 1; p < word.length; p++) {
    if (word.every((letter, i) => i + p >= word.length || letter === word[i + p])) periods.push(p);
  }
  return periods;
}

/** The longest proper prefix that is also a suffix. */
function borderByEye(word: readonly number[]): number {
  for (let length = word.length - 1; length > 0; length--) {
    if (word.slice(0, length).every((letter, i) => letter === word[word.length - length + i])) return length;
  }
  return 0;
}

const letters = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));
const smallest = (word: readonly number[]): number => periodsOf(word)[0] ?? word.length;

/** a, ab, aba, abaab, …: each the last two written together. */
function fibonacciWord(length: number): number[] {
  let [shorter, word] = ['a', 'ab'];
  while (word.length < length) [shorter, word] = [word, word + shorter];
  expect(word).toHaveLength(length);
  return letters(word);
}

/** Whether the number of ones in i, written in binary, is odd. */
function thueMorse(length: number): number[] {
  return Array.from({ length }, (_, i) => [...i.toString(2)].filter((digit) => digit === '1').length % 2);
}

describe('borders and periods of words', () => {
  it('agree with looking at every binary word up to 12 letters', () => {
    for (let length = 1; length <= 12; length++) {
      for (const word of binaryWords(length)) {
        const table = borderTable(word);
        for (let end = 1; end <= length; end++) {
          if (table[end - 1] !== borderByEye(word.slice(0, end))) throw new Error(`border of ${word.slice(0, end)}`);
        }
        const wrong = `periods of ${word.join('')}`;
        if (periodsOf(word).join() !== periodsByEye(word).join()) throw new Error(wrong);
        // Knuth, Morris and Pratt 1977 (from memory): length less the longest border.
        if (smallest(word) !== length - borderByEye(word)) throw new Error(wrong);
      }
    }
  });

  // OEIS A003000: binary words of length 1 … 10 that have no border.
  it('leave as many words without a border as are known', () => {
    const counts = Array.from(
      { length: 10 },
      (_, i) => [...binaryWords(i + 1)].filter((word) => periodsOf(word).length === 0).length,
    );
    expect(counts).toEqual([2, 2, 4, 6, 12, 20, 40, 74, 148, 284]);
  });

  // Computed twice, by brute force and by border table, outside this project.
  it.each([
    ['abacabadabacaba', 8],
    ['abcabcab', 3],
    ['aabaaab', 4],
  ])('the word %s first repeats after %i letters', (word, period) => {
    expect(smallest(letters(word))).toBe(period);
  });

  // Computed twice outside this project.
  it.each([
    [5, 3],
    [8, 5],
    [13, 8],
    [21, 13],
    [34, 21],
    [55, 34],
  ])('the Fibonacci word of %i letters first repeats after %i', (length, period) => {
    expect(smallest(fibonacciWord(length))).toBe(period);
  });

  it('the Thue-Morse word of 32 letters first repeats after 24', () => {
    expect(smallest(thueMorse(32))).toBe(24);
  });

  // Fine and Wilf 1965: periods p and q of a word of p + q - gcd(p, q) letters
  // or more make gcd(p, q) a period; the bound is tight.
  it('share a common divisor exactly when the word is long enough', () => {
    expect(periodsOf(letters('aaabaaa'))).toEqual([4, 5, 6]);
    for (let length = 1; length <= 12; length++) {
      for (const word of binaryWords(length)) {
        const periods = periodsOf(word);
        for (const p of periods) {
          for (const q of periods) {
            const divisor = commonDivisor(p, q);
            if (length >= p + q - divisor && !periods.includes(divisor)) throw new Error(`${word} has ${p} and ${q}`);
          }
        }
      }
    }
  });
});

describe('drawings of one row', () => {
  // OEIS A027375: words of length 1 … 12 that are no repetition of a shorter one.
  it('hold a whole number of smaller repeats as often as is known', () => {
    const counts = Array.from({ length: 12 }, (_, i) => {
      const width = i + 1;
      return [...binaryWords(width)].filter((word) => {
        const repeat = trueRepeat({ width, height: 1, cells: Uint8Array.from(word) });
        return repeat.width === width || !repeat.dividesAcross;
      }).length;
    });
    expect(counts).toEqual([2, 2, 6, 12, 30, 54, 126, 240, 504, 990, 2046, 4020]);
  });

  it('whose period leaves no room for two copies are their own repeat', () => {
    expect(trueRepeat({ width: 32, height: 1, cells: Uint8Array.from(thueMorse(32)) }).width).toBe(32);
  });

  // Common practice, no source: cards 24 stitches wide repeat motifs whose width divides 24.
  it.each([1, 2, 3, 4, 6, 8, 12, 24])('of a motif of %i stitches fill a card of 24', (width) => {
    const cells = Uint8Array.from({ length: 24 }, (_, column) => (column % width === 0 ? 1 : 0));
    expect(trueRepeat({ width: 24, height: 1, cells })).toMatchObject({ width, dividesAcross: true });
  });
});

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}
