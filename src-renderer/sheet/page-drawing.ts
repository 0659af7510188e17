/** A page of the sheet as the one drawing that is previewed, printed and filed. */
import { sheetToSvg, type SheetPage } from '@shared/output/index.ts';

/** In mm, as it is. */
export function pageDrawing(page: SheetPage): SVGSVGElement {
  return drawingFrom(sheetToSvg(page));
}

/** Parsed as XML: nothing in it can be taken for markup of this window. */
function drawingFrom(svg: string): SVGSVGElement {
  return document.adoptNode(
    new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement,
  ) as Element as SVGSVGElement;
}

/** So many drawings that are not in the window any more are kept: those near the view when one goes to another bench. */
const MOST_KEPT = 4;

/** By what they were made from; the one that was put aside last is the last. */
const aside = new Map<string, SVGSVGElement>();

/** A drawing as wide as the box that it is put into. To come back to one that was put aside takes less than to make it. */
export function drawingForBox(svg: string): SVGSVGElement {
  const kept = aside.get(svg);
  if (kept) {
    aside.delete(svg);
    return kept;
  }
  const drawing = drawingFrom(svg);
  drawing.setAttribute('width', '100%');
  drawing.removeAttribute('height');
  return drawing;
}

/** Keeps a whole drawing that goes out of the window, for a while. */
export function putAside(svg: string, drawing: SVGSVGElement): void {
  aside.set(svg, drawing);
  const [oldest] = aside.keys();
  if (aside.size > MOST_KEPT && oldest !== undefined) aside.delete(oldest);
}
