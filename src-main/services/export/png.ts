/** The chart of a motif as PNG, with its pixel density and its date recorded. */
import { Resvg } from '@resvg/resvg-js';
import type { Day } from '@shared/day/index.ts';
import { cellAt } from '@shared/grid/index.ts';
import {
  chartImageSize,
  chartSvg,
  FONT_FAMILY,
  isCellsOnly,
  type ChartImageOptions,
  type ChartImageSize,
} from '@shared/output/index.ts';
import { problemError } from '@shared/problem/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import type { Palette, Yarn } from '@shared/project/index.ts';
import { FONT_FILES } from './fonts.ts';
import { chunk, indexedPng, pngOf, type Pixels } from './png-file.ts';

export interface ChartPngOptions extends ChartImageOptions {
  /** Pixels in an inch. */
  readonly dpi: number;
}

/** The largest image: its pixels are held in memory while it is drawn. */
export const MOST_PIXELS = 40_000_000;
/** The longest side that other programs can be trusted to show. */
export const MOST_SIDE = 32_767;

/** True if an image of that size is drawn. */
export function isImageSize({ width, height }: Pick<ChartImageSize, 'width' | 'height'>): boolean {
  return width <= MOST_SIDE && height <= MOST_SIDE && width * height <= MOST_PIXELS;
}

/** The bytes of a PNG of the whole drawing. Throws `image-too-large` before anything is drawn. */
export function chartPng(motif: Motif, palette: Palette, options: ChartPngOptions): Uint8Array {
  const size = chartImageSize(motif, options);
  const { width, height } = size;
  if (!isImageSize(size)) {
    throw problemError('image-too-large', { width, height, mostPixels: MOST_PIXELS, mostSide: MOST_SIDE });
  }
  const chunks = [densityChunk(options.dpi), ...(options.date ? [dateChunk(options.date)] : [])];
  return isCellsOnly(options)
    ? cellsPng(motif, palette.yarns, size, chunks)
    : pngOf(drawn(chartSvg(motif, palette, options)), chunks);
}

/** Cells alone need no drawing: one rectangle of pixels a cell. */
function cellsPng(
  { grid }: Motif,
  yarns: readonly Yarn[],
  { width, height, cellWidth, cellHeight }: ChartImageSize,
  chunks: readonly Uint8Array[],
): Uint8Array {
  const indices = new Uint8Array(width * height);
  for (let row = 0; row < grid.height; row++) {
    const top = (grid.height - 1 - row) * cellHeight * width;
    for (let column = 0; column < grid.width; column++) {
      indices.fill(cellAt(grid, column, row), top + column * cellWidth, top + (column + 1) * cellWidth);
    }
    for (let line = 1; line < cellHeight; line++) indices.copyWithin(top + line * width, top, top + width);
  }
  return indexedPng({ width, height, indices, colours: yarns.map(({ colour }) => colour) }, chunks);
}

/** The pixels of a drawing on paper, which is opaque everywhere. */
export function drawn(svg: string): Pixels {
  const { width, height, pixels } = new Resvg(svg, {
    font: { loadSystemFonts: false, fontFiles: Object.values(FONT_FILES), defaultFontFamily: FONT_FAMILY },
  }).render();
  return { width, height, rgba: pixels };
}

const METRES_IN_INCH = 0.0254;

/** Whole pixels in a metre, both ways. */
function densityChunk(dpi: number): Uint8Array {
  const perMetre = Math.round(dpi / METRES_IN_INCH);
  const data = Buffer.alloc(9);
  data.writeUInt32BE(perMetre, 0);
  data.writeUInt32BE(perMetre, 4);
  data.writeUInt8(1, 8);
  return chunk('pHYs', data);
}

/** The day under the keyword that the standard has for it. */
function dateChunk(date: Day): Uint8Array {
  return chunk('tEXt', Buffer.from(`Creation Time\0${date}`, 'latin1'));
}
