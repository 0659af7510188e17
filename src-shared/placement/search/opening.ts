/** Two margins chosen, and what they leave for the gaps. */
import type { Frame } from '../frame.ts';

export interface Opening {
  /** The judged margins, net of the seam allowances. */
  readonly left: number;
  readonly right: number;
  /** What the gaps sum to. */
  readonly sum: number;
  /** What the pairs of mirrored gaps must differ by, all together. */
  readonly imbalance: number;
}

/** Every pair of margins that leaves 0 or more of `imbalance` to the gaps. */
export function* openings(frame: Frame, imbalance: number, areMarginsFixed: boolean): Generator<Opening> {
  const { least, total } = frame;
  const leastLeft = least[0] as number;
  const leastRight = least[least.length - 1] as number;
  const free = areMarginsFixed ? 0 : total - least.reduce((sum, space) => sum + space, 0);
  for (let left = leastLeft; left <= leastLeft + free; left++) {
    const mostRight = Math.min(left + imbalance, leastRight + free - (left - leastLeft));
    for (let right = Math.max(leastRight, left - imbalance); right <= mostRight; right++) {
      yield { left, right, sum: total - left - right, imbalance: imbalance - Math.abs(left - right) };
    }
  }
}
