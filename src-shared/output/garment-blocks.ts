/** What stands on the first page of a garment's sheet: its pieces, and the yarn that all of them take. */
import type { LengthUnit } from '../length/index.ts';
import { sizeOf } from '../piece/index.ts';
import { garmentNeed } from '../plan/index.ts';
import { plain, strong } from '../words/index.ts';
import { sheetWords } from '../words/sheet.ts';
import { yarnWords } from '../words/yarn.ts';
import { wholeBlock, type Block } from './blocks/block.ts';
import { cell, columnsOf, tableBlock, type Cell } from './blocks/table.ts';
import { headingBlock, paragraphBlock, textLines } from './blocks/text.ts';
import { wrap } from './font/wrap.ts';
import { garmentYarnNote, garmentYarnRows } from './garment-yarn-rows.ts';
import type { PlannedPiece } from './planned-piece.ts';
import { BODY_PT, lineHeightMm, TITLE_PT } from './style.ts';
import { yarnPaint } from './tones.ts';

export function garmentBlocks(pieces: readonly PlannedPiece[], widthMm: number, unit: LengthUnit): Block[] {
  const { garment } = sheetWords;
  const [first] = pieces;
  if (!first) return [];
  const { title, size } = first.facts;
  const knit = pieces.reduce((sum, { facts }) => sum + facts.knit, 0);
  const titleLines = wrap([strong(title)], widthMm, TITLE_PT);
  return [
    wholeBlock(titleLines.length * lineHeightMm(TITLE_PT) * 0.9, 0, (x, y) => [
      { role: 'heading', level: 1, items: textLines(titleLines, x, y - 1.5, TITLE_PT, 'ink') },
    ]),
    paragraphBlock(garment.about(pieces.length, knit, size), widthMm, { sizePt: BODY_PT + 1 }),
    piecesBlock(pieces, widthMm, unit),
    ...yarnBlocks(pieces, widthMm, unit),
  ];
}

function piecesBlock(pieces: readonly PlannedPiece[], widthMm: number, unit: LengthUnit): Block {
  const { garment, size } = sheetWords;
  const columns = columnsOf(widthMm, [
    [garment.columns.piece, 0],
    [garment.columns.knit, 16, 'end'],
  ]);
  const rows = pieces.map(({ facts, plan }): Cell[] => [
    cell(size(facts.piece.name, sizeOf(facts.piece.shape, plan.gauges), unit)),
    cell([strong(String(facts.knit))]),
  ]);
  return tableBlock(columns, rows, { title: garment.piecesTitle, spaceAboveMm: 3 });
}

/** Each yarn by piece, then all together, then with the margin to buy. */
function yarnBlocks(pieces: readonly PlannedPiece[], widthMm: number, unit: LengthUnit): Block[] {
  const { garment } = sheetWords;
  const [{ facts }] = pieces as readonly [PlannedPiece];
  const needed = garmentNeed(
    pieces.map(({ facts: { piece, knit }, plan }) => ({ name: piece.name, knit, plan })),
    facts.piece,
  );
  const columns = columnsOf(widthMm, [
    [garment.columns.yarn, 0],
    [garment.columns.piece, 50],
    [garment.columns.one[unit], 24, 'end'],
    [garment.columns.knit, 12, 'end'],
    [garment.columns.length[unit], 18, 'end'],
    ...(needed.isWeighed
      ? ([
          [garment.columns.weight[unit], 15, 'end'],
          [garment.columns.balls, 14, 'end'],
        ] as const)
      : []),
  ]);
  const rows = needed.yarns.flatMap((one): Cell[][] => {
    const { name = '', colour = '#ffffff' } = facts.piece.yarns[one.yarn] ?? {};
    const named: Cell = { ...cell(name), swatch: yarnPaint(colour) };
    return garmentYarnRows(one, needed, unit).map(({ of, one: length, knit, isSum, ...figures }) => {
      const said = (text: string): Cell => cell(isSum ? [strong(text)] : plain(text));
      const ofWeight = needed.isWeighed ? [said(figures.weight), said(figures.balls)] : [];
      return [named, said(of), cell(length), cell(knit), said(figures.length), ...ofWeight];
    });
  });
  return [
    headingBlock(plain(garment.yarnTitle), widthMm),
    tableBlock(columns, rows, { title: garment.yarnTitle, keepsWithNext: true }),
    ...needed.yarns.map((one) =>
      paragraphBlock(plain(yarnWords.told(facts.piece.yarns[one.yarn]?.name ?? '', one, unit)), widthMm),
    ),
    paragraphBlock(plain(garmentYarnNote(needed)), widthMm, { tone: 'soft' }),
  ];
}
