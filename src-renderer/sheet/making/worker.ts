/** Lays out a sheet and draws its pages off the page's thread, one message a page. */
import { drawnPages } from './drawn-pages.ts';
import type { Answer, Question } from './sheet-client.ts';

addEventListener('message', ({ data: { id, wanted } }: MessageEvent<Question>) => {
  for (const drawn of drawnPages(wanted)) postMessage({ id, drawn } satisfies Answer);
});
