/** What kind of picture a file holds, and whether it may be decoded: asked before anything is. */
import { isPbm } from '../picture/index.ts';
import { problemError } from '../problem/index.ts';
import { readPictureHeader, type PictureHeader } from './picture-header.ts';
import { assertPhotoSize } from './picture.ts';
import { assertSvgLength, isSvg } from './svg.ts';
import { assertWhole } from './whole-picture.ts';

/** PBM and SVG say nothing of themselves that could be had without reading them. */
export type PictureFile = PictureHeader | { readonly kind: 'SVG' | 'PBM' };

export type PictureKind = PictureFile['kind'];

/**
 * Throws `picture-empty`, `photo-unknown-kind`, `picture-truncated`,
 * `picture-broken`, `picture-animated`, `photo-too-large`, and for an SVG
 * `file-too-large`.
 */
export function checkPictureFile(bytes: Uint8Array): PictureFile {
  if (bytes.length === 0) throw problemError('picture-empty', {});
  if (isPbm(bytes)) return { kind: 'PBM' };
  if (isSvg(bytes)) {
    assertSvgLength(bytes);
    return { kind: 'SVG' };
  }
  const header = readPictureHeader(bytes);
  assertPhotoSize(header.width, header.height);
  assertWhole(bytes, header.kind);
  return header;
}
