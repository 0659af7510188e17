/**
 * A few cells of a lattice looked at closely: by how much their lines lie
 * beside where they are thought to be.
 */
import type { Point } from './corners.ts';
import { nthOf } from './nth.ts';
import type { Picture } from './picture.ts';

/**
 * Cells looked at either way from the middle; where they are smaller than so
 * many pixels more of them, since each of them shows less above the noise.
 */
const REACH = 3.5;
const WIDE_REACH = 5.5;
const SMALL_CELL = 8;

/** Looks a cell. */
const LOOKS = 10;

/** Looks averaged along a line before an edge is looked for: half a cell. */
const RUN = LOOKS / 2;

/** An edge that slants counts less by this many times its share that runs the other way. */
const SLANT_COST = 1.5;

/** An edge counts in full from this many times the usual difference, and from this difference at least. */
const ABOVE_NOISE = 3;
const LEAST_CEILING = 14;

export interface WindowLook {
  /** By what part of a cell the lines lie further on than thought, −½ … ½. */
  readonly across: number;
  readonly down: number;
  /** How much more comes back once a cell than more or less often, 0 … 1, in the direction that tells less. */
  readonly clarity: number;
}

/** A window that reaches so far, in looks across, with what fades out towards its rim, and the waves that are looked for in it. */
interface Frame {
  readonly reach: number;
  readonly side: number;
  readonly hann: Float32Array;
  readonly waves: readonly Wave[];
  /** How far each look lies from the middle, in cells. */
  readonly offs: Float64Array;
  /** Filled anew at each look: thousands of lists that are made and thrown away take longer than what is in them. */
  readonly lists: Lists;
}

/** What is filled anew for each window. */
interface Lists {
  readonly colours: Float32Array;
  readonly straight: Float32Array;
  readonly ordered: Float32Array;
  readonly first: Float32Array;
  readonly second: Float32Array;
  readonly weights: Float32Array;
}

/** Waves that come back once a cell, and those that are held against it: more and less often, by more than a window tells apart. */
const TIMES = [1, 0.5, 0.66, 1.38, 1.62];

function frameOf(reach: number): Frame {
  const side = 2 * reach * LOOKS;
  const hann = Float32Array.from({ length: side }, (_, i) => Math.cos((Math.PI * (i + 0.5 - side / 2)) / side) ** 2);
  const fade = hann.reduce((sum, value) => sum + value, 0);
  const waves = TIMES.map((times) => {
    const angle = (place: number): number => (2 * Math.PI * times * (place + 0.5 - side / 2)) / LOOKS;
    return {
      cosines: Float32Array.from({ length: side }, (_, i) => Math.cos(angle(i))),
      sines: Float32Array.from({ length: side }, (_, i) => Math.sin(angle(i))),
      fade,
    };
  });
  const lists = {
    colours: new Float32Array(side * side * 3),
    straight: new Float32Array((side / RUN) * side),
    ordered: new Float32Array((side / RUN) * side),
    first: new Float32Array(side * 3),
    second: new Float32Array(side * 3),
    weights: new Float32Array(side),
  };
  const offs = Float64Array.from({ length: side }, (_, i) => (i + 0.5) / LOOKS - reach);
  return { reach, side, hann, waves, offs, lists };
}

const NEAR = frameOf(REACH);
const WIDE = frameOf(WIDE_REACH);

/** Looks around `at`, thought to be where two lines cross, with steps of one cell. */
export function lookAtWindow(picture: Picture, at: Point, across: Point, down: Point): WindowLook {
  const area = Math.abs(across.x * down.y - across.y * down.x);
  const frame = area < SMALL_CELL * SMALL_CELL ? WIDE : NEAR;
  const colours = coloursOf(picture, frame, at, across, down);
  const a = phaseOf(colours, frame, 3, frame.side * 3);
  const d = phaseOf(colours, frame, frame.side * 3, 3);
  return { across: a.phase, down: d.phase, clarity: Math.min(a.clarity, d.clarity) };
}

