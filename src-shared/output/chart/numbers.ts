/** Which rows and columns of a chart, and rows of a piece, are numbered. */

const STRIDES = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/** The least round number of cells, each `cell` long, that come out at least `needed` long. */
export function strideFor(cell: number, needed: number): number {
  return STRIDES.find((size) => size * cell >= needed) ?? 1000;
}

/**
 * The numbers to write beside cells `first` … `last` (1-based), each `cell`
 * long, where a number needs `needed`: every one if there is room, else the
 * multiples of a round number, with the first and the last always.
 */
export function numbered(first: number, last: number, cell: number, needed: number): number[] {
  const stride = strideFor(cell, needed);
  const chosen = first === last ? [first] : [first, last].filter((_, index) => index === 0 || fits(first, last));
  function fits(a: number, b: number): boolean {
    return Math.abs(a - b) * cell >= needed;
  }
  for (let number = Math.ceil(first / stride) * stride; number <= last; number += stride) {
    if (chosen.every((other) => fits(other, number))) chosen.push(number);
  }
  return chosen.sort((a, b) => a - b);
}
