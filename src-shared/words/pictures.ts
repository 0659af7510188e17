/** What the dialogs say that pictures are read in by. They come when they are first asked for, and their words with them. */
import { fromPicture } from './en/from-picture.ts';
import { readingIn } from './en/reading-in.ts';

export const pictureWords = { readingIn, fromPicture };
