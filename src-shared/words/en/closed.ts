/** The closed view: the piece joined into its tube. */
import { label, type FinishedFace, type Slot } from '../../bed/index.ts';
import { capitalised } from '../marked.ts';

const FACING: { readonly [Face in FinishedFace]: string } = { knit: 'The knit side', purl: 'The purl side' };

export const closed = {
  laidOpen: 'The piece is opened flat.',
  title: (name: string): string => `${capitalised(name)}, seamed, as worn`,
  /** How it stands, in whole degrees that the seam is to the right of the middle. */
  turned(degrees: number): string {
    if (degrees === 0) return 'the seam in the middle';
    if (Math.abs(degrees) === 180) return 'the seam at the back';
    return `turned ${Math.abs(degrees)}° to the ${degrees < 0 ? 'left' : 'right'}`;
  },
  caption: (face: FinishedFace, turned: string): string => `${FACING[face]}, seen from outside; ${turned}.`,
  /** The drawing, to assistive technology. */
  label: (name: string): string => `${name}, seamed, as worn`,
  help: 'Left and right arrow keys turn the piece, Page Up and Page Down turn it further; Home brings the seam to the middle, End to the back. Up and down arrow keys move along a piece that is larger than the view.',
  /** Where it stands and what faces us, as it is turned. */
  turnedTo: (turned: string, needle: Slot | null): string =>
    needle === null ? capitalised(turned) : `${capitalised(turned)} · needle ${label(needle)} in front`,
  seam: 'seam',
  /** After the caption, where some rows are off. */
  zigzag: 'The seam is a zigzag where an all-over does not match across it.',
  /** Beside the zigzag: `2 too many`, or that it is a mirror image (null). */
  broken: (by: number | null): string =>
    by === null ? 'mirror image' : `${Math.abs(by)} too ${by > 0 ? 'many' : 'few'}`,
};
