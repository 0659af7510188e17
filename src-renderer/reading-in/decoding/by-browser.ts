/** Pictures that the browser decodes, once their files were checked. */
import { problemError } from '@shared/problem/index.ts';
import { MOST_KEPT_MEGAPIXELS, type Picture, type PictureFile } from '@shared/reading/index.ts';

type Checked = Exclude<PictureFile, { readonly kind: 'SVG' }>;

/**
 * Turned upright as the camera noted, in sRGB; of one with very many pixels each
 * 2 × 2 become one. Throws `picture-broken` where the browser cannot make a
 * picture of it, or makes one of another size than the file was checked for.
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
    const scale = width * height > MOST_KEPT_MEGAPIXELS * 1e6 ? 2 : 1;
    return pixelsOf(image, Math.ceil(image.width / scale), Math.ceil(image.height / scale));
  } finally {
    image.close();
  }
}

/** What the browser draws of `image` at that size. */
export function pixelsOf(image: CanvasImageSource, width: number, height: number): Picture {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('No 2D canvas');
  context.imageSmoothingQuality = 'high';
  context.drawImage(image, 0, 0, width, height);
  return { width, height, rgba: context.getImageData(0, 0, width, height).data };
}
