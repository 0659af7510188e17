/** What stands at the top of the sheet's first page: what the piece is, the piece to scale, the key of its yarns. */
import type { LengthUnit } from '../length/index.ts';
import { isSameGauge, sizeOf } from '../piece/index.ts';
import type { Plan } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { plain, strong, words } from '../words/index.ts';
import { sheetWords } from '../words/sheet.ts';
import { wholeBlock, type Block } from './blocks/block.ts';
import { paragraphBlock, textLines } from './blocks/text.ts';
import type { YarnMarks } from './chart/marks.ts';
import { yarnKeyBlock } from './chart/yarn-key.ts';
import { groupBlocks } from './facts-blocks.ts';
import { wrap } from './font/wrap.ts';
import { barBlock } from './notes-blocks.ts';
import { mostFigureMm, pageFrame, pageWidthMm } from './orientation.ts';
import type { PaperMm } from './paper.ts';
import { pieceFigure } from './piece/piece-figure.ts';
import { blockedBecause } from './row-list.ts';
import type { SheetFacts } from './sheet-facts.ts';
import { blockedBlocks } from './steps/step-blocks.ts';
import { BODY_PT, lineHeightMm, READING_MM, TITLE_PT } from './style.ts';

/** The blocks of a first page of that size. */
export function openingBlocks(
  facts: SheetFacts,
  plan: Plan,
  marks: YarnMarks,
  size: PaperMm,
  unit: LengthUnit,
): Block[] {
  const width = pageWidthMm(size);
  const { piece } = facts;
  const sheet = sheetWords;
  const measured = sizeOf(piece.shape, plan.gauges);
  const { left, right } = piece.seamAllowance;
  const titleLines = wrap([strong(facts.title)], width, TITLE_PT);
  const above = [
    wholeBlock(titleLines.length * lineHeightMm(TITLE_PT) * 0.9, 0, (x, y) => [
      { role: 'heading', level: 1, items: textLines(titleLines, x, y - 1.5, TITLE_PT, 'ink') },
    ]),
    paragraphBlock(sheet.size(words.knitting.piece(piece, facts.size), measured, unit), width, { sizePt: BODY_PT + 1 }),
    ...(facts.colourway === null ? [] : [paragraphBlock(plain(sheet.colourway(facts.colourway)), width)]),
    ...words.knitting.knitOften(facts).map((often) => paragraphBlock([strong(often)], width)),
    paragraphBlock(
      plain(`${sheet.gauge(piece.gauge, ownGauges(piece), unit)}; ${sheet.seamAllowance(left, right)}.`),
      width,
      {
        tone: 'soft',
        spaceAboveMm: 0.4,
      },
    ),
    ...blockedBlocks(blockedBecause(plan, piece, unit).slice(1), Math.min(width, READING_MM)),
  ];
  // That nothing is placed is told beside the drawing: it might else have a page of its own.
  const isPlain = plan.patterns.length === 0;
  const below = [
    ...pieceKey(piece, plan, marks, width),
    barBlock(unit),
    ...(isPlain ? groupBlocks(piece, plan, width) : []),
  ];
  const taken = [...above, ...below].reduce((sum, block) => sum + block.spaceAboveMm + block.heightMm, 0);
  return [...above, figureIn(piece, plan, marks, size, pageFrame(size, 0).heightMm - taken), ...below];
}

/** The piece as large as the page allows beside what stands on it too; never much smaller. */
function figureIn(piece: KnitPiece, plan: Plan, marks: YarnMarks, size: PaperMm, roomMm: number): Block {
  const figure = (share: number): Block =>
    pieceFigure(piece, plan, marks, pageWidthMm(size), mostFigureMm(size) * share);
  const shares = [1, 0.9, 0.8, 0.7, 0.6];
  const fits = ({ spaceAboveMm, heightMm }: Block): boolean => spaceAboveMm + heightMm <= roomMm;
  for (const share of shares) {
    const block = figure(share);
    if (fits(block)) return block;
  }
  return figure(0.6);
}

/** The yarns that the piece is knitted in; none where it is all main. */
function pieceKey({ yarns, mainYarn }: KnitPiece, { fabric }: Plan, marks: YarnMarks, width: number): Block[] {
  const seen = new Set(fabric.cells);
  const used = [...marks.keys()].filter((yarn) => seen.has(yarn));
  return used.length === 0 ? [] : [yarnKeyBlock({ yarns, used: [mainYarn, ...used], marks }, width)];
}

/** The gauges of hem and sections that are not that of the piece. */
function ownGauges({ hemRows, hem, sections, gauge }: KnitPiece) {
  return [
    ...(hemRows > 0 ? [{ part: null, gauge: hem.gauge ?? gauge }] : []),
    ...sections.map((part) => ({ part: part.name, gauge: part.gauge ?? gauge })),
  ].filter((own) => !isSameGauge(own.gauge, gauge));
}
