/**
 * Where in a picture something comes back evenly in two directions, and with
 * what steps: the squares of a chart, before anything is known of it.
 *
 * In windows all over the picture the waves that run through its edges are
 * looked at. A lattice of cells makes waves at whole multiples of two of them
 * and hardly any elsewhere; writing, wood and a cat do not. Edges are cut off
 * at a ceiling, so that faint lines count nearly as much as the rim of the sheet.
 */
import type { Point } from './corners.ts';
import { darknessOf, edgesOf } from './evenness-maps.ts';
import { powersOf } from './fourier.ts';
import { nthOf } from './nth.ts';
import type { Picture } from './picture.ts';

/** A lattice seen around a place of a picture: one step across and one step down, in pixels. */
export interface Seed {
  readonly at: Point;
  readonly across: Point;
  readonly down: Point;
  /** How much of what comes back belongs to it; noise and writing stay below {@link LEAST_SCORE}. */
  readonly score: number;
}

/** Side of a window, in pixels: a power of two, and five to thirty cells. */
export const WINDOW = 128;

/** Windows are about this far apart. */
const APART = 104;

/** No more windows than this either way. */
const MOST_WINDOWS = 8;

/** Waves of these lengths, in pixels, are looked at. */
const LEAST_STEP = 4.2;
const MOST_STEP = 32;

/**
 * A wave stands out that is this many times stronger than others as long; of all in a window chance makes one 9 times.
 * Faint ones are looked for below that, where many windows together tell them from chance.
 */
const STANDS_OUT = 11;
const STANDS_OUT_FAINTLY = 7;

/** The strongest waves that are looked at. */
const MOST_WAVES = 20;

/** A wave belongs to a lattice if it lies this near to a whole multiple, in times a window. */
const NEAR = 1.1;

/** Angle between the two steps, in degrees, and the one by the other: from a camera held aslant. */
const LEAST_ANGLE = 58;
const MOST_RATIO = 2.1;

const LEAST_SCORE = 5;
const LEAST_FAINT_SCORE = 0.5;

/**
 * Seeds of a picture, the best first; with `isFaint` also those that one window alone may show by chance. Of at most
 * `mostWindows` windows either way.
 */
export function seedsOf(picture: Picture, isFaint = false, mostWindows = MOST_WINDOWS): Seed[] {
  const least = isFaint ? LEAST_FAINT_SCORE : LEAST_SCORE;
  const standsOut = isFaint ? STANDS_OUT_FAINTLY : STANDS_OUT;
  const maps = [edgesOf(picture), darknessOf(picture)] as const;
  const { width, height } = picture;
  const seeds: Seed[] = [];
  for (const y of placesAlong(height, mostWindows)) {
    for (const x of placesAlong(width, mostWindows)) {
      const seed = seedAt(maps, width, height, x, y, standsOut);
      if (seed !== null && seed.score >= least) seeds.push(seed);
    }
  }
  return seeds.sort((a, b) => b.score - a.score);
}

/** Where windows begin along a side. */
function placesAlong(length: number, mostWindows: number): number[] {
  if (length <= WINDOW) return [Math.floor((length - WINDOW) / 2)];
  const apart = Math.min(APART, length / 8);
  const count = Math.min(mostWindows, Math.ceil((length - WINDOW) / apart) + 1);
  return Array.from({ length: count }, (_, i) => Math.round(((length - WINDOW) * i) / (count - 1)));
}

type Maps = readonly [edges: Float32Array, darkness: Float32Array];

/** A raised cosine, so that a window's own border makes no waves. */
const FADE = Float32Array.from({ length: WINDOW }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / WINDOW));

function seedAt(maps: Maps, width: number, height: number, left: number, top: number, standsOut: number): Seed | null {
  const [edges, darkness] = maps.map((map) => windowOf(map, width, height, left, top)) as [Float32Array, Float32Array];
  const [one, other] = powersOf(edges, darkness, WINDOW);
  const waves = together(wavesOf(one, standsOut), wavesOf(other, standsOut));
  const best = bestBasis(waves);
  if (best === null) return null;
  const [a, b] = best.basis;
  // Waves that come back a times and b times: the steps are their inverse.
  const det = a.x * b.y - a.y * b.x;
  const first = { x: (WINDOW * b.y) / det, y: (-WINDOW * b.x) / det };
  const second = { x: (-WINDOW * a.y) / det, y: (WINDOW * a.x) / det };
  const [across, down] = acrossAndDown(first, second);
  return { at: { x: left + WINDOW / 2, y: top + WINDOW / 2 }, across, down, score: best.score };
}

