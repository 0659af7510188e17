/** Breaking text into lines. */
import { joined, type Rich, type Span } from '../../words/index.ts';
import { richWidthMm, widthMm } from './metrics.ts';
import { printable, printableRich } from './printable.ts';

/** A piece of a line that must not be broken, and how wide it is. */
interface Word {
  readonly spans: Span[];
  /** Of the whole, in mm. */
  width: number;
  /** It goes on from the line before, inside a word that was too long. */
  readonly isBroken: boolean;
}

/** Far more than sums of widths differ by that were added up in another order. */
const ROUNDING_MM = 1e-6;

/**
 * Text as lines no wider than `width` mm, broken at blanks; a word wider than
 * that is broken where the line ends. Characters that the font lacks are
 * replaced. Always at least one line.
 */
export function wrap(spans: Rich, width: number, sizePt: number): Rich[] {
  const [only] = spans;
  if (only && spans.length === 1) {
    const text = printable(only.text);
    // Most of what a sheet says is a word or two.
    if (text !== '' && text === text.trim() && widthMm(text, sizePt, only.isStrong) < width - ROUNDING_MM)
      return [[{ ...only, text }]];
  }
  const blank = widthMm(' ', sizePt);
  const lines: Span[][] = [[]];
  let used = 0;
  for (const word of wordsOf(printableRich(spans), sizePt, width)) {
    const line = lines.at(-1) as Span[];
    if (word.isBroken || (line.length > 0 && used + blank + word.width > width)) {
      lines.push([...word.spans]);
      used = word.width;
      continue;
    }
    if (line.length > 0) {
      // The blank belongs to the span before it, so that strong runs stay whole.
      line.push({ text: ' ', isStrong: (line.at(-1) as Span).isStrong && (word.spans[0] as Span).isStrong });
      used += blank;
    }
    line.push(...word.spans);
    used += word.width;
  }
  return lines.map(joined);
}

/** One line no wider than `width` mm: what does not fit is cut and an ellipsis stands for it. */
export function shorten(text: string, width: number, sizePt: number, isStrong = false): string {
  if (widthMm(text, sizePt, isStrong) <= width) return text;
  const characters = [...text];
  while (characters.length > 0 && widthMm(`${characters.join('')}…`, sizePt, isStrong) > width) characters.pop();
  return `${characters.join('').trimEnd()}…`;
}

/** The words of a text, those wider than `width` in parts. */
function wordsOf(spans: Rich, sizePt: number, width: number): Word[] {
  const words: Word[] = [];
  let open: Word | null = null;
  for (const { text, isStrong } of spans) {
    for (const [index, part] of text.split(' ').entries()) {
      if (index > 0) open = null;
      if (part === '') continue;
      if (open === null) words.push((open = { spans: [], width: 0, isBroken: false }));
      open.spans.push({ text: part, isStrong });
      open.width += widthMm(part, sizePt, isStrong);
    }
  }
  return words.some((word) => word.width > width) ? words.flatMap((word) => fitting(word, width, sizePt)) : words;
}

/** The word itself, or, where it is wider than a line, the parts of it that fit; cut after a dash or slash if one is near. */
function fitting(word: Word, width: number, sizePt: number): Word[] {
  if (word.width <= width) return [word];
  const parts: Span[][] = [];
  let part: Span[] = [];
  for (const span of word.spans) {
    for (const character of span.text) {
      const next = { ...span, text: character };
      if (part.length > 0 && richWidthMm([...part, next], sizePt) > width) {
        const cut = part.findLastIndex(({ text }) => /[–/-]/.test(text)) + 1;
        const rest = part.slice(cut);
        const isNear = cut > 0 && richWidthMm([...rest, next], sizePt) <= width;
        parts.push(isNear ? part.slice(0, cut) : part);
        part = isNear ? rest : [];
      }
      part.push(next);
    }
  }
  return [...parts, part].map((spans, index) => ({ spans, width: richWidthMm(spans, sizePt), isBroken: index > 0 }));
}
