/** Measures drawings beside the page, one message a drawing. */
import { measure } from '@shared/repeat/index.ts';
import type { Answer, Question } from './beside.ts';

addEventListener('message', ({ data: { id, grid, ground } }: MessageEvent<Question>) => {
  const answer: Answer = { id, measure: measure(grid, ground) };
  postMessage(answer);
});
