/**
 * A picture file, decoded by the browser.
 *
 * What a file says of itself is checked first, so that nothing is decoded that
 * is too large, cut off, animated or could do more than be looked at. An SVG is
 * drawn as an image from its own text, never as part of the page: as an image
 * it runs nothing and fetches nothing.
 */
import { readPbm } from '@shared/picture/index.ts';
import { at, problemError } from '@shared/problem/index.ts';
import {
  assertPhotoSize,
  checkPictureFile,
  pictureOfPixels,
  readSvg,
  type Picture,
  type PictureKind,
  type SvgDrawing,
} from '@shared/reading/index.ts';

/** The picture as it is seen upright, and the kind of file it came from. */
export interface DecodedPicture extends Picture {
  readonly kind: PictureKind;
}

/**
 * Decodes PNG, JPEG, WebP, SVG and PBM, whatever the file is called; `name`
 * stands in the problems. Throws what `checkPictureFile` and `readSvg` throw, or
 * `picture-broken` where the browser cannot make a picture of it.
 */
export async function decodePicture(bytes: Uint8Array, name: string): Promise<DecodedPicture> {
  try {
    const file = checkPictureFile(bytes);
    switch (file.kind) {
      case 'PBM':
        return { ...pictureOfPixels(readPbm(bytes, assertPhotoSize)), kind: file.kind };
      case 'SVG':
        return { ...(await drawn(readSvg(textOf(bytes)))), kind: file.kind };
      default:
        return { ...(await decoded(bytes, file.kind)), kind: file.kind };
    }
  } catch (thrown) {
    throw at(name, thrown);
  }
}

/** Turned upright as the camera noted, in sRGB. */
async function decoded(bytes: Uint8Array, kind: PictureKind): Promise<Picture> {
  const blob = new Blob([bytes.slice()], { type: `image/${kind.toLowerCase()}` });
  let image: ImageBitmap;
  try {
    image = await createImageBitmap(blob, { imageOrientation: 'from-image' });
  } catch {
    throw problemError('picture-broken', { kind, damage: 'pixels' });
  }
  try {
    return pixelsOf(image, image.width, image.height);
  } finally {
    image.close();
  }
}

function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw problemError('picture-broken', { kind: 'SVG', damage: 'encoding' });
  }
}

async function drawn({ text, width, height }: SvgDrawing): Promise<Picture> {
  const address = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
  try {
    const image = new Image(width, height);
    image.src = address;
    await image.decode().catch(() => {
      throw problemError('picture-broken', { kind: 'SVG', damage: 'drawing' });
    });
    return pixelsOf(image, width, height);
  } finally {
    URL.revokeObjectURL(address);
  }
}

function pixelsOf(image: CanvasImageSource, width: number, height: number): Picture {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('No 2D canvas');
  context.drawImage(image, 0, 0, width, height);
  return { width, height, rgba: context.getImageData(0, 0, width, height).data };
}
