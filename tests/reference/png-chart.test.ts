/** Chart images read back, cell by cell, with a decoder that the project does not write with. */
import { Resvg } from '@resvg/resvg-js';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { cellAt, gridFromText, makeGrid } from '@shared/grid/index.ts';
import { chartImageSize, chartSvg, FONT_FAMILY, type ChartImageOptions } from '@shared/output/index.ts';
import { ProblemError, problemOf } from '@shared/problem/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { sampleProject } from '@shared/project/index.ts';
import { FONT_FILES } from '../../src-main/services/export/fonts.ts';
import { chartPng } from '../../src-main/services/export/index.ts';
import { TEST_DAY } from '../day.ts';
import { crowdedProject, scattered } from '../unit/output/projects.ts';

const sample = sampleProject();
const lighthouse = sample.motifs[0] as Motif;
const CROWDED = crowdedProject();
const GAUGE = { stitches: 28, rows: 40 };

const CELLS: ChartImageOptions = { gauge: null, cellHeight: 1, numbers: false, gridLines: false, repeatBox: false };
const ALL: ChartImageOptions = { gauge: GAUGE, cellHeight: 24, numbers: true, gridLines: true, repeatBox: true };

function decode(bytes: Uint8Array): PNG {
  return PNG.sync.read(Buffer.from(bytes));
}

function colourAt(png: PNG, x: number, y: number): string {
  const at = (y * png.width + x) * 4;
  expect(png.data[at + 3]).toBe(255);
  return `#${png.data.subarray(at, at + 3).toString('hex')}`;
}

/** Every chunk's kind and content, in order (PNG, ISO/IEC 15948). */
function chunksOf(bytes: Uint8Array): { kind: string; content: Buffer }[] {
  const file = Buffer.from(bytes);
  const chunks: { kind: string; content: Buffer }[] = [];
  for (let at = 8; at < file.length;) {
    const length = file.readUInt32BE(at);
    chunks.push({ kind: file.toString('latin1', at + 4, at + 8), content: file.subarray(at + 8, at + 8 + length) });
    at += 12 + length;
  }
  return chunks;
}

function motifOf(grid: Motif['grid']): Motif {
  return { id: 'm', name: 'trial', grid, shows: 'worn', isLettering: false, underlay: null };
}

describe('the date of a chart image', () => {
  // PNG, ISO/IEC 15948, 11.3.4.2 and 11.3.4.3: keyword, a null byte, text in Latin-1; `Creation Time` is one of the keywords.
  it('is its creation time, in a file whose checksums are right', () => {
    for (const options of [CELLS, ALL]) {
      const bytes = chartPng(lighthouse, CROWDED, { ...options, dpi: 300, date: TEST_DAY });
      expect(decode(bytes).width).toBeGreaterThan(0);
      const texts = chunksOf(bytes).filter(({ kind }) => kind === 'tEXt');
      expect(texts.map(({ content }) => content.toString('latin1'))).toEqual(['Creation Time\0' + '2026-01-02']);
      expect(chunksOf(bytes).map(({ kind }) => kind)).toContain('pHYs');
    }
  });
});

describe('a chart image of cells alone', () => {
  it.each([
    { of: 'the sample', motif: lighthouse, gauge: null, cellHeight: 1, width: 14, height: 18 },
    { of: 'the sample as knitted', motif: lighthouse, gauge: GAUGE, cellHeight: 7, width: 14 * 10, height: 18 * 7 },
    { of: 'four yarns', motif: motifOf(scattered(31, 17, 4)), gauge: null, cellHeight: 3, width: 93, height: 51 },
    { of: 'one cell', motif: motifOf(gridFromText(['X'], '.X')), gauge: null, cellHeight: 1, width: 1, height: 1 },
    { of: '200 × 1000', motif: motifOf(scattered(200, 1000, 2)), gauge: null, cellHeight: 1, width: 200, height: 1000 },
  ])('of $of gives back every pixel of every cell', ({ motif, gauge, cellHeight, width, height }) => {
    const options = { ...CELLS, gauge, cellHeight };
    const png = decode(chartPng(motif, CROWDED, { ...options, dpi: 300 }));
    expect([png.width, png.height]).toEqual([width, height]);
    const { cellWidth } = chartImageSize(motif, options);
    let wrong = 0;
    for (let y = 0; y < height; y++) {
      // Row 1 is at the bottom.
      const row = motif.grid.height - 1 - Math.floor(y / cellHeight);
      for (let x = 0; x < width; x++) {
        const yarn = CROWDED.yarns[cellAt(motif.grid, Math.floor(x / cellWidth), row)];
        const at = (y * width + x) * 4;
        if (`#${png.data.subarray(at, at + 3).toString('hex')}` !== yarn?.colour) wrong++;
      }
    }
    expect(wrong).toBe(0);
  });
});

