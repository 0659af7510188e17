/** Seals and opens beside the page, one message each. */
import { sealingHere, type SealingAnswer, type SealingQuestion } from './sealing.ts';

addEventListener('message', ({ data: question }: MessageEvent<SealingQuestion>) => {
  void answer(question).then((done) => {
    const said: SealingAnswer = { id: question.id, done };
    postMessage(said, done instanceof Uint8Array ? { transfer: [done.buffer] } : {});
  });
});

async function answer(question: SealingQuestion): Promise<unknown> {
  const { key, about } = question;
  try {
    if (question.do === 'seal') return await sealingHere.seal(key, about, question.value);
    return await sealingHere.open(key, about, question.sealed);
  } catch {
    return null;
  }
}
