/** The bitmap of cells, on a canvas of our own that keeps what is put on it. */
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CellBox, Grid } from '@shared/grid/index.ts';
import { CellBitmap } from '../../../src-renderer/canvas/bitmap.ts';
import { pictureArea, type CellPicture } from '../../../src-renderer/canvas/picture.ts';

interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

/** As much of a canvas as a bitmap needs: whole pixels, drawn over what was there. */
class PlainCanvas {
  width = 0;
  height = 0;
  fillStyle = '';
  globalAlpha = 1;
  readonly pixels = new Map<string, string>();
  getContext(): this {
    return this;
  }
  createImageData(width: number, height: number): Pixels {
    return { width, height, data: new Uint8ClampedArray(width * height * 4) };
  }
  putImageData({ width, data }: Pixels, left: number, top: number): void {
    for (let at = 0; at * 4 < data.length; at++) {
      this.pixels.set(`${left + (at % width)},${top + Math.floor(at / width)}`, data.slice(at * 4, at * 4 + 4).join());
    }
  }
  clearRect(left: number, top: number, width: number, height: number): void {
    for (let x = 0; x < width; x++)
      for (let y = 0; y < height; y++) this.pixels.set(`${left + x},${top + y}`, '0,0,0,0');
  }
  fillRect(left: number, top: number): void {
    const rgb = [1, 3, 5].map((at) => Number.parseInt(this.fillStyle.slice(at, at + 2), 16));
    this.pixels.set(`${left},${top}`, [...rgb, Math.round(this.globalAlpha * 255)].join());
  }
}

const COLOURS = ['#102030', '#a0b0c0', '#ff8000'];
const count = (least: number, most: number) => fc.integer({ min: least, max: most });
const anyBox: fc.Arbitrary<CellBox> = fc.record({
  column: count(-6, 20),
  row: count(-6, 20),
  width: count(1, 24),
  height: count(1, 24),
});
/** Cells that change inside a box, and where the view then is. */
const anyStep = fc.record({ box: anyBox, colour: count(0, 2), seen: anyBox, isSeenOnly: fc.boolean() });

const AROUND = { columns: 4, rows: 3, strength: 0.4 };

describe('the bitmap of cells', () => {
  const { document } = globalThis;
  beforeAll(() => Object.assign(globalThis, { document: { createElement: () => new PlainCanvas() } }));
  afterAll(() => Object.assign(globalThis, { document }));

  it('shows what is in view as if all were drawn anew, whatever changed and however the view moved', () => {
    let moved = 0;
    fc.assert(
      fc.property(
        count(1, 18),
        count(1, 18),
        fc.array(anyStep, { maxLength: 8 }),
        fc.option(fc.constantFrom('straight' as const, 'courses' as const, 'columns' as const)),
        (width, height, steps, laid) => {
          const surround = laid
            ? {
                copies: { laid, width, height, step: laid === 'straight' ? 0 : 2 },
                isMirrored: laid === 'courses',
                ...AROUND,
              }
            : null;
          const pictureOf = (grid: Grid): CellPicture => ({ grid, colours: COLOURS, surround });
          let picture = pictureOf({ width, height, cells: new Uint8Array(width * height) });
          const area = pictureArea(picture);
          const bitmap = new CellBitmap(picture);
          for (const { box, colour, seen, isSeenOnly } of steps) {
            if (isSeenOnly) {
              bitmap.bringIntoView(picture, seen);
              moved++;
            } else {
              const cells = picture.grid.cells.map((cell, at) =>
                holds(box, at % width, Math.floor(at / width)) ? colour : cell,
              );
              picture = pictureOf({ width, height, cells });
              // What is told to have changed may be more than what did; copies around the chart change with it.
              bitmap.paint(picture, surround ? [area] : [box], seen);
            }
            const anew = new CellBitmap(picture);
            for (let row = area.row; row < area.row + area.height; row++) {
              for (let column = area.column; column < area.column + area.width; column++) {
                if (!holds(seen, column, row)) continue;
                const pixel = `${column - area.column},${area.row + area.height - 1 - row}`;
                expect(pixelOf(bitmap, pixel)).toBe(pixelOf(anew, pixel));
              }
            }
          }
        },
      ),
      { numRuns: 150, seed: 7 },
    );
    expect(moved).toBeGreaterThan(100);
  });
});

function holds(box: CellBox, column: number, row: number): boolean {
  return column >= box.column && column < box.column + box.width && row >= box.row && row < box.row + box.height;
}

function pixelOf({ canvas }: CellBitmap, at: string): string | undefined {
  return (canvas as unknown as PlainCanvas).pixels.get(at);
}
