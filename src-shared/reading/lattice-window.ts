/**
 * A few cells of a lattice looked at closely: by how much their lines lie
 * beside where they are thought to be.
 */
import type { Point } from './corners.ts';
import type { Picture } from './picture.ts';

/** Cells looked at either way from the middle. */
const REACH = 3.5;

/** Looks a cell, and of a window. */
const LOOKS = 10;
const SIDE = 2 * REACH * LOOKS;

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

const HANN = Float32Array.from({ length: SIDE }, (_, i) => Math.cos((Math.PI * (i + 0.5 - SIDE / 2)) / SIDE) ** 2);

/** Looks around `at`, thought to be where two lines cross, with steps of one cell. */
export function lookAtWindow(picture: Picture, at: Point, across: Point, down: Point): WindowLook {
  const colours = coloursOf(picture, at, across, down);
  const a = phaseOf(colours, 3, SIDE * 3);
  const d = phaseOf(colours, SIDE * 3, 3);
  return { across: a.phase, down: d.phase, clarity: Math.min(a.clarity, d.clarity) };
}

/** Three numbers a look, row by row. */
function coloursOf({ width, height, rgba }: Picture, at: Point, across: Point, down: Point): Float32Array {
  const colours = new Float32Array(SIDE * SIDE * 3);
  let to = 0;
  for (let v = 0; v < SIDE; v++) {
    const dv = (v + 0.5) / LOOKS - REACH;
    for (let u = 0; u < SIDE; u++) {
      const du = (u + 0.5) / LOOKS - REACH;
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
function phaseOf(colours: Float32Array, step: number, side: number): { phase: number; clarity: number } {
  const runs = SIDE / RUN;
  const straight = new Float32Array(runs * SIDE);
  const first = new Float32Array(SIDE * 3);
  const second = new Float32Array(SIDE * 3);
  for (let run = 0; run < runs; run++) {
    for (let place = 0; place < SIDE; place++) {
      for (let c = 0; c < 3; c++) {
        const at = run * RUN * side + place * step + c;
        const middle = (colours[at + 2 * side] as number) / 4;
        first[place * 3 + c] = ((colours[at] as number) + (colours[at + side] as number)) / 2 + middle;
        second[place * 3 + c] = middle + ((colours[at + 3 * side] as number) + (colours[at + 4 * side] as number)) / 2;
      }
    }
    for (let place = 1; place < SIDE - 1; place++) {
      let [along, slant] = [0, 0];
      for (let i = place * 3; i < place * 3 + 3; i++) {
        const before = (first[i - 3] as number) + (second[i - 3] as number);
        const after = (first[i + 3] as number) + (second[i + 3] as number);
        along += Math.abs(after - before);
        slant += Math.abs((first[i] as number) - (second[i] as number));
      }
      straight[run * SIDE + place] = Math.max(0, along - SLANT_COST * slant) / 2.5;
    }
  }
  const sorted = straight.slice().sort();
  const ceiling = Math.max(LEAST_CEILING, ABOVE_NOISE * (sorted[Math.floor(0.6 * sorted.length)] as number));
  const weights = new Float32Array(SIDE);
  for (let place = 1; place < SIDE - 1; place++) {
    let share = 0;
    for (let run = 0; run < runs; run++) {
      share += Math.min(1, (straight[run * SIDE + place] as number) / ceiling) * (HANN[run * RUN + 2] as number);
    }
    // A line runs on from cell to cell; a sign has gaps between. Squared, lines win.
    weights[place] = share * share;
  }
  const [cell, ...others] = WAVES.map((wave) => waveOf(weights, wave));
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
function waveOf(weights: Float32Array, { cosines, sines, fade }: Wave): WaveLook {
  let mean = 0;
  for (let place = 0; place < SIDE; place++) mean += ((weights[place] as number) * (HANN[place] as number)) / fade;
  let [re, im] = [0, 0];
  for (let place = 0; place < SIDE; place++) {
    const weight = ((weights[place] as number) - mean) * (HANN[place] as number);
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

/** Waves that come back once a cell, and those that are held against it: more and less often, by more than the window tells apart. */
const WAVES: readonly Wave[] = [1, 0.5, 0.66, 1.38, 1.62].map((times) => {
  const angle = (place: number): number => (2 * Math.PI * times * (place + 0.5 - SIDE / 2)) / LOOKS;
  return {
    cosines: Float32Array.from({ length: SIDE }, (_, i) => Math.cos(angle(i))),
    sines: Float32Array.from({ length: SIDE }, (_, i) => Math.sin(angle(i))),
    fade: HANN.reduce((sum, value) => sum + value, 0),
  };
});
