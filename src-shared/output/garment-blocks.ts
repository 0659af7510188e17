/** What stands on the first page of a garment's sheet: its pieces, and the yarn that all of them take. */
import type { LengthUnit } from '../length/index.ts';
import { sizeOf } from '../piece/index.ts';
import { ballsOf, garmentYarn, type GarmentYarn } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { plain, strong, words } from '../words/index.ts';
import { wholeBlock, type Block } from './blocks/block.ts';
import { cell, columnsOf, tableBlock, type Cell } from './blocks/table.ts';
import { headingBlock, paragraphBlock, textLines } from './blocks/text.ts';
import { wrap } from './font/wrap.ts';
import type { PlannedPiece } from './planned-piece.ts';
import { BODY_PT, lineHeightMm, TITLE_PT } from './style.ts';
import { yarnPaint } from './tones.ts';

/** The balls that most yarn is sold in (common practice, no source). */
const BALL_GRAMS = 50;

export function garmentBlocks(pieces: readonly PlannedPiece[], widthMm: number, unit: LengthUnit): Block[] {
  const { garment } = words.sheet;
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
  const { garment, size } = words.sheet;
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
  const { garment } = words.sheet;
  const [{ facts, plan }] = pieces as readonly [PlannedPiece];
  const { yarns, mainYarn } = facts.piece;
  const { margin } = plan.yarn;
  const needed = garmentYarn(
    pieces.map(({ facts: { piece, knit }, plan: own }) => ({ name: piece.name, knit, plan: own })),
    yarns,
    mainYarn,
  );
  const isWeighed = needed.some(({ grams }) => grams !== null);
  const columns = columnsOf(widthMm, [
    [garment.columns.yarn, 0],
    [garment.columns.piece, 42],
    [garment.columns.one[unit], 24, 'end'],
    [garment.columns.knit, 12, 'end'],
    [garment.columns.length[unit], 18, 'end'],
    ...(isWeighed
      ? ([
          [garment.columns.weight[unit], 15, 'end'],
          [garment.columns.balls(BALL_GRAMS), 22, 'end'],
        ] as const)
      : []),
  ]);
  const rows = needed.flatMap((one) => yarnRows(one, { yarns, margin, unit, isWeighed }));
  const note = garment.yarnNote(margin, isWeighed ? BALL_GRAMS : null);
  return [
    headingBlock(plain(garment.yarnTitle), widthMm),
    tableBlock(columns, rows, { title: garment.yarnTitle, keepsWithNext: true }),
    paragraphBlock(plain(note), widthMm, { tone: 'soft' }),
  ];
}

interface YarnRows {
  readonly yarns: KnitPiece['yarns'];
  readonly margin: number;
  readonly unit: LengthUnit;
  readonly isWeighed: boolean;
}

function yarnRows(
  { yarn, pieces, strandsMm, totalMm, grams }: GarmentYarn,
  { yarns, margin, unit, isWeighed }: YarnRows,
): Cell[][] {
  const { garment, yarn: said } = words.sheet;
  const { name = '', colour = '#ffffff' } = yarns[yarn] ?? {};
  const ofMm = (mm: number): number | null => (grams === null ? null : (grams * mm) / totalMm);
  const row = (
    first: Cell,
    piece: Cell,
    one: string,
    knit: string,
    mm: number,
    isStrong: boolean,
    balls = '',
  ): Cell[] => {
    const figure = (text: string): Cell => cell(isStrong ? [strong(text)] : plain(text));
    return [
      first,
      piece,
      cell(one),
      cell(knit),
      figure(said.length(mm, unit)),
      ...(isWeighed ? [figure(said.weight(ofMm(mm), unit)), figure(balls)] : []),
    ];
  };
  const named: Cell = { ...cell(name), swatch: yarnPaint(colour) };
  const bought = totalMm * (1 + margin);
  const weight = ofMm(bought);
  return [
    ...pieces.map((share) =>
      row(named, cell(share.name), said.length(share.mm, unit), String(share.knit), share.allMm, false),
    ),
    ...(strandsMm > 0 ? [row(named, cell(garment.strands), '', '', strandsMm, false)] : []),
    row(named, cell([strong(garment.all)]), '', '', totalMm, true),
    row(
      named,
      cell([strong(garment.toBuy(margin))]),
      '',
      '',
      bought,
      true,
      weight === null ? '–' : String(ballsOf(weight, BALL_GRAMS)),
    ),
  ];
}
