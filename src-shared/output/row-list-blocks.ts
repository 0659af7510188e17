/** The row list on paper: what is knitted row by row, with a box to tick for each. */
import { label, opposite, type Run, type Side } from '../bed/index.ts';
import type { LengthUnit } from '../length/index.ts';
import type { Act, Plan } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { plain, strong, words } from '../words/index.ts';
import { sheetWords } from '../words/sheet.ts';
import type { Block } from './blocks/block.ts';
import { cell, columnsOf, tableBlock, type Cell } from './blocks/table.ts';
import { headingBlock, paragraphBlock } from './blocks/text.ts';
import { rowsToKnit, sentences, type RowToKnit } from './row-list.ts';
import { toldOnce } from './steps/repeats.ts';
import { READ_PT } from './style.ts';

/** A row, or neighbouring plain rows before which there is nothing to do. */
export interface RowLine extends Pick<RowToKnit, 'edges' | 'contrast' | 'wraps' | 'before' | 'after'> {
  readonly kind: 'rows';
  readonly first: number;
  readonly last: number;
  /** The carriage's side before the first of them. */
  readonly from: Side;
}

/** Rows that are knitted as those right below them, beginning at each of the readings. */
export interface AgainLine {
  readonly kind: 'again';
  readonly first: number;
  readonly last: number;
  readonly of: { readonly first: number; readonly last: number };
  readonly readings: readonly number[];
}

/** More lines than this are not read as rows that come again. */
const MOST_IN_REPEAT = 400;

/** What the steps tell in full, and what would be said again on every row of a pattern. */
const LEFT_TO_STEPS: ReadonlySet<Act['kind']> = new Set(['check', 'strand', 'lay']);

/** All rows: plain ones with nothing to do taken together, what comes again told once. */
export function rowLines(piece: KnitPiece, plan: Plan): (RowLine | AgainLine)[] {
  const lines = linesOf(rowsToKnit(piece, plan));
  return toldOnce(lines.map(keyOf), MOST_IN_REPEAT).flatMap(({ at, size, times }) => {
    const once = lines.slice(at, at + size);
    const [next, last] = [lines[at + size], lines[at + size * times - 1]];
    if (times === 1 || !next || !last) return once;
    const starts = Array.from({ length: times - 1 }, (_, time) => (lines[at + (time + 1) * size] as RowLine).first);
    const [first] = once as [RowLine];
    return [
      ...once,
      {
        kind: 'again' as const,
        first: next.first,
        last: last.last,
        of: { first: first.first, last: next.first - 1 },
        readings: starts.map((row) => row - 1),
      },
    ];
  });
}

function linesOf(rows: readonly RowToKnit[]): RowLine[] {
  const lines: RowLine[] = [];
  let isOpen = false;
  for (const { row, from, edges, contrast, wraps, before, after } of rows) {
    const isPlain = contrast.length === 0 && before.length === 0 && after.length === 0;
    const last = lines.at(-1);
    if (last && isOpen && isPlain) lines[lines.length - 1] = { ...last, last: row };
    else lines.push({ kind: 'rows', first: row, last: row, from, edges, contrast, wraps, before, after });
    isOpen = isPlain;
  }
  return lines;
}

/** What comes again is told once only where nothing but the needles of the pattern is to be seen to. */
function keyOf({ first, last, from, edges, contrast, wraps, before, after }: RowLine): string | null {
  if (before.length > 0 || after.length > 0) return null;
  const needles = wraps.map(({ needle }) => needle);
  return JSON.stringify([last - first, from, edges.first, edges.last, contrast, needles]);
}

export function rowListBlocks(piece: KnitPiece, plan: Plan, widthMm: number, unit: LengthUnit): Block[] {
  const { rowList } = sheetWords;
  const contrasts = plan.yarn.uses.filter(({ role }) => role === 'contrast').map(({ yarn }) => yarn);
  const only = contrasts.length === 1 ? (contrasts[0] as number) : null;
  const needles = only === null ? rowList.columns.needles : rowList.needlesIn(piece.yarns[only]?.name ?? '');
  const columns = columnsOf(widthMm, [
    [rowList.columns.done, 11],
    [rowList.columns.row, 20],
    [rowList.columns.from, 15],
    [rowList.columns.before, 62],
    [needles, 0],
    [rowList.columns.wrap, 15],
  ]);
  const said = (acts: readonly Act[]): Cell => {
    const told = acts.filter(({ kind }) => !LEFT_TO_STEPS.has(kind));
    return { ...cell(''), sentences: sentences(told, piece, unit) };
  };
  const box = { ...cell(''), isBox: true };
  const lines = rowLines(piece, plan);
  const rows = lines.map((line): Cell[] => {
    const numbers = cell([strong(words.numbers.span(line.first, line.last))]);
    if (line.kind === 'again') {
      const { of, readings } = line;
      return [box, numbers, cell(''), cell(rowList.begin(readings)), cell(rowList.as(of)), cell('')];
    }
    return [
      box,
      numbers,
      cell(words.numbers.side(line.from)),
      said(line.before),
      line.contrast.length === 0
        ? cell(rowList.plain, 'soft')
        : needlesCell(line.contrast, only === null ? contrasts : [], piece),
      cell(line.wraps.map(({ needle }) => label(needle)).join(' ')),
    ];
  });
  const top = lines.at(-1);
  if (top?.kind === 'rows' && top.after.length > 0) {
    // Where the carriage stands then depends on the last row.
    const { from } = plan.rows.at(-1) as Plan['rows'][number];
    rows.push([
      box,
      cell([strong(rowList.end)]),
      cell(words.numbers.side(opposite(from))),
      said(top.after),
      cell(''),
      cell(''),
    ]);
  }
  return [
    headingBlock(plain(rowList.title), widthMm),
    paragraphBlock(plain(rowList.about), widthMm, { tone: 'soft', keepsWithNext: true }),
    tableBlock(columns, rows, { title: rowList.title, sizePt: READ_PT }),
  ];
}

/** Runs of needles from left to right; with more than one contrast yarn, those of each after its name. */
function needlesCell(contrast: RowToKnit['contrast'], named: readonly number[], piece: KnitPiece): Cell {
  const runs = (found: readonly Run[]): string => sheetWords.rowList.runs(found);
  if (named.length === 0) return cell(runs(contrast));
  const byYarn = named
    .map((yarn) => ({ yarn, found: contrast.filter((run) => run.yarn === yarn) }))
    .filter(({ found }) => found.length > 0)
    .map(({ yarn, found }) => sheetWords.rowList.ofYarn(piece.yarns[yarn]?.name ?? '', runs(found)));
  return { ...cell(''), sentences: byYarn };
}
