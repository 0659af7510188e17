/**
 * Tables, which may break between rows, and within a row that is too tall to
 * stay whole; the header stands again where they go on.
 */
import { plain, type Rich } from '../../words/index.ts';
import { wrap } from '../font/wrap.ts';
import { lineItem, rectangleItem, textItem } from '../items.ts';
import type { SheetElement, SheetItem, TableRow } from '../model.ts';
import { baselineMm, HAIRLINE_MM, LINE_MM, lineHeightMm, TABLE_PT } from '../style.ts';
import type { Tone, YarnColour } from '../tones.ts';
import { KEPT_WHOLE_MM, type Block } from './block.ts';

export interface Column {
  readonly title: string;
  readonly widthMm: number;
  readonly align: 'start' | 'end';
}

export interface Cell {
  readonly text: Rich;
  readonly tone?: Tone;
  /** A patch of yarn before the text. */
  readonly swatch?: YarnColour;
  /** Instead of the text: one below the other, each behind a mark. */
  readonly sentences?: readonly (string | Rich)[];
  /** A box to tick instead of text. */
  readonly isBox?: boolean;
}

/** What is said of a table as a whole, and how close it is set. */
export interface TableStyle {
  /** Names the table to assistive technology. */
  readonly title: string;
  readonly sizePt?: number;
  readonly spaceAboveMm?: number;
  /** A note follows that belongs to it. */
  readonly keepsWithNext?: boolean;
}

/** Rows that begin a table which is broken later on. */
const LEAST_ROWS = 2;
/** Of a row that is broken, no less begins at the foot of a page. */
const LEAST_PART_MM = 20;
const PADDING_MM = 0.75;
/** Free at the right of each column but the last. */
const GUTTER_MM = 2.5;
const SWATCH_MM = 2.6;
const BOX_MM = 3.6;
/** Before a sentence. It is text, so that sentences are told apart by whoever reads or copies the file too. */
const MARK = '•';
const MARK_MM = 3;
const SWATCH_SPACE_MM = 4;

interface SetCell {
  readonly lines: readonly Rich[];
  /** Which of the lines begin a sentence that stands behind a mark; null where none does. */
  readonly starts: readonly boolean[] | null;
  readonly tone: Tone;
  readonly swatch: YarnColour | null;
  readonly isBox: boolean;
}

interface SetRow {
  readonly cells: readonly SetCell[];
  readonly lineMm: number;
  readonly heightMm: number;
}

interface Setting {
  readonly columns: readonly Column[];
  readonly style: Required<TableStyle>;
  readonly header: SetRow;
}

/** A cell of plain text. */
export function cell(text: string | Rich, tone?: Tone): Cell {
  return { text: asRich(text), ...(tone ? { tone } : {}) };
}

function asRich(text: string | Rich): Rich {
  return typeof text === 'string' ? plain(text) : text;
}

/** Columns that fill `widthMm`: the one given as 0 takes what the others leave. */
export function columnsOf(
  widthMm: number,
  wanted: readonly (readonly [title: string, widthMm: number, align?: Column['align']])[],
): Column[] {
  const given = wanted.reduce((sum, [, width]) => sum + width, 0);
  return wanted.map(([title, width, align = 'start']) => ({
    title,
    widthMm: width === 0 ? widthMm - given : width,
    align,
  }));
}

export function tableBlock(columns: readonly Column[], rows: readonly (readonly Cell[])[], style: TableStyle): Block {
  const full = { sizePt: TABLE_PT, spaceAboveMm: 0.8, keepsWithNext: false, ...style };
  const titles = columns.map(({ title }): Cell => ({ text: plain(title), tone: 'soft' }));
  const setting: Setting = { columns, style: full, header: setRow(titles, columns, TABLE_PT) };
  return blockOf(
    rows.map((row) => setRow(row, columns, full.sizePt)),
    setting,
    full.spaceAboveMm,
  );
}

function setRow(cells: readonly Cell[], columns: readonly Column[], sizePt: number): SetRow {
  const set = columns.map((column, index): SetCell => {
    const { text, tone = 'ink', swatch = null, isBox = false, sentences = [] } = cells[index] ?? cell('');
    const gutter = index === columns.length - 1 ? 0 : GUTTER_MM;
    const width = column.widthMm - gutter - (swatch ? SWATCH_SPACE_MM : 0);
    if (sentences.length > 0) {
      const set = sentences.map((sentence) => wrap(asRich(sentence), width - MARK_MM, sizePt));
      const starts = set.flatMap((lines) => lines.map((_, line) => line === 0));
      return { lines: set.flat(), starts, tone, swatch, isBox };
    }
    return { lines: text.length === 0 ? [] : wrap(text, width, sizePt), starts: null, tone, swatch, isBox };
  });
  return rowOf(set, lineHeightMm(sizePt));
}

function rowOf(cells: readonly SetCell[], lineMm: number): SetRow {
  const lines = Math.max(1, ...cells.map((each) => each.lines.length));
  return { cells, lineMm, heightMm: lines * lineMm + 2 * PADDING_MM };
}

/**
 * As many lines of a row as fit in `heightMm`, at least one, and the rest, which
 * its first cell with text names again once all of it has been said.
 */
