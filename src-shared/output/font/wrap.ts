/** Breaking text into lines. */
import { joined, type Rich, type Span } from '../../words/index.ts';
import { richWidthMm, widthMm } from './metrics.ts';
import { printableRich } from './printable.ts';

/** A piece of a line that must not be broken, and how wide it is. */
interface Word {
  readonly spans: Span[];
  /** Of the whole, in mm. */
  width: number;
  /** It goes on from the line before, inside a word that was too long. */
  readonly isBroken: boolean;
}

/**
 * Text as lines no wider than `width` mm, broken at blanks; a word wider than
 * that is broken where the line ends. Characters that the font lacks are
 * replaced. Always at least one line.
 */
export function wrap(spans: Rich, width: number, sizePt: number): Rich[] {
  const blank = widthMm(' ', sizePt);
  const lines: Span[][] = [[]];
  let used = 0;
  for (const word of wordsOf(printableRich(spans), sizePt).flatMap((word) => fitting(word, width, sizePt))) {
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

function wordsOf(spans: Rich, sizePt: number): Word[] {
  const words: Word[] = [];
  let open = false;
  for (const span of spans) {
    span.text.split(' ').forEach((text, index) => {
      if (index > 0) open = false;
      if (text === '') return;
      if (!open) words.push({ spans: [], width: 0, isBroken: false });
      open = true;
      const word = words.at(-1) as Word;
      word.spans.push({ ...span, text });
      word.width += widthMm(text, sizePt, span.isStrong);
    });
  }
  return words;
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
