/** Headings and paragraphs. */
import type { Rich } from '../../words/index.ts';
import { wrap } from '../font/wrap.ts';
import { textItem } from '../items.ts';
import type { TextItem } from '../model.ts';
import { baselineMm, BODY_PT, HEADING_PT, lineHeightMm } from '../style.ts';
import type { Tone } from '../tones.ts';
import { KEPT_WHOLE_MM, wholeBlock, type Block } from './block.ts';

/** The lines of a text as items, the first line's top at `y`. */
export function textLines(lines: readonly Rich[], x: number, y: number, sizePt: number, tone: Tone): TextItem[] {
  return lines.map((line, index) =>
    textItem(line, x, y + index * lineHeightMm(sizePt) + baselineMm(sizePt), { sizePt, tone }),
  );
}

/** A heading that stays with what follows it. */
export function headingBlock(text: Rich, widthMm: number, level: 2 | 3 = 2): Block {
  const sizePt = level === 2 ? HEADING_PT : BODY_PT;
  const lines = wrap(
    text.map((span) => ({ ...span, isStrong: true })),
    widthMm,
    sizePt,
  );
  const height = lines.length * lineHeightMm(sizePt) + 0.8;
  return wholeBlock(
    height,
    level === 2 ? 5 : 2.5,
    (x, y) => [{ role: 'heading', level, items: textLines(lines, x, y, sizePt, 'ink') }],
    true,
  );
}

export interface ParagraphStyle {
  readonly sizePt?: number;
  readonly tone?: Tone;
  readonly spaceAboveMm?: number;
  readonly keepsWithNext?: boolean;
}

/** A paragraph; one that is too tall to stay whole may break between its lines. */
export function paragraphBlock(text: Rich, widthMm: number, style: ParagraphStyle = {}): Block {
  const { sizePt = BODY_PT, tone = 'ink', spaceAboveMm = 1.4, keepsWithNext = false } = style;
  return linesBlock(wrap(text, widthMm, sizePt), { sizePt, tone, spaceAboveMm, keepsWithNext });
}

function linesBlock(lines: readonly Rich[], style: Required<ParagraphStyle>): Block {
  const { sizePt, tone, spaceAboveMm, keepsWithNext } = style;
  const lineMm = lineHeightMm(sizePt);
  const heightMm = lines.length * lineMm;
  const block = wholeBlock(
    heightMm,
    spaceAboveMm,
    (x, y) => [{ role: 'paragraph', items: textLines(lines, x, y, sizePt, tone) }],
    keepsWithNext,
  );
  if (heightMm <= KEPT_WHOLE_MM) return block;
  return {
    ...block,
    leastMm: KEPT_WHOLE_MM,
    keepsWithNext: false,
    split: (free) => {
      // Neither the last line alone on the next page, nor one alone on this.
      const count = Math.min(lines.length - 2, Math.max(2, Math.floor(free / lineMm)));
      return [
        linesBlock(lines.slice(0, count), { ...style, keepsWithNext: false }),
        linesBlock(lines.slice(count), { ...style, spaceAboveMm: 0 }),
      ];
    },
  };
}
