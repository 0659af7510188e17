/** Reads pictures that a command is given, in a thread of its own. */
import { readMotifPicture } from '@shared/picture/index.ts';
import { decodePhoto } from '@shared/reading/index.ts';
import { answerOnce } from '../worker/index.ts';
import type { PictureAsked } from './read.ts';

void answerOnce<PictureAsked>(async (asked) =>
  asked.kind === 'photo' ? decodePhoto(asked.bytes) : readMotifPicture(asked.bytes, asked.options),
);
