/**
 * What kind of picture a file holds, how large it is, and whether it may be
 * decoded: asked of every format before anything is. The whole file is walked,
 * so that what is decoded later, here or by a browser, is what was checked.
 */
import {
  assertJpegBits,
  assertPbmLength,
  isBmp,
  isJpeg,
  isPbm,
  isPng,
  isWebp,
  readBmpSize,
  readJpegSegments,
  readPbmHeader,
  readPngChunks,
  readWebpSize,
  type Orientation,
} from '../picture/index.ts';
import { problemError } from '../problem/index.ts';
import { assertPhotoSize } from './picture.ts';

export type PictureFile =
  | {
      readonly kind: 'PNG' | 'JPEG' | 'WebP' | 'BMP' | 'PBM';
      /** As stored, before it is turned upright. */
      readonly width: number;
      readonly height: number;
      readonly orientation: Orientation;
    }
  /** A drawing has no pixels; `readSvg` says what it may do and at what size it is drawn. */
  | { readonly kind: 'SVG' };

export type PictureKind = PictureFile['kind'];

/**
 * Throws `picture-empty`, `photo-unknown-kind`, `picture-truncated`,
 * `picture-broken`, `picture-animated`, `photo-too-large`, and for an SVG
 * `file-too-large`.
 */
export function checkPictureFile(bytes: Uint8Array): PictureFile {
  const file = pictureFile(bytes);
  if (file.kind !== 'SVG') assertPhotoSize(file.width, file.height);
  return file;
}

function pictureFile(bytes: Uint8Array): PictureFile {
  if (bytes.length === 0) throw problemError('picture-empty', {});
  if (isPng(bytes)) return of('PNG', readPngChunks(bytes).header);
  if (isJpeg(bytes)) {
    const jpeg = readJpegSegments(bytes);
    assertPhotoSize(jpeg.frame.width, jpeg.frame.height);
    assertJpegBits(jpeg);
    return of('JPEG', jpeg.frame, jpeg.orientation);
  }
  if (isWebp(bytes)) return of('WebP', readWebpSize(bytes));
  if (isBmp(bytes)) return of('BMP', readBmpSize(bytes));
  if (isPbm(bytes)) {
    const header = readPbmHeader(bytes);
    assertPhotoSize(header.width, header.height);
    assertPbmLength(bytes, header);
    return of('PBM', header);
  }
  if (isSvg(bytes)) {
    assertSvgLength(bytes);
    return { kind: 'SVG' };
  }
  throw problemError('photo-unknown-kind', {});
}

function of(
  kind: Exclude<PictureKind, 'SVG'>,
  { width, height }: { readonly width: number; readonly height: number },
  orientation: Orientation = 1,
): PictureFile {
  return { kind, width, height, orientation };
}

/** Longer drawings are refused: 4 MB of lines and curves are no chart. */
export const MOST_SVG_BYTES = 4 * 1024 * 1024;

/** True for bytes that begin as an SVG does: with its element, or with what may stand before it. */
export function isSvg(bytes: Uint8Array): boolean {
  const start = String.fromCharCode(...bytes.subarray(0, 4096)).replace(/^(?:\xef\xbb\xbf)?\s*/, '');
  return start.startsWith('<') && /<(?:[\w.-]+:)?svg[\s>/]/.test(start);
}

/** Throws `file-too-large`. */
function assertSvgLength(bytes: Uint8Array): void {
  if (bytes.length > MOST_SVG_BYTES)
    throw problemError('file-too-large', { bytes: bytes.length, most: MOST_SVG_BYTES });
}
