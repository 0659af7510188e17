/**
 * Pictures of work that is kept, as windows gave them: each comes once, and the
 * work that names it afterwards is put together with it before it is written.
 *
 * They lie in the memory of this run alone. A file of kept work is whole in
 * itself, so that nothing on the disk depends on anything beside it; what is
 * not here any more, or was lost with a run, is asked for again.
 */
import { createHash } from 'node:crypto';
import { problemError } from '@shared/problem/index.ts';
import { hashesIn, MOST_UNDERLAY_LETTERS_IN_ALL, picturesPutBack } from '@shared/project/index.ts';

/** Letters of all pictures that are held: those of two full projects, and the oldest go. */
const MOST_LETTERS = 2 * MOST_UNDERLAY_LETTERS_IN_ALL;
/** Of a text with its pictures: as many as the contract takes of one. */
const MOST_TEXT_LETTERS = 60_000_000;

export interface KeptPictures {
  /** Gives the hash that texts name it by. */
  take(given: { readonly window: string; readonly picture: string }): string;
  /** The hashes of pictures that the text names and that are not here. */
  missingIn(text: string): string[];
  /** The text with its pictures. Throws `RangeError` if some are not here, and `file-too-large`. */
  putBack(text: string): string;
  /** The window has no work that is kept any more. */
  forget(window: string): void;
}

export function keptPictures(most = MOST_LETTERS): KeptPictures {
  const byHash = new Map<string, { readonly window: string; readonly picture: string }>();
  let letters = 0;

  function remove(hash: string): void {
    letters -= byHash.get(hash)?.picture.length ?? 0;
    byHash.delete(hash);
  }

  return {
    take({ window, picture }) {
      const hash = createHash('sha256').update(picture).digest('hex');
      remove(hash);
      byHash.set(hash, { window, picture });
      letters += picture.length;
      for (const oldest of byHash.keys()) {
        if (letters <= most || oldest === hash) break;
        remove(oldest);
      }
      return hash;
    },
    missingIn: (text) => hashesIn(text).filter((hash) => !byHash.has(hash)),
    putBack(text) {
      // A picture may be named again and again: what comes of that is not made, if it is too long.
      let bytes = text.length;
      return picturesPutBack(text, (hash) => {
        const { picture } = byHash.get(hash) ?? {};
        bytes += picture?.length ?? 0;
        if (bytes > MOST_TEXT_LETTERS) throw problemError('file-too-large', { bytes, most: MOST_TEXT_LETTERS });
        return picture;
      });
    },
    forget(window) {
      for (const [hash, given] of byHash) if (given.window === window) remove(hash);
    },
  };
}
