/** The piece drawn to scale, with everything that must be found on the needles. */
import { label } from '../../bed/index.ts';
import { contrastRatio, GRAPHIC_CONTRAST } from '../../colour/index.ts';
import type { PlacedGroup } from '../../fabric/index.ts';
import { allOversOf } from '../../pattern/index.ts';
import type { Plan } from '../../plan/index.ts';
import type { KnitPiece } from '../../project/index.ts';
import { plain } from '../../words/index.ts';
import { sheetWords } from '../../words/sheet.ts';
import { wholeBlock, type Block } from '../blocks/block.ts';
import { textLines } from '../blocks/text.ts';
import { toneOn, TOLD_APART, type YarnMarks } from '../chart/marks.ts';
import { wrap } from '../font/wrap.ts';
import { areaItem, textItem } from '../items.ts';
import type { SheetItem } from '../model.ts';
import { actNames } from '../steps/names.ts';
import { baselineMm, LABEL_PT, SMALL_PT, LINE_MM, lineHeightMm } from '../style.ts';
import { colourOf, yarnPaint, type Paint } from '../tones.ts';
import { contrastCells, outlinePoints } from './cells.ts';
import { hatching, outlines } from './hatching.ts';
import { motifNames } from './motif-names.ts';
import { needleRuler } from './needles.ts';
import { rowNumbers, sectionNames } from './rows.ts';
import { spaceLines } from './space-lines.ts';
import { spaceStrips } from './spaces.ts';
import { PieceView } from './view.ts';

const LEFT_MM = 23;
const RIGHT_MM = 21;
const ABOVE_RULER_MM = 1.6;
const BELOW_RULER_MM = 1.2;

/** The drawing of the piece in that room is one to this. */
export function figureScale(plan: Plan, widthMm: number, mostHeightMm: number): number {
  return viewIn(plan, widthMm, mostHeightMm).scale;
}

function viewIn(plan: Plan, widthMm: number, mostHeightMm: number): PieceView {
  return PieceView.within(plan, widthMm - LEFT_MM - RIGHT_MM, mostHeightMm);
}

/**
 * The figure, each section by its own gauge. It is no wider than `widthMm`; the
 * piece itself no taller than `mostHeightMm`. Yarns carry their marks.
 */
export function pieceFigure(
  piece: KnitPiece,
  plan: Plan,
  marks: YarnMarks,
  widthMm: number,
  mostHeightMm: number,
): Block {
  const still = viewIn(plan, widthMm, mostHeightMm);
  const caption = sheetWords.figureCaption(piece.finishedFace, still.scale, still.parts.length === 1);
  const above = wrap(plain(caption), widthMm, SMALL_PT);
  const aboveMm = above.length * lineHeightMm(SMALL_PT) + 2;
  const below = drawBelow(plan, still, 0, 0);
  const names = actNames(piece).motif;
  const { lettered } = motifNames(plan, names, still, spaceLines(plan, still));
  const notes = [
    ...(lettered.length > 0 ? wrap(sheetWords.lettered(lettered), widthMm, LABEL_PT) : []),
    ...(below.labelsLeft > 0 ? wrap(plain(sheetWords.labelsLeft(below.labelsLeft)), widthMm, LABEL_PT) : []),
  ];
  const noteMm = lineHeightMm(LABEL_PT);
  const notesMm = notes.length * noteMm + (notes.length > 0 ? 1 : 0);
  const height = aboveMm + still.heightMm + ABOVE_RULER_MM + below.heightMm + notesMm;
  return wholeBlock(height, 3, (x, y) => {
    const pieceLeft = x + LEFT_MM + (widthMm - LEFT_MM - RIGHT_MM - still.widthMm) / 2;
    const view = still.movedTo(pieceLeft, y + aboveMm);
    const spaces = spaceLines(plan, view);
    const top = y + height - notesMm + 1;
    const said = notes.map((line, at) =>
      textItem(line, x, top + at * noteMm + baselineMm(LABEL_PT), { sizePt: LABEL_PT, tone: 'ink' }),
    );
    return [
      { role: 'paragraph', items: textLines(above, x, y, SMALL_PT, 'soft') },
      {
        role: 'figure',
        description: describe(piece, plan),
        items: [
          ...drawPiece(piece, plan, marks, view),
          ...sectionNames(plan, view, x, pieceLeft - 2),
          ...rowNumbers(plan, view, pieceLeft + view.widthMm + 1.5),
          ...drawBelow(plan, view, x, y + aboveMm + view.heightMm + ABOVE_RULER_MM).items,
          // Over the lines that lead down to the ruler.
          ...spaces,
          ...motifNames(plan, names, view, spaces).items,
        ],
      },
      ...(said.length === 0 ? [] : [{ role: 'paragraph' as const, items: said }]),
    ];
  });
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
  const main = yarns[mainYarn]?.colour ?? '#ffffff';
  const alike = [...marks.keys()].filter((yarn) => contrastRatio(yarns[yarn]?.colour ?? '#000000', main) < TOLD_APART);
  const frame = contrastRatio(colourOf('accent'), main) >= GRAPHIC_CONTRAST ? 'accent' : toneOn([main]);
  return [
    areaItem(outline, yarnPaint(main), null),
    ...contrastCells(plan.fabric, mainYarn, yarns, view),
    ...hatching(plan.fabric, yarns, marks, view),
    ...outlines(plan.fabric, yarns, alike, view),
    areaItem(outline, null, { paint: 'ink', width: LINE_MM }),
    ...plan.groups.map((group) => groupFrame(group, frame, view)),
  ];
}

function groupFrame({ block, firstRow, lastRow }: PlacedGroup, paint: Paint, view: PieceView): SheetItem {
  const stroke = { paint, width: LINE_MM, dash: [0.9, 0.7] } as const;
  return areaItem(view.corners(block.first, block.last, firstRow, lastRow), null, stroke);
}

function describe(piece: KnitPiece, plan: Plan): string {
  return sheetWords.figureDescription(
    piece.name,
    plan.groups.map(({ block, firstRow, lastRow }) => ({
      first: label(block.first),
      last: label(block.last),
      firstRow,
      lastRow,
    })),
    allOversOf(plan),
  );
}
