/**
 * From 64 coefficients to 8 × 8 samples (ITU-T T.81, A.3.3), by the fast
 * transform of Arai, Agui and Nakajima (Trans. IEICE E-71, 1988): five
 * multiplications a line, the rest of them done once in the table.
 */

/** Where the coefficients of a block lie that come in zig-zag order (T.81, figure A.6). */
export const ZIGZAG = Uint8Array.of(
  ...[0, 1, 8, 16, 9, 2, 3, 10, 17, 24, 32, 25, 18, 11, 4, 5, 12, 19, 26, 33, 40, 48, 41, 34, 27, 20, 13, 6, 7, 14, 21],
  ...[28, 35, 42, 49, 56, 57, 50, 43, 36, 29, 22, 15, 23, 30, 37, 44, 51, 58, 59, 52, 45, 38, 31, 39, 46, 53, 60, 61],
  ...[54, 47, 55, 62, 63],
);

const SCALES = Float64Array.from({ length: 8 }, (_, k) => (k === 0 ? 1 : Math.SQRT2 * Math.cos((k * Math.PI) / 16)));

/** A quantisation table (64 numbers in zig-zag order) with the scales of the transform worked in. */
export function scaledTable(quant: Uint16Array): Float32Array {
  const table = new Float32Array(64);
  for (let k = 0; k < 64; k++) {
    const at = ZIGZAG[k] as number;
    table[at] = ((quant[k] as number) * (SCALES[at >> 3] as number) * (SCALES[at & 7] as number)) / 8;
  }
  return table;
}

const work = new Float32Array(64);
const ROOT2 = Math.SQRT2;
/** 2 cos(π/8), 2 (cos(π/8) − cos(3π/8)) and −2 (cos(π/8) + cos(3π/8)). */
const C2 = 2 * Math.cos(Math.PI / 8);
const C2_LESS_C6 = 2 * (Math.cos(Math.PI / 8) - Math.cos((3 * Math.PI) / 8));
const C2_AND_C6 = -2 * (Math.cos(Math.PI / 8) + Math.cos((3 * Math.PI) / 8));

/** Writes the samples, 0 … 255, to `out` from `to`, rows `stride` apart. Coefficients from `from` on, each on its place. */
export function samplesOf(
  coefficients: Int16Array,
  from: number,
  table: Float32Array,
  out: Uint8ClampedArray,
  to: number,
  stride: number,
): void {
  let isFlat = true;
  for (let at = 1; at < 64; at++) {
    if (coefficients[from + at] !== 0) {
      isFlat = false;
      break;
    }
  }
  if (isFlat) {
    const sample = (coefficients[from] as number) * (table[0] as number) + 128;
    for (let row = 0; row < 8; row++) out.fill(sample, to + row * stride, to + row * stride + 8);
    return;
  }
  for (let at = 0; at < 64; at++) work[at] = (coefficients[from + at] as number) * (table[at] as number);
  for (let column = 0; column < 8; column++) transform(column, 8);
  for (let row = 0; row < 8; row++) {
    transform(row * 8, 1);
    const start = to + row * stride;
    for (let column = 0; column < 8; column++) out[start + column] = (work[row * 8 + column] as number) + 128;
  }
}

/** Eight numbers of `work`, `step` apart, in place. */
function transform(start: number, step: number): void {
  const i1 = start + step;
  const i2 = i1 + step;
  const i3 = i2 + step;
  const i4 = i3 + step;
  const i5 = i4 + step;
  const i6 = i5 + step;
  const i7 = i6 + step;
  const w0 = work[start] as number;
  const w2 = work[i2] as number;
  const w4 = work[i4] as number;
  const w6 = work[i6] as number;
  const even10 = w0 + w4;
  const even11 = w0 - w4;
  const even13 = w2 + w6;
  const even12 = (w2 - w6) * ROOT2 - even13;
  const e0 = even10 + even13;
  const e3 = even10 - even13;
  const e1 = even11 + even12;
  const e2 = even11 - even12;

  const w1 = work[i1] as number;
  const w3 = work[i3] as number;
  const w5 = work[i5] as number;
  const w7 = work[i7] as number;
  const z13 = w5 + w3;
  const z10 = w5 - w3;
  const z11 = w1 + w7;
  const z12 = w1 - w7;
  const o7 = z11 + z13;
  const z5 = (z10 + z12) * C2;
  const o6 = C2_AND_C6 * z10 + z5 - o7;
  const o5 = (z11 - z13) * ROOT2 - o6;
  const o4 = z5 - C2_LESS_C6 * z12 - o5;

  work[start] = e0 + o7;
  work[i7] = e0 - o7;
  work[i1] = e1 + o6;
  work[i6] = e1 - o6;
  work[i2] = e2 + o5;
  work[i5] = e2 - o5;
  work[i3] = e3 + o4;
  work[i4] = e3 - o4;
}
