/** Reading the photo or scan that a command is about. */
import { decode } from 'jpeg-js';
import { readPng } from '@shared/picture/index.ts';
import { problemError } from '@shared/problem/index.ts';
import {
  assertPhotoSize,
  blankPicture,
  MOST_MEGAPIXELS,
  readPictureHeader,
  upright,
  type Picture,
} from '@shared/reading/index.ts';
import { nodeFiles, readWhole } from '../services/files/index.ts';
import { placed } from './placed.ts';

/** What the decoder may take, in MB: it keeps several copies of the largest photo. */
const DECODER_MEMORY_MB = 2048;

/** The photo as it is seen upright. Problems name the file. */
export async function readPhoto(path: string): Promise<Picture> {
  const bytes = await readWhole(nodeFiles, path);
  return placed(path, () => decodePhoto(bytes));
}

/**
 * Throws what `readPictureHeader` throws, `photo-too-large` before anything of
 * that size is made, `photo-only-in-window`, `picture-truncated`,
 * `picture-broken` or `picture-interlaced`.
 */
export function decodePhoto(bytes: Uint8Array): Picture {
  const { kind, width, height, orientation } = readPictureHeader(bytes);
  assertPhotoSize(width, height);
  switch (kind) {
    case 'PNG':
      return fromPng(bytes);
    case 'JPEG':
      return upright(fromJpeg(bytes), orientation);
    case 'WebP':
      throw problemError('photo-only-in-window', { kind });
  }
}

function fromPng(bytes: Uint8Array): Picture {
  const { width, height, colours } = readPng(bytes, assertPhotoSize);
  const picture = blankPicture(width, height);
  const { rgba } = picture;
  colours.forEach((colour, pixel) => {
    rgba[pixel * 4] = colour >> 16;
    rgba[pixel * 4 + 1] = (colour >> 8) & 255;
    rgba[pixel * 4 + 2] = colour & 255;
    rgba[pixel * 4 + 3] = 255;
  });
  return picture;
}

function fromJpeg(bytes: Uint8Array): Picture {
  // A JPEG that was cut off would be filled up with grey: the mark of its end must be there.
  if (!hasEnd(bytes)) throw problemError('picture-truncated', { kind: 'JPEG' });
  try {
    const { width, height, data } = decode(bytes, {
      useTArray: true,
      tolerantDecoding: false,
      maxResolutionInMP: MOST_MEGAPIXELS + 1,
      maxMemoryUsageInMB: DECODER_MEMORY_MB,
    });
    return { width, height, rgba: data };
  } catch {
    throw problemError('picture-broken', { kind: 'JPEG', damage: 'pixels' });
  }
}

/** End of image, FF D9; cameras may put notes of their own after it. */
function hasEnd(bytes: Uint8Array): boolean {
  for (let at = bytes.length - 2; at > 0; at--) if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return true;
  return false;
}
