/**
 * Which distances up could be repeats at all, for drawings of many rows.
 *
 * Counting the differing cells for every distance costs rows² ⁄ 2 comparisons.
 * Instead every row becomes one number: the sum of a random sign for each
 * (column, colour) it holds. The squared difference of two rows' numbers is, on
 * average, twice the count of cells in which they differ (random projection,
 * Johnson and Lindenstrauss 1984), and the sum of squared differences over all
 * pairs at a distance, for every distance at once, is an autocorrelation: one
 * Fourier transform.
 *
 * A distance is ruled out when its estimate is more than twice what a near
 * repeat may have. On the many rows for which this is used, differences that
 * near the limit are spread over dozens of row pairs with six sets of signs
 * each, which puts a wrong verdict beyond six standard deviations; short
 * drawings are not filtered at all. Signs come from a fixed mixing function,
 * so the answer is the same every time.
 */
import FFT from 'fft.js';
import type { Grid } from '../grid/index.ts';

/** Sets of signs summed in one pass: three counts of at most 1000 columns fit in the 31 bits of a small integer. */
const PACKED = 3;
const BITS = 10;
const PASSES = 2;
const TOLERANCE = 2;
/** Up to here comparing every distance, each given up at its limit, takes less time than the estimate. */
const FEW_ROWS = 1024;

/** `result[q]` is 1 if rows q apart may differ in at most `most` cells altogether, for 1 ≤ q ≤ `farthest`. */
export function likelyEchoes(grid: Grid, farthest: number, most: number): Uint8Array {
  const likely = new Uint8Array(farthest + 1);
  if (grid.height <= FEW_ROWS) return likely.fill(1);
  const estimate = differencesUp(grid, farthest);
  for (let q = 1; q <= farthest; q++) likely[q] = (estimate[q] as number) <= TOLERANCE * most ? 1 : 0;
  return likely;
}

/** Estimated count of cells that differ from the cell q rows above them, for every q up to `farthest`. */
function differencesUp(grid: Grid, farthest: number): Float64Array {
  const { height } = grid;
  const size = Math.max(2, 2 ** Math.ceil(Math.log2(2 * height)));
  const fft = new FFT(size);
  const spectrum = fft.createComplexArray();
  const power = fft.createComplexArray().fill(0);
  const input = new Array<number>(size).fill(0);
  const energy = new Float64Array(height);
  const projections = Array.from({ length: PASSES }, (_, pass) => rowNumbers(grid, pass)).flat();
  for (const numbers of projections) {
    for (let row = 0; row < height; row++) {
      const number = numbers[row] as number;
      input[row] = number;
      energy[row] = (energy[row] as number) + number * number;
    }
    fft.realTransform(spectrum, input);
    fft.completeSpectrum(spectrum);
    for (let k = 0; k < spectrum.length; k += 2) {
      power[k] = (power[k] as number) + (spectrum[k] as number) ** 2 + (spectrum[k + 1] as number) ** 2;
    }
  }
  const correlation = fft.createComplexArray();
  fft.inverseTransform(correlation, power);
  // Σ (x[r] − x[r+q])² = Σ x[r]² over the lower rows + the same over the upper − 2 Σ x[r]·x[r+q]
  const estimate = new Float64Array(farthest + 1);
  let lower = energy.reduce((sum, part) => sum + part, 0);
  let upper = lower;
  for (let q = 1; q <= farthest; q++) {
    lower -= energy[height - q] as number;
    upper -= energy[q - 1] as number;
    estimate[q] = (lower + upper - 2 * (correlation[2 * q] as number)) / (2 * projections.length);
  }
  return estimate;
}

/** For each of {@link PACKED} sets of signs, one number a row: the sum over its cells of the sign of column and colour. */
function rowNumbers(grid: Grid, pass: number): Float64Array[] {
  const { width, height, cells } = grid;
  let colours = 0;
  for (const cell of cells) if (cell >= colours) colours = cell + 1;
  // Bit 0 of each field: plus. The field then counts the pluses of a row, and the sum is pluses − minuses.
  const signs = Int32Array.from({ length: width * colours }, (_, i) => {
    const bits = mix(i * PASSES + pass);
    return (bits & 1) | ((bits & 2) << (BITS - 1)) | ((bits & 4) << (2 * BITS - 2));
  });
  const numbers = Array.from({ length: PACKED }, () => new Float64Array(height));
  for (let row = 0; row < height; row++) {
    let pluses = 0;
    const start = row * width;
    for (let column = 0, at = 0; column < width; column++, at += colours) {
      pluses += signs[at + (cells[start + column] as number)] as number;
    }
    numbers.forEach((set, field) => {
      set[row] = 2 * ((pluses >>> (field * BITS)) & ((1 << BITS) - 1)) - width;
    });
  }
  return numbers;
}

/** Scatters an integer over 32 bits (the finalising step of MurmurHash3). */
function mix(value: number): number {
  let h = Math.imul(value ^ (value >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 8;
}
