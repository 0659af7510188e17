/** The chart of a motif as PNG, with its pixel density and its date recorded. */
import { crc32 } from 'node:zlib';
import { Resvg } from '@resvg/resvg-js';
import { encode } from 'fast-png';
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
  const png = isCellsOnly(options) ? cellsPng(motif, palette.yarns, size) : drawnPng(chartSvg(motif, palette, options));
  return afterHeader(png, [densityChunk(options.dpi), ...(options.date ? [dateChunk(options.date)] : [])]);
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

/** Signature (8 bytes) and image header (25 bytes): what pHYs and tEXt may follow (PNG, ISO/IEC 15948). */
const AFTER_HEADER = 33;
const METRES_IN_INCH = 0.0254;

/** The same PNG with more chunks. */
function afterHeader(png: Uint8Array, chunks: readonly Uint8Array[]): Uint8Array {
  return Buffer.concat([png.subarray(0, AFTER_HEADER), ...chunks, png.subarray(AFTER_HEADER)]);
}

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

/** Length, kind, data, checksum of both. */
function chunk(kind: 'pHYs' | 'tEXt', data: Uint8Array): Uint8Array {
  const checked = Buffer.concat([Buffer.from(kind, 'latin1'), data]);
  const whole = Buffer.alloc(checked.length + 8);
  whole.writeUInt32BE(data.length, 0);
  checked.copy(whole, 4);
  whole.writeUInt32BE(crc32(checked), checked.length + 4);
  return whole;
}