function splitRow({ cells, lineMm }: SetRow, heightMm: number): readonly [SetRow, SetRow] {
  const count = Math.max(1, Math.floor((heightMm - 2 * PADDING_MM) / lineMm));
  const name = cells.findIndex(({ lines }) => lines.length > 0);
  const rest = cells.map((each, index): SetCell => {
    const isNamed = index === name && each.lines.length <= count;
    const lines = isNamed ? goingOn(each.lines) : each.lines.slice(count);
    const starts = each.starts?.slice(count) ?? null;
    return { ...each, lines, starts, swatch: index === name ? each.swatch : null, isBox: false };
  });
  return [
    rowOf(
      cells.map((each) => ({ ...each, lines: each.lines.slice(0, count) })),
      lineMm,
    ),
    rowOf(rest, lineMm),
  ];
}

const GOES_ON = ' …';

function goingOn([name = []]: readonly Rich[]): Rich[] {
  return name.length === 0 || name.at(-1)?.text === GOES_ON ? [name] : [[...name, { text: GOES_ON, isStrong: false }]];
}

function blockOf(rows: readonly SetRow[], setting: Setting, spaceAboveMm: number): Block {
  const { header } = setting;
  const heightMm = header.heightMm + heightOf(rows);
  const isWhole = heightMm <= KEPT_WHOLE_MM;
  return {
    heightMm,
    leastMm: isWhole ? heightMm : header.heightMm + Math.min(KEPT_WHOLE_MM, heightOf(rows.slice(0, LEAST_ROWS))),
    spaceAboveMm,
    keepsWithNext: setting.style.keepsWithNext && isWhole,
    draw: (x, y) => drawTable(rows, setting, x, y),
    split: (heightMm) => {
      let count = 0;
      let used = header.heightMm;
      for (const row of rows) {
        if (used + row.heightMm > heightMm) break;
        used += row.heightMm;
        count++;
      }
      // No page begins with the last row alone.
      if (count === rows.length - 1 && count > LEAST_ROWS) count--;
      const [fits, rest] = [rows.slice(0, count), rows.slice(count)];
      const [next, ...others] = rest;
      const free = heightMm - used;
      // A row that no page may hold fills up what is left of this one.
      const isBroken = next && (count === 0 || (next.heightMm > KEPT_WHOLE_MM && free >= LEAST_PART_MM));
      if (isBroken) {
        const [part, left] = splitRow(next, free);
        return [blockOf([...fits, part], setting, spaceAboveMm), blockOf([left, ...others], setting, spaceAboveMm)];
      }
      return [blockOf(fits, setting, spaceAboveMm), blockOf(rest, setting, spaceAboveMm)];
    },
  };
}

function heightOf(rows: readonly SetRow[]): number {
  return rows.reduce((sum, row) => sum + row.heightMm, 0);
}

function drawTable(rows: readonly SetRow[], setting: Setting, x: number, y: number): SheetElement[] {
  const { columns, style, header } = setting;
  const right = x + columns.reduce((sum, column) => sum + column.widthMm, 0);
  const rules: SheetItem[] = [];
  const drawn: TableRow[] = [];
  let top = y;
  [header, ...rows].forEach((row, index) => {
    const isHeader = index === 0;
    drawn.push({ isHeader, cells: drawCells(row, columns, isHeader ? TABLE_PT : style.sizePt, x, top) });
    top += row.heightMm;
    const stroke = isHeader
      ? ({ paint: 'rule', width: LINE_MM } as const)
      : ({ paint: 'hairline', width: HAIRLINE_MM } as const);
    rules.push(lineItem([x, top], [right, top], stroke));
  });
  return [
    { role: 'decoration', items: rules },
    { role: 'table', title: style.title, rows: drawn },
  ];
}

function drawCells(row: SetRow, columns: readonly Column[], sizePt: number, x: number, y: number): SheetItem[][] {
  let left = x;
  return columns.map((column, index) => {
    const { lines, starts, tone, swatch, isBox } = row.cells[index] as SetCell;
    const isLast = index === columns.length - 1;
    const start = left;
    left += column.widthMm;
    const at = column.align === 'start' ? start + (swatch ? SWATCH_SPACE_MM : 0) : left - (isLast ? 0 : GUTTER_MM);
    const items: SheetItem[] = lines.flatMap((line, number) => {
      const baseline = y + PADDING_MM + number * lineHeightMm(sizePt) + baselineMm(sizePt);
      const text = textItem(line, starts ? at + MARK_MM : at, baseline, { sizePt, tone, anchor: column.align });
      return starts?.[number] ? [textItem(MARK, at, baseline, { sizePt, tone: 'soft' }), text] : [text];
    });
    if (isBox) {
      const middle = y + PADDING_MM + (lineHeightMm(sizePt) - BOX_MM) / 2;
      return [rectangleItem(start, middle, BOX_MM, BOX_MM, null, { paint: 'ink', width: LINE_MM })];
    }
    if (!swatch) return items;
    const top = y + PADDING_MM + (lineHeightMm(sizePt) - SWATCH_MM) / 2;
    return [rectangleItem(start, top, SWATCH_MM, SWATCH_MM, swatch, { paint: 'rule', width: HAIRLINE_MM }), ...items];
  });
}
