/** A page of the sheet as the one drawing that is previewed, printed and filed. */
import { sheetToSvg, type SheetPage } from '@shared/output/index.ts';

/** In mm, as it is. */
export function pageDrawing(page: SheetPage): SVGSVGElement {
  return drawingFrom(sheetToSvg(page));
}

/** Parsed as XML: nothing in it can be taken for markup of this window. */
export function drawingFrom(svg: string): SVGSVGElement {
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  return document.importNode(parsed, true) as Element as SVGSVGElement;
}
