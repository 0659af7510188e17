/** Whether a picture that came with a file may be shown: looked at before anything decodes it. */
import { outcome, problemError, type Problem } from '@shared/problem/index.ts';
import { checkPictureFile } from '@shared/reading/index.ts';
import { UNDERLAY_SIDE, type Underlay } from '@shared/motif/index.ts';

/** What is wrong with the picture, or null: it is whole, still, and no larger than the program keeps. */
export function problemInUnderlay({ picture }: Pick<Underlay, 'picture'>): Problem | null {
  const checked = outcome(() => {
    const bytes = bytesOf(picture);
    const file = checkPictureFile(bytes);
    if (file.kind !== 'PNG' && file.kind !== 'JPEG') throw problemError('photo-unknown-kind', {});
    const { width, height } = file;
    if (Math.max(width, height) > UNDERLAY_SIDE) {
      const most = { mostWidth: UNDERLAY_SIDE, mostHeight: UNDERLAY_SIDE };
      throw problemError('picture-too-large', { width, height, ...most });
    }
  });
  return checked.ok ? null : checked.problem;
}

/** The bytes in a data URL of base64. Throws `picture-broken`. */
function bytesOf(picture: string): Uint8Array {
  try {
    return Uint8Array.from(atob(picture.slice(picture.indexOf(',') + 1)), (letter) => letter.charCodeAt(0));
  } catch {
    throw problemError('picture-broken', {
      kind: picture.startsWith('data:image/png') ? 'PNG' : 'JPEG',
      damage: 'header',
    });
  }
}