/** A window of a map about its mean, fading out towards its border. */
function windowOf(map: Float32Array, width: number, height: number, left: number, top: number): Float32Array {
  const square = new Float32Array(WINDOW * WINDOW);
  const [fromX, toX] = [Math.max(0, -left), Math.min(WINDOW, width - left)];
  const [fromY, toY] = [Math.max(0, -top), Math.min(WINDOW, height - top)];
  let sum = 0;
  let weight = 0;
  for (let y = fromY; y < toY; y++) {
    for (let x = fromX; x < toX; x++) {
      const fade = (FADE[x] as number) * (FADE[y] as number);
      sum += (map[(top + y) * width + left + x] as number) * fade;
      weight += fade;
    }
  }
  const mean = sum / weight;
  for (let y = fromY; y < toY; y++) {
    for (let x = fromX; x < toX; x++) {
      const fade = (FADE[x] as number) * (FADE[y] as number);
      square[y * WINDOW + x] = ((map[(top + y) * width + left + x] as number) - mean) * fade;
    }
  }
  return square;
}

/** The step that goes more to the right, pointing right, and the other one, pointing down from it. */
function acrossAndDown(one: Point, other: Point): [across: Point, down: Point] {
  const isOne = Math.abs(one.x) / Math.hypot(one.x, one.y) >= Math.abs(other.x) / Math.hypot(other.x, other.y);
  const [a, d] = isOne ? [one, other] : [other, one];
  const across = a.x >= 0 ? a : { x: -a.x, y: -a.y };
  const down = across.x * d.y - across.y * d.x >= 0 ? d : { x: -d.x, y: -d.y };
  return [across, down];
}

interface Wave {
  readonly x: number;
  readonly y: number;
  /** By how many times it stands out, as a logarithm. */
  readonly weight: number;
}

/** Waves that stand out among those of their length, strongest first; of each and its mirror image one. */
function wavesOf(power: Float32Array, standsOut: number): Wave[] {
  const half = WINDOW / 2;
  const at = (x: number, y: number): number => power[(y & (WINDOW - 1)) * WINDOW + (x & (WINDOW - 1))] as number;
  const rings = Array.from({ length: half }, (): number[] => []);
  for (let y = 0; y < half; y++) {
    for (let x = -half + 1; x < half; x++) {
      const ring = Math.round(Math.hypot(x, y));
      rings[ring]?.push(at(x, y));
    }
  }
  // The mean of a ring by its middle value, which peaks do not move: ln 2 of the mean where there is nothing but chance.
  const means = rings.map((ring) => (nthOf(ring, ring.length >> 1) ?? 0) / Math.LN2 + 1e-9);
  const waves: Wave[] = [];
  const [least, most] = [WINDOW / MOST_STEP, WINDOW / LEAST_STEP];
  for (let y = 0; y < half - 1; y++) {
    for (let x = -half + 2; x < half - 1; x++) {
      if (y === 0 && x <= 0) continue;
      const times = Math.hypot(x, y);
      if (times < least || times > most) continue;
      const here = at(x, y);
      const ratio = here / (means[Math.round(times)] as number);
      if (ratio < standsOut) continue;
      let isPeak = true;
      for (let dy = -1; dy <= 1 && isPeak; dy++) {
        for (let dx = -1; dx <= 1; dx++) if (at(x + dx, y + dy) > here) isPeak = false;
      }
      if (!isPeak) continue;
      waves.push({
        x: x + top(at(x - 1, y), here, at(x + 1, y)),
        y: y + top(at(x, y - 1), here, at(x, y + 1)),
        weight: Math.log((ratio / standsOut) * Math.E),
      });
    }
  }
  return waves.sort((a, b) => b.weight - a.weight).slice(0, MOST_WAVES);
}

