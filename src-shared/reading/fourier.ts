/** The Fourier transform of a square of numbers whose side is a power of two. */

/**
 * How strongly each wave runs through two squares of `size` × `size` real
 * numbers: the squared magnitudes of their Fourier transforms. Row-major; the
 * wave that comes back `x` times across and `y` times down is at
 * `(y mod size) * size + (x mod size)`. Two at once, as the real and the
 * imaginary part of one, since real numbers' transforms are symmetric.
 */
export function powersOf(one: Float32Array, other: Float32Array, size: number): [Float32Array, Float32Array] {
  const transform = transformOf(size);
  const re = Float64Array.from(one);
  const im = Float64Array.from(other);
  for (let row = 0; row < size; row++) transform(re, im, row * size, 1);
  for (let column = 0; column < size; column++) transform(re, im, column, size);
  const ofOne = new Float32Array(size * size);
  const ofOther = new Float32Array(size * size);
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) {
      const i = y * size + x;
      const mirrored = ((size - y) % size) * size + ((size - x) % size);
      const a = re[i] as number;
      const b = im[i] as number;
      const c = re[mirrored] as number;
      const d = im[mirrored] as number;
      ofOne[i] = ((a + c) * (a + c) + (b - d) * (b - d)) / 4;
      ofOther[i] = ((a - c) * (a - c) + (b + d) * (b + d)) / 4;
    }
  }
  return [ofOne, ofOther];
}

/** One line of `size` numbers, `step` apart from `start` on, in place (Cooley and Tukey 1965, radix 2). */
type Transform = (re: Float64Array, im: Float64Array, start: number, step: number) => void;

const transforms = new Map<number, Transform>();

/** Made once for a size: what is made anew each time never becomes fast. */
function transformOf(size: number): Transform {
  const made = transforms.get(size) ?? newTransform(size);
  transforms.set(size, made);
  return made;
}

function newTransform(size: number): Transform {
  const bits = Math.log2(size);
  const swapped = Uint32Array.from({ length: size }, (_, i) => {
    let to = 0;
    for (let bit = 0; bit < bits; bit++) to |= ((i >> bit) & 1) << (bits - 1 - bit);
    return to;
  });
  const cosines = Float64Array.from({ length: size / 2 }, (_, i) => Math.cos((2 * Math.PI * i) / size));
  const sines = Float64Array.from({ length: size / 2 }, (_, i) => -Math.sin((2 * Math.PI * i) / size));
  const lineRe = new Float64Array(size);
  const lineIm = new Float64Array(size);
  return (re, im, start, step) => {
    for (let i = 0; i < size; i++) {
      const from = start + (swapped[i] as number) * step;
      lineRe[i] = re[from] as number;
      lineIm[i] = im[from] as number;
    }
    for (let half = 1; half < size; half *= 2) {
      const turn = size / (2 * half);
      for (let block = 0; block < size; block += 2 * half) {
        for (let i = 0; i < half; i++) {
          const a = block + i;
          const b = a + half;
          const cos = cosines[i * turn] as number;
          const sin = sines[i * turn] as number;
          const bRe = lineRe[b] as number;
          const bIm = lineIm[b] as number;
          const re1 = bRe * cos - bIm * sin;
          const im1 = bRe * sin + bIm * cos;
          lineRe[b] = (lineRe[a] as number) - re1;
          lineIm[b] = (lineIm[a] as number) - im1;
          lineRe[a] = (lineRe[a] as number) + re1;
          lineIm[a] = (lineIm[a] as number) + im1;
        }
      }
    }
    for (let i = 0; i < size; i++) {
      re[start + i * step] = lineRe[i] as number;
      im[start + i * step] = lineIm[i] as number;
    }
  };
}
