/** A sheet as PDF: fonts embedded, tagged for assistive technology, the same bytes for the same sheet. */
import { readFile } from 'node:fs/promises';
import { noonOf } from '@shared/day/index.ts';
import { POINT_MM, type SheetDocument, type SheetElement, type SheetItem } from '@shared/output/index.ts';
import { FONT_FILES } from './fonts.ts';
import { PdfBytes } from './pdf-bytes.ts';
import { PdfInk, REGULAR, SEMIBOLD } from './pdf-ink.ts';

type Structure = PDFKit.PDFStructureElement;

/** The bytes of a PDF of the sheet; a page's size is that of its paper (1 pt = 1/72 in, ISO 32000). */
export async function sheetToPdf(sheet: SheetDocument): Promise<Uint8Array> {
  const [regular, semibold] = await Promise.all([readFile(FONT_FILES.regular), readFile(FONT_FILES.semibold)]);
  // Of the day alone, so that the bytes depend on the sheet.
  const made = noonOf(sheet.date);
  const pdf = new PdfBytes({
    autoFirstPage: false,
    pdfVersion: '1.7',
    tagged: true,
    lang: sheet.language,
    displayTitle: true,
    margin: 0,
    // None of its own, which it would look up the measures of.
    font: '',
    info: {
      Title: sheet.title,
      Subject: sheet.subject,
      Creator: 'Walewright',
      CreationDate: made,
      ModDate: made,
    },
  });
  pdf.registerFont(REGULAR, regular);
  pdf.registerFont(SEMIBOLD, semibold);
  const root = pdf.struct('Document');
  pdf.addStructure(root);
  const drawn: Drawn = { pdf, ink: new PdfInk(pdf) };
  for (const page of sheet.pages) {
    pdf.addPage({ size: [page.widthMm / POINT_MM, page.heightMm / POINT_MM], margin: 0 });
    drawn.ink.startPage();
    for (const element of page.elements) drawElement(drawn, root, element);
  }
  root.end();
  return pdf.ended();
}

interface Drawn {
  readonly pdf: PdfBytes;
  readonly ink: PdfInk;
}

function drawElement(drawn: Drawn, root: Structure, element: SheetElement): void {
  switch (element.role) {
    case 'heading':
      return tagged(drawn, root, `H${element.level}`, element.items);
    case 'paragraph':
      return tagged(drawn, root, 'P', element.items);
    case 'figure':
      return tagged(drawn, root, 'Figure', element.items, { alt: element.description });
    case 'decoration':
      drawn.pdf.markContent('Artifact');
      drawn.ink.draw(element.items);
      drawn.pdf.endMarkedContent();
      return;
    case 'list':
      return within(drawn, root, 'L', (list) => {
        for (const { label, body } of element.entries) {
          within(drawn, list, 'LI', (entry) => {
            tagged(drawn, entry, 'Lbl', label);
            tagged(drawn, entry, 'LBody', body);
          });
        }
      });
    case 'table':
      return within(drawn, root, 'Table', (table) => {
        for (const { isHeader, cells } of element.rows) {
          within(drawn, table, 'TR', (row) => {
            for (const items of cells) tagged(drawn, row, isHeader ? 'TH' : 'TD', items);
          });
        }
      });
  }
}

/** A structure element with others inside it. */
function within({ pdf }: Drawn, parent: Structure, tag: string, fill: (element: Structure) => void): void {
  const element = pdf.struct(tag);
  parent.add(element);
  fill(element);
  element.end();
}

/** A structure element that holds items. */
function tagged(
  { pdf, ink }: Drawn,
  parent: Structure,
  tag: string,
  items: readonly SheetItem[],
  options: { alt?: string } = {},
): void {
  const element = pdf.struct(tag, options);
  parent.add(element);
  if (items.length > 0) {
    const content = pdf.markStructureContent(tag);
    ink.draw(items);
    pdf.endMarkedContent();
    element.add(content);
  }
  element.end();
}