/** Waves of both maps; one that runs through both counts with both. */
function together(one: readonly Wave[], other: readonly Wave[]): Wave[] {
  const waves = [...one];
  for (const wave of other) {
    const same = waves.findIndex(
      ({ x, y }) => Math.min(Math.hypot(x - wave.x, y - wave.y), Math.hypot(x + wave.x, y + wave.y)) < 1,
    );
    const met = waves[same];
    if (met === undefined) waves.push(wave);
    else waves[same] = { ...met, weight: met.weight + wave.weight };
  }
  return waves.sort((a, b) => b.weight - a.weight).slice(0, MOST_WAVES);
}

/** Where between −½ and ½ the peak lies, by a parabola through the logarithms. */
function top(before: number, here: number, after: number): number {
  const [b, h, a] = [Math.log(before + 1e-9), Math.log(here + 1e-9), Math.log(after + 1e-9)];
  const bend = b - 2 * h + a;
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (b - a) / (2 * bend))) : 0;
}

interface Basis {
  readonly basis: readonly [Point, Point];
  readonly score: number;
}

/** The two waves whose whole multiples are most of all waves, more than as many would be by chance. */
function bestBasis(waves: readonly Wave[]): Basis | null {
  let best: Basis | null = null;
  const total = waves.reduce((sum, { weight }) => sum + weight, 0);
  const leastSine = Math.sin((LEAST_ANGLE * Math.PI) / 180);
  for (const [i, a] of waves.entries()) {
    for (const b of waves.slice(i + 1)) {
      const [la, lb] = [Math.hypot(a.x, a.y), Math.hypot(b.x, b.y)];
      const det = a.x * b.y - a.y * b.x;
      if (Math.abs(det) < leastSine * la * lb || Math.max(la / lb, lb / la) > MOST_RATIO) continue;
      let [across, down] = [0, 0];
      for (const wave of waves) {
        const multiple = multipleOf(wave, a, b);
        if (multiple === null) continue;
        if (multiple[0] !== 0) across += wave.weight;
        if (multiple[1] !== 0) down += wave.weight;
      }
      const chance = Math.min(1, (Math.PI * NEAR * NEAR) / Math.abs(det));
      // A row of numbers comes back in one direction only.
      const score = Math.min(across, down) - chance * total;
      if (best === null || score > best.score) best = { basis: [a, b], score };
    }
  }
  return best && { ...best, basis: refined(best.basis, waves) };
}

/** The whole multiples of two waves that a third is, or null. */
function multipleOf(wave: Point, a: Point, b: Point): readonly [number, number] | null {
  const det = a.x * b.y - a.y * b.x;
  const m = Math.round((wave.x * b.y - wave.y * b.x) / det);
  const n = Math.round((a.x * wave.y - a.y * wave.x) / det);
  const off = Math.hypot(wave.x - m * a.x - n * b.x, wave.y - m * a.y - n * b.y);
  return (m !== 0 || n !== 0) && off <= NEAR ? [m, n] : null;
}

/** Least squares over all waves that are multiples: those of higher orders tell more exactly. */
function refined([a, b]: readonly [Point, Point], waves: readonly Wave[]): [Point, Point] {
  let [mm, mn, nn, mx, my, nx, ny] = [0, 0, 0, 0, 0, 0, 0];
  for (const wave of waves) {
    const multiple = multipleOf(wave, a, b);
    if (multiple === null) continue;
    const [m, n] = multiple;
    const w = wave.weight;
    mm += w * m * m;
    mn += w * m * n;
    nn += w * n * n;
    mx += w * m * wave.x;
    my += w * m * wave.y;
    nx += w * n * wave.x;
    ny += w * n * wave.y;
  }
  const det = mm * nn - mn * mn;
  if (Math.abs(det) < 1e-9) return [a, b];
  return [
    { x: (mx * nn - nx * mn) / det, y: (my * nn - ny * mn) / det },
    { x: (nx * mm - mx * mn) / det, y: (ny * mm - my * mn) / det },
  ];
}
