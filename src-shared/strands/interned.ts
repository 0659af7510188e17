/**
 * One value for each span of columns.
 *
 * The same runs and floats come again on row after row. Making each of them
 * once keeps a plan of 200,000 cells to a few thousand objects, which is most
 * of what the plan costs.
 */
export function internSpans<T>(make: (first: number, last: number) => T): (first: number, last: number) => T {
  /** By first column, then by length. */
  const known: (T | undefined)[][] = [];
  return (first, last) => {
    const byLength = (known[first] ??= []);
    return (byLength[last - first] ??= make(first, last));
  };
}
