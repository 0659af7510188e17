/**
 * Sorts colours, or whatever else is told by some numbers each, into groups by k-means.
 *
 * Starting colours are drawn by k-means++ (Arthur and Vassilvitskii 2007): the
 * further a colour lies from those already drawn, the likelier it is drawn
 * next, so that a colour used in few cells is found too. The numbers drawn are
 * the same every time ({@link repeatableRandom}).
 */

/** `count` colours of three numbers each; of other things, as many numbers each as is said beside. */
export type Colours = Float64Array;

/** Numbers of a colour. */
const COLOUR = 3;

const MOST_ROUNDS = 30;

/** Centres of at most `count` groups, `size` numbers each; fewer where there are fewer different colours. */
export function kMeans(colours: Colours, count: number, seed: number, size = COLOUR): Colours {
  let centres = drawn(colours, count, seed, size);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const groups = nearestOf(colours, centres, size);
    const moved = centresOf(colours, groups, centres, size);
    const isStill = moved.every((value, i) => Math.abs(value - (centres[i] as number)) < 1e-5);
    centres = moved;
    if (isStill) break;
  }
  return centres;
}

/** The centre nearest to each colour. */
export function nearestOf(colours: Colours, centres: Colours, size = COLOUR): Uint8Array {
  const nearest = new Uint8Array(colours.length / size);
  for (let i = 0; i < nearest.length; i++) {
    let least = Infinity;
    for (let c = 0; c < centres.length / size; c++) {
      const distance = squaredDistance(colours, i, centres, c, size);
      if (distance < least) {
        least = distance;
        nearest[i] = c;
      }
    }
  }
  return nearest;
}

/** The mean colour of each group; a group without colours keeps its centre. */
export function centresOf(colours: Colours, groups: Uint8Array, before: Colours, size = COLOUR): Colours {
  const sums = new Float64Array(before.length);
  const counts = new Float64Array(before.length / size);
  groups.forEach((group, i) => {
    counts[group] = (counts[group] as number) + 1;
    for (let axis = 0; axis < size; axis++) {
      sums[group * size + axis] = (sums[group * size + axis] as number) + (colours[i * size + axis] as number);
    }
  });
  return sums.map((sum, i) => {
    const count = counts[Math.floor(i / size)] as number;
    return count === 0 ? (before[i] as number) : sum / count;
  });
}

export function squaredDistance(colours: Colours, i: number, others: Colours, j: number, size = COLOUR): number {
  let sum = 0;
  for (let axis = 0; axis < size; axis++) {
    sum += ((colours[i * size + axis] as number) - (others[j * size + axis] as number)) ** 2;
  }
  return sum;
}

function drawn(colours: Colours, count: number, seed: number, size: number): Colours {
  const random = repeatableRandom(seed);
  const total = colours.length / size;
  const centres = new Float64Array(count * size);
  const distances = new Float64Array(total).fill(Infinity);
  let pick = Math.min(total - 1, Math.floor(random() * total));
  for (let c = 0; c < count; c++) {
    centres.set(colours.subarray(pick * size, pick * size + size), c * size);
    let sum = 0;
    for (let i = 0; i < total; i++) {
      const distance = Math.min(distances[i] as number, squaredDistance(colours, i, centres, c, size));
      distances[i] = distance;
      sum += distance;
    }
    // No colour is left that was not drawn.
    if (sum === 0) return centres.slice(0, (c + 1) * size);
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
