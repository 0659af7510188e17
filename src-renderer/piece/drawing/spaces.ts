/**
 * Margins and gaps of a band as a dimension line on the piece, and the gap
 * across the seam. The line stands on the row that was measured, and says
 * which row that is.
 */
import type { BandSpaces, Space } from '@shared/fabric/index.ts';
import type { PixelBox, Viewport } from '../../canvas/index.ts';
import { spreadOut } from './labels.ts';
import type { LaidView } from './laid-view.ts';
import type { Look } from './look.ts';

/** What is written beside the numbers. */
export interface SpaceWords {
  /** Lines under the number of stitches across the seam. */
  readonly acrossSeam: readonly string[];
  readonly onRow: (row: number) => string;
  /** What the seam leaves of a margin, the first that there is room for. */
  readonly clear: (stitches: number) => readonly string[];
}

/** From line to line of what is written beside the piece. */
const LINE = 14;
/** Half the height of the numbers, with some air. */
const HALF = 11;

/** The height of the dimension line: the middle of the row that was measured, where alone all of its numbers are true. */
export function heightOfLine(row: number, view: Viewport): number {
  return Math.round(view.top(row - 1) + view.cellHeight / 2) + 0.5;
}

/** Draws the line with its numbers, beside what is `taken`; gives where they stand, so that nothing is set over them. */
export function drawSpaces(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  scene: BandSpaces,
  betweenCopies: readonly Space[],
  text: SpaceWords,
  taken: readonly PixelBox[],
  look: Look,
  font: string,
): PixelBox[] {
  const view = laid.at(scene.row);
  const y = heightOfLine(scene.row, view);

  context.font = `600 13px ${font}`;
  context.textBaseline = 'middle';
  context.textAlign = 'center';
  // Left to right as they are seen.
  const spaces = view.isTurned ? scene.spaces.toReversed() : scene.spaces;
  const texts = spaces.map(({ stitches }) => String(stitches));
  const widths = texts.map((said) => context.measureText(said).width + 6);
  const middles = spaces.map(({ first, last }) => (view.left(first) + view.left(last + 1)) / 2);
  const whole = view.span(scene.edges.first, scene.edges.last);
  const placed = spreadOut(middles, widths, whole.left, whole.right);

  context.lineWidth = 1;
  const foot = view.top(scene.row - 2);
  const boxes = spaces.map(({ first, last, seam }, index): PixelBox => {
    const span = view.span(first, last);
    const left = Math.round(span.left) + 1.5;
    const right = Math.round(span.right) - 1.5;
    const middle = placed[index] as number;
    const half = (widths[index] as number) / 2;
    // Lines and an all-over beside the band may lie under the number; a narrow space leaves it to the figure.
    if (2 * half <= right - left) {
      context.fillStyle = look.main;
      context.fillRect(middle - half, y - HALF + 2, 2 * half, 2 * HALF - 4);
    }
    context.strokeStyle = look.onMain;
    context.beginPath();
    stop(context, left, y);
    stop(context, right, y);
    if (seam && seam.clear > 0) stop(context, Math.round(view.left(seam.sewnBefore)) + 0.5, y);
    const number = numberAt(middle, 2 * half, left, right, y, foot);
    if (number.isBelow) segment(context, left, right, y);
    else {
      segment(context, left, middle - half, y);
      segment(context, middle + half, right, y);
    }
    context.stroke();
    context.font = `600 13px ${font}`;
    context.fillStyle = look.onMain;
    context.fillText(texts[index] as string, middle, number.y);
    return { left: middle - half, top: number.y - HALF, width: 2 * half, height: 2 * HALF };
  });

  context.font = `400 12px ${font}`;
  context.fillStyle = look.onMain;
  context.strokeStyle = look.onMain;
  // Between copies of one group a number stands only where it has room: all of them are alike.
  const gaps = betweenCopies.flatMap(({ first, last, stitches }): PixelBox[] => {
    const { left, right } = view.span(first, last);
    const said = String(stitches);
    const width = context.measureText(said).width;
    if (width + 4 > right - left) return [];
    const middle = (left + right) / 2;
    context.beginPath();
    stop(context, Math.round(left) + 1.5, y);
    stop(context, Math.round(right) - 1.5, y);
    context.stroke();
    const box = { left: middle - width / 2 - 1, top: y - LINE / 2, width: width + 2, height: LINE };
    context.fillStyle = look.main;
    context.fillRect(box.left, box.top, box.width, box.height);
    context.fillStyle = look.onMain;
    context.fillText(said, middle, y);
    return [box];
  });
  const clear = spaces.flatMap(({ first, last, seam }, index) => {
    if (!seam || seam.clear < 0) return [];
    const { left, right } = view.span(first, last);
    const said = text.clear(seam.clear).find((said) => context.measureText(said).width + 8 <= right - left);
    if (said === undefined) return [];
    const width = context.measureText(said).width;
    const middle = Math.min(Math.max(middles[index] as number, left + width / 2), right - width / 2);
    const box = { left: middle - width / 2 - 2, top: y + LINE - 7, width: width + 4, height: LINE };
    context.fillStyle = look.main;
    context.fillRect(box.left, box.top, box.width, box.height);
    context.fillStyle = look.onMain;
    context.fillText(said, middle, y + LINE);
    return [box];
  });

  const beside = linesBeside(scene, text, y, laid.castOn, taken);
  // Where the edge is out of sight they stand at that of the view.
  const x = Math.max(whole.left - 10, BESIDE);
  context.textAlign = 'right';
  const besides = beside.map(({ said, isNumber, y: at }): PixelBox => {
    context.font = `${isNumber ? '600 13px' : '400 12px'} ${font}`;
    const width = context.measureText(said).width;
    // Lines that lead down to the ruler, or a lower part of the piece, may lie under it.
    context.fillStyle = look.paper;
    context.fillRect(x - width - 2, at - LINE / 2, width + 4, LINE);
    context.fillStyle = isNumber ? look.ink : look.soft;
    context.fillText(said, x, at);
    return { left: x - width, top: at - LINE / 2, width, height: LINE };
  });
  return [...boxes, ...gaps, ...clear, ...besides];
}

