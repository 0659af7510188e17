/** Pictures that the browser decodes, once their files were checked. */
import { problemError } from '@shared/problem/index.ts';
import { blankPicture, type Picture, type PictureFile } from '@shared/reading/index.ts';
import { reducedImage, type Reduced } from '../small-canvas.ts';

const STRIP_ROWS = 256;

/** A file of pixels, as it was checked. */
export type Checked = Exclude<PictureFile, { readonly kind: 'SVG' }>;

/**
 * Turned upright as the camera noted, in sRGB. Throws `picture-broken` where the
 * browser cannot make a picture of it, or makes one of another size than the file
 * was checked for.
 */
export async function decodedByBrowser(
  bytes: Uint8Array<ArrayBuffer>,
  { kind, width, height }: Checked,
): Promise<{ readonly picture: Picture } & Reduced> {
  const image = await createImageBitmap(new Blob([bytes], { type: `image/${kind.toLowerCase()}` }), {
    imageOrientation: 'from-image',
  }).catch(() => {
    throw problemError('picture-broken', { kind, damage: 'pixels' });
  });
  try {
    const isAsChecked = image.width === width && image.height === height;
    const isTurned = image.width === height && image.height === width;
    if (!isAsChecked && !isTurned) throw problemError('picture-broken', { kind, damage: 'second-header' });
    return { picture: pixelsOf(image), ...reducedImage(image) };
  } finally {
    image.close();
  }
}

/** Strip by strip: a canvas for all of it would hold all of it a third time. */
function pixelsOf(image: ImageBitmap): Picture {
  const { width, height } = image;
  const rows = Math.min(STRIP_ROWS, height);
  const context = new OffscreenCanvas(width, rows).getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('No 2D canvas');
  // Nothing of the strip before shows through.
  context.globalCompositeOperation = 'copy';
  const picture = blankPicture(width, height);
  for (let top = 0; top < height; top += rows) {
    context.drawImage(image, 0, -top);
    const { data } = context.getImageData(0, 0, width, Math.min(rows, height - top));
    picture.rgba.set(data, top * width * 4);
  }
  return picture;
}
