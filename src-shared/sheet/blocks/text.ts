/** Headings and paragraphs. */
import { wrap } from '../font/wrap.ts';
import { textItem } from '../items.ts';
import type { TextItem } from '../model.ts';
import type { Rich } from '../rich.ts';
import { baselineMm, BODY_PT, HEADING_PT, lineHeightMm } from '../style.ts';
import type { Tone } from '../tones.ts';
import { wholeBlock, type Block } from './block.ts';

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

export function paragraphBlock(text: Rich, widthMm: number, style: ParagraphStyle = {}): Block {
  const { sizePt = BODY_PT, tone = 'ink', spaceAboveMm = 1.4, keepsWithNext = false } = style;
  const lines = wrap(text, widthMm, sizePt);
  return wholeBlock(
    lines.length * lineHeightMm(sizePt),
    spaceAboveMm,
    (x, y) => [{ role: 'paragraph', items: textLines(lines, x, y, sizePt, tone) }],
    keepsWithNext,
  );
}
