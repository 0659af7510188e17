/**
 * The pages of the sheet for a printer, each on paper of its own size and way
 * round.
 *
 * They are printed as the drawings that the preview shows, not as the PDF: any
 * browser prints them, as lines and letters and to the mm, where a PDF in a
 * page needs a viewer that not every browser has and a policy that lets frames
 * in. Sizes are named pages (CSS Paged Media 3), without margins, so that a
 * browser has no room for its own heads and feet.
 */
import type { Day } from '@shared/day/index.ts';
import type { SheetPage } from '@shared/output/index.ts';
import { outcome, type Outcome } from '@shared/problem/index.ts';
import type { Session } from '../session/session.ts';
import { layForPrinter } from './for-printer.ts';
import { sheetOf } from '../worker/jobs/sheet-of.ts';
import { pageDrawing } from './page-drawing.ts';

/** The pages of the sheet as they are now, or what stands in their way. */
export function pagesNow({ current, view }: Session, date: Day): Outcome<readonly SheetPage[]> {
  const { paper, lengthUnit: unit, charts, scope } = view;
  const parts = sheetOf(current, { paper, unit, charts, date }, scope);
  return parts.ok ? outcome(() => parts.value.flatMap((part) => part())) : parts;
}

/** Resolves once the letters of the sheet are there; a printer does not wait for them. */
export async function lettersLoaded(): Promise<void> {
  const { fontFamily } = getComputedStyle(document.body);
  await Promise.all([400, 600].map((weight) => document.fonts.load(`${weight} 12px ${fontFamily}`)));
}

/** Puts the pages where only a printer sees them. Returns a function that takes them away. */
export function layPages(pages: readonly SheetPage[]): () => void {
  const kinds = [...new Set(pages.map(sizeOf))];
  const style = new CSSStyleSheet();
  style.replaceSync(kinds.map((size, kind) => rulesFor(`sheet-page-${kind}`, size)).join('\n'));
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, style];
  const drawn = pages.map((page) => {
    const sheet = document.createElement('div');
    sheet.className = `sheet-page-${kinds.indexOf(sizeOf(page))}`;
    sheet.append(pageDrawing(page));
    return sheet;
  });
  const takeAway = layForPrinter(drawn);
  return () => {
    takeAway();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((other) => other !== style);
  };
}

const sizeOf = ({ widthMm, heightMm }: SheetPage): string => `${widthMm}mm ${heightMm}mm`;

function rulesFor(name: string, size: string): string {
  const [width, height] = size.split(' ');
  return `@page ${name} { size: ${size}; margin: 0 }\n.${name} { page: ${name}; width: ${width}; height: ${height} }`;
}
