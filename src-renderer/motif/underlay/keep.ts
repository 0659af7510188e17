/** A picture made small enough to be kept in the project. */
import { problemError } from '@shared/problem/index.ts';
import { MOST_UNDERLAY_LETTERS, UNDERLAY_SIDE } from '@shared/motif/index.ts';
import { decodePicture } from '../../pictures/decode.ts';
import { smallCanvas } from '../../pictures/small-canvas.ts';
import type { KeptPicture } from './placing.ts';

/** Qualities of JPEG, tried until the picture is small enough; the last one always was. */
const QUALITIES = [0.85, 0.7, 0.5, 0.3];

/**
 * The picture as the data URL of a JPEG, at most {@link UNDERLAY_SIDE} pixels a
 * side, on white where it is open. Throws what `decodePicture` throws.
 */
export async function keptPicture(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<KeptPicture> {
  const small = smallCanvas(await decodePicture(bytes, name), UNDERLAY_SIDE);
  const { width, height } = small;
  const context = small.getContext('2d');
  if (!context) throw new Error('No 2D canvas');
  context.globalCompositeOperation = 'destination-over';
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, width, height);
  for (const quality of QUALITIES) {
    const picture = await dataUrl(await small.convertToBlob({ type: 'image/jpeg', quality }));
    if (picture.length <= MOST_UNDERLAY_LETTERS) return { picture, width, height };
  }
  throw problemError('underlays-too-large', { mostMegabytes: MOST_UNDERLAY_LETTERS / 1e6 }, name);
}

function dataUrl(blob: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(reader.result as string);
    reader.onerror = () => reject(reader.error ?? new Error('A picture could not be read back'));
    reader.readAsDataURL(blob);
  });
}
