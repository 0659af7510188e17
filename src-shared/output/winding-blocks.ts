/** Yarn to wind, ball by ball, and strands to cut for wrapping. */
import type { LengthUnit } from '../length/index.ts';
import {
  ballsToWind,
  garmentNeed,
  patternGauges,
  strandsToCut,
  type BallToWind,
  type GarmentNeed,
  type Plan,
} from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { plain, strong, words } from '../words/index.ts';
import { sheetWords } from '../words/sheet.ts';
import { yarnWords } from '../words/yarn.ts';
import type { Block } from './blocks/block.ts';
import { cell, columnsOf, tableBlock, type Cell } from './blocks/table.ts';
import { headingBlock, paragraphBlock } from './blocks/text.ts';
import type { SheetFacts } from './sheet-facts.ts';
import { yarnPaint } from './tones.ts';

/** Metres of each ball, and with the margin; of a yarn in several balls their sum; grams where a yarn's count is known. */
export function yarnBlocks(
  { piece, knit, isOnlyPiece }: Pick<SheetFacts, 'piece' | 'knit' | 'isOnlyPiece'>,
  plan: Plan,
  widthMm: number,
  unit: LengthUnit,
): Block[] {
  const { yarn } = sheetWords;
  const { uses, margin, loops } = plan.yarn;
  const balls = ballsToWind(piece, plan);
  const isWeighed = balls.some(({ grams }) => grams !== null);
  const numbered = balls.filter(({ number }) => number !== null);
  const isNumbered = numbered.length > 0;
  const columns = columnsOf(widthMm, [
    [yarn.columns.yarn, 0],
    ...(isNumbered ? [[yarn.columns.ball, 12, 'end'] as const] : []),
    [yarn.columns.use, 46],
    [yarn.columns.length[unit], 18, 'end'],
    ...(isWeighed ? [[yarn.columns.weight[unit], 16, 'end'] as const] : []),
    [yarn.columns.margin(margin, unit), 22, 'end'],
  ]);
  const nameOf = (index: number): string => piece.yarns[index]?.name ?? '';
  const row = (index: number, first: string, ball: string, use: string, mm: number, grams: number | null): Cell[] => [
    { ...cell(first), swatch: yarnPaint(piece.yarns[index]?.colour ?? '#ffffff') },
    ...(isNumbered ? [cell([strong(ball)])] : []),
    cell(use),
    cell(yarn.length(mm, unit)),
    ...(isWeighed ? [cell(yarn.weight(grams, unit))] : []),
    cell([strong(yarn.length(mm * (1 + margin), unit))]),
  ];
  const rows = uses.flatMap(({ yarn: index, totalMm, grams }): Cell[][] => {
    const own = balls.filter((ball) => ball.yarn === index);
    const each = own.map((ball: BallToWind) =>
      row(
        index,
        yarn.named(nameOf(index), ball.role),
        ball.number === null ? '' : String(ball.number),
        yarn.use(ball, own.length > 1),
        ball.mm,
        ball.grams,
      ),
    );
    return own.length > 1 ? [...each, row(index, yarn.all(nameOf(index), own.length), '', '', totalMm, grams)] : each;
  });
  const ofAll = uses.map(({ yarn: index, totalMm }) => ({
    yarn: nameOf(index),
    length: words.lengths.yarn(totalMm * (1 + margin) * knit, unit),
  }));
  const need = garmentNeed([{ name: piece.name, knit, plan }], piece);
  const told = [
    ...need.yarns.map((one) => {
      const alone = isOnlyPiece ? one : { ...one, onHand: null };
      return yarnWords.told(nameOf(one.yarn), alone, unit);
    }),
    ...yarnWords.finishing(plan.yarn.finishing, unit),
    ...patternGauges(plan, piece.gauge).map((one) => yarnWords.patternGauge(one, unit)),
  ];
  const note = [
    ...(knit > 1 ? [words.pieces.yarnOfAll(knit, margin, ofAll)] : []),
    yarn.note(
      loops.map(({ mm }) => mm),
      plan.yarn,
      unit,
    ),
    ...(isNumbered ? [numbered.every(({ isLaid }) => isLaid) ? yarn.laid : yarn.numbered] : []),
  ].join(' ');
  return [
    headingBlock(plain(yarn.title), widthMm),
    tableBlock(columns, rows, { title: yarn.title, keepsWithNext: true }),
    paragraphBlock(plain(note), widthMm, { tone: 'soft' }),
    ...sectionBlocks(need, piece, widthMm, unit),
    ...told.map((sentence) => paragraphBlock(plain(sentence), widthMm)),
  ];
}

/** What the sections of one piece take, where it has several. */
function sectionBlocks({ yarns }: GarmentNeed, piece: KnitPiece, widthMm: number, unit: LengthUnit): Block[] {
  const { yarn, garment } = sheetWords;
  const parts = yarns.flatMap(({ yarn: index, pieces }) =>
    pieces.flatMap(({ sections }) => sections.map((section) => ({ index, ...section }))),
  );
  if (parts.length === 0) return [];
  const isWeighed = parts.some(({ grams }) => grams !== null);
  const columns = columnsOf(widthMm, [
    [yarn.columns.yarn, 0],
    [garment.columns.section, 60],
    [yarn.columns.length[unit], 18, 'end'],
    ...(isWeighed ? [[yarn.columns.weight[unit], 16, 'end'] as const] : []),
  ]);
  const rows = parts.map(({ index, section, mm, grams }): Cell[] => [
    { ...cell(piece.yarns[index]?.name ?? ''), swatch: yarnPaint(piece.yarns[index]?.colour ?? '#ffffff') },
    cell(words.sections.name(section)),
    cell(yarn.length(mm, unit)),
    ...(isWeighed ? [cell(yarn.weight(grams, unit))] : []),
  ]);
  return [tableBlock(columns, rows, { title: garment.sectionsTitle, spaceAboveMm: 2 })];
}

/** Strands of main to cut for wrapping. */
export function strandBlocks(piece: KnitPiece, plan: Plan, widthMm: number, unit: LengthUnit): Block[] {
  if (plan.wrapStrands.length === 0) return [];
  const { strands } = sheetWords;
  const title = strands.title(piece.yarns[piece.mainYarn]?.name ?? '');
  const columns = columnsOf(widthMm, [
    [strands.columns.strands, 30],
    [strands.columns.cut, 28],
    [strands.columns.use, 0],
    [strands.columns.rows, 18],
    [strands.columns.wraps, 14, 'end'],
  ]);
  const rows = strandsToCut(plan).map((one): Cell[] => [
    cell(strands.numbers(one.numbers)),
    cell([strong(strands.cut(one.numbers.length, one.mm, unit))]),
    cell(strands.use(one)),
    cell(words.numbers.span(one.firstRow, one.lastRow)),
    cell(String(one.wraps)),
  ]);
  return [
    headingBlock(plain(title), widthMm),
    tableBlock(columns, rows, { title, keepsWithNext: true }),
    paragraphBlock(plain(strands.note), widthMm, { tone: 'soft' }),
  ];
}
