/** The piece drawn to scale, with everything that must be found on the needles. */
import { label } from '../../bed/index.ts';
import type { PlacedGroup } from '../../fabric/index.ts';
import { gaugesBetween, isSameGauge } from '../../piece/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { KnitPiece } from '../../project/index.ts';
import { words } from '../../words/index.ts';
import { wholeBlock, type Block } from '../blocks/block.ts';
import type { YarnMarks } from '../chart/marks.ts';
import { areaItem, rectangleItem, textItem } from '../items.ts';
import type { SheetElement, SheetItem } from '../model.ts';
import { baselineMm, SMALL_PT, LINE_MM, lineHeightMm } from '../style.ts';
import { yarnPaint } from '../tones.ts';
import { contrastCells, outlinePoints } from './cells.ts';
import { hatching } from './hatching.ts';
import { needleRuler } from './needles.ts';
import { rowNumbers, sectionNames } from './rows.ts';
import { spaceLines } from './space-lines.ts';
import { spaceStrips } from './spaces.ts';
import { movedView, pieceView, type PieceView } from './view.ts';

const LEFT_MM = 23;
const RIGHT_MM = 14;
const ABOVE_RULER_MM = 1.6;
const BELOW_RULER_MM = 1.2;

/** The drawing of the piece in that room is one to this. */
export function figureScale(piece: KnitPiece, plan: Plan, widthMm: number, mostHeightMm: number): number {
  return viewIn(piece, plan, widthMm, mostHeightMm).scale;
}

function viewIn(piece: KnitPiece, plan: Plan, widthMm: number, mostHeightMm: number): PieceView {
  return pieceView(plan.outline, piece.gauge, widthMm - LEFT_MM - RIGHT_MM, mostHeightMm);
}

/**
 * The figure; its rows and needles are the even grid of the machine, so it is to
 * scale where the piece has its own gauge. It is no wider than `widthMm`; the piece itself
 * no taller than `mostHeightMm`. Yarns carry their marks.
 */
export function pieceFigure(
  piece: KnitPiece,
  plan: Plan,
  marks: YarnMarks,
  widthMm: number,
  mostHeightMm: number,
): Block {
  const still = viewIn(piece, plan, widthMm, mostHeightMm);
  const isOneGauge = gaugesBetween(plan.gauges, 1, plan.outline.rows).every((own) => isSameGauge(own, piece.gauge));
  const captionMm = lineHeightMm(SMALL_PT) + 2;
  const below = drawBelow(plan, still, 0, 0);
  const left = below.labelsLeft > 0 ? words.sheet.labelsLeft(below.labelsLeft) : null;
  const height = captionMm + still.heightMm + ABOVE_RULER_MM + below.heightMm + (left === null ? 0 : captionMm);
  return wholeBlock(height, 3, (x, y) => {
    const pieceLeft = x + LEFT_MM + (widthMm - LEFT_MM - RIGHT_MM - still.widthMm) / 2;
    const view = movedView(still, pieceLeft, y + captionMm);
    return [
      caption(words.sheet.figureCaption(piece.finishedFace, view.scale, isOneGauge), x, y),
      {
        role: 'figure',
        description: describe(piece, plan),
        items: [
          ...drawPiece(piece, plan, marks, view),
          ...sectionNames(plan, view, x, pieceLeft - 2),
          ...rowNumbers(plan, view, pieceLeft + view.widthMm + 1.5),
          ...drawBelow(plan, view, x, y + captionMm + view.heightMm + ABOVE_RULER_MM).items,
          // Over the lines that lead down to the ruler.
          ...spaceLines(plan, view),
        ],
      },
      ...(left === null ? [] : [caption(left, x, y + height - captionMm)]),
    ];
  });
}

function caption(text: string, x: number, y: number): SheetElement {
  const style = { sizePt: SMALL_PT, tone: 'soft' } as const;
  return { role: 'paragraph', items: [textItem(text, x, y + baselineMm(SMALL_PT), style)] };
}

interface Below {
  readonly heightMm: number;
  readonly items: readonly SheetItem[];
  readonly labelsLeft: number;
}

/** The ruler with its labels, and the spaces. */
function drawBelow(plan: Plan, view: PieceView, left: number, top: number): Below {
  const ruler = needleRuler(plan, view, top);
  const strips = spaceStrips(plan, view, left, top + ruler.heightMm + BELOW_RULER_MM);
  return {
    heightMm: ruler.heightMm + BELOW_RULER_MM + strips.heightMm,
    items: [...ruler.items, ...strips.items],
    labelsLeft: ruler.left,
  };
}

function drawPiece({ yarns, mainYarn }: KnitPiece, plan: Plan, marks: YarnMarks, view: PieceView): SheetItem[] {
  const outline = outlinePoints(plan.outline, view);
  return [
    areaItem(outline, yarnPaint(yarns[mainYarn]?.colour ?? '#ffffff'), null),
    ...contrastCells(plan.fabric, mainYarn, yarns, view),
    ...hatching(plan.fabric, yarns, marks, view),
    areaItem(outline, null, { paint: 'ink', width: LINE_MM }),
    ...plan.groups.map((group) => groupFrame(group, view)),
  ];
}

function groupFrame({ block, firstRow, lastRow }: PlacedGroup, view: PieceView): SheetItem {
  const top = view.y(lastRow + 1);
  const width = (block.last - block.first + 1) * view.cellWidth;
  return rectangleItem(view.x(block.first), top, width, view.y(firstRow) - top, null, {
    paint: 'accent',
    width: LINE_MM,
    dash: [0.9, 0.7],
  });
}

function describe(piece: KnitPiece, plan: Plan): string {
  return words.sheet.figureDescription(
    piece.name,
    plan.groups.map(({ block, firstRow, lastRow }) => ({
      first: label(block.first),
      last: label(block.last),
      firstRow,
      lastRow,
    })),
    plan.fills,
  );
}
