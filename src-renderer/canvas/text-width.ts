/** How wide texts are: the browser takes as long to measure one as to draw it, and a frame writes those of the last. */

/** More texts than that are no longer those of a few frames. */
const MOST_KEPT = 4000;

/** By font, then by text. */
const known = new Map<string, Map<string, number>>();
let kept = 0;
let hearsOfFonts = false;

/** The width of a text in CSS pixels, in a font as a context takes it; the context is in that font afterwards, or as it was. */
export function textWidth(context: CanvasRenderingContext2D, font: string, text: string): number {
  let widths = known.get(font);
  const width = widths?.get(text);
  if (width !== undefined) return width;
  if (!hearsOfFonts) {
    hearsOfFonts = true;
    // Measured in what stood in for a font that comes late.
    if (typeof document !== 'undefined') document.fonts.addEventListener('loadingdone', forget);
  }
  if (kept >= MOST_KEPT) forget();
  widths = known.get(font);
  if (!widths) known.set(font, (widths = new Map<string, number>()));
  context.font = font;
  const measured = context.measureText(text).width;
  widths.set(text, measured);
  kept++;
  return measured;
}

function forget(): void {
  known.clear();
  kept = 0;
}
