/**
 * Finding motifs by what is typed.
 *
 * Each part of it must fit: a size such as `24 x 20` is that of the drawing or
 * of its repeat, `repeat 12` and `repeat 12 x 8` are of the repeat alone,
 * `24 stitches` and `20 rows` are one side of the drawing. A number by itself is
 * any of these counts. Whatever else is typed, a number too, is part of the name
 * or of the name of a yarn, capitals and accents aside.
 */
import type { CellSize, MotifFacts } from './facts.ts';

/** How parts are called in the language of the person, small letters. */
export interface SearchWords {
  readonly repeat: readonly string[];
  readonly stitches: readonly string[];
  readonly rows: readonly string[];
}

type Fits = (facts: MotifFacts) => boolean;

/** Whether a motif is one of those looked for; where nothing is typed, every one is. */
export function finder(typed: string, words: SearchWords): Fits {
  const parts: Fits[] = [];
  let left = plain(typed);
  for (const { pattern, fits } of countsFor(words)) {
    left = left.replace(pattern, (_whole: string, one: string, other: unknown) => {
      parts.push(fits(Number(one), Number(other)));
      return ' ';
    });
  }
  const rest = left.split(' ').filter((word) => word !== '');
  // Of which repeat is about to be typed.
  if (words.repeat.includes(rest.at(-1) ?? '')) rest.pop();
  parts.push(...rest.map(wordFits));
  return (facts) => parts.every((part) => part(facts));
}

/** What reads as a count, those first that hold others: a size would else be two numbers. */
function countsFor(words: SearchWords): { pattern: RegExp; fits: (one: number, other: number) => Fits }[] {
  const [repeat, stitches, rows] = [words.repeat, words.stitches, words.rows].map((many) => `(?:${many.join('|')})`);
  const size = String.raw`(\d{1,4})(?: ?${stitches})? ?[x×*] ?(\d{1,4})(?: ?${rows}(?!\S))?(?!\d)`;
  const all = (pattern: string): RegExp => new RegExp(String.raw`(?<![^\s])${pattern}`, 'g');
  return [
    { pattern: all(`${repeat} ?${size}`), fits: (one, other) => (facts) => is(facts.repeat, one, other) },
    { pattern: all(size), fits: (one, other) => (facts) => is(facts, one, other) || is(facts.repeat, one, other) },
    {
      pattern: all(String.raw`${repeat} ?(\d{1,4})(?!\S)`),
      fits:
        (one) =>
        ({ repeat: { width, height } }) =>
          width === one || height === one,
    },
    { pattern: all(String.raw`(\d{1,4}) ?${stitches}(?!\S)`), fits: (one) => (facts) => facts.width === one },
    { pattern: all(String.raw`(\d{1,4}) ?${rows}(?!\S)`), fits: (one) => (facts) => facts.height === one },
  ];
}

function wordFits(word: string): Fits {
  const count = /^\d{1,4}$/.test(word) ? Number(word) : null;
  return ({ name, width, height, repeat, yarns }) =>
    (count !== null && [width, height, repeat.width, repeat.height].includes(count)) ||
    [name, ...yarns.map((yarn) => yarn.name)].some((one) => plain(one).includes(word));
}

function is({ width, height }: CellSize, stitches: number, rows: number): boolean {
  return width === stitches && height === rows;
}

/** Small letters without accents, one blank for whatever stands between words. */
function plain(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[\s,;]+/g, ' ')
    .trim();
}
