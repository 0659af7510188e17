/** Seals and opens off the page's thread, one message each. */
import type { ReadBody } from '@shared/host/sealed/body.ts';
import type { Bytes } from '@shared/host/sealed/seal.ts';
import { sealingHere, type SealingAnswer, type SealingQuestion } from './sealing.ts';

addEventListener('message', ({ data: question }: MessageEvent<SealingQuestion>) => {
  void answer(question).then((done) => {
    const answer: SealingAnswer = { id: question.id, done };
    const moved = done === null || done === true || done instanceof Blob ? null : done.buffer;
    postMessage(answer, moved ? { transfer: [moved] } : {});
  });
});

async function answer(question: SealingQuestion): Promise<Bytes | Blob | ReadBody | true | null> {
  if (question.do === 'answer') return true;
  const { key, about } = question;
  try {
    if (question.do !== 'open') {
      const sealed = await sealingHere.seal(key, about, question.value);
      return question.do === 'send' ? new Blob([sealed]) : sealed;
    }
    return await sealingHere.open(key, about, question.sealed);
  } catch {
    return null;
  }
}
