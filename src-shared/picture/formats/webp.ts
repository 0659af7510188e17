/**
 * What a WebP says of itself (RFC 9649, WebP Image Format), its chunks walked to
 * the end. The canvas and the one picture on it must agree, so that the size
 * that is checked is the size that is decoded.
 */
import { problemError, type ProblemError } from '../../problem/index.ts';
import { beginsWith, nameAt, viewOf } from './bytes.ts';

const KIND = 'WebP';

export interface Size {
  readonly width: number;
  readonly height: number;
}

export function isWebp(bytes: Uint8Array): boolean {
  return beginsWith(bytes, [0x52, 0x49, 0x46, 0x46]) && nameAt(bytes, 8) === 'WEBP';
}

/** Throws `picture-truncated`, `picture-animated` or `picture-broken`. */
export function readWebpSize(bytes: Uint8Array): Size {
  if (bytes.length < 20) throw truncated();
  const view = viewOf(bytes);
  // 2.4: the length after RIFF counts what follows it.
  const end = view.getUint32(4, true) + 8;
  if (end > bytes.length) throw truncated();
  let canvas: Size | null = null;
  let picture: Size | null = null;
  for (let at = 12; at < end;) {
    if (at + 8 > end) throw broken();
    const name = nameAt(bytes, at);
    const length = view.getUint32(at + 4, true);
    const body = bytes.subarray(at + 8, at + 8 + length);
    if (at + 8 + length > end) throw truncated();
    switch (name) {
      case 'VP8X':
        if (at !== 12 || length !== 10) throw broken();
        // 2.7: the second bit of the flags says that it moves.
        if (((body[0] as number) & 0x02) !== 0) throw problemError('picture-animated', { kind: KIND });
        canvas = { width: 1 + three(body, 4), height: 1 + three(body, 7) };
        break;
      case 'VP8 ':
      case 'VP8L':
        if (picture !== null || (canvas === null && at !== 12)) throw second();
        picture = name === 'VP8 ' ? lossySize(body) : losslessSize(body);
        break;
      case 'ANIM':
      case 'ANMF':
        throw problemError('picture-animated', { kind: KIND });
      default:
        // Without an extended header the picture is the first chunk (2.5, 2.6).
        if (canvas === null && picture === null) throw broken();
    }
    // Chunks are filled up to an even length (2.3).
    at += 8 + length + (length & 1);
  }
  if (picture === null) throw broken();
  if (canvas !== null && (canvas.width !== picture.width || canvas.height !== picture.height)) throw second();
  return picture;
}

/** RFC 6386, 9.1: three bytes, of which the first bit is 0 for a whole picture; a start code; 14 bits each of width and height. */
function lossySize(body: Uint8Array): Size {
  if (body.length < 10) throw truncated();
  if (((body[0] as number) & 1) !== 0 || !beginsWith(body.subarray(3), [0x9d, 0x01, 0x2a])) throw broken();
  const view = viewOf(body);
  return sized(view.getUint16(6, true) & 0x3fff, view.getUint16(8, true) & 0x3fff);
}

/** 3.4: a mark, then 14 bits each of width and height less one, a bit for alpha and three for the version, 0. */
function losslessSize(body: Uint8Array): Size {
  if (body.length < 5) throw truncated();
  const packed = viewOf(body).getUint32(1, true);
  if (body[0] !== 0x2f || packed >>> 29 !== 0) throw broken();
  return sized((packed & 0x3fff) + 1, ((packed >>> 14) & 0x3fff) + 1);
}

function sized(width: number, height: number): Size {
  if (width === 0 || height === 0) throw broken();
  return { width, height };
}

function three(body: Uint8Array, at: number): number {
  return (body[at] as number) | ((body[at + 1] as number) << 8) | ((body[at + 2] as number) << 16);
}

function truncated(): ProblemError {
  return problemError('picture-truncated', { kind: KIND });
}

function broken(): ProblemError {
  return problemError('picture-broken', { kind: KIND, damage: 'header' });
}

function second(): ProblemError {
  return problemError('picture-broken', { kind: KIND, damage: 'second-header' });
}
