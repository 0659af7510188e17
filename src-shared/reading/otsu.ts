/**
 * Otsu's threshold: the one that splits a histogram into the two classes that
 * lie furthest apart (Otsu 1979, from memory). It maximises the variance between
 * the classes, ω₀·ω₁·(μ₀ − μ₁)², which is the same as minimising the variance
 * within them.
 */
export interface Threshold {
  /** The highest value of the lower class. */
  readonly threshold: number;
  /** Variance between the classes; 0 where there is only one value. */
  readonly between: number;
  readonly lowerMean: number;
  readonly upperMean: number;
}

/**
 * The best threshold of a histogram (`counts[v]` cells of value `v`), one pass
 * over it. Of equally good ones the lowest. Where all cells have one value, both
 * means are that value.
 */
export function otsu(counts: ArrayLike<number>): Threshold {
  let total = 0;
  let sum = 0;
  for (let value = 0; value < counts.length; value++) {
    total += counts[value] as number;
    sum += value * (counts[value] as number);
  }
  const mean = total === 0 ? 0 : sum / total;
  let best: Threshold = { threshold: Math.floor(mean), between: 0, lowerMean: mean, upperMean: mean };
  let lower = 0;
  let lowerSum = 0;
  for (let threshold = 0; threshold < counts.length - 1; threshold++) {
    lower += counts[threshold] as number;
    lowerSum += threshold * (counts[threshold] as number);
    const upper = total - lower;
    if (lower === 0 || upper === 0) continue;
    const lowerMean = lowerSum / lower;
    const upperMean = (sum - lowerSum) / upper;
    const between = (lower / total) * (upper / total) * (lowerMean - upperMean) ** 2;
    if (between > best.between) best = { threshold, between, lowerMean, upperMean };
  }
  return best;
}
