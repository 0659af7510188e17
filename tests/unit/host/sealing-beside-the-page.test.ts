/** What is large is sealed beside the page, so that the page stays free. */
import { describe, expect, it } from 'vitest';
import { sealingHere, sealingInWorker, type SealingHelper } from '../../../src-renderer/host/sealing.ts';

describe('what is large', () => {
  const text = 'x'.repeat(600_000);

  /** A helper that works as ours does, and notes what it is asked; or that fails. */
  function helperThat(works: boolean): { helper: SealingHelper; asked: string[] } {
    const asked: string[] = [];
    const helper: SealingHelper = {
      onmessage: null,
      onerror: null,
      postMessage(message, transfer) {
        asked.push(message.do);
        if (!works) return void helper.onerror?.({} as ErrorEvent);
        const question = structuredClone(message, { transfer });
        const { id } = question;
        if (question.do === 'answer') return void helper.onmessage?.({ data: { id, done: true } } as MessageEvent);
        const { key, about } = question;
        const sealed = async (): Promise<unknown> => {
          if (question.do === 'open') return sealingHere.open(key, about, question.sealed);
          const bytes = await sealingHere.seal(key, about, question.value);
          return question.do === 'send' ? new Blob([bytes]) : bytes;
        };
        const done = sealed();
        void done.then((found) => helper.onmessage?.({ data: { id, done: found } } as MessageEvent));
      },
    };
    return { helper, asked };
  }

  async function key() {
    const made = await crypto.subtle.generateKey({ name: 'AES-GCM', length: 256 }, false, ['encrypt', 'decrypt']);
    return made;
  }

  it('is sealed and opened beside the page, what is small in it', async () => {
    const { helper, asked } = helperThat(true);
    const sealing = sealingInWorker(() => helper);
    const sealed = await sealing.seal(await key(), 'x', { text: 'small' });
    expect(asked).toEqual([]);
    const k = await key();
    const large = await sealing.seal(k, 'x', { deep: [{ text }] });
    expect(await sealing.open(k, 'x', large.slice())).toMatchObject({ value: { deep: [{ text }] } });
    expect(await sealing.open(k, 'y', large)).toBeNull();
    expect(large.buffer.byteLength, 'handed over, not copied').toBe(0);
    expect(asked).toEqual(['seal', 'answer', 'open', 'answer', 'open']);
    expect(sealed.length).toBeLessThan(100);
  });

  it('is sent as a blob, of which the page never has the bytes; what is small as it is', async () => {
    const { helper, asked } = helperThat(true);
    const sealing = sealingInWorker(() => helper);
    const k = await key();
    expect(await sealing.sealToSend(k, 'x', { text: 'small' })).toBeInstanceOf(Uint8Array);
    const large = await sealing.sealToSend(k, 'x', { text });
    expect(asked).toEqual(['send']);
    if (!(large instanceof Blob)) throw new Error('No blob');
    const sent = new Uint8Array(await large.arrayBuffer());
    expect(await sealingHere.open(k, 'x', sent)).toMatchObject({ value: { text } });
  });

  it.each([
    ['cannot be had', () => Promise.reject(new Error('no workers here'))],
    ['fails', async () => helperThat(false).helper],
  ])('is sealed by the page itself where a helper %s', async (_case, make) => {
    const helper = await make().catch(() => null);
    const sealing = sealingInWorker(() => {
      if (helper === null) throw new Error('no workers here');
      return helper;
    });
    const k = await key();
    for (let times = 0; times < 2; times++) {
      expect(await sealing.open(k, 'x', await sealing.seal(k, 'x', text))).toMatchObject({ value: text });
      const sent = (await sealing.sealToSend(k, 'x', text)) as Uint8Array<ArrayBuffer>;
      expect(await sealing.open(k, 'x', sent)).toMatchObject({ value: text });
    }
  });
});
