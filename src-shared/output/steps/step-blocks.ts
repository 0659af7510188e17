/** *To have at hand*, then *Knitting it*: the running order as it is followed at the machine, a box to tick at each reading. */
import { widthOf, type Side } from '../../bed/index.ts';
import type { LengthUnit } from '../../length/index.ts';
import type { Act, Plan, RunningOrder } from '../../plan/index.ts';
import type { KnitPiece } from '../../project/index.ts';
import { plain, strong } from '../../words/index.ts';
import { runningOrderWords as runningOrder } from '../../words/running-order.ts';
import { sheetWords } from '../../words/sheet.ts';
import type { Block } from '../blocks/block.ts';
import { listBlock } from '../blocks/list.ts';
import { cell, columnsOf, tableBlock, type Cell, type Column } from '../blocks/table.ts';
import { headingBlock, paragraphBlock } from '../blocks/text.ts';
import { READ_PT } from '../style.ts';
import { atHand } from './at-hand.ts';
import { actNames } from './names.ts';
import { isShaping, toldSteps, type Step, type ToldStep } from './steps.ts';

const sheet = sheetWords;

export function atHandBlocks(
  piece: KnitPiece,
  plan: Plan,
  order: RunningOrder,
  widthMm: number,
  unit: LengthUnit,
): Block[] {
  const names = actNames(piece, unit);
  const entries = atHand(plan, order).map((item) => ({
    label: '☐',
    labelTone: 'ink' as const,
    text: plain(runningOrder.atHand(item, names)),
    more: [],
  }));
  return [headingBlock(plain(runningOrder.titles.atHand), widthMm), listBlock(entries, widthMm)];
}

/** All steps; stops of shaping as a table of their own, what comes again told once. */
export function knittingBlocks(piece: KnitPiece, order: RunningOrder, widthMm: number, unit: LengthUnit): Block[] {
  return [
    headingBlock(plain(runningOrder.titles.knitting), widthMm),
    paragraphBlock(plain(sheet.knitting.about), widthMm, { tone: 'soft', keepsWithNext: true }),
    ...inTables(toldSteps(order)).map((told) => {
      if (told.kind === 'again') {
        const said = runningOrder.again(told.rows, told.of, told.readings);
        return paragraphBlock([strong(said)], widthMm, { sizePt: READ_PT, spaceAboveMm: 2.5 });
      }
      const table = told.kind === 'shaping' ? shapingTable : stepTable;
      return table(told.steps, piece, widthMm, unit);
    }),
  ];
}

/** Steps after each other in one table. */
type Table =
  | { readonly kind: 'steps' | 'shaping'; readonly steps: readonly Step[] }
  | Extract<ToldStep, { readonly kind: 'again' }>;

/** A single stop of shaping stands among the steps: a table of its own would part those in two. */
function inTables(told: readonly ToldStep[]): Table[] {
  const tables: Table[] = [];
  for (const one of told) {
    if (one.kind === 'again' || (one.kind === 'shaping' && one.steps.length > 1)) {
      tables.push(one);
      continue;
    }
    const steps = one.kind === 'step' ? [one.step] : one.steps;
    const last = tables.at(-1);
    if (last?.kind === 'steps') tables[tables.length - 1] = { ...last, steps: [...last.steps, ...steps] };
    else tables.push({ kind: 'steps', steps });
  }
  return tables;
}

/** A box, the reading, the row after it, and where the carriage is. */
const READING_COLUMNS = [
  [sheet.rowList.columns.done, 11],
  [sheet.knitting.columns.counter, 15],
  [sheet.knitting.columns.row, 14],
  [sheet.knitting.columns.carriage, 21],
] as const;

function stepTable(steps: readonly Step[], piece: KnitPiece, widthMm: number, unit: LengthUnit): Block {
  const { columns } = sheet.knitting;
  const names = actNames(piece, unit);
  const set = columnsOf(widthMm, [...READING_COLUMNS, [columns.acts, 0], [columns.knit, 40]]);
  const rows = steps.map(({ stop, knit }): Cell[] => [
    ...readingCells(stop.counter, stop.row, stop.carriageAt),
    { ...cell(''), sentences: stop.acts.map((act) => runningOrder.act(act, names)) },
    cell(knit ? [strong(runningOrder.knit(knit.first, knit.last))] : ''),
  ]);
  return tableBlock(set, rows, { title: runningOrder.titles.knitting, sizePt: READ_PT, spaceAboveMm: 2 });
}

function shapingTable(steps: readonly Step[], piece: KnitPiece, widthMm: number, unit: LengthUnit): Block {
  const { columns, shaping } = sheet.knitting;
  const names = actNames(piece, unit);
  const set: Column[] = columnsOf(widthMm, [
    ...READING_COLUMNS,
    [columns.left, 26],
    [columns.right, 26],
    [columns.also, 0],
    [columns.stitches, 15, 'end'],
    [columns.knitTo, 11, 'end'],
  ]);
  const at = (acts: readonly Act[], edge: Side): string =>
    acts.flatMap((act) => (isShaping(act) && act.edge === edge ? [shaping(act)] : [])).join(' ');
  const rows = steps.map(({ stop, knit }): Cell[] => [
    ...readingCells(stop.counter, stop.row, stop.carriageAt),
    cell(at(stop.acts, 'left')),
    cell(at(stop.acts, 'right')),
    { ...cell(''), sentences: stop.acts.filter((act) => !isShaping(act)).map((act) => runningOrder.act(act, names)) },
    cell(String(widthOf(stop.needles)), 'soft'),
    cell([strong(String(knit?.last ?? ''))]),
  ]);
  return tableBlock(set, rows, { title: sheet.knitting.shapingTitle, sizePt: READ_PT, spaceAboveMm: 2.5 });
}

function readingCells(counter: number, row: number | null, carriageAt: Side): Cell[] {
  return [
    { ...cell(''), isBox: true },
    cell([strong(String(counter))]),
    cell(row === null ? sheet.knitting.end : String(row)),
    cell(runningOrder.carriageAt(carriageAt)),
  ];
}

/** Why the piece cannot be knitted, and what to do: in place of all orders. */
export function blockedBlocks(reasons: readonly string[], widthMm: number): Block[] {
  if (reasons.length === 0) return [];
  const entries = reasons.map((text) => ({ label: '!', labelTone: 'warn' as const, text: plain(text), more: [] }));
  return [
    headingBlock(plain(runningOrder.titles.blocked), widthMm),
    paragraphBlock(plain(runningOrder.blocked), widthMm, { keepsWithNext: true }),
    listBlock(entries, widthMm),
  ];
}
