/** The coefficients of one block out of the bits of a scan (ITU-T T.81: F.2.2 sequential, G.1.2 in passes). */
import type { HuffmanTable, JpegBits } from './jpeg-huffman.ts';
import { ZIGZAG } from './jpeg-idct.ts';
import { brokenJpeg } from './jpeg-segments.ts';

/** What decoding remembers of one component between its blocks. */
export interface ComponentState {
  readonly dc: HuffmanTable | null;
  readonly ac: HuffmanTable | null;
  /** The DC coefficient of the block before. */
  before: number;
}

/** What the header of a scan says of its coefficients (B.2.3: Ss, Se, Ah, Al). */
export interface ScanRange {
  readonly first: number;
  readonly last: number;
  readonly high: number;
  readonly low: number;
}

/** Blocks of a scan that hold no more coefficients (G.1.2.2). */
export interface EndOfBands {
  left: number;
}

export type ReadBlock = (bits: JpegBits, state: ComponentState, block: Int16Array, at: number) => void;

/** A whole block; it must be all noughts before. */
export function readSequential(bits: JpegBits, state: ComponentState, block: Int16Array, at: number): void {
  state.before += bits.takeSigned(bits.symbol(tableOf(state.dc)) & 15);
  block[at] = state.before;
  const ac = tableOf(state.ac);
  for (let k = 1; k < 64; k++) {
    const symbol = bits.symbol(ac);
    const length = symbol & 15;
    if (length === 0) {
      if (symbol !== 0xf0) return;
      k += 15;
      continue;
    }
    k += symbol >> 4;
    if (k > 63) throw brokenJpeg('pixels');
    block[at + (ZIGZAG[k] as number)] = bits.takeSigned(length);
  }
}

/** What a scan of a progressive picture adds to each of its blocks. */
export function readerInPasses(range: ScanRange, bands: EndOfBands): ReadBlock {
  if (range.first === 0) return range.high === 0 ? firstDc(range) : laterDc(range);
  return range.high === 0 ? firstAc(range, bands) : laterAc(range, bands);
}

function firstDc({ low }: ScanRange): ReadBlock {
  return (bits, state, block, at) => {
    state.before += bits.takeSigned(bits.symbol(tableOf(state.dc)) & 15);
    block[at] = state.before << low;
  };
}

function laterDc({ low }: ScanRange): ReadBlock {
  return (bits, _, block, at) => {
    block[at] = (block[at] as number) | (bits.take(1) << low);
  };
}

function firstAc({ first, last, low }: ScanRange, bands: EndOfBands): ReadBlock {
  return (bits, state, block, at) => {
    if (bands.left > 0) {
      bands.left--;
      return;
    }
    const ac = tableOf(state.ac);
    for (let k = first; k <= last; k++) {
      const symbol = bits.symbol(ac);
      const length = symbol & 15;
      const run = symbol >> 4;
      if (length === 0) {
        if (run < 15) {
          bands.left = (1 << run) - 1 + bits.take(run);
          return;
        }
        k += 15;
        continue;
      }
      k += run;
      if (k > last) throw brokenJpeg('pixels');
      block[at + (ZIGZAG[k] as number)] = bits.takeSigned(length) << low;
    }
  };
}

/** One bit more for each coefficient that is there already, and new ones of plus or minus one between them (G.1.2.3). */
function laterAc({ first, last, low }: ScanRange, bands: EndOfBands): ReadBlock {
  const one = 1 << low;
  return (bits, state, block, at) => {
    let k = first;
    if (bands.left === 0) {
      const ac = tableOf(state.ac);
      for (; k <= last; k++) {
        const symbol = bits.symbol(ac);
        let run = symbol >> 4;
        let value = 0;
        if ((symbol & 15) !== 0) value = bits.take(1) === 1 ? one : -one;
        else if (run < 15) {
          bands.left = (1 << run) + bits.take(run);
          break;
        }
        for (; k <= last; k++) {
          const place = at + (ZIGZAG[k] as number);
          if (block[place] !== 0) refine(bits, block, place, one);
          else if (--run < 0) break;
        }
        if (value === 0) continue;
        if (k > last) throw brokenJpeg('pixels');
        block[at + (ZIGZAG[k] as number)] = value;
      }
    }
    if (bands.left === 0) return;
    for (; k <= last; k++) {
      const place = at + (ZIGZAG[k] as number);
      if (block[place] !== 0) refine(bits, block, place, one);
    }
    bands.left--;
  };
}

function refine(bits: JpegBits, block: Int16Array, place: number, one: number): void {
  const value = block[place] as number;
  if (bits.take(1) === 1 && (Math.abs(value) & one) === 0) block[place] = value + (value > 0 ? one : -one);
}

function tableOf(table: HuffmanTable | null): HuffmanTable {
  if (table === null) throw brokenJpeg('pixels');
  return table;
}
