/**
 * A chart seen at a glance on a small copy of its photo: what a person is shown
 * while the photo itself is looked over, and while a corner moves.
 *
 * It is found where few windows say that it is, and of each cell no more is
 * asked than which colour its middle has about. So it is a sketch: counts, cells
 * and corners may be others, and nothing of it is sure.
 */
import { findColours } from './clusters.ts';
import { followed, hypothesesOf, type PlacedSeed } from './follow-lattice.ts';
import { groundFirst } from './ground-first.ts';
import { SPACING } from './lattice.ts';
import { chartOn, lookedAt, type FoundChart } from './lattice-chart.ts';
import { seedsOf, type Seed } from './lattice-seed.ts';
import { roughLight, type Light } from './light.ts';
import { luma } from './luma.ts';
import { colourTextOf, oklab, oklabOfText, type Oklab } from './oklab.ts';
import { otsu } from './otsu.ts';
import type { Photo } from './photo.ts';
import type { Picture } from './picture.ts';
import type { ChartReading } from './read-chart.ts';
import type { Levels } from './sort-seen.ts';
import type { Steps } from './steps.ts';

/** Windows looked at either way, and lattices followed. */
const WINDOWS = 3;
const MOST_FOLLOWED = 2;

/** Crossings this many cells apart are enough, … */
const MOST_SPACING = 5;
/** … if so many would lie along all of the picture. */
const ALONG = 12;

/** Of fewer crossings no lattice is laid. */
const LEAST_ANCHORS = 9;

/** Smaller levels are not looked at: of cells that are large enough for those one sees enough here. */
const LEVELS = 2;
const LEAST_SIDE = 100;

/** How far the middle of a cell reaches from its centre, in cells. */
const REACH = 0.34;

/** Of a large cell no more pixels than this are looked at, either way. */
const MOST_LOOKS = 8;

/** Share of its pixels left out at the dark and at the light end: lines that lie off, and thin signs. */
const LEFT_OUT = 0.25;

/** Cells that are asked which colours there are. */
const MOST_ASKED = 800;

/** The chart that `photo`, a small copy, seems to show, or null; in its pixels, never sure. */
export function* glimpseChart(photo: Photo): Steps<FoundChart | null> {
  for (const [level, picture] of photo.levels.slice(0, LEVELS).entries()) {
    if (Math.min(picture.width, picture.height) < LEAST_SIDE) return null;
    const seeds = (seedsInMiddle(picture) ?? seedsOf(picture, false, WINDOWS)).map((seed): PlacedSeed => ({
      seed,
      level,
    }));
    yield { stage: 'find-chart', done: 0.4 };
    for (const hypothesis of hypothesesOf(seeds).slice(0, MOST_FOLLOWED)) {
      const lattice = followed(photo, hypothesis, () => true, false, spacingIn(picture));
      yield { stage: 'find-chart', done: 0.7 };
      if (lattice === null || lattice.anchors.length < LEAST_ANCHORS) continue;
      const chart = chartOn(lookedAt(lattice));
      yield { stage: 'find-chart', done: 1 };
      if (chart && !('cutOff' in chart)) return { ...chart, sure: false };
    }
  }
  return null;
}

/** How far apart crossings are looked at: the wider, the more cells a lattice may have. */
function spacingIn({ width, height }: Picture): (seed: Seed) => number {
  return ({ across }) => {
    const cells = Math.max(width, height) / Math.hypot(across.x, across.y);
    return Math.max(SPACING, Math.min(MOST_SPACING, Math.floor(cells / ALONG)));
  };
}

/** Of a picture's width and height so much is its middle, … */
const MIDDLE = 0.5;
/** … which is looked at in so many windows either way; nearly all of them must say the same, … */
const MIDDLE_WINDOWS = 2;
/** … and of steps no longer than this, in pixels: of large cells a window holds so few that it may take two for one. */
const MOST_STEP = 16;

/** The seeds of the middle of a picture, where a chart mostly is; null where it does not tell. */
function seedsInMiddle(picture: Picture): Seed[] | null {
  const width = Math.round(MIDDLE * picture.width);
  const height = Math.round(MIDDLE * picture.height);
  const left = (picture.width - width) >> 1;
  const top = (picture.height - height) >> 1;
  const rgba = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y++) {
    const from = ((top + y) * picture.width + left) * 4;
    rgba.set(picture.rgba.subarray(from, from + width * 4), y * width * 4);
  }
  const seeds = seedsOf({ width, height, rgba }, false, MIDDLE_WINDOWS).map((seed) => ({
    ...seed,
    at: { x: seed.at.x + left, y: seed.at.y + top },
  }));
  const [likeliest] = hypothesesOf(seeds.map((seed) => ({ seed, level: 0 })));
  const isTold = likeliest?.every(({ seed: { across, down } }) =>
    [across, down].every(({ x, y }) => Math.hypot(x, y) <= MOST_STEP),
  );
  return isTold && likeliest && likeliest.length >= MIDDLE_WINDOWS ** 2 - 1 ? seeds : null;
}

/** The light on the cells of a chart, which hardly changes while a corner moves; null: not known yet. */
export interface Lit {
  light: Light | null;
}

/**
 * About what the cells of a straightened chart show; null where that is not told
 * at a glance: symbols, and one colour only. `known` are the colours that were
 * found before, or null. The light on the cells is taken from `lit`, or worked
 * out and left there. No cell is said to be sure or doubtful.
 */
