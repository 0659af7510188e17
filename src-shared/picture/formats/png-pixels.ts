/**
 * The pixels of a PNG, row by row (ISO/IEC 15948, clauses 7 to 9 and 13).
 *
 * Rows are handed on as they come out of the packed stream, which is bounded by
 * the size in the header: what would unpack to more is refused there, and no
 * more than two rows are ever held. Colours are taken as stored (no gamma, no
 * profile); what is see-through is laid on white.
 */
import { viewOf, type TakeRow } from './bytes.ts';
import { unpack } from './inflate.ts';
import { assertChecksum, bodyOf, brokenPng, type PngChunks, type PngHeader } from './png-chunks.ts';
import { unfilter } from './png-filter.ts';

interface Pass {
  readonly x: number;
  readonly y: number;
  readonly acrossStep: number;
  readonly downStep: number;
}

const WHOLE: readonly Pass[] = [{ x: 0, y: 0, acrossStep: 1, downStep: 1 }];

/** The seven passes of an interlaced picture (8.2, Adam7). */
const INTERLACED: readonly Pass[] = [
  { x: 0, y: 0, acrossStep: 8, downStep: 8 },
  { x: 4, y: 0, acrossStep: 8, downStep: 8 },
  { x: 0, y: 4, acrossStep: 4, downStep: 8 },
  { x: 2, y: 0, acrossStep: 4, downStep: 4 },
  { x: 0, y: 2, acrossStep: 2, downStep: 4 },
  { x: 1, y: 0, acrossStep: 2, downStep: 2 },
  { x: 0, y: 1, acrossStep: 1, downStep: 2 },
];

/** A pass as rows of the packed stream; passes without pixels are left out, as they are in the stream. */
interface Rows extends Pass {
  readonly columns: number;
  readonly rows: number;
  /** Bytes of a row without the one that names its filter. */
  readonly length: number;
}

/** Throws `picture-broken`. */
export function readPngPixels(bytes: Uint8Array, chunks: PngChunks, take: TakeRow): void {
  const { header } = chunks;
  for (const chunk of chunks.pixels) assertChecksum(bytes, chunk);
  const passes = passesOf(header);
  const expected = passes.reduce((sum, { rows, length }) => sum + rows * (length + 1), 0);
  const reader = new RowReader(header, passes, opaqueRow(chunks), take);
  const parts = chunks.pixels.map((chunk) => bodyOf(bytes, chunk));
  if (unpack(parts, expected, (piece) => reader.take(piece)) !== 'whole' || !reader.isComplete)
    throw brokenPng('pixels');
}

function passesOf(header: PngHeader): Rows[] {
  return (header.isInterlaced ? INTERLACED : WHOLE).flatMap((pass) => {
    const columns = Math.ceil((header.width - pass.x) / pass.acrossStep);
    const rows = Math.ceil((header.height - pass.y) / pass.downStep);
    const length = Math.ceil((columns * header.depth * header.channels) / 8);
    return columns > 0 && rows > 0 ? [{ ...pass, columns, rows, length }] : [];
  });
}

/** Cuts the unpacked stream into rows. */
class RowReader {
  /** The row that is filled, with its filter byte before it, and the one above. */
  private row: Uint8Array;
  private above: Uint8Array;
  private readonly rgba: Uint8Array;
  private filled = 0;
  private pass = 0;
  private y = 0;
  /** Bytes from one pixel to the same sample of the next; 1 where pixels are smaller. */
  private readonly reach: number;

  constructor(
    header: PngHeader,
    private readonly passes: readonly Rows[],
    private readonly toRgba: (row: Uint8Array, columns: number, rgba: Uint8Array) => void,
    private readonly takeRow: TakeRow,
  ) {
    const longest = Math.max(...passes.map(({ length }) => length)) + 1;
    this.row = new Uint8Array(longest);
    this.above = new Uint8Array(longest);
    this.rgba = new Uint8Array(header.width * 4);
    this.reach = Math.max(1, (header.depth * header.channels) >> 3);
  }

  get isComplete(): boolean {
    return this.pass === this.passes.length;
  }

  take(piece: Uint8Array): void {
    for (let at = 0; at < piece.length;) {
      const pass = this.passes[this.pass] as Rows;
      const count = Math.min(pass.length + 1 - this.filled, piece.length - at);
      this.row.set(piece.subarray(at, at + count), this.filled);
      this.filled += count;
      at += count;
      if (this.filled === pass.length + 1) this.endRow(pass);
    }
  }

