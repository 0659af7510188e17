/**
 * Sorts colours into groups by k-means.
 *
 * Starting colours are drawn by k-means++ (Arthur and Vassilvitskii 2007): the
 * further a colour lies from those already drawn, the likelier it is drawn
 * next, so that a colour used in few cells is found too. The numbers drawn are
 * the same every time ({@link repeatableRandom}).
 */

/** `count` colours of three numbers each. */
export type Colours = Float64Array;

const MOST_ROUNDS = 30;

/** Centres of at most `count` groups, three numbers each; fewer where there are fewer different colours. */
export function kMeans(colours: Colours, count: number, seed: number): Colours {
  let centres = drawn(colours, count, seed);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const groups = nearestOf(colours, centres);
    const moved = centresOf(colours, groups, centres);
    const isStill = moved.every((value, i) => Math.abs(value - (centres[i] as number)) < 1e-5);
    centres = moved;
    if (isStill) break;
  }
  return centres;
}

/** The centre nearest to each colour. */
export function nearestOf(colours: Colours, centres: Colours): Uint8Array {
  const nearest = new Uint8Array(colours.length / 3);
  for (let i = 0; i < nearest.length; i++) {
    let least = Infinity;
    for (let c = 0; c < centres.length / 3; c++) {
      const distance = squaredDistance(colours, i, centres, c);
      if (distance < least) {
        least = distance;
        nearest[i] = c;
      }
    }
  }
  return nearest;
}

/** The mean colour of each group; a group without colours keeps its centre. */
export function centresOf(colours: Colours, groups: Uint8Array, before: Colours): Colours {
  const sums = new Float64Array(before.length);
  const counts = new Float64Array(before.length / 3);
  groups.forEach((group, i) => {
    counts[group] = (counts[group] as number) + 1;
    for (let axis = 0; axis < 3; axis++) {
      sums[group * 3 + axis] = (sums[group * 3 + axis] as number) + (colours[i * 3 + axis] as number);
    }
  });
  return sums.map((sum, i) => {
    const count = counts[Math.floor(i / 3)] as number;
    return count === 0 ? (before[i] as number) : sum / count;
  });
}

export function squaredDistance(colours: Colours, i: number, others: Colours, j: number): number {
  const x = (colours[i * 3] as number) - (others[j * 3] as number);
  const y = (colours[i * 3 + 1] as number) - (others[j * 3 + 1] as number);
  const z = (colours[i * 3 + 2] as number) - (others[j * 3 + 2] as number);
  return x * x + y * y + z * z;
}

function drawn(colours: Colours, count: number, seed: number): Colours {
  const random = repeatableRandom(seed);
  const total = colours.length / 3;
  const centres = new Float64Array(count * 3);
  const distances = new Float64Array(total).fill(Infinity);
  let pick = Math.min(total - 1, Math.floor(random() * total));
  for (let c = 0; c < count; c++) {
    centres.set(colours.subarray(pick * 3, pick * 3 + 3), c * 3);
    let sum = 0;
    for (let i = 0; i < total; i++) {
      const distance = Math.min(distances[i] as number, squaredDistance(colours, i, centres, c));
      distances[i] = distance;
      sum += distance;
    }
    // No colour is left that was not drawn.
    if (sum === 0) return centres.slice(0, (c + 1) * 3);
    let left = random() * sum;
    pick = 0;
    while (pick < total - 1 && (left -= distances[pick] as number) > 0) pick++;
  }
  return centres;
}

/**
 * Numbers that look random and are the same every time, so that reading a
 * photo twice gives the same cells. Returns a function that gives the next
 * number, 0 ≤ n < 1 (mulberry32: a 32-bit counter, mixed; public domain,
 * from memory).
 */
export function repeatableRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