/** Room that is kept beside the piece for what is written there. */
const BESIDE = 66;

/** Where the number of a space `left` … `right` goes: into its line, or below the band where it has no room there. */
export function numberAt(
  middle: number,
  width: number,
  left: number,
  right: number,
  y: number,
  foot: number,
): { readonly y: number; readonly isBelow: boolean } {
  const isBelow = middle - width / 2 < left || middle + width / 2 > right;
  return { y: isBelow ? Math.max(y, foot) + HALF : y, isBelow };
}

interface LineBeside {
  readonly said: string;
  readonly isNumber: boolean;
  /** Its middle. */
  readonly y: number;
}

/**
 * What is written beside the piece, as high as the dimension line at `y` and
 * above the cast-on edge: what the seam shows, and the row. One line of it where
 * that would lie over what is `taken` by another band.
 */
export function linesBeside(
  { acrossSeam, row }: Pick<BandSpaces, 'acrossSeam' | 'row'>,
  text: SpaceWords,
  y: number,
  castOn: number,
  taken: readonly PixelBox[],
): LineBeside[] {
  const stacked = (lines: readonly string[], isFirstNumber: boolean): LineBeside[] => {
    const first = Math.min(y - LINE / 2, castOn - LINE * lines.length + LINE / 2);
    return lines.map((said, index) => ({ said, isNumber: isFirstNumber && index === 0, y: first + index * LINE }));
  };
  // Where the seam takes more than there is, the panel says so.
  if (acrossSeam < 0) return stacked([text.onRow(row)], false);
  const full = stacked([String(acrossSeam), ...text.acrossSeam, text.onRow(row)], true);
  const isFree = full.every(({ y: at }) =>
    taken.every(({ top, height }) => at + LINE / 2 <= top || at - LINE / 2 >= top + height),
  );
  return isFree ? full : stacked([`${acrossSeam} ${text.onRow(row)}`], false);
}

function stop(context: CanvasRenderingContext2D, x: number, y: number): void {
  context.moveTo(x, y - 4);
  context.lineTo(x, y + 4);
}

function segment(context: CanvasRenderingContext2D, from: number, to: number, y: number): void {
  context.moveTo(from, y);
  context.lineTo(to, y);
}
