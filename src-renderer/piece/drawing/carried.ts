/** Groups that are being moved: as they would stand, and what they line up with. */
import { OUTSIDE, type PlacedGroup, type Plan } from '@shared/knitting/index.ts';
import type { Viewport } from '../../ui/cells/index.ts';
import { spaceRun, type Guide, type Reading } from '../moving/reading.ts';
import type { Look } from './look.ts';

/** One group as a bitmap, a cell a pixel, and the same place in plain main yarn. */
export interface Ghost {
  readonly place: PlacedGroup;
  readonly figure: HTMLCanvasElement;
  readonly plain: HTMLCanvasElement;
}

/** The groups of a band, lifted off the fabric. */
export function ghostsOf(plan: Plan, band: number, look: Look): Ghost[] {
  return plan.groups
    .filter((group) => group.band === band)
    .map((place) => ({
      place,
      figure: bitmapOf(plan, place, (yarn) => look.yarns[yarn] ?? look.main),
      plain: bitmapOf(plan, place, () => look.main),
    }));
}

/** Plain main where the groups were, and the groups where they would be. */
export function drawGhosts(
  context: CanvasRenderingContext2D,
  view: Viewport,
  ghosts: readonly Ghost[],
  groups: readonly PlacedGroup[],
): void {
  context.imageSmoothingEnabled = false;
  for (const { place, plain } of ghosts) lay(context, view, plain, place);
  ghosts.forEach(({ figure }, index) => {
    const place = groups[index];
    if (place) lay(context, view, figure, place);
  });
}

/** What the moved group lines up with: lines through the piece, and the spaces that are alike. */
export function drawGuides(context: CanvasRenderingContext2D, view: Viewport, reading: Reading, look: Look): void {
  const { edges } = reading.placed.question;
  const whole = view.span(edges.first, edges.last);
  for (const guide of reading.guides) drawGuide(context, view, guide, reading, look, whole);
}

function drawGuide(
  context: CanvasRenderingContext2D,
  view: Viewport,
  guide: Guide,
  reading: Reading,
  look: Look,
  whole: { readonly left: number; readonly right: number },
): void {
  const { firstRow, lastRow, question } = reading.placed;
  const bottom = view.top(firstRow - 2);
  const top = view.top(lastRow - 1);
  context.strokeStyle = look.accentOnMain;
  context.fillStyle = look.accentOnMain;
  context.lineWidth = 2;
  context.beginPath();
  switch (guide.kind) {
    case 'centre':
    case 'line': {
      const x = Math.round(view.left(guide.column));
      context.moveTo(x, 0);
      context.lineTo(x, view.top(-1));
      break;
    }
    case 'rows': {
      const y = Math.round(view.y - guide.row * view.cellHeight);
      context.moveTo(whole.left, y);
      context.lineTo(whole.right, y);
      break;
    }
    case 'equal':
    case 'seam': {
      const margins = [0, question.groups.length];
      const gaps = reading.spaces.flatMap((stitches, space) =>
        stitches === guide.stitches && !margins.includes(space) ? [space] : [],
      );
      const spaces = guide.kind === 'equal' ? guide.spaces : [...margins, ...gaps];
      context.globalAlpha = 0.22;
      for (const space of spaces) {
        const { first, last } = spaceRun(reading, space);
        if (last < first) continue;
        const { left, right } = view.span(first, last);
        context.fillRect(left, top, right - left, bottom - top);
      }
      context.globalAlpha = 1;
      break;
    }
  }
  context.stroke();
}

function lay(
  context: CanvasRenderingContext2D,
  view: Viewport,
  bitmap: HTMLCanvasElement,
  { block, firstRow, lastRow }: PlacedGroup,
): void {
  context.save();
  // On a turned view the needles run to the left, and so does the bitmap.
  context.translate(view.left(block.first), view.top(lastRow - 1));
  context.scale(Math.sign(view.cellWidth), 1);
  const width = bitmap.width * view.columnWidth;
  context.drawImage(bitmap, 0, 0, width, (lastRow - firstRow + 1) * view.cellHeight);
  context.restore();
}

function bitmapOf(
  { fabric }: Plan,
  { block, firstRow, lastRow }: PlacedGroup,
  colourOf: (yarn: number) => string,
): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = block.last - block.first + 1;
  canvas.height = lastRow - firstRow + 1;
  const context = canvas.getContext('2d') as CanvasRenderingContext2D;
  for (let row = firstRow; row <= lastRow; row++) {
    for (let slot = block.first as number; slot <= block.last; slot++) {
      const column = slot - fabric.first;
      const yarn = column < 0 || column >= fabric.width ? OUTSIDE : fabric.cells[(row - 1) * fabric.width + column];
      if (yarn === undefined || yarn === OUTSIDE) continue;
      context.fillStyle = colourOf(yarn);
      context.fillRect(slot - block.first, lastRow - row, 1, 1);
    }
  }
  return canvas;
}
