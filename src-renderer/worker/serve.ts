/** The worker's side of `WorkerClient`: what a worker's script calls. */
import type { Answer, Question } from './client.ts';

/** Answers each question with the parts of it, one message a part. */
export function serve<Wanted, Part>(parts: (wanted: Wanted) => Iterable<Part>): void {
  addEventListener('message', ({ data: { id, wanted } }: MessageEvent<Question<Wanted>>) => {
    const say = (part: Part | null): void => postMessage({ id, part } satisfies Answer<Part>);
    for (const part of parts(wanted)) say(part);
    say(null);
  });
}
