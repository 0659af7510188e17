/**
 * The segments of a JPEG (ITU-T T.81, annex B), walked from SOI to EOI before
 * any of its pixels is decoded.
 *
 * What contradicts itself is refused: several frame headers, a scan of
 * components that the frame does not have, fewer bits than there are blocks. So
 * the size that is checked here is the size that every decoder finds, and a few
 * bytes cannot stand for millions of pixels.
 */
import { problemError, type ProblemError } from '../../problem/index.ts';
import type { PictureDamage } from '../problems.ts';
import { viewOf } from './bytes.ts';
import { exifOrientation, type Orientation } from './exif.ts';

const KIND = 'JPEG';

/**
 * Each goes over all blocks once more. The usual progression has ten (libjpeg-turbo's, from memory); T.81 would
 * allow thousands.
 */
const MOST_SCANS = 100;

/** More tables than any file needs: each scan can have all twelve of its own. */
const MOST_SEGMENTS = 2000;

export interface JpegComponent {
  readonly id: number;
  /** Blocks of it in one MCU, across and down. */
  readonly across: number;
  readonly down: number;
  readonly quantTable: number;
}

export interface JpegFrame {
  readonly width: number;
  readonly height: number;
  /** Coefficients come in passes, so all have to be kept until the last one. */
  readonly isProgressive: boolean;
  readonly components: readonly JpegComponent[];
  /** The most that a component has {@link JpegComponent.across} and {@link JpegComponent.down}. */
  readonly mostAcross: number;
  readonly mostDown: number;
}

export interface JpegSegment {
  readonly marker: number;
  /** Without marker and length. */
  readonly body: Uint8Array;
  /** After the header of a scan: its packed bits, with stuffed bytes and restart markers. */
  readonly bits: Uint8Array | null;
}

export interface JpegSegments {
  readonly frame: JpegFrame;
  readonly orientation: Orientation;
  /** Tables and scans, in order, up to EOI. */
  readonly segments: readonly JpegSegment[];
}

export const MARKER = {
  quantTables: 0xdb,
  huffmanTables: 0xc4,
  restartInterval: 0xdd,
  scan: 0xda,
  app1: 0xe1,
  app14: 0xee,
} as const;

const KEPT: readonly number[] = Object.values(MARKER).filter((marker) => marker !== MARKER.app1);

export function isJpeg(bytes: Uint8Array): boolean {
  return bytes[0] === 0xff && bytes[1] === 0xd8;
}

/** Throws `picture-truncated` or `picture-broken`. */
export function readJpegSegments(bytes: Uint8Array): JpegSegments {
  const segments: JpegSegment[] = [];
  let frame: JpegFrame | null = null;
  let orientation: Orientation = 1;
  let scans = 0;
  for (let at = 2; ;) {
    while (bytes[at] === 0xff && bytes[at + 1] === 0xff) at++;
    if (at + 2 > bytes.length) throw truncated();
    if (bytes[at] !== 0xff) throw brokenJpeg('header');
    const marker = bytes[at + 1] as number;
    if (marker === 0xd9) {
      if (frame === null || scans === 0) throw brokenJpeg('header');
      return { frame, orientation, segments };
    }
    // Markers that stand alone; restarts belong into scans.
    if (marker === 0x01) {
      at += 2;
      continue;
    }
    if (at + 4 > bytes.length) throw truncated();
    const length = viewOf(bytes).getUint16(at + 2);
    if (length < 2 || marker < 0xc0 || (marker >= 0xd0 && marker <= 0xd8)) throw brokenJpeg('header');
    const end = at + 2 + length;
    if (end > bytes.length) throw truncated();
    const body = bytes.subarray(at + 4, end);
    at = end;
    let bits: Uint8Array | null = null;
    if (isFrameHeader(marker)) {
      if (frame !== null) throw brokenJpeg('second-header');
      frame = readFrame(marker, body);
    } else if (marker === MARKER.scan) {
      if (frame === null) throw brokenJpeg('header');
      if (++scans > MOST_SCANS) throw brokenJpeg('order');
      assertScan(body, frame);
      at = endOfBits(bytes, end);
      bits = bytes.subarray(end, at);
    } else if (marker === 0xdc || marker === 0xde || marker === 0xdf) {
      // Another height, or another size for frames to come (DNL, DHP, EXP): both would change what was checked.
      throw brokenJpeg('second-header');
    } else if (marker === MARKER.app1) orientation = exifOrientation(body) ?? orientation;
    if (!KEPT.includes(marker)) continue;
    if (segments.length === MOST_SEGMENTS) throw brokenJpeg('order');
    segments.push({ marker, body, bits });
  }
}

