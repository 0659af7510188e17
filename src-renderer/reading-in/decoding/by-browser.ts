/** Pictures that the browser decodes, once their files were checked. */
import { problemError } from '@shared/problem/index.ts';
import type { Picture, PictureFile } from '@shared/reading/index.ts';

/** A file of pixels, as it was checked. */
export type Checked = Exclude<PictureFile, { readonly kind: 'SVG' }>;

/**
 * Turned upright as the camera noted, in sRGB. Throws `picture-broken` where the
 * browser cannot make a picture of it, or makes one of another size than the file
 * was checked for.
 */
export async function decodedByBrowser(bytes: Uint8Array, { kind, width, height }: Checked): Promise<Picture> {
  const image = await createImageBitmap(new Blob([bytes.slice()], { type: `image/${kind.toLowerCase()}` }), {
    imageOrientation: 'from-image',
  }).catch(() => {
    throw problemError('picture-broken', { kind, damage: 'pixels' });
  });
  try {
    const isAsChecked = image.width === width && image.height === height;
    const isTurned = image.width === height && image.height === width;
    if (!isAsChecked && !isTurned) throw problemError('picture-broken', { kind, damage: 'second-header' });
    return pixelsOf(image);
  } finally {
    image.close();
  }
}

function pixelsOf(image: ImageBitmap): Picture {
  const { width, height } = image;
  const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('No 2D canvas');
  context.drawImage(image, 0, 0);
  return { width, height, rgba: context.getImageData(0, 0, width, height).data };
}
