/** A picture copied for a worker, a little at a time. */
import type { Picture } from '@shared/reading/index.ts';
import type { HandedOver } from '../worker/index.ts';

/** Copied in one go: to copy all of many megapixels at once holds up the window for longer than a frame. */
const BYTES_A_TURN = 2 ** 22;

/** Its pixels and nothing else, to be handed over: the picture itself stays. */
export async function copiedPicture({ width, height, rgba }: Picture): Promise<HandedOver<Picture>> {
  const copy = new Uint8ClampedArray(rgba.length);
  for (let from = 0; from < rgba.length; from += BYTES_A_TURN) {
    if (from > 0) await new Promise((resolve) => setTimeout(resolve));
    copy.set(rgba.subarray(from, from + BYTES_A_TURN), from);
  }
  return { value: { width, height, rgba: copy }, transfer: [copy.buffer] };
}
