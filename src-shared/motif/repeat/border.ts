/**
 * Borders and periods of a sequence.
 *
 * A border is a proper prefix that is also a suffix. A sequence of length n
 * with a border of length k has period n - k, and every period comes from a
 * border (Knuth, Morris, Pratt 1977).
 */

/** `table[i]` is the length of the longest proper border of the first `i + 1` symbols. Linear time. */
export function borderTable(symbols: ArrayLike<number>): Uint32Array {
  const table = new Uint32Array(symbols.length);
  let length = 0;
  for (let i = 1; i < symbols.length; i++) {
    while (length > 0 && symbols[i] !== symbols[length]) length = table[length - 1] as number;
    if (symbols[i] === symbols[length]) length++;
    table[i] = length;
  }
  return table;
}

/** All periods p, 1 ≤ p < n, smallest first. */
export function periodsOf(symbols: ArrayLike<number>): number[] {
  const table = borderTable(symbols);
  const periods: number[] = [];
  let border = table[symbols.length - 1] ?? 0;
  while (border > 0) {
    periods.push(symbols.length - border);
    border = table[border - 1] as number;
  }
  return periods;
}
