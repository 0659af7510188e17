/** The chart of a motif as PNG, with its pixel density recorded. */
import { crc32 } from 'node:zlib';
import { Resvg } from '@resvg/resvg-js';
import { encode } from 'fast-png';
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
import type { Yarn } from '@shared/project/index.ts';
import { FONT_FILES } from './fonts.ts';

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
export function chartPng(motif: Motif, yarns: readonly Yarn[], options: ChartPngOptions): Uint8Array {
  const size = chartImageSize(motif, options);
  const { width, height } = size;
  if (!isImageSize(size)) {
    throw problemError('image-too-large', { width, height, mostPixels: MOST_PIXELS, mostSide: MOST_SIDE });
  }
  const png = isCellsOnly(options) ? cellsPng(motif, yarns, size) : drawnPng(chartSvg(motif, yarns, options));
  return withDensity(png, options.dpi);
}

/** Cells alone need no drawing: indexed colours, one rectangle of pixels a cell. */
function cellsPng({ grid }: Motif, yarns: readonly Yarn[], size: ChartImageSize): Uint8Array {
  const { width, height, cellWidth, cellHeight } = size;
  const data = new Uint8Array(width * height);
  for (let row = 0; row < grid.height; row++) {
    const top = (grid.height - 1 - row) * cellHeight * width;
    for (let column = 0; column < grid.width; column++) {
      data.fill(cellAt(grid, column, row), top + column * cellWidth, top + (column + 1) * cellWidth);
    }
    for (let line = 1; line < cellHeight; line++) data.copyWithin(top + line * width, top, top + width);
  }
  return encode(
    { width, height, data, depth: 8, channels: 1, palette: yarns.map(({ colour }) => channels(colour)) },
    BEST,
  );
}

function drawnPng(svg: string): Uint8Array {
  const image = new Resvg(svg, {
    font: { loadSystemFonts: false, fontFiles: Object.values(FONT_FILES), defaultFontFamily: FONT_FAMILY },
  }).render();
  const { width, height, pixels } = image;
  // The paper is opaque everywhere, so the fourth channel says nothing.
  const data = new Uint8Array(width * height * 3);
  for (let from = 0, to = 0; to < data.length; from += 4, to += 3) {
    data[to] = pixels[from] as number;
    data[to + 1] = pixels[from + 1] as number;
    data[to + 2] = pixels[from + 2] as number;
  }
  return encode({ width, height, data, depth: 8, channels: 3 }, BEST);
}

const BEST = { zlib: { level: 9 } } as const;

function channels(colour: string): number[] {
  return [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
}

/** Signature (8 bytes) and image header (25 bytes): what pHYs may follow (PNG, ISO/IEC 15948). */
const AFTER_HEADER = 33;
const METRES_IN_INCH = 0.0254;

/** The same PNG with a pHYs chunk: whole pixels in a metre, both ways. */
function withDensity(png: Uint8Array, dpi: number): Uint8Array {
  const perMetre = Math.round(dpi / METRES_IN_INCH);
  const chunk = Buffer.alloc(21);
  chunk.writeUInt32BE(9, 0);
  chunk.write('pHYs', 4, 'latin1');
  chunk.writeUInt32BE(perMetre, 8);
  chunk.writeUInt32BE(perMetre, 12);
  chunk.writeUInt8(1, 16);
  chunk.writeUInt32BE(crc32(chunk.subarray(4, 17)), 17);
  return Buffer.concat([png.subarray(0, AFTER_HEADER), chunk, png.subarray(AFTER_HEADER)]);
}