/** C0 … CF less the tables at C4, C8 and CC. */
function isFrameHeader(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
}

/** B.2.2. Baseline, extended and progressive, Huffman-coded, 8 bits a sample: what cameras, scanners and programs write. */
function readFrame(marker: number, body: Uint8Array): JpegFrame {
  if (marker > 0xc2 || body.length < 6 || body[0] !== 8) throw brokenJpeg('header');
  const view = viewOf(body);
  const [height, width, count] = [view.getUint16(1), view.getUint16(3), view.getUint8(5)];
  if (width === 0 || height === 0 || ![1, 3, 4].includes(count) || body.length !== 6 + 3 * count)
    throw brokenJpeg('header');
  const components = Array.from({ length: count }, (_, index): JpegComponent => {
    const [id, sampling, quantTable] = body.subarray(6 + 3 * index, 9 + 3 * index) as unknown as [
      number,
      number,
      number,
    ];
    const [across, down] = [sampling >> 4, sampling & 15];
    if (across < 1 || across > 4 || down < 1 || down > 4 || quantTable > 3) throw brokenJpeg('header');
    // A component alone has no other to be sampled beside: its blocks come one by one (A.2.2).
    return count === 1 ? { id, across: 1, down: 1, quantTable } : { id, across, down, quantTable };
  });
  if (new Set(components.map(({ id }) => id)).size !== count) throw brokenJpeg('header');
  // B.2.3: at most ten blocks in an MCU.
  if (components.reduce((sum, { across, down }) => sum + across * down, 0) > 10) throw brokenJpeg('header');
  return {
    width,
    height,
    isProgressive: marker === 0xc2,
    components,
    mostAcross: Math.max(...components.map(({ across }) => across)),
    mostDown: Math.max(...components.map(({ down }) => down)),
  };
}

/** B.2.3. */
function assertScan(body: Uint8Array, { components, isProgressive }: JpegFrame): void {
  const count = body[0] ?? 0;
  if (count < 1 || count > components.length || body.length !== 4 + 2 * count) throw brokenJpeg('header');
  const ids = Array.from({ length: count }, (_, index) => body[1 + 2 * index]);
  if (new Set(ids).size !== count || !ids.every((id) => components.some((component) => component.id === id))) {
    throw brokenJpeg('header');
  }
  const [first, last, approximation] = body.subarray(1 + 2 * count) as unknown as [number, number, number];
  const isRight = isProgressive
    ? first <= last && last <= 63 && (first === 0 ? last === 0 : count === 1) && (approximation & 15) <= 13
    : first === 0 && last === 63 && approximation === 0;
  if (!isRight) throw brokenJpeg('header');
}

/** Where the packed bits end: at a marker that is neither a stuffed byte nor a restart. */
function endOfBits(bytes: Uint8Array, from: number): number {
  for (let at = from; ;) {
    at = bytes.indexOf(0xff, at);
    if (at < 0 || at + 1 >= bytes.length) throw truncated();
    const next = bytes[at + 1] as number;
    if (next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return at;
    // Fill bytes may stand before a marker: the last FF of a row of them begins it.
    at += next === 0xff ? 1 : 2;
  }
}

/**
 * Every block takes two bits at least (one for each of its codes), in passes
 * one. Throws `picture-truncated` for what has fewer: it was cut off, or never was.
 */
export function assertJpegBits({ frame, segments }: JpegSegments): void {
  const bits = segments.reduce((sum, segment) => sum + 8 * (segment.bits?.length ?? 0), 0);
  if (bits < blocksIn(frame) * (frame.isProgressive ? 1 : 2)) throw truncated();
}

/** Blocks of 8 × 8 in all components together (A.2.2), without those that only fill up an MCU. */
function blocksIn({ width, height, components, mostAcross, mostDown }: JpegFrame): number {
  return components.reduce(
    (sum, { across, down }) =>
      sum + Math.ceil((width * across) / mostAcross / 8) * Math.ceil((height * down) / mostDown / 8),
    0,
  );
}

function truncated(): ProblemError {
  return problemError('picture-truncated', { kind: KIND });
}

export function brokenJpeg(damage: PictureDamage): ProblemError {
  return problemError('picture-broken', { kind: KIND, damage });
}
