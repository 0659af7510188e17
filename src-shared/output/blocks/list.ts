/** Lists: numbered steps, and things to watch for. */
import type { Rich } from '../../words/index.ts';
import { wrap } from '../font/wrap.ts';
import { textItem } from '../items.ts';
import type { SheetItem } from '../model.ts';
import { baselineMm, BODY_PT, lineHeightMm } from '../style.ts';
import type { Tone } from '../tones.ts';
import { KEPT_WHOLE_MM, type Block } from './block.ts';
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

/** A list in one column, which may break between its entries, and within one that is too tall to stay whole. */
export function listBlock(entries: readonly ListLine[], widthMm: number, spaceAboveMm = 0.6): Block {
  const set = entries.map((entry): SetLine => {
    const lines = wrap(entry.text, widthMm - INDENT_MM, BODY_PT);
    const moreLines = entry.more.length === 0 ? [] : wrap(entry.more, widthMm - INDENT_MM, BODY_PT);
    return setLine(entry, lines, moreLines);
  });
  return blockOf(set, spaceAboveMm);
}

function setLine(entry: ListLine, lines: readonly Rich[], moreLines: readonly Rich[]): SetLine {
  return { ...entry, lines, moreLines, heightMm: (lines.length + moreLines.length) * lineHeightMm(BODY_PT) };
}

/** As many lines of an entry as fit in `heightMm`, at least one, and the rest without its label. */
function splitLine(entry: SetLine, heightMm: number): readonly [SetLine, SetLine] {
  const { lines, moreLines } = entry;
  const count = Math.max(1, Math.floor(heightMm / lineHeightMm(BODY_PT)));
  const more = Math.max(0, count - lines.length);
  return [
    setLine(entry, lines.slice(0, count), moreLines.slice(0, more)),
    setLine({ ...entry, label: '' }, lines.slice(count), moreLines.slice(more)),
  ];
}

function blockOf(entries: readonly SetLine[], spaceAboveMm: number): Block {
  return {
    heightMm: heightOf(entries),
    // One that is short stays whole: its last entry would else be alone.
    leastMm:
      heightOf(entries) <= KEPT_WHOLE_MM ? heightOf(entries) : Math.min(KEPT_WHOLE_MM, entries[0]?.heightMm ?? 0),
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
      const [first, ...others] = entries as readonly [SetLine, ...SetLine[]];
      if (first.heightMm > heightMm) {
        const [part, rest] = splitLine(first, heightMm);
        return [blockOf([part], spaceAboveMm), blockOf([rest, ...others], 0)];
      }
      let count = 1;
      // No page begins with the last entry alone.
      while (count < entries.length - 2 && heightOf(entries.slice(0, count + 1)) <= heightMm) count++;
      return [blockOf(entries.slice(0, count), spaceAboveMm), blockOf(entries.slice(count), 0)];
    },
  };
}

function heightOf(entries: readonly SetLine[]): number {
  return entries.reduce((sum, entry) => sum + entry.heightMm, 0) + Math.max(0, entries.length - 1) * GAP_MM;
}

function labelItems(entry: SetLine, x: number, y: number): SheetItem[] {
  if (entry.label === '') return [];
  const style = { sizePt: BODY_PT, tone: entry.labelTone, isStrong: true };
  return [textItem(entry.label, x, y + baselineMm(BODY_PT), style)];
}

function bodyItems(entry: SetLine, x: number, y: number): SheetItem[] {
  const below = y + entry.lines.length * lineHeightMm(BODY_PT);
  return [...textLines(entry.lines, x, y, BODY_PT, 'ink'), ...textLines(entry.moreLines, x, below, BODY_PT, 'soft')];
}
