/** Which rows of cells were painted since. */

/** The rows (from 0) on which two drawings of one size differ, from the bottom up; `width` cells are a row. */
export function paintedRows(now: Uint8Array, before: Uint8Array, width: number): number[] {
  const rows: number[] = [];
  const look = (at: number): void => {
    if (now[at] === before[at]) return;
    const row = Math.floor(at / width);
    if (rows.at(-1) !== row) rows.push(row);
  };
  const [fours, foursBefore] = [inFours(now), inFours(before)];
  let done = 0;
  if (fours && foursBefore) {
    const { length } = fours;
    for (let four = 0; four < length; four++) {
      if (fours[four] !== foursBefore[four]) for (let at = four * 4; at < four * 4 + 4; at++) look(at);
    }
    done = length * 4;
  }
  for (let at = done; at < now.length; at++) look(at);
  return rows;
}

/** The cells four in one number, but for those that are left over; null where they do not lie so. */
function inFours({ buffer, byteOffset, length }: Uint8Array): Int32Array | null {
  return byteOffset % 4 === 0 ? new Int32Array(buffer, byteOffset, Math.floor(length / 4)) : null;
}
