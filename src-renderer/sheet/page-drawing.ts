/** A page of the sheet as the one drawing that is previewed, printed and filed. */
import { sheetToSvg, type SheetPage } from '@shared/output/index.ts';

/** Parsed as XML: nothing in it can be taken for markup of this window. In mm, as it is. */
export function pageDrawing(page: SheetPage): SVGSVGElement {
  const parsed = new DOMParser().parseFromString(sheetToSvg(page), 'image/svg+xml').documentElement;
  return document.importNode(parsed, true) as Element as SVGSVGElement;
}
