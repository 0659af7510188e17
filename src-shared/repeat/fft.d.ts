/** The part of fft.js that is used; the package has no types of its own. */
declare module 'fft.js' {
  class FFT {
    constructor(size: number);
    createComplexArray(): number[];
    realTransform(out: number[], data: ArrayLike<number>): void;
    completeSpectrum(spectrum: number[]): void;
    inverseTransform(out: number[], data: number[]): void;
  }
  export = FFT;
}
