/** Turns a picture into cells beside the window, so that dragging the crop never waits for it. */
import { problemOf } from '@shared/problem/index.ts';
import { onPaper, pictureToCells, type Picture, type PictureOptions } from '@shared/reading/index.ts';
import type { Answered, Asked } from './messages.ts';

/** Milliseconds of work after which messages are let in. */
const SLICE = 12;

let picture: Picture | null = null;
/** The job that is still wanted; 0 for none. */
let wanted = 0;

const answer = (answered: Answered): void => (self as unknown as MessagePort).postMessage(answered);
const messagesIn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

self.addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  switch (data.kind) {
    case 'picture':
      picture = onPaper(data.picture);
      break;
    case 'read':
      wanted = data.job;
      void read(data.job, data.options);
      break;
    case 'stop':
      wanted = 0;
  }
});

async function read(job: number, options: PictureOptions): Promise<void> {
  // Of several that came while one slice ran, only the last is begun.
  await messagesIn();
  if (wanted !== job || picture === null) return;
  try {
    const steps = pictureToCells(picture, options);
    let since = performance.now();
    for (;;) {
      const step = steps.next();
      if (step.done) return answer({ kind: 'read', job, motif: step.value });
      if (performance.now() - since < SLICE) continue;
      answer({ kind: 'progress', job, progress: step.value });
      await messagesIn();
      if (wanted !== job) return;
      since = performance.now();
    }
  } catch (thrown) {
    answer({ kind: 'problem', job, problem: problemOf(thrown) });
  }
}
