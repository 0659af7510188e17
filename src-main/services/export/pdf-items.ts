/** The items of a sheet drawn into a PDF page. Millimetres come in, points go out. */
import type PDFDocument from 'pdfkit';
import {
  colourOf,
  POINT_MM,
  type CellsItem,
  type Paint,
  type PathItem,
  type SheetItem,
  type Stroke,
  type TextItem,
} from '@shared/output/index.ts';

type Pdf = InstanceType<typeof PDFDocument>;

/** Names under which the two weights of the font are registered. */
export const REGULAR = 'regular';
export const SEMIBOLD = 'semibold';

export function drawItems(pdf: Pdf, items: readonly SheetItem[]): void {
  for (const item of items) drawItem(pdf, item);
}

function drawItem(pdf: Pdf, item: SheetItem): void {
  switch (item.kind) {
    case 'text':
      return drawText(pdf, item);
    case 'rectangle':
      pdf.rect(points(item.x), points(item.y), points(item.width), points(item.height));
      return paint(pdf, item.fill, item.stroke);
    case 'path':
      return drawPath(pdf, item);
    case 'cells':
      return drawCells(pdf, item);
  }
}

function points(mm: number): number {
  return mm / POINT_MM;
}

/** Measured only where the line does not begin at its point: the library measures what it sets, and stands behind it. */
function drawText(pdf: Pdf, { x, y, sizePt, anchor, tone, spans }: TextItem): void {
  pdf.fontSize(sizePt).fillColor(colourOf(tone));
  let left = points(x);
  if (anchor !== 'start') {
    const whole = spans.reduce((sum, { text, isStrong }) => sum + fontOf(pdf, isStrong).widthOfString(text), 0);
    left -= anchor === 'middle' ? whole / 2 : whole;
  }
  for (const { text, isStrong } of spans) {
    fontOf(pdf, isStrong).text(text, left, points(y), { lineBreak: false, baseline: 'alphabetic' });
    left = pdf.x;
  }
}

function fontOf(pdf: Pdf, isStrong: boolean): Pdf {
  return pdf.font(isStrong ? SEMIBOLD : REGULAR);
}

function drawPath(pdf: Pdf, { lines, isClosed, fill, stroke }: PathItem): void {
  if (lines.length === 0) return;
  for (const line of lines) {
    line.forEach(([x, y], index) => {
      if (index === 0) pdf.moveTo(points(x), points(y));
      else pdf.lineTo(points(x), points(y));
    });
    if (isClosed) pdf.closePath();
  }
  paint(pdf, fill, stroke);
}

/** One path for all cells, so that no seam shows between neighbours. */
function drawCells(pdf: Pdf, { x, y, cellWidth, cellHeight, fill, runs }: CellsItem): void {
  if (runs.length === 0) return;
  for (const { column, line, length } of runs) {
    pdf.rect(
      points(x + column * cellWidth),
      points(y + line * cellHeight),
      points(length * cellWidth),
      points(cellHeight),
    );
  }
  pdf.fill(colourOf(fill));
}

function paint(pdf: Pdf, fill: Paint | null, stroke: Stroke | null): void {
  if (stroke) {
    pdf.lineWidth(points(stroke.width));
    if (stroke.dash) pdf.dash(points(stroke.dash[0]), { space: points(stroke.dash[1]) });
    else pdf.undash();
  }
  if (fill && stroke) pdf.fillAndStroke(colourOf(fill), colourOf(stroke.paint));
  else if (fill) pdf.fill(colourOf(fill));
  else if (stroke) pdf.stroke(colourOf(stroke.paint));
}
