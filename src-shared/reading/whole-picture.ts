/**
 * Whether a picture file is all there and holds one still picture.
 *
 * Browsers draw what there is of a file that was cut off and leave the rest
 * grey, and of an animated one they draw some frame: neither is what a person
 * meant to read in, so both are told before anything is decoded.
 */
import { problemError } from '../problem/index.ts';
import type { PictureHeader } from './picture-header.ts';

/** Throws `picture-truncated` or `picture-animated`. */
export function assertWhole(bytes: Uint8Array, kind: PictureHeader['kind']): void {
  const faults = { PNG: pngFault, JPEG: jpegFault, WebP: webpFault };
  const fault = faults[kind](bytes);
  if (fault !== null) throw problemError(`picture-${fault}`, { kind });
}

type Fault = 'truncated' | 'animated' | null;

/** The chunks of a PNG (ISO/IEC 15948) go on to IEND; an animated one says so in a chunk acTL before its pixels. */
function pngFault(bytes: Uint8Array): Fault {
  const view = viewOf(bytes);
  for (let at = 8; at + 12 <= bytes.length; at += 12 + view.getUint32(at)) {
    const name = nameAt(bytes, at + 4);
    if (name === 'acTL') return 'animated';
    if (name === 'IEND') return null;
  }
  return 'truncated';
}

/** A JPEG ends with FF D9; cameras may put notes of their own after it. */
function jpegFault(bytes: Uint8Array): Fault {
  for (let at = bytes.length - 2; at > 0; at--) if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return null;
  return 'truncated';
}

/** A WebP (RFC 9649) states its length after `RIFF`; the second bit of an extended one's flags says that it moves. */
function webpFault(bytes: Uint8Array): Fault {
  if (bytes.length < 30 || viewOf(bytes).getUint32(4, true) + 8 > bytes.length) return 'truncated';
  const moves = nameAt(bytes, 12) === 'VP8X' && ((bytes[20] as number) & 0x02) !== 0;
  return moves ? 'animated' : null;
}

function nameAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
