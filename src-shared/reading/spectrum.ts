/**
 * How often something comes back along a line.
 *
 * One term of a Fourier series for every number of times that is asked for,
 * in quarters, so that a chart whose corners were not set exactly is still
 * met. Bands are summed without their phase: a line that leans, or bends as
 * the paper did, comes back in each band all the same.
 */

/** Quarters of a time looked up for each whole one. */
const QUARTERS = 4;

/** The rest of a spectrum is judged within this many times to either side, or this share of the number itself. */
const LEAST_NEIGHBOURHOOD = 6;
const NEIGHBOURHOOD_SHARE = 0.3;

/** Something that comes back a number of times more strongly than a little more or less often. */
export interface Peak {
  readonly times: number;
  /** How strongly. */
  readonly strength: number;
  /** How many times stronger than the middle of its neighbourhood. */
  readonly height: number;
}

/** All peaks from `least` to `most` times in the length of the profiles, fewest times first. */
export function peaksOf(bands: readonly Float64Array[], least: number, most: number): Peak[] {
  const strengths = strengthsOf(bands, least, most);
  // A picture without any edge has no strength anywhere.
  const floor = 1e-9 + 1e-3 * strengths.reduce((highest, strength) => Math.max(highest, strength), 0);
  const peaks: Peak[] = [];
  strengths.forEach((strength, i) => {
    const before = strengths[i - 1] ?? 0;
    const after = strengths[i + 1] ?? 0;
    if (strength < before || strength <= after) return;
    const reach = Math.round(QUARTERS * Math.max(LEAST_NEIGHBOURHOOD, NEIGHBOURHOOD_SHARE * (least + i / QUARTERS)));
    const near = strengths.slice(Math.max(0, i - reach), i + reach + 1).sort();
    peaks.push({
      times: least + (i + topOfParabola(before, strength, after)) / QUARTERS,
      strength,
      height: strength / Math.max(floor, near[near.length >> 1] as number),
    });
  });
  return peaks;
}

/** Where between −½ and ½ a parabola through three heights at −1, 0 and 1 is highest. */
function topOfParabola(before: number, here: number, after: number): number {
  const bend = before - 2 * here + after;
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend))) : 0;
}

function strengthsOf(bands: readonly Float64Array[], least: number, most: number): Float64Array {
  const length = (bands[0] as Float64Array).length;
  // Angles are whole parts of this turn, so cosines are looked up and never drift.
  const turn = length * QUARTERS;
  const cosines = Float64Array.from({ length: turn }, (_, i) => Math.cos((2 * Math.PI * i) / turn));
  const sines = Float64Array.from({ length: turn }, (_, i) => Math.sin((2 * Math.PI * i) / turn));
  const centred = bands.map((profile) => {
    const mean = profile.reduce((sum, value) => sum + value, 0) / length;
    return profile.map((value) => value - mean);
  });
  const count = Math.max(0, (most - least) * QUARTERS + 1);
  return Float64Array.from({ length: count }, (_, i) => {
    const step = least * QUARTERS + i;
    let strength = 0;
    for (const profile of centred) {
      let re = 0;
      let im = 0;
      for (let place = 0, angle = 0; place < length; place++) {
        const value = profile[place] as number;
        re += value * (cosines[angle] as number);
        im += value * (sines[angle] as number);
        angle += step;
        if (angle >= turn) angle -= turn;
      }
      strength += Math.sqrt(re * re + im * im);
    }
    return strength;
  });
}
