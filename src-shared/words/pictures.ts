/** What is said where pictures are read in, and of what they left in doubt. It comes when it is first asked for, and its words with it. */
import { doubtsForm } from './en/doubts-form.ts';
import { fromPicture } from './en/from-picture.ts';
import { readingIn } from './en/reading-in.ts';

export const pictureWords = { readingIn, fromPicture, doubtsForm };
