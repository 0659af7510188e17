/** Pictures to read, made without the code under test: PNG by pngjs or by hand, PBM as text. */
import { crc32, deflateSync } from 'node:zlib';
import { PNG } from 'pngjs';

/** An 8-bit PNG of `#rrggbb` or `#rrggbbaa` pixels, the topmost row first. */
export function pngOf(rows: readonly (readonly string[])[]): Uint8Array {
  const height = rows.length;
  const width = rows[0]?.length ?? 0;
  const png = new PNG({ width, height });
  png.data.set(
    rows.flat().flatMap((colour) => [1, 3, 5, 7].map((at) => parseInt(colour.slice(at, at + 2) || 'ff', 16))),
  );
  return PNG.sync.write(png);
}

interface RawPng {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly colourType: number;
  /** Packed bytes of each row, without the filter byte. */
  readonly rows: readonly (readonly number[])[];
  readonly palette?: readonly number[];
  readonly transparency?: readonly number[];
  readonly isInterlaced?: boolean;
  /** Further chunks between the header and the pixels. */
  readonly chunks?: readonly (readonly [name: string, bytes: readonly number[]])[];
}

/** A PNG laid out chunk by chunk (ISO/IEC 15948), for the kinds that pngjs does not write. */
export function rawPng(picture: RawPng): Uint8Array {
  const { width, height, depth, colourType, rows, palette, transparency, isInterlaced, chunks = [] } = picture;
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', [...word(width), ...word(height), depth, colourType, 0, 0, isInterlaced ? 1 : 0]),
    ...chunks.map(([name, bytes]) => chunk(name, bytes)),
    ...(palette ? [chunk('PLTE', palette)] : []),
    ...(transparency ? [chunk('tRNS', transparency)] : []),
    chunk('IDAT', [...deflateSync(Buffer.from(rows.flatMap((row) => [0, ...row])))]),
    chunk('IEND', []),
  ]);
}

/** Samples packed into bytes, the first in the highest bits. */
export function bitRows(samples: readonly number[], depth: number): number[] {
  const bytes = new Array<number>(Math.ceil((samples.length * depth) / 8)).fill(0);
  samples.forEach((sample, index) => {
    const bit = index * depth;
    bytes[bit >> 3] = (bytes[bit >> 3] as number) | (sample << (8 - depth - (bit & 7)));
  });
  return bytes;
}

export function chunk(name: string, bytes: readonly number[]): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), Buffer.from(bytes)]);
  return Buffer.concat([Buffer.from(word(bytes.length)), body, Buffer.from(word(crc32(body)))]);
}

function word(value: number): number[] {
  return [value >>> 24, (value >>> 16) & 255, (value >>> 8) & 255, value & 255];
}

export function bytesOf(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}
