/** What groups that are being moved line up with. */
import { spaceRun, type Guide, type Reading } from '../moving/reading.ts';
import { trace } from './group-marks.ts';
import type { LaidView, PartView } from './laid-view.ts';
import type { Look } from './look.ts';

/** What the moved group lines up with: lines through the piece, and the spaces that are alike. */
export function drawGuides(context: CanvasRenderingContext2D, laid: LaidView, reading: Reading, look: Look): void {
  const { edges } = reading.placed.question;
  const whole = laid.at(reading.placed.firstRow).span(edges.first, edges.last);
  for (const guide of reading.guides) drawGuide(context, laid, guide, reading, look, whole);
}

function drawGuide(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  guide: Guide,
  reading: Reading,
  look: Look,
  whole: { readonly left: number; readonly right: number },
): void {
  const { firstRow, lastRow, question } = reading.placed;
  const view = laid.at(firstRow);
  const bottom = view.top(firstRow - 2);
  const top = laid.at(lastRow).top(lastRow - 1);
  context.fillStyle = look.accentOnMain;
  context.beginPath();
  switch (guide.kind) {
    case 'centre':
    case 'line': {
      const { column } = guide;
      const highest = (laid.parts.at(-1) as PartView).last;
      trace(
        context,
        laid.wayDown(highest, 0, laid.castOn, (of) => Math.round(of.left(column))),
      );
      break;
    }
    case 'rows': {
      const y = Math.round(laid.at(guide.row).top(guide.row - 1));
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
        // The tint is faint, so that the spaces' numbers stay legible: its edge is what is seen.
        context.rect(left, top, right - left, bottom - top);
      }
      context.globalAlpha = 1;
      break;
    }
  }
  for (const [width, colour] of [
    [4, look.guide.outer],
    [2, look.guide.inner],
  ] as const) {
    context.lineWidth = width;
    context.strokeStyle = colour;
    context.stroke();
  }
}
