/**
 * Picture files, looked at and decoded beside the window.
 *
 * What a file says of itself is checked first, so that nothing is decoded that
 * is too large, cut off, animated, contradicts itself or could do more than be
 * looked at. An SVG is drawn as an image from its own text, never as part of the
 * page: as an image it runs nothing and fetches nothing.
 */
import { at } from '@shared/problem/index.ts';
import type { Picture, PictureKind } from '@shared/reading/index.ts';
import { drawnSvg } from './decoding/draw-svg.ts';
import { decodedWithin } from './decoding/limited.ts';
import type { GivenPicture } from './given.ts';
import { getReady, keepDecoder, takeDecoder } from './made-ready.ts';
import { reduced } from './small-canvas.ts';

/** What a picture of cells becomes, and getting ready for one: they come with the readers, which the window does not wait for. */
export { projectFromPicture } from '@shared/picture/index.ts';
export { getReady } from './made-ready.ts';

/** The picture as it is seen upright, and the kind of file it came from. */
export interface DecodedPicture extends Picture {
  readonly kind: PictureKind;
  /** All of it as a screen shows it, its longer side at most 2048 pixels. */
  readonly shown: ImageBitmap;
  /** A small copy of its pixels, for what is told at a glance; null: it is small itself. */
  readonly small: Picture | null;
}

/**
 * What can be made of a picture file; its bytes are handed over, and are in the
 * answer. Throws what `givenPicture` throws, or `work-stopped`; problems name the file.
 */
export async function lookAtPicture(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<GivenPicture> {
  // Where it was dropped or pasted, nothing is ready yet.
  getReady();
  const decoder = takeDecoder();
  try {
    const given = await decodedWithin(decoder, { kind: 'given', bytes, name });
    // Its pixels are mostly wanted next.
    keepDecoder(decoder);
    return given;
  } catch (thrown) {
    throw at(name, thrown);
  }
}

/**
 * Decodes PNG, JPEG, WebP, BMP, SVG and PBM, whatever the file is called; `name`
 * stands in the problems. The bytes are handed over, and gone after. Throws what `checkPictureFile` and `readSvg` throw,
 * `picture-broken` where the browser cannot make a picture of it, or
 * `work-stopped`.
 */
export async function decodePicture(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<DecodedPicture> {
  const decoder = takeDecoder();
  try {
    const decoded = await decodedWithin(decoder, { kind: 'pixels', bytes });
    decoder.terminate();
    const { kind } = decoded;
    if (kind !== 'SVG') {
      const { picture, shown, small } = decoded;
      return { ...picture, kind, shown, small };
    }
    const picture = await drawnSvg(decoded.drawing);
    return { ...picture, kind, ...reduced(picture) };
  } catch (thrown) {
    throw at(name, thrown);
  }
}
