/** A photo or scan decoded without a browser: PNG, JPEG and PBM. */
import {
  comesInPasses,
  readJpegPixels,
  readJpegSegments,
  readPbmHeader,
  readPbmPixels,
  readPngChunks,
  readPngPixels,
} from '../picture/index.ts';
import { problemError } from '../problem/index.ts';
import { keepAll, keepHalf, type Keeper } from './halving.ts';
import { checkPictureFile } from './picture-file.ts';
import { MOST_KEPT_MEGAPIXELS, type Picture } from './picture.ts';
import { upright } from './upright.ts';

export interface DecodedPhoto {
  /** As it is seen upright. */
  readonly picture: Picture;
  /** Pixels of the file along one side of a pixel here: 2 for a photo that was too large to be kept whole. */
  readonly scale: 1 | 2;
  /** Of the file, as it is seen upright. */
  readonly width: number;
  readonly height: number;
}

/**
 * Throws what `checkPictureFile` throws, `photo-only-in-window`,
 * `picture-interlaced` or `photo-in-passes`.
 */
export function decodePhoto(bytes: Uint8Array): DecodedPhoto {
  const file = checkPictureFile(bytes);
  switch (file.kind) {
    case 'PNG': {
      const chunks = readPngChunks(bytes);
      const { width, height, isInterlaced } = chunks.header;
      const keeper = keeperFor(width, height);
      if (isInterlaced && keeper.scale > 1) {
        throw problemError('picture-interlaced', { width, height, mostMegapixels: MOST_KEPT_MEGAPIXELS });
      }
      readPngPixels(bytes, chunks, keeper.take);
      return { picture: keeper.picture, scale: keeper.scale, width, height };
    }
    case 'JPEG': {
      const jpeg = readJpegSegments(bytes);
      const { width, height } = jpeg.frame;
      if (comesInPasses(jpeg) && width * height > MOST_KEPT_MEGAPIXELS * 1e6) {
        throw problemError('photo-in-passes', { width, height, mostMegapixels: MOST_KEPT_MEGAPIXELS });
      }
      const keeper = keeperFor(width, height);
      readJpegPixels(jpeg, keeper.take);
      const isTurned = jpeg.orientation >= 5;
      return {
        picture: upright(keeper.picture, jpeg.orientation),
        scale: keeper.scale,
        width: isTurned ? height : width,
        height: isTurned ? width : height,
      };
    }
    case 'PBM': {
      const header = readPbmHeader(bytes);
      const { width, height } = header;
      const keeper = keeperFor(width, height);
      readPbmPixels(bytes, header, keeper.take);
      return { picture: keeper.picture, scale: keeper.scale, width, height };
    }
    case 'WebP':
    case 'BMP':
    case 'SVG':
      throw problemError('photo-only-in-window', { kind: file.kind });
  }
}

function keeperFor(width: number, height: number): Keeper & { readonly scale: 1 | 2 } {
  const isLarge = width * height > MOST_KEPT_MEGAPIXELS * 1e6;
  const keeper = isLarge ? keepHalf(width, height) : keepAll(width, height);
  return { ...keeper, scale: isLarge ? 2 : 1 };
}
