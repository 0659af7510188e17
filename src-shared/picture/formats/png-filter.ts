/** The filters of a PNG's rows, taken back (ISO/IEC 15948, clause 9). */

/**
 * Takes the filter off `row` in place; `reach` is the bytes from one pixel to
 * the next. False for a filter that there is not.
 */
export function unfilter(filter: number, row: Uint8Array, above: Uint8Array, reach: number): boolean {
  const { length } = row;
  switch (filter) {
    case 0:
      return true;
    case 1:
      for (let at = reach; at < length; at++) row[at] = (row[at] as number) + (row[at - reach] as number);
      return true;
    case 2:
      for (let at = 0; at < length; at++) row[at] = (row[at] as number) + (above[at] as number);
      return true;
    case 3:
      for (let at = 0; at < length; at++) {
        const left = at < reach ? 0 : (row[at - reach] as number);
        row[at] = (row[at] as number) + ((left + (above[at] as number)) >> 1);
      }
      return true;
    case 4:
      for (let at = 0; at < length; at++) {
        const left = at < reach ? 0 : (row[at - reach] as number);
        const upperLeft = at < reach ? 0 : (above[at - reach] as number);
        row[at] = (row[at] as number) + nearest(left, above[at] as number, upperLeft);
      }
      return true;
    default:
      return false;
  }
}

/** Of left, above and upper left the one nearest to left + above − upper left, in this order (9.4, Paeth). */
function nearest(left: number, above: number, upperLeft: number): number {
  const guess = left + above - upperLeft;
  const byLeft = Math.abs(guess - left);
  const byAbove = Math.abs(guess - above);
  const byUpperLeft = Math.abs(guess - upperLeft);
  if (byLeft <= byAbove && byLeft <= byUpperLeft) return left;
  return byAbove <= byUpperLeft ? above : upperLeft;
}
