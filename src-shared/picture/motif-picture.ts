/**
 * A motif from a picture with one pixel for each cell.
 *
 * Pictures are stored from the top and knitting starts at the bottom: the
 * topmost pixels become the last row.
 */
import { makeGrid, MOST_COLOURS, type Grid } from '../grid/index.ts';
import { problemError } from '../problem/index.ts';
import { groundOf, isBlackAndWhite } from './ground.ts';
import {
  isPbm,
  isPng,
  readPbmHeader,
  readPbmPixels,
  readPngChunks,
  readPngPixels,
  type TakeRow,
} from './formats/index.ts';
import { assertMotifSize, BLACK, colourText, parseColour, WHITE, type Pixels } from './pixels.ts';

export interface MotifPicture {
  readonly grid: Grid;
  /**
   * `#rrggbb` by palette index. The ground comes first, then the colours of the
   * figure in the order in which knitting meets them: from the bottom row
   * upwards, each row from the left as drawn.
   */
  readonly colours: readonly string[];
  /** Palette index of the ground: always 0. */
  readonly ground: number;
}

export interface MotifPictureOptions {
  /** The colour to take as the ground, as `#rrggbb`; left out, it is found (see ground.ts). */
  readonly groundColour?: string;
}

/**
 * Reads a PNG or PBM. A picture of nothing but black and white has both in its
 * palette, whichever it uses, like a PBM.
 *
 * Throws `picture-empty`, `picture-unknown-kind`, `picture-truncated`,
 * `picture-broken`, `picture-animated`, `picture-too-large`,
 * `picture-too-many-colours`, or `colour-unknown` for a ground that the picture
 * does not hold.
 */
export function readMotifPicture(bytes: Uint8Array, options: MotifPictureOptions = {}): MotifPicture {
  const pixels = readPixels(bytes);
  const present = coloursFromBottomLeft(pixels);
  const known = isBlackAndWhite(pixels) ? [WHITE, BLACK] : present;
  const ground = options.groundColour === undefined ? groundOf(pixels) : givenGround(options.groundColour, known);
  const palette = [ground, ...known.filter((colour) => colour !== ground)];
  return { grid: gridOf(pixels, palette), colours: palette.map(colourText), ground: 0 };
}

function readPixels(bytes: Uint8Array): Pixels {
  if (bytes.length === 0) throw problemError('picture-empty', {});
  if (isPng(bytes)) {
    const chunks = readPngChunks(bytes);
    return pixelsOf(chunks.header, (take) => readPngPixels(bytes, chunks, take));
  }
  if (isPbm(bytes)) {
    const header = readPbmHeader(bytes);
    return pixelsOf(header, (take) => readPbmPixels(bytes, header, take));
  }
  throw problemError('picture-unknown-kind', {});
}

/** Makes room only for what can be a motif, and has `decode` fill it. */
function pixelsOf(
  { width, height }: { readonly width: number; readonly height: number },
  decode: (take: TakeRow) => void,
): Pixels {
  assertMotifSize(width, height);
  const colours = new Uint32Array(width * height);
  decode((y, rgba, first, step, count) => {
    for (let pixel = 0; pixel < count; pixel++) {
      const at = 4 * pixel;
      const colour = ((rgba[at] as number) << 16) | ((rgba[at + 1] as number) << 8) | (rgba[at + 2] as number);
      colours[y * width + first + pixel * step] = colour;
    }
  });
  return { width, height, colours };
}

function coloursFromBottomLeft({ width, height, colours }: Pixels): number[] {
  const found = new Set<number>();
  for (let row = height - 1; row >= 0; row--) {
    for (let column = 0; column < width; column++) {
      found.add(colours[row * width + column] as number);
      if (found.size > MOST_COLOURS) {
        throw problemError('picture-too-many-colours', { colours: found.size, most: MOST_COLOURS });
      }
    }
  }
  return [...found];
}

function givenGround(text: string, known: readonly number[]): number {
  const wanted = parseColour(text);
  const ground = known.find((colour) => colourText(colour) === wanted);
  if (ground === undefined) {
    throw problemError('colour-unknown', { text, known: known.map(colourText).join(', ') });
  }
  return ground;
}

function gridOf({ width, height, colours }: Pixels, palette: readonly number[]): Grid {
  const indexOf = new Map(palette.map((colour, index) => [colour, index]));
  const grid = makeGrid(width, height);
  for (let row = 0; row < height; row++) {
    const fromTop = height - 1 - row;
    for (let column = 0; column < width; column++) {
      grid.cells[row * width + column] = indexOf.get(colours[fromTop * width + column] as number) as number;
    }
  }
  return grid;
}
