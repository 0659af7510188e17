/**
 * The value that would be at place `n` if `values` were sorted ascending. Puts
 * them into another order (Hoare 1961), which takes far less than to sort them.
 * No value may be NaN; undefined where there is none at `n`.
 */
export function nthOf(values: Float32Array | Float64Array | number[], n: number): number | undefined {
  let [from, to] = [0, values.length - 1];
  while (from < to) {
    const pivot = values[(from + to) >> 1] as number;
    let low = from;
    let high = to;
    while (low <= high) {
      while ((values[low] as number) < pivot) low++;
      while ((values[high] as number) > pivot) high--;
      if (low <= high) {
        const value = values[low] as number;
        values[low] = values[high] as number;
        values[high] = value;
        low++;
        high--;
      }
    }
    if (n <= high) to = high;
    else if (n >= low) from = low;
    else break;
  }
  return values[n];
}
