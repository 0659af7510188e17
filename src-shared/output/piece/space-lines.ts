/** Margins and gaps as dimension lines on the piece, each on the row where they hold. */
import { bandSpaces, type Space } from '../../fabric/index.ts';
import { bandsOf } from '../../pattern/index.ts';
import type { Plan } from '../../plan/index.ts';
import { CAPITAL_EM, widthMm } from '../font/metrics.ts';
import { pathItem, rectangleItem, textItem } from '../items.ts';
import type { Point, SheetItem } from '../model.ts';
import { POINT_MM } from '../paper.ts';
import { HAIRLINE_MM, LABEL_PT } from '../style.ts';
import type { PieceView } from './view.ts';

/** Lines closer than this would have their numbers run together; the lower ones keep them. */
const APART_MM = 3.6;
/** What lies under a line and its number is the main yarn, of whatever colour: they stand on paper. */
const LINE_PAPER_MM = 1;
const NUMBER_PAPER_MM = 3;
const STOP_MM = 0.8;

/** The lines of every band that has groups, from the lowest up: of each space that has room for its number. */
export function spaceLines(plan: Plan, view: PieceView): SheetItem[] {
  const taken: number[] = [];
  return bandsOf(plan)
    .flatMap((band) => bandSpaces(band, band.question.judge, plan.outline) ?? [])
    .sort((a, b) => a.row - b.row)
    .flatMap(({ row, spaces }) => {
      const y = view.middleOf(row);
      if (taken.some((other) => Math.abs(other - y) < APART_MM)) return [];
      taken.push(y);
      return spaces.flatMap((space) => drawSpace(space, view, row, y));
    });
}

function drawSpace({ first, last, stitches }: Space, view: PieceView, row: number, y: number): SheetItem[] {
  const [from, to] = [view.x(first, row), view.x(last + 1, row)];
  const text = String(stitches);
  const width = widthMm(text, LABEL_PT, true) + 1;
  if (width > to - from) return [];
  const stop = (x: number): Point[] => [
    [x, y - STOP_MM],
    [x, y + STOP_MM],
  ];
  const lines: Point[][] = [
    [
      [from, y],
      [to, y],
    ],
    stop(from),
    stop(to),
  ];
  const middle = (from + to) / 2;
  // Near the cast-on edge the number stays on the piece.
  const height = Math.min(y, view.y(1) - NUMBER_PAPER_MM / 2);
  const baseline = height + (LABEL_PT * POINT_MM * CAPITAL_EM) / 2;
  return [
    pathItem(lines, { paint: 'paper', width: LINE_PAPER_MM }),
    pathItem(lines, { paint: 'ink', width: HAIRLINE_MM }),
    rectangleItem(middle - width / 2, height - NUMBER_PAPER_MM / 2, width, NUMBER_PAPER_MM, 'paper'),
    textItem(text, middle, baseline, { sizePt: LABEL_PT, anchor: 'middle', isStrong: true }),
  ];
}
