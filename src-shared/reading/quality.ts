/**
 * Whether a photo can be read at all: how light its paper is, how much what is
 * drawn stands out, above how much noise, and how sharply.
 */
import { problemError } from '../problem/index.ts';
import { luma } from './luma.ts';
import type { Picture } from './picture.ts';

/** What can be measured of a straightened chart before anything in it is told apart. */
export interface Quality {
  /** How light the lightest tenth of the cells is at least, 0 … 255. */
  readonly paper: number;
  /** From the darkest to the lightest in a cell, in the tenth of the cells where that is most, 0 … 255. */
  readonly contrast: number;
  /** Grain: by how much pixels of the straightened chart stray, 0 … 255. */
  readonly noise: number;
  /** How far an edge is smeared (deviation of a Gaussian), as a share of a cell. */
  readonly blur: number;
}

/**
 * Where reading ends: 12 photographs of `npm run photos`, of every kind, were
 * darkened, smeared and made grainy step by step until cells came out wrong.
 * As they are, their paper is at 201 and above, their contrast at 53, their
 * noise at most 0.013 of it, their blur 0.14.
 */
export const LEAST_PAPER = 30;
const LEAST_CONTRAST = 10;
const MOST_NOISE = 0.062;
const MOST_BLUR = { ink: 0.185, colours: 0.18, symbols: 0.15 };

/** A cell must have so many pixels of the photo across and up; a sign in it more. */
export const LEAST_PIXELS = { ink: 3, colours: 3, symbols: 5 };

/** Cells looked at, spread evenly. */
const MOST_CELLS = 4000;

/** The greatest slope of an edge smeared by a Gaussian of deviation 1. */
const SLOPE_OF_EDGE = 1 / Math.sqrt(2 * Math.PI);

/** The deviation of a normal distribution for a middle absolute value of 1. */
const DEVIATION = 1 / 0.6745;

/** Throws `photo-too-dark`, `photo-flat`, `photo-grainy` or `photo-blurred`, with what was measured, where no reading could be believed. */
export function assertReadable({ paper, contrast, noise, blur }: Quality, by: keyof typeof MOST_BLUR): void {
  if (paper < LEAST_PAPER) throw problemError('photo-too-dark', { paper, least: LEAST_PAPER });
  if (contrast < LEAST_CONTRAST) throw problemError('photo-flat', { contrast, least: LEAST_CONTRAST });
  if (noise > MOST_NOISE * contrast) throw problemError('photo-grainy', { noise: noise / contrast, most: MOST_NOISE });
  if (blur > MOST_BLUR[by]) throw problemError('photo-blurred', { blur, most: MOST_BLUR[by] });
}

/** Measures a straightened chart of `columns` × `rows` cells. */
export function qualityOf(straight: Picture, columns: number, rows: number): Quality {
  const { width, height, rgba } = straight;
  const lights = new Float32Array(width * height);
  for (let pixel = 0; pixel < lights.length; pixel++) lights[pixel] = luma(rgba, pixel * 4);
  const [across, up] = [width / columns, height / rows];
  const step = Math.max(1, Math.ceil((columns * rows) / MOST_CELLS));
  const cells: CellQuality[] = [];
  for (let cell = 0; cell < columns * rows; cell += step) {
    cells.push(
      cellQuality(lights, width, height, (cell % columns) * across, Math.floor(cell / columns) * up, across, up),
    );
  }
  const strong = cells.toSorted((a, b) => b.range - a.range).slice(0, Math.ceil(cells.length / 10));
  const steepness = middleOf(strong.map(({ range, slope }) => (range === 0 ? 1 : slope / range)));
  return {
    paper: cells.map(({ lightest }) => lightest).sort((a, b) => a - b)[Math.floor(cells.length * 0.9)] as number,
    contrast: middleOf(strong.map(({ range }) => range)),
    noise: middleOf(cells.map(({ stray }) => stray)) * DEVIATION,
    blur: SLOPE_OF_EDGE / Math.max(steepness, 1e-6) / Math.min(across, up),
  };
}

interface CellQuality {
  readonly lightest: number;
  readonly range: number;
  /** The steepest there is, from one pixel to the next. */
  readonly slope: number;
  /** By how much the pixels in its middle differ crosswise, where straight edges cancel (as Immerkær 1996). */
  readonly stray: number;
}

function cellQuality(
  lights: Float32Array,
  width: number,
  height: number,
  left: number,
  top: number,
  across: number,
  up: number,
): CellQuality {
  // Two by two pixels together, so that noise is not taken for contrast.
  const at = (x: number, y: number): number => {
    const pixel = y * width + x;
    const upper = (lights[pixel] as number) + (lights[pixel + 1] as number);
    return (upper + (lights[pixel + width] as number) + (lights[pixel + width + 1] as number)) / 4;
  };
  let [darkest, lightest, slope] = [Infinity, -Infinity, 0];
  const [right, bottom] = [Math.min(width - 2, Math.ceil(left + across)), Math.min(height - 2, Math.ceil(top + up))];
  for (let y = Math.max(1, Math.floor(top)); y < bottom; y++) {
    for (let x = Math.max(1, Math.floor(left)); x < right; x++) {
      const here = at(x, y);
      darkest = Math.min(darkest, here);
      lightest = Math.max(lightest, here);
      slope = Math.max(slope, Math.abs(at(x + 1, y) - at(x - 1, y)) / 2, Math.abs(at(x, y + 1) - at(x, y - 1)) / 2);
    }
  }
  const middle = Math.floor(top + up / 2) * width + Math.floor(left + across / 2);
  const strays = [middle - 2, middle, middle + 2].map((pixel) =>
    Math.abs(
      (lights[pixel] as number) -
        (lights[pixel + 1] as number) -
        (lights[pixel + width] as number) +
        (lights[pixel + width + 1] as number),
    ),
  );
  return { lightest, range: Math.max(0, lightest - darkest), slope, stray: middleOf(strays) / 2 };
}

function middleOf(values: number[]): number {
  return values.sort((a, b) => a - b)[values.length >> 1] ?? 0;
}