  private endRow(pass: Rows): void {
    const row = this.row.subarray(1, pass.length + 1);
    if (!unfilter(this.row[0] as number, row, this.above.subarray(1, pass.length + 1), this.reach))
      throw brokenPng('pixels');
    this.toRgba(row, pass.columns, this.rgba);
    this.takeRow(pass.y + this.y * pass.downStep, this.rgba, pass.x, pass.acrossStep, pass.columns);
    [this.row, this.above] = [this.above, this.row];
    this.filled = 0;
    if (++this.y < pass.rows) return;
    this.pass++;
    this.y = 0;
    // Each pass begins below a row of noughts.
    this.above.fill(0);
  }
}

/** Turns a row of samples into opaque pixels of 8 bits a sample. */
function opaqueRow({
  header,
  palette,
  transparency,
}: PngChunks): (row: Uint8Array, columns: number, rgba: Uint8Array) => void {
  const { depth, colourType, channels } = header;
  if (channels === 1 && depth <= 8) return rowByTable(depth, tableOf(header, palette, transparency));
  const bytesEach = depth / 8;
  const isGrey = channels < 3;
  const hasAlpha = colourType >= 4;
  const most = 2 ** depth - 1;
  const clear = transparency === null ? null : samplesOf(transparency);
  const isPlain = depth === 8 && colourType === 2 && clear === null;
  return (row, columns, rgba) => {
    if (isPlain) return copyRgb(row, columns, rgba);
    const sample =
      bytesEach === 1
        ? (at: number) => row[at] as number
        : (at: number) => ((row[2 * at] as number) << 8) | (row[2 * at + 1] as number);
    for (let column = 0; column < columns; column++) {
      const at = column * channels;
      const red = sample(at);
      const green = isGrey ? red : sample(at + 1);
      const blue = isGrey ? red : sample(at + 2);
      let alpha = hasAlpha ? sample(at + channels - 1) : most;
      if (clear !== null && red === clear[0] && (isGrey || (green === clear[1] && blue === clear[2]))) alpha = 0;
      const to = column * 4;
      rgba[to] = onWhite(red, alpha, most);
      rgba[to + 1] = isGrey ? (rgba[to] as number) : onWhite(green, alpha, most);
      rgba[to + 2] = isGrey ? (rgba[to] as number) : onWhite(blue, alpha, most);
      rgba[to + 3] = 255;
    }
  };
}

function copyRgb(row: Uint8Array, columns: number, rgba: Uint8Array): void {
  for (let from = 0, to = 0; to < columns * 4; from += 3, to += 4) {
    rgba[to] = row[from] as number;
    rgba[to + 1] = row[from + 1] as number;
    rgba[to + 2] = row[from + 2] as number;
    rgba[to + 3] = 255;
  }
}

/** What each sample of at most 8 bits looks like: four bytes each; alpha 0 for one that names no colour. */
function tableOf(
  { depth, colourType }: PngHeader,
  palette: Uint8Array | null,
  transparency: Uint8Array | null,
): Uint8Array {
  const most = 2 ** depth - 1;
  const table = new Uint8Array(4 * (most + 1));
  const clear = colourType === 0 && transparency !== null ? samplesOf(transparency)[0] : -1;
  for (let sample = 0; sample <= most; sample++) {
    if (colourType === 0) {
      table.fill(sample === clear ? 255 : onWhite(sample, most, most), 4 * sample, 4 * sample + 3);
      table[4 * sample + 3] = 255;
    } else if (palette !== null && 3 * sample < palette.length) {
      const alpha = transparency?.[sample] ?? 255;
      for (let part = 0; part < 3; part++)
        table[4 * sample + part] = onWhite(palette[3 * sample + part] as number, alpha, 255);
      table[4 * sample + 3] = 255;
    }
  }
  return table;
}

/** Samples of fewer than 8 bits are packed, the first in the highest bits (7.2). */
function rowByTable(depth: number, table: Uint8Array): (row: Uint8Array, columns: number, rgba: Uint8Array) => void {
  const mask = 2 ** depth - 1;
  return (row, columns, rgba) => {
    for (let column = 0; column < columns; column++) {
      const bit = column * depth;
      const from = 4 * (((row[bit >> 3] as number) >> (8 - depth - (bit & 7))) & mask);
      if (table[from + 3] !== 255) throw brokenPng('palette');
      const to = column * 4;
      rgba[to] = table[from] as number;
      rgba[to + 1] = table[from + 1] as number;
      rgba[to + 2] = table[from + 2] as number;
      rgba[to + 3] = 255;
    }
  };
}

/** Two bytes each, whatever the depth (11.3.2.1). */
function samplesOf(transparency: Uint8Array): number[] {
  const view = viewOf(transparency);
  return Array.from({ length: transparency.length >> 1 }, (_, index) => view.getUint16(2 * index));
}

/** A sample of 0 … `most` laid on white, brought to 8 bits. */
function onWhite(sample: number, alpha: number, most: number): number {
  if (alpha === most && most === 255) return sample;
  return Math.round((255 * (sample * alpha + most * (most - alpha))) / (most * most));
}
