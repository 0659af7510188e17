/** Reading the photo or scan that a command is about. */
import { decode } from 'jpeg-js';
import { readPbm, readPng } from '@shared/picture/index.ts';
import { problemError } from '@shared/problem/index.ts';
import {
  assertPhotoSize,
  checkPictureFile,
  MOST_MEGAPIXELS,
  pictureOfPixels,
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

/** Throws what `checkPictureFile` throws, `photo-only-in-window`, or `picture-interlaced`. */
export function decodePhoto(bytes: Uint8Array): Picture {
  const file = checkPictureFile(bytes);
  switch (file.kind) {
    case 'PNG':
      return pictureOfPixels(readPng(bytes, assertPhotoSize));
    case 'PBM':
      return pictureOfPixels(readPbm(bytes, assertPhotoSize));
    case 'JPEG':
      return upright(fromJpeg(bytes), file.orientation);
    case 'WebP':
    case 'SVG':
      throw problemError('photo-only-in-window', { kind: file.kind });
  }
}

function fromJpeg(bytes: Uint8Array): Picture {
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
