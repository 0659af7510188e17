/** Which way up a camera was held. */
import { nameAt, viewOf } from './bytes.ts';

/**
 * How the stored rows and columns lie in the upright picture (Exif 2.3, tag
 * 0x0112): 1 as they are, 3 upside down, 6 a quarter turn clockwise, 8
 * anticlockwise; 2, 4, 5 and 7 are these mirrored.
 */
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

/** The orientation in the body of an Exif segment, or null if it says none. Damaged notes are no reason to refuse a photo. */
export function exifOrientation(segment: Uint8Array): Orientation | null {
  if (nameAt(segment, 0) !== 'Exif' || segment.length < 14) return null;
  const tiff = viewOf(segment.subarray(6));
  const isLittle = tiff.getUint16(0) === 0x4949;
  const directory = tiff.getUint32(4, isLittle);
  if (directory + 2 > tiff.byteLength) return null;
  const entries = tiff.getUint16(directory, isLittle);
  for (let entry = 0; entry < entries; entry++) {
    const at = directory + 2 + entry * 12;
    if (at + 12 > tiff.byteLength) return null;
    if (tiff.getUint16(at, isLittle) === 0x0112) {
      const value = tiff.getUint16(at + 8, isLittle);
      return value >= 1 && value <= 8 ? (value as Orientation) : null;
    }
  }
  return null;
}
