/**
 * Reading pictures that anybody may have made. What is large is read in a
 * thread, which is ended at its limit; what its own header and length bound to
 * little work is read at once, since starting a thread takes longer.
 */
import {
  isPbm,
  isPng,
  readMotifPicture,
  readPbmHeader,
  readPngChunks,
  type MotifPicture,
  type MotifPictureOptions,
} from '@shared/picture/index.ts';
import { checkPictureFile, decodePhoto, type DecodedPhoto } from '@shared/reading/index.ts';
import { inWorker, type Limit, type ThreadEntry } from '../worker/index.ts';

export type PictureAsked =
  | { readonly kind: 'photo'; readonly bytes: Uint8Array }
  | { readonly kind: 'motif'; readonly bytes: Uint8Array; readonly options: MotifPictureOptions };

/** At most this is taken for any picture, or it is refused. */
const PICTURE_LIMIT: Limit = { work: 'picture', seconds: 5, megabytes: 500 };

/** Pixels, and bytes of the file, up to which a picture is read without a thread: some 50 ms and 20 MB. */
const FEW_PIXELS = 1_000_000;
const FEW_BYTES = 4_000_000;

const THREAD: ThreadEntry = { source: new URL('./thread.ts', import.meta.url), built: 'picture-thread' };

/** A photo or scan, upright. Throws what `decodePhoto` throws, or `work-stopped`. The bytes are gone afterwards. */
export async function readPhotoSafely(bytes: Uint8Array<ArrayBuffer>): Promise<DecodedPhoto> {
  const file = checkPictureFile(bytes);
  if (file.kind === 'SVG' || isSmall(bytes, file)) return decodePhoto(bytes);
  return (await inWorker(THREAD, { kind: 'photo', bytes } satisfies PictureAsked, PICTURE_LIMIT, [
    bytes.buffer,
  ])) as DecodedPhoto;
}

/** A motif. Throws what `readMotifPicture` throws, or `work-stopped`. */
export async function readMotifSafely(bytes: Uint8Array, options: MotifPictureOptions): Promise<MotifPicture> {
  const size = isPng(bytes) ? readPngChunks(bytes).header : isPbm(bytes) ? readPbmHeader(bytes) : null;
  if (size === null || isSmall(bytes, size)) return readMotifPicture(bytes, options);
  return (await inWorker(
    THREAD,
    { kind: 'motif', bytes, options } satisfies PictureAsked,
    PICTURE_LIMIT,
  )) as MotifPicture;
}

function isSmall(bytes: Uint8Array, { width, height }: { readonly width: number; readonly height: number }): boolean {
  return width * height <= FEW_PIXELS && bytes.length <= FEW_BYTES;
}
