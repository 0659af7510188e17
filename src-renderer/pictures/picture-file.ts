/** A picture file that was dropped, pasted or chosen: its bytes, and what it is called. */
import { problemError } from '@shared/problem/index.ts';

/** No picture file that is read is longer. */
const MOST_PICTURE_BYTES = 64 * 1024 * 1024;

/** Throws `file-too-large` before anything is read. */
export async function bytesOfFile(file: File): Promise<Uint8Array<ArrayBuffer>> {
  if (file.size > MOST_PICTURE_BYTES) {
    throw problemError('file-too-large', { bytes: file.size, most: MOST_PICTURE_BYTES }, file.name);
  }
  return new Uint8Array(await file.arrayBuffer());
}

/** `lighthouse.png` → `lighthouse`. */
export function titleOf(name: string): string {
  return name.replace(/\.[^.]+$/, '') || name;
}
