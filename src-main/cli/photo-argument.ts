/** Reading the photo or scan that a command is about. */
import { at } from '@shared/problem/index.ts';
import type { DecodedPhoto } from '@shared/reading/index.ts';
import { nodeFiles, readWhole } from '../services/files/index.ts';
import { readPhotoSafely } from '../services/pictures/index.ts';

/** The photo as it is seen upright. Problems name the file. */
export async function readPhoto(path: string): Promise<DecodedPhoto> {
  const bytes = await readWhole(nodeFiles, path);
  return readPhotoSafely(bytes).catch((thrown: unknown) => {
    throw at(path, thrown);
  });
}
