/**
 * A few cells of a lattice looked at closely: by how much their lines lie
 * beside where they are thought to be.
 */
import type { Point } from './corners.ts';
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
  return { reach, side, hann, waves };
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
  { reach, side }: Frame,
  at: Point,
  across: Point,
  down: Point,
): Float32Array {
  const colours = new Float32Array(side * side * 3);
  let to = 0;
  for (let v = 0; v < side; v++) {
    const dv = (v + 0.5) / LOOKS - reach;
    for (let u = 0; u < side; u++) {
      const du = (u + 0.5) / LOOKS - reach;
      let x = at.x + du * across.x + dv * down.x - 0.5;
      let y = at.y + du * across.y + dv * down.y - 0.5;
      x = x < 0 ? 0 : x > width - 1.001 ? width - 1.001 : x;
      y = y < 0 ? 0 : y > height - 1.001 ? height - 1.001 : y;
      const [left, top] = [x | 0, y | 0];
      const [fx, fy] = [x - left, y - top];
      const i = (top * width + left) * 4;
      const below = i + width * 4;
      for (let c = 0; c < 3; c++) {
        const upper = (rgba[i + c] as number) * (1 - fx) + (rgba[i + 4 + c] as number) * fx;
        const lower = (rgba[below + c] as number) * (1 - fx) + (rgba[below + 4 + c] as number) * fx;
        colours[to++] = upper * (1 - fy) + lower * fy;
      }
    }
  }
  return colours;
}

/** The phase of edges along looks that lie `step` numbers apart, lines running along `side`. */
function phaseOf(
  colours: Float32Array,
  { side: length, hann, waves }: Frame,
  step: number,
  side: number,
): { phase: number; clarity: number } {
  const runs = length / RUN;
  const straight = new Float32Array(runs * length);
  const first = new Float32Array(length * 3);
  const second = new Float32Array(length * 3);
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
      let [along, slant] = [0, 0];
      for (let i = place * 3; i < place * 3 + 3; i++) {
        const before = (first[i - 3] as number) + (second[i - 3] as number);
        const after = (first[i + 3] as number) + (second[i + 3] as number);
        along += Math.abs(after - before);
        slant += Math.abs((first[i] as number) - (second[i] as number));
      }
      straight[run * length + place] = Math.max(0, along - SLANT_COST * slant) / 2.5;
    }
  }
  const sorted = straight.slice().sort();
  const ceiling = Math.max(LEAST_CEILING, ABOVE_NOISE * (sorted[Math.floor(0.6 * sorted.length)] as number));
  const weights = new Float32Array(length);
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
  const usual = Math.sqrt(others.reduce((sum, other) => sum + other.strength ** 2, 0) / others.length);
  return { phase: Math.atan2(im, re) / (2 * Math.PI), clarity: strength / (strength + 2 * usual + 1e-9) };
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
