/** Measures drawings off the page's thread, one message a drawing. */
import { measure } from '@shared/motif/repeat/index.ts';
import type { Answer, Question } from './measure-client.ts';

addEventListener('message', ({ data: { id, grid, ground } }: MessageEvent<Question>) => {
  const answer: Answer = { id, measure: measure(grid, ground) };
  postMessage(answer);
});
