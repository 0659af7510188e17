/**
 * Cells drawn as the loops of a knitted fabric.
 *
 * On the knit side a stitch shows as a V, on the purl side as a bump. Both are
 * a cell whose lower and upper edge are bent alike, so that stitches of a wale
 * stand in each other without a gap: a V is bent down to its middle, a bump
 * up to it. The fabric is then the picture of the cells cut into strips of one
 * pixel, each moved up or down by the bend, and the cost of drawing depends on
 * the width of the view and not on how many stitches show.
 */
import type { FinishedFace } from '@shared/bed/index.ts';
import { clippedBox } from './changed.ts';
import type { CellBitmap } from './bitmap.ts';
import type { DeviceView } from './draw-cells.ts';

/** The side of the fabric that is looked at. */
export type FabricSide = FinishedFace;

/** Stitches narrower than this many device pixels look like cells. */
const LEAST_STITCH = 3;
/** How far a V reaches into the stitch below, and a bump into the one above it, in rows. */
const DEPTH: { readonly [Side in FabricSide]: number } = { knit: 0.62, purl: 0.42 };
/** Pixels across the tile that the shading of one stitch is drawn on. */
const TILE = 64;

/** True if stitches are large enough to be told from cells. */
export function showsStitches(view: DeviceView): boolean {
  return Math.min(view.cellWidth, view.cellHeight) >= LEAST_STITCH;
}

/**
 * How far above its cell a stitch lies, in rows, `across` its width (0 … 1).
 * The mean over the width is 0, so the stitch lies on its cell.
 */
export function bendOf(side: FabricSide, across: number): number {
  return side === 'knit'
    ? DEPTH.knit * (Math.abs(2 * across - 1) - 0.5)
    : (-DEPTH.purl / 2) * Math.cos(2 * Math.PI * across);
}

/** Draws all stitches in view on a clear canvas. */
export function drawStitches(
  context: CanvasRenderingContext2D,
  view: DeviceView,
  { area, canvas }: CellBitmap,
  side: FabricSide,
): void {
  context.save();
  context.setTransform(1, 0, 0, 1, 0, 0);
  const seen = view.viewport.cellsIn(view.width / view.ratio, view.height / view.ratio);
  // A stitch may reach into view from the row above or below it.
  const shown = clippedBox({ ...seen, row: seen.row - 1, height: seen.height + 2 }, area);
  if (shown) {
    context.imageSmoothingEnabled = false;
    const left = view.viewport.x * view.ratio;
    const top = view.viewport.top(shown.row + shown.height - 1) * view.ratio;
    const height = shown.height * view.cellHeight;
    const sourceTop = area.row + area.height - shown.row - shown.height;
    const from = Math.max(0, view.column(shown.column));
    const to = Math.min(view.width, view.column(shown.column + shown.width));
    for (let pixel = from; pixel < to; pixel++) {
      const across = (pixel + 0.5 - left) / view.cellWidth;
      const column = Math.floor(across);
      const lift = bendOf(side, across - column) * view.cellHeight;
      context.drawImage(
        canvas,
        column - area.column,
        sourceTop,
        1,
        shown.height,
        pixel,
        Math.round(top - lift),
        1,
        height,
      );
    }
    shade(context, view, side);
  }
  context.restore();
}

const tiles = new Map<FabricSide, HTMLCanvasElement>();

/** Lays light and shadow of the yarn over the stitches, and over nothing else. */
function shade(context: CanvasRenderingContext2D, view: DeviceView, side: FabricSide): void {
  let tile = tiles.get(side);
  if (!tile) tiles.set(side, (tile = shadingTile(side)));
  const pattern = context.createPattern(tile, 'repeat');
  if (!pattern) return;
  const { x, y } = view.viewport;
  pattern.setTransform(
    new DOMMatrix([view.cellWidth / TILE, 0, 0, view.cellHeight / TILE, x * view.ratio, y * view.ratio]),
  );
  context.globalCompositeOperation = 'source-atop';
  context.imageSmoothingEnabled = true;
  context.fillStyle = pattern;
  context.fillRect(0, 0, view.width, view.height);
}

/** One stitch of shading; it continues on all sides. */
function shadingTile(side: FabricSide): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = TILE;
  canvas.height = TILE;
  const context = canvas.getContext('2d');
  if (!context) throw new Error('No 2D canvas');
  const image = context.createImageData(TILE, TILE);
  for (let y = 0; y < TILE; y++) {
    for (let x = 0; x < TILE; x++) {
      const light = lightAt(side, (x + 0.5) / TILE, 1 - (y + 0.5) / TILE);
      const at = (y * TILE + x) * 4;
      image.data.fill(light > 0 ? 255 : 0, at, at + 3);
      image.data[at + 3] = Math.round(Math.abs(light) * 255);
    }
  }
  context.putImageData(image, 0, 0);
  return canvas;
}

/**
 * Light on a stitch, −1 (black) … 1 (white), at a place of its cell. The yarn
 * is round: light in its middle, dark where it meets its neighbours.
 */
function lightAt(side: FabricSide, across: number, up: number): number {
  const rise = up - bendOf(side, across);
  const alongYarn = rise - Math.floor(rise);
  const overYarn = 1 - (2 * alongYarn - 1) ** 2;
  // The two legs of a V, or two bumps, meet in a furrow.
  const leg = side === 'knit' ? Math.abs(((2 * across) % 1) * 2 - 1) : 0;
  const furrow = leg ** 6;
  return 0.22 * overYarn - 0.16 - 0.3 * (1 - overYarn) ** 4 - 0.26 * furrow;
}
