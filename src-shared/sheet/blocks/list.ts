/** Lists: numbered steps, and things to watch for. */
import { wrap } from '../font/wrap.ts';
import { textItem } from '../items.ts';
import type { SheetItem } from '../model.ts';
import type { Rich } from '../rich.ts';
import { baselineMm, BODY_PT, lineHeightMm } from '../style.ts';
import type { Tone } from '../tones.ts';
import type { Block } from './block.ts';
import { textLines } from './text.ts';

export interface ListLine {
  /** Stands before the text: a step's number, a mark. */
  readonly label: string;
  readonly labelTone: Tone;
  readonly text: Rich;
  /** Said after the text, softer, on lines of its own; empty for none. */
  readonly more: Rich;
}

const INDENT_MM = 6;
const GAP_MM = 1.1;

interface SetLine extends ListLine {
  readonly lines: readonly Rich[];
  readonly moreLines: readonly Rich[];
  readonly heightMm: number;
}

/** A list in one column, which may break between its lines. */
export function listBlock(entries: readonly ListLine[], widthMm: number, spaceAboveMm = 0.6): Block {
  const set = entries.map((entry): SetLine => {
    const lines = wrap(entry.text, widthMm - INDENT_MM, BODY_PT);
    const moreLines = entry.more.length === 0 ? [] : wrap(entry.more, widthMm - INDENT_MM, BODY_PT);
    return { ...entry, lines, moreLines, heightMm: (lines.length + moreLines.length) * lineHeightMm(BODY_PT) };
  });
  return blockOf(set, spaceAboveMm);
}

function blockOf(entries: readonly SetLine[], spaceAboveMm: number): Block {
  return {
    heightMm: heightOf(entries),
    leastMm: entries[0]?.heightMm ?? 0,
    spaceAboveMm,
    keepsWithNext: false,
    draw: (x, y) => {
      let top = y;
      const drawn = entries.map((entry) => {
        const at = top;
        top += entry.heightMm + GAP_MM;
        return { label: labelItems(entry, x, at), body: bodyItems(entry, x + INDENT_MM, at) };
      });
      return [{ role: 'list', entries: drawn }];
    },
    split: (heightMm) => {
      let count = 1;
      while (count < entries.length - 1 && heightOf(entries.slice(0, count + 1)) <= heightMm) count++;
      return [blockOf(entries.slice(0, count), spaceAboveMm), blockOf(entries.slice(count), 0)];
    },
  };
}

function heightOf(entries: readonly SetLine[]): number {
  return entries.reduce((sum, entry) => sum + entry.heightMm, 0) + Math.max(0, entries.length - 1) * GAP_MM;
}

function labelItems(entry: SetLine, x: number, y: number): SheetItem[] {
  const style = { sizePt: BODY_PT, tone: entry.labelTone, isStrong: true };
  return [textItem(entry.label, x, y + baselineMm(BODY_PT), style)];
}

function bodyItems(entry: SetLine, x: number, y: number): SheetItem[] {
  const below = y + entry.lines.length * lineHeightMm(BODY_PT);
  return [...textLines(entry.lines, x, y, BODY_PT, 'ink'), ...textLines(entry.moreLines, x, below, BODY_PT, 'soft')];
}
