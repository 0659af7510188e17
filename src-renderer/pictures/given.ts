/** A picture file that was opened, dropped or pasted, and what can be made of it. */
import { readMotifPicture, type MotifPicture } from '@shared/picture/index.ts';
import { at, outcome, problemError, type ProblemCode } from '@shared/problem/index.ts';
import { checkPictureFile } from '@shared/reading/index.ts';

export interface GivenPicture {
  readonly name: string;
  /** To be handed over to be decoded, once. */
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** The motif, if the picture can have one pixel for each cell. */
  readonly cells: MotifPicture | null;
  /** True if nothing else is likely: then nobody is asked what is on it. */
  readonly isPlainlyCells: boolean;
}

/** Pictures of cells are small. Above this many pixels a side one may as well be a scan or a drawing. */
const PLAINLY_CELLS = 100;

/** What keeps a good picture from being one of cells. */
const NO_CELLS: readonly ProblemCode[] = ['picture-too-large', 'picture-too-many-colours'];

/**
 * Throws what `checkPictureFile` throws for a picture that nothing can be made
 * of, and for a small one what `readMotifPicture` throws.
 */
export function givenPicture(bytes: Uint8Array<ArrayBuffer>, name: string): GivenPicture {
  try {
    const file = checkPictureFile(bytes);
    if (file.kind !== 'PNG' && file.kind !== 'PBM') return { name, bytes, cells: null, isPlainlyCells: false };
    const read = outcome(() => readMotifPicture(bytes));
    if (read.ok) {
      const { width, height } = read.value.grid;
      return { name, bytes, cells: read.value, isPlainlyCells: Math.max(width, height) <= PLAINLY_CELLS };
    }
    const isSmall = file.kind === 'PNG' && Math.max(file.width, file.height) <= PLAINLY_CELLS;
    if (isSmall || !NO_CELLS.includes(read.problem.code)) {
      throw problemError(read.problem.code, read.problem.facts);
    }
    return { name, bytes, cells: null, isPlainlyCells: false };
  } catch (thrown) {
    throw at(name, thrown);
  }
}