describe('a chart image with numbers, lines and the repeat', () => {
  it.each([
    { options: ALL },
    { options: { ...ALL, repeatBox: false } },
    { options: { ...ALL, numbers: false, cellHeight: 9 } },
    { options: { ...ALL, gridLines: false, cellHeight: 40 } },
  ])('shows each cell in its yarn: %j', ({ options }) => {
    const { grid } = lighthouse;
    const png = decode(chartPng(lighthouse, sample, { ...options, dpi: 300 }));
    const size = chartImageSize(lighthouse, options);
    expect([png.width, png.height]).toEqual([size.width, size.height]);
    for (let row = 0; row < grid.height; row++) {
      for (let column = 0; column < grid.width; column++) {
        const expected = sample.yarns[cellAt(grid, column, row)]?.colour as string;
        // Away from lines and hatching most of a cell is its yarn and nothing else.
        const counts = new Map<string, number>();
        for (let y = 3; y < size.cellHeight - 2; y++) {
          for (let x = 3; x < size.cellWidth - 2; x++) {
            const colour = colourAt(
              png,
              size.left + column * size.cellWidth + x,
              size.top + (grid.height - 1 - row) * size.cellHeight + y,
            );
            counts.set(colour, (counts.get(colour) ?? 0) + 1);
          }
        }
        const [most] = [...counts].sort((a, b) => b[1] - a[1]);
        expect(most?.[0]).toBe(expected);
        // Only the blank column at the right is hatched.
        if (column < 13) expect([...counts.keys()]).toEqual([expected]);
      }
    }
  });

  // The renderer's own pixels are the truth.
  it.each([
    { of: 'the sample', motif: lighthouse, palette: sample },
    { of: 'many yarns', motif: motifOf(scattered(60, 40, 4)), palette: CROWDED },
  ])('of $of has every pixel as it was rendered', ({ motif, palette }) => {
    const rendered = new Resvg(chartSvg(motif, palette, ALL), {
      font: { loadSystemFonts: false, fontFiles: Object.values(FONT_FILES), defaultFontFamily: FONT_FAMILY },
    }).render();
    const png = decode(chartPng(motif, palette, { ...ALL, dpi: 300 }));
    expect([png.width, png.height]).toEqual([rendered.width, rendered.height]);
    expect(Buffer.compare(png.data, rendered.pixels)).toBe(0);
  });

  it('keeps the proportion of the gauge to half a pixel a cell', () => {
    for (const cellHeight of [1, 2, 7, 24, 33]) {
      const { cellWidth } = chartImageSize(lighthouse, { ...ALL, cellHeight });
      expect(Math.abs(cellWidth - (cellHeight * 40) / 28)).toBeLessThanOrEqual(0.5);
    }
  });

  it('writes its numbers: the right and lower margins are not blank', () => {
    const png = decode(chartPng(lighthouse, sample, { ...ALL, repeatBox: false, dpi: 300 }));
    const size = chartImageSize(lighthouse, { ...ALL, repeatBox: false });
    const right = size.left + lighthouse.grid.width * size.cellWidth + 4;
    const bottom = size.top + lighthouse.grid.height * size.cellHeight + 4;
    const inked = (fromX: number, fromY: number, toX: number, toY: number): number => {
      let count = 0;
      for (let y = fromY; y < toY; y++)
        for (let x = fromX; x < toX; x++) if (colourAt(png, x, y) !== '#ffffff') count++;
      return count;
    };
    expect(inked(right, 0, png.width, bottom)).toBeGreaterThan(18 * 10);
    expect(inked(0, bottom, right, png.height)).toBeGreaterThan(14 * 10);
  });
});

describe('the density of a chart image', () => {
  // Pixels per metre for common densities (PNG, ISO/IEC 15948: pHYs, unit 1 is the metre).
  it.each([
    [72, 2835],
    [96, 3780],
    [150, 5906],
    [300, 11811],
    [600, 23622],
  ])('of %d dpi is recorded as %d pixels in a metre', (dpi, perMetre) => {
    for (const options of [CELLS, ALL]) {
      const bytes = chartPng(lighthouse, sample, { ...options, dpi });
      const chunks = chunksOf(bytes);
      const found = chunks.filter(({ kind }) => kind === 'pHYs');
      expect(found).toHaveLength(1);
      const { content } = found[0] as (typeof chunks)[number];
      expect([content.readUInt32BE(0), content.readUInt32BE(4), content.readUInt8(8)]).toEqual([perMetre, perMetre, 1]);
      const kinds = chunks.map(({ kind }) => kind);
      expect(kinds.indexOf('pHYs')).toBeLessThan(kinds.indexOf('IDAT'));
      // The decoder checks the sum of every chunk.
      expect(() => decode(bytes)).not.toThrow();
    }
  });
});

describe('an image that is too large', () => {
  it.each([
    { grid: makeGrid(1000, 4000), cellHeight: 24 },
    { grid: makeGrid(1, 4000), cellHeight: 10 },
  ])('is refused by name before it is drawn', ({ grid, cellHeight }) => {
    const draw = (): Uint8Array => chartPng(motifOf(grid), sample, { ...ALL, cellHeight, dpi: 300 });
    expect(draw).toThrow(ProblemError);
    try {
      draw();
    } catch (error) {
      expect(problemOf(error).code).toBe('image-too-large');
    }
  });
});
