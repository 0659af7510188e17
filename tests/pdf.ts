/** PDFs read by a reader that is not ours. */
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const require = createRequire(import.meta.url);

export interface PageRead {
  readonly widthMm: number;
  readonly heightMm: number;
  /** The runs of text, as they come. */
  readonly texts: readonly TextRead[];
  /** All of them, without blanks. */
  readonly squeezed: string;
}

export interface TextRead {
  readonly text: string;
  /** Left end of the baseline, in mm from the page's top left corner. */
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
  readonly sizePt: number;
}

/** One unit is 1/72 in (ISO 32000), and y goes up. */
const UNIT_MM = 25.4 / 72;

export async function readPdf(bytes: Uint8Array): Promise<PageRead[]> {
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const standardFontDataUrl = join(dirname(require.resolve('pdfjs-dist/package.json')), 'standard_fonts/');
  const pdf = await getDocument({ data: new Uint8Array(bytes), standardFontDataUrl, verbosity: 0 }).promise;
  const pages: PageRead[] = [];
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item): TextRead[] => {
      if (!('str' in item) || item.str.trim() === '') return [];
      // [a b c d e f], of which c and d are the font's upright (ISO 32000).
      const [, , across, up, left, baseline] = item.transform as [number, number, number, number, number, number];
      const [x, y] = [left * UNIT_MM, (height - baseline) * UNIT_MM];
      return [{ text: item.str, x, y, widthMm: item.width * UNIT_MM, sizePt: Math.hypot(across, up) }];
    });
    const squeezed = texts.map(({ text }) => text.replaceAll(/\s/g, '')).join('');
    pages.push({ widthMm: width * UNIT_MM, heightMm: height * UNIT_MM, texts, squeezed });
  }
  await pdf.destroy();
  return pages;
}