/** Three numbers a look, row by row. */
function coloursOf(
  { width, height, rgba }: Picture,
  { side, offs, lists: { colours } }: Frame,
  at: Point,
  across: Point,
  down: Point,
): Float32Array {
  const [mostX, mostY] = [width - 1.001, height - 1.001];
  let to = 0;
  for (let v = 0; v < side; v++) {
    const dv = offs[v] as number;
    const downX = dv * down.x;
    const downY = dv * down.y;
    for (let u = 0; u < side; u++) {
      const du = offs[u] as number;
      let x = at.x + du * across.x + downX - 0.5;
      let y = at.y + du * across.y + downY - 0.5;
      x = x < 0 ? 0 : x > mostX ? mostX : x;
      y = y < 0 ? 0 : y > mostY ? mostY : y;
      const left = x | 0;
      const top = y | 0;
      const fx = x - left;
      const fy = y - top;
      const gx = 1 - fx;
      const gy = 1 - fy;
      const i = (top * width + left) * 4;
      const below = i + width * 4;
      colours[to] =
        ((rgba[i] as number) * gx + (rgba[i + 4] as number) * fx) * gy +
        ((rgba[below] as number) * gx + (rgba[below + 4] as number) * fx) * fy;
      colours[to + 1] =
        ((rgba[i + 1] as number) * gx + (rgba[i + 5] as number) * fx) * gy +
        ((rgba[below + 1] as number) * gx + (rgba[below + 5] as number) * fx) * fy;
      colours[to + 2] =
        ((rgba[i + 2] as number) * gx + (rgba[i + 6] as number) * fx) * gy +
        ((rgba[below + 2] as number) * gx + (rgba[below + 6] as number) * fx) * fy;
      to += 3;
    }
  }
  return colours;
}

/** The phase of edges along looks that lie `step` numbers apart, lines running along `side`. */
function phaseOf(
  colours: Float32Array,
  { side: length, hann, waves, lists: { straight, ordered, first, second, weights } }: Frame,
  step: number,
  side: number,
): { phase: number; clarity: number } {
  const runs = length / RUN;
  for (let run = 0; run < runs; run++) {
    for (let place = 0; place < length; place++) {
      for (let c = 0; c < 3; c++) {
        const at = run * RUN * side + place * step + c;
        const middle = (colours[at + 2 * side] as number) / 4;
        first[place * 3 + c] = ((colours[at] as number) + (colours[at + side] as number)) / 2 + middle;
        second[place * 3 + c] = middle + ((colours[at + 3 * side] as number) + (colours[at + 4 * side] as number)) / 2;
      }
    }
    for (let place = 1; place < length - 1; place++) {
      let along = 0;
      let slant = 0;
      for (let i = place * 3; i < place * 3 + 3; i++) {
        const before = (first[i - 3] as number) + (second[i - 3] as number);
        const after = (first[i + 3] as number) + (second[i + 3] as number);
        along += Math.abs(after - before);
        slant += Math.abs((first[i] as number) - (second[i] as number));
      }
      straight[run * length + place] = Math.max(0, along - SLANT_COST * slant) / 2.5;
    }
  }
  ordered.set(straight);
  const usual = nthOf(ordered, Math.floor(0.6 * ordered.length)) as number;
  const ceiling = Math.max(LEAST_CEILING, ABOVE_NOISE * usual);
  for (let place = 1; place < length - 1; place++) {
    let share = 0;
    for (let run = 0; run < runs; run++) {
      share += Math.min(1, (straight[run * length + place] as number) / ceiling) * (hann[run * RUN + 2] as number);
    }
    // A line runs on from cell to cell; a sign has gaps between. Squared, lines win.
    weights[place] = share * share;
  }
  const [cell, ...others] = waves.map((wave) => waveOf(weights, hann, wave));
  const { re, im, strength } = cell as WaveLook;
  const beside = Math.sqrt(others.reduce((sum, other) => sum + other.strength ** 2, 0) / others.length);
  return { phase: Math.atan2(im, re) / (2 * Math.PI), clarity: strength / (strength + 2 * beside + 1e-9) };
}

interface WaveLook {
  readonly re: number;
  readonly im: number;
  readonly strength: number;
}

/** How strongly a wave runs through places, the middle counting most; the window's own shape makes none. */
function waveOf(weights: Float32Array, hann: Float32Array, { cosines, sines, fade }: Wave): WaveLook {
  const { length } = weights;
  let mean = 0;
  for (let place = 0; place < length; place++) mean += ((weights[place] as number) * (hann[place] as number)) / fade;
  let [re, im] = [0, 0];
  for (let place = 0; place < length; place++) {
    const weight = ((weights[place] as number) - mean) * (hann[place] as number);
    re += weight * (cosines[place] as number);
    im += weight * (sines[place] as number);
  }
  return { re, im, strength: Math.hypot(re, im) };
}

interface Wave {
  readonly cosines: Float32Array;
  readonly sines: Float32Array;
  readonly fade: number;
}
