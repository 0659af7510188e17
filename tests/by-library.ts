/**
 * A sheet drawn by the PDF library's own calls, one for each thing that is
 * drawn: a second way to the same pages, which knows nothing of how the program
 * writes them. Where each text begins is found out beforehand, and nothing is
 * tagged, so that it is also the least that the library can do.
 */
import { readFileSync } from 'node:fs';
import PDFDocument from 'pdfkit';
import { colourOf, POINT_MM, type SheetDocument, type SheetItem, type Stroke } from '@shared/output/index.ts';
import { FONT_FILES } from '../src-main/services/export/fonts.ts';

type Pdf = InstanceType<typeof PDFDocument>;
export type Call = (pdf: Pdf) => void;

const REGULAR = 'regular';
const SEMIBOLD = 'semibold';

const points = (mm: number): number => mm / POINT_MM;

/** The calls that draw the pages, in their order. */
export function callsOf(sheet: SheetDocument): Call[] {
  const scale = emptyPdf();
  const widthOf = (text: string, sizePt: number, font: string): number =>
    scale.font(font).fontSize(sizePt).widthOfString(text);
  return sheet.pages.flatMap((page): Call[] => [
    (pdf) => pdf.addPage({ size: [points(page.widthMm), points(page.heightMm)], margin: 0 }),
    ...page.elements.flatMap(itemsIn).flatMap((item) => callsOfItem(item, widthOf)),
  ]);
}

/** The bytes of a PDF in which the calls were made. */
export async function drawnBy(calls: readonly Call[]): Promise<Uint8Array> {
  const pdf = emptyPdf();
  const ended = new Promise<Uint8Array>((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    pdf.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    pdf.on('end', () => resolve(Buffer.concat(chunks)));
    pdf.on('error', reject);
  });
  for (const call of calls) call(pdf);
  pdf.end();
  return ended;
}

function emptyPdf(): Pdf {
  const pdf = new PDFDocument({ autoFirstPage: false, pdfVersion: '1.7', margin: 0 });
  pdf.registerFont(REGULAR, readFileSync(FONT_FILES.regular));
  pdf.registerFont(SEMIBOLD, readFileSync(FONT_FILES.semibold));
  return pdf;
}

type Element = SheetDocument['pages'][number]['elements'][number];

function itemsIn(element: Element): readonly SheetItem[] {
  switch (element.role) {
    case 'list':
      return element.entries.flatMap(({ label, body }) => [...label, ...body]);
    case 'table':
      return element.rows.flatMap(({ cells }) => cells.flat());
    default:
      return element.items;
  }
}

function callsOfItem(item: SheetItem, widthOf: (text: string, sizePt: number, font: string) => number): Call[] {
  switch (item.kind) {
    case 'text': {
      const { x, y, sizePt, anchor, tone, spans } = item;
      const set = spans.map(({ text, isStrong }) => {
        const font = isStrong ? SEMIBOLD : REGULAR;
        return { text, font, width: widthOf(text, sizePt, font) };
      });
      const width = set.reduce((sum, span) => sum + span.width, 0);
      let left = points(x) - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
      return set.map((span): Call => {
        const from = left;
        left += span.width;
        return (pdf) =>
          pdf
            .font(span.font)
            .fontSize(sizePt)
            .fillColor(colourOf(tone))
            .text(span.text, from, points(y), { lineBreak: false, baseline: 'alphabetic' });
      });
    }
    case 'rectangle': {
      const { x, y, width, height, fill, stroke } = item;
      return [(pdf) => painted(pdf.rect(points(x), points(y), points(width), points(height)), fill, stroke)];
    }
    case 'path': {
      const { lines, isClosed, fill, stroke } = item;
      if (lines.length === 0) return [];
      return [
        (pdf) => {
          for (const line of lines) {
            for (const [index, [x, y]] of line.entries()) {
              if (index === 0) pdf.moveTo(points(x), points(y));
              else pdf.lineTo(points(x), points(y));
            }
            if (isClosed) pdf.closePath();
          }
          painted(pdf, fill, stroke);
        },
      ];
    }
    case 'cells': {
      const { x, y, cellWidth, cellHeight, fill, runs } = item;
      if (runs.length === 0) return [];
      return [
        (pdf) => {
          for (const { column, line, length } of runs) {
            const [left, top] = [points(x + column * cellWidth), points(y + line * cellHeight)];
            pdf.rect(left, top, points(length * cellWidth), points(cellHeight));
          }
          pdf.fill(colourOf(fill));
        },
      ];
    }
  }
}

function painted(pdf: Pdf, fill: Parameters<typeof colourOf>[0] | null, stroke: Stroke | null): void {
  if (stroke) {
    pdf.lineWidth(points(stroke.width));
    if (stroke.dash) pdf.dash(points(stroke.dash[0]), { space: points(stroke.dash[1]) });
    else pdf.undash();
  }
  if (fill && stroke) pdf.fillAndStroke(colourOf(fill), colourOf(stroke.paint));
  else if (fill) pdf.fill(colourOf(fill));
  else if (stroke) pdf.stroke(colourOf(stroke.paint));
}