export function roughCells(
  straight: Picture,
  columns: number,
  rows: number,
  levels: Levels,
  known: readonly string[] | null,
  lit: Lit = { light: null },
): ChartReading | null {
  if (levels.kind === 'symbols') return null;
  const count = columns * rows;
  const middles = middlesOf(straight, columns, rows);
  const lights = Float32Array.from({ length: count }, (_, cell) => luma(middles, cell * 3));
  const light = lit.light ?? roughLight(lights, columns, rows);
  lit.light = light;
  const sorted =
    levels.kind === 'ink' ? byInk(lights, light, levels.figure) : byColour(middles, light, levels.count, known);
  if (sorted === null) return null;
  const { grid, colours } = groundFirst({ width: columns, height: rows, cells: sorted.yarns }, sorted.colours);
  return { grid, colours, ground: 0, confidence: new Float32Array(count), doubtful: new Uint8Array(count) };
}

interface Sketch {
  readonly yarns: Uint8Array;
  readonly colours: readonly string[];
}

function byInk(lights: Float32Array, light: Float32Array, figure: 'dark' | 'light'): Sketch {
  const even = lights.map((value, cell) => Math.max(0, Math.min(255, Math.round(value / (light[cell] as number)))));
  const histogram = new Uint32Array(256);
  for (const value of even) histogram[value] = (histogram[value] as number) + 1;
  const { threshold } = otsu(histogram);
  const yarns = Uint8Array.from(even, (value) => (value <= threshold === (figure === 'dark') ? 1 : 0));
  return { yarns, colours: ['#ffffff', '#000000'] };
}

function byColour(
  middles: Float32Array,
  light: Float32Array,
  wanted: number | null,
  known: readonly string[] | null,
): Sketch | null {
  const cells = new Float64Array(middles.length);
  for (let cell = 0; cell < light.length; cell++) {
    const by = light[cell] as number;
    const [l, a, b] = oklab(
      (middles[cell * 3] as number) / by,
      (middles[cell * 3 + 1] as number) / by,
      (middles[cell * 3 + 2] as number) / by,
    );
    cells[cell * 3] = l;
    cells[cell * 3 + 1] = a;
    cells[cell * 3 + 2] = b;
  }
  const palette = known ? known.map(oklabOfText) : coloursOf(cells, wanted);
  if (palette.length < 2) return null;
  const yarns = new Uint8Array(light.length);
  for (let cell = 0; cell < yarns.length; cell++) {
    let least = Infinity;
    for (let yarn = 0; yarn < palette.length; yarn++) {
      const [l, a, b] = palette[yarn] as Oklab;
      const off =
        ((cells[cell * 3] as number) - l) ** 2 +
        ((cells[cell * 3 + 1] as number) - a) ** 2 +
        ((cells[cell * 3 + 2] as number) - b) ** 2;
      if (off < least) {
        least = off;
        yarns[cell] = yarn;
      }
    }
  }
  return { yarns, colours: known ?? palette.map(colourTextOf) };
}

/** The colours of some of the cells, evenly taken: as many as stand apart. */
function coloursOf(cells: Float64Array, wanted: number | null): readonly Oklab[] {
  const count = cells.length / 3;
  const many = Math.min(count, MOST_ASKED);
  const asked = new Float64Array(many * 3);
  for (let i = 0; i < many; i++) {
    const cell = Math.floor((i * count) / many);
    asked.set(cells.subarray(cell * 3, cell * 3 + 3), i * 3);
  }
  return findColours(asked, new Uint8Array(many).fill(1), wanted).colours;
}

/** The mean of the middle of each cell without its lightest and darkest pixels, three numbers a cell, the bottom row first. */
function middlesOf({ width, height, rgba }: Picture, columns: number, rows: number): Float32Array {
  const middles = new Float32Array(columns * rows * 3);
  const [across, up] = [width / columns, height / rows];
  const apart = Math.max(1, Math.ceil((2 * REACH * Math.max(across, up)) / MOST_LOOKS));
  // Lightness and place of each pixel as one number: so they are put in order without a list of pairs.
  const pixels = new Float64Array((MOST_LOOKS + 2) ** 2);
  for (let row = 0; row < rows; row++) {
    const top = Math.max(0, Math.round((row + 0.5 - REACH) * up));
    const bottom = Math.min(height, Math.max(top + 1, Math.round((row + 0.5 + REACH) * up)));
    for (let column = 0; column < columns; column++) {
      const left = Math.max(0, Math.round((column + 0.5 - REACH) * across));
      const right = Math.min(width, Math.max(left + 1, Math.round((column + 0.5 + REACH) * across)));
      let count = 0;
      for (let y = top; y < bottom; y += apart) {
        for (let x = left; x < right; x += apart) {
          const at = (y * width + x) * 4;
          // Put in their place among so few, which is quicker than to sort a list of its own for each cell.
          const pixel = Math.round(luma(rgba, at)) * 2 ** 32 + at;
          let place = count++;
          for (; place > 0 && (pixels[place - 1] as number) > pixel; place--)
            pixels[place] = pixels[place - 1] as number;
          pixels[place] = pixel;
        }
      }
      const out = Math.floor(count * LEFT_OUT);
      let [red, green, blue] = [0, 0, 0];
      for (let i = out; i < count - out; i++) {
        const at = (pixels[i] as number) % 2 ** 32;
        red += rgba[at] as number;
        green += rgba[at + 1] as number;
        blue += rgba[at + 2] as number;
      }
      const cell = ((rows - 1 - row) * columns + column) * 3;
      const kept = count - 2 * out;
      middles[cell] = red / kept;
      middles[cell + 1] = green / kept;
      middles[cell + 2] = blue / kept;
    }
  }
  return middles;
}
