/** The row list on paper: what is knitted row by row. */
import { label, type Run, type Side } from '../bed/index.ts';
import { rowNotes, type Plan, type PlanRow, type RowNote } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { plain, rich, strong, words, type Rich } from '../words/index.ts';
import type { Block } from './blocks/block.ts';
import { cell, tableBlock, type Cell } from './blocks/table.ts';
import { headingBlock, paragraphBlock } from './blocks/text.ts';
import { columnsOf } from './facts-blocks.ts';
import { LABEL_PT, TABLE_PT } from './style.ts';

/** A row, or neighbouring plain rows on the same needles. */
export interface RowLine {
  readonly first: number;
  readonly last: number;
  /** The carriage's side before the first of them. */
  readonly from: Side;
  readonly contrast: PlanRow['contrast'];
  readonly wraps: PlanRow['wraps'];
  readonly notes: readonly RowNote[];
}

/** Notes that speak of what comes after the row, or of the row itself: it must stand alone. */
const STANDS_ALONE: ReadonlySet<RowNote['code']> = new Set(['set-up', 'fold', 'join', 'pattern-ends']);

/** All rows, plain ones with nothing new about them taken together. */
export function rowLines(plan: Plan): RowLine[] {
  const notes = rowNotes(plan);
  const lines: RowLine[] = [];
  let isOpen = false;
  plan.rows.forEach(({ row, from, contrast, wraps }, index) => {
    const said = notes[index] ?? [];
    const isPlain = contrast.length === 0 && wraps.length === 0;
    const last = lines.at(-1);
    if (last && isOpen && isPlain && said.length === 0) {
      lines[lines.length - 1] = { ...last, last: row };
      return;
    }
    lines.push({ first: row, last: row, from, contrast, wraps, notes: said });
    isOpen = isPlain && said.every(({ code }) => !STANDS_ALONE.has(code));
  });
  return lines;
}

export function rowListBlocks(piece: KnitPiece, plan: Plan, widthMm: number): Block[] {
  const { rowList } = words.sheet;
  const contrasts = plan.yarn.uses.filter(({ role }) => role === 'contrast').map(({ yarn }) => yarn);
  const only = contrasts.length === 1 ? (contrasts[0] as number) : null;
  const needles = only === null ? rowList.columns.needles : rowList.needlesIn(piece.yarns[only]?.name ?? '');
  const columns = columnsOf(widthMm, [
    [rowList.columns.row, 15.5],
    [rowList.columns.from, 16.5],
    [needles, 0],
    [rowList.columns.wrap, 13],
    [rowList.columns.notes, 49.5],
  ]);
  const rows = rowLines(plan).map((line): Cell[] => {
    const isPlain = line.contrast.length === 0;
    return [
      cell([strong(rowList.rows(line.first, line.last))], isPlain ? 'soft' : 'ink'),
      cell(line.from, isPlain ? 'soft' : 'ink'),
      isPlain ? cell(rowList.plain, 'soft') : cell(needlesText(line.contrast, only === null ? contrasts : [], piece)),
      cell(line.wraps.map(({ needle }) => label(needle)).join(' ')),
      cell(line.notes.map(rowList.note).join('; '), 'soft'),
    ];
  });
  return [
    headingBlock(plain(rowList.title), widthMm),
    paragraphBlock(plain(rowList.about), widthMm, { sizePt: LABEL_PT, tone: 'soft', keepsWithNext: true }),
    tableBlock(columns, rows, { title: rowList.title, sizePt: TABLE_PT }),
  ];
}

/** Runs of needles from left to right; with more than one contrast yarn, those of each after its name. */
function needlesText(contrast: PlanRow['contrast'], named: readonly number[], piece: KnitPiece): Rich {
  const runs = (found: readonly Run[]): string => words.sheet.rowList.runs(found);
  if (named.length === 0) return plain(runs(contrast));
  return named
    .map((yarn) => ({ yarn, found: contrast.filter((run) => run.yarn === yarn) }))
    .filter(({ found }) => found.length > 0)
    .map(({ yarn, found }) => words.sheet.rowList.ofYarn(piece.yarns[yarn]?.name ?? '', runs(found)))
    .reduce<Rich>((sum, part) => (sum.length === 0 ? part : rich`${sum} ${part}`), []);
}
