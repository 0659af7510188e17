/**
 * Reads charts away from the window's thread. Between steps it lets messages
 * in: a newer question, or none any more, ends the work on the older one.
 */
import { problemOf } from '@shared/problem/index.ts';
import { photoOf, type Photo } from '@shared/reading/index.ts';
import { answerTo, type Question } from './answer.ts';
import type { FromWorker, ToWorker } from './messages.ts';

/** Worked in one go before messages are let in; short beside a frame. */
const AT_ONE_GO_MS = 12;

const port = self as unknown as { postMessage(message: FromWorker): void };
let photo: Photo | null = null;
let asked = 0;

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'photo') photo = photoOf(data.picture);
  else if (data.kind === 'stop') asked = 0;
  else {
    asked = data.id;
    void work(data.id, data.question);
  }
});

async function work(id: number, question: Question): Promise<void> {
  if (!photo) return;
  try {
    const steps = answerTo(photo, question);
    let since = performance.now();
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) {
        port.postMessage({ kind: 'answer', id, answer: step.value });
        return;
      }
      if (performance.now() - since < AT_ONE_GO_MS) continue;
      port.postMessage({ kind: 'progress', id, progress: step.value });
      await new Promise((resolve) => setTimeout(resolve));
      if (asked !== id) return;
      since = performance.now();
    }
  } catch (thrown) {
    port.postMessage({ kind: 'problem', id, problem: problemOf(thrown) });
  }
}
