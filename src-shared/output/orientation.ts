/** Which way round a page goes: upright, or turned where what stands on it comes out better so. */
import type { Plan } from '../plan/index.ts';
import type { Frame } from './blocks/pour.ts';
import { chartPages, type ChartOnSheet, type ChartPages } from './chart/chart-blocks.ts';
import type { PaperMm } from './paper.ts';
import { figureScale } from './piece/piece-figure.ts';
import { PAGE_FOOT_MM, PAGE_MARGIN_MM } from './style.ts';

/** Above this share of a page's height the piece is not drawn taller: upright, so that the steps begin below it. */
const FIGURE_SHARE = { upright: 0.32, turned: 0.5 };
/** Turned, a piece or the cells of a chart must come out so many times larger; for less, pages stay one way round. */
const WORTH_TURNING = { piece: 1.35, cells: 1.1 };

/** The same paper in landscape. */
export function turned({ widthMm, heightMm }: PaperMm): PaperMm {
  return { widthMm: heightMm, heightMm: widthMm };
}

/** What is inside the margins of a page. */
export function pageFrame(paper: PaperMm, page: number): Frame {
  return { page, x: PAGE_MARGIN_MM, y: PAGE_MARGIN_MM, heightMm: paper.heightMm - PAGE_MARGIN_MM - PAGE_FOOT_MM };
}

/** Width between the margins of a page. */
export function pageWidthMm(paper: PaperMm): number {
  return paper.widthMm - 2 * PAGE_MARGIN_MM;
}

/** How tall the piece may be drawn on the paper. */
export function mostFigureMm(paper: PaperMm): number {
  return paper.heightMm * (isUpright(paper) ? FIGURE_SHARE.upright : FIGURE_SHARE.turned);
}

/** Landscape for a piece that is so wide that upright it would come out small. */
export function paperForPiece(plan: Plan, upright: PaperMm): PaperMm {
  const scaleOn = (paper: PaperMm): number => figureScale(plan, pageWidthMm(paper), mostFigureMm(paper));
  const landscape = turned(upright);
  return scaleOn(upright) / scaleOn(landscape) >= WORTH_TURNING.piece ? landscape : upright;
}

/** A chart on the paper that it fits: the way round that takes fewer pages, else the one with larger cells. It begins on page `firstPage`. */
export function chartOnPaper(
  chart: ChartOnSheet,
  upright: PaperMm,
  firstPage: number,
): { readonly paper: PaperMm; readonly laid: ChartPages } {
  const on = (paper: PaperMm) => ({
    paper,
    laid: chartPages(chart, { widthMm: pageWidthMm(paper), heightMm: pageFrame(paper, 0).heightMm }, firstPage),
  });
  const [tall, wide] = [on(upright), on(turned(upright))];
  const fewer = tall.laid.pages.length - wide.laid.pages.length;
  const isLarger = wide.laid.cellWidth >= tall.laid.cellWidth * WORTH_TURNING.cells;
  return fewer > 0 || (fewer === 0 && isLarger) ? wide : tall;
}

function isUpright({ widthMm, heightMm }: PaperMm): boolean {
  return heightMm >= widthMm;
}
