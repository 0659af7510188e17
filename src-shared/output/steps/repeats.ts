/** Things in a row that come again and again, told once. */

/** `size` things from `at` on, which stand there `times` times one after the other. */
export interface Told {
  readonly at: number;
  readonly size: number;
  readonly times: number;
}

/**
 * A list of keys as what is told once and what comes again right after it: at
 * each place the fewest that do, `most` at most. A key of null is like none.
 */
export function toldOnce(keys: readonly (string | null)[], most: number): Told[] {
  const numbers = numbered(keys);
  const told: Told[] = [];
  let at = 0;
  while (at < numbers.length) {
    const found = repeatFrom(numbers, at, most);
    told.push(found);
    at += found.size * found.times;
  }
  return told;
}

/** Alike where the keys are; every null by itself. */
function numbered(keys: readonly (string | null)[]): number[] {
  const known = new Map<string, number>();
  return keys.map((key, index) => {
    if (key === null) return -1 - index;
    const number = known.get(key) ?? known.size;
    known.set(key, number);
    return number;
  });
}

function repeatFrom(keys: readonly number[], at: number, most: number): Told {
  for (let size = 1; size <= most && at + 2 * size <= keys.length; size++) {
    let end = at + size;
    while (end < keys.length && keys[end] === keys[end - size]) end++;
    const times = Math.floor((end - at) / size);
    if (times > 1) return { at, size, times };
  }
  return { at, size: 1, times: 1 };
}
