/** The worker that decodes pictures for the window answers again and again, and is ended at its limit. */
import { describe, expect, it } from 'vitest';
import { ProblemError } from '@shared/problem/index.ts';
import { decodedWithin, type DecodingWorker } from '../../../src-renderer/pictures/decoding/limited.ts';
import type { Asked, Decoded, FromWorker } from '../../../src-renderer/pictures/decoding/messages.ts';

/** A worker that says what it is told to, and remembers whether it was ended. */
class MadeUpWorker implements DecodingWorker {
  isEnded = false;
  private readonly listeners = new Map<string, (event: Event) => void>();

  constructor(private readonly says: readonly FromWorker[]) {}

  addEventListener(kind: string, listener: unknown, options?: unknown): void {
    this.listeners.set(kind, listener as (event: Event) => void);
    const { signal } = options as { signal: AbortSignal };
    signal.addEventListener('abort', () => this.listeners.delete(kind));
  }
  /** How many listen to it. */
  get heard(): number {
    return this.listeners.size;
  }
  postMessage(): void {
    for (const data of this.says) this.tell('message', { data });
  }
  tell(kind: string, event: object): void {
    this.listeners.get(kind)?.(event as Event);
  }
  terminate(): void {
    this.isEnded = true;
  }
}

const asked = { kind: 'pixels', bytes: new Uint8Array() } as const satisfies Asked;
const picture = { width: 1, height: 1, rgba: Uint8ClampedArray.of(1, 2, 3, 255) };
const decoded: Decoded = { kind: 'PNG', picture, shown: {} as ImageBitmap, small: null };

describe('a picture that is decoded for the window', () => {
  it('comes back, and its worker is there for the next', async () => {
    const worker = new MadeUpWorker([{ kind: 'began' }, { kind: 'ended', outcome: { ok: true, value: decoded } }]);
    for (let time = 0; time < 2; time++) expect(await decodedWithin(worker, asked)).toBe(decoded);
    expect(worker.isEnded).toBe(false);
    expect(worker.heard).toBe(0);
  });

  it('is refused as the worker refuses it', async () => {
    const problem = { code: 'picture-empty', where: null, facts: {} } as const;
    const worker = new MadeUpWorker([{ kind: 'began' }, { kind: 'ended', outcome: { ok: false, problem } }]);
    await expect(decodedWithin(worker, asked)).rejects.toMatchObject({ problem });
    expect(worker.isEnded).toBe(true);
  });

  it('by a decoder that never ends is given up at the limit, and the worker ended', async () => {
    const worker = new MadeUpWorker([{ kind: 'began' }]);
    const thrown: unknown = await decodedWithin(worker, asked, 0.05).catch((error: unknown) => error);
    expect(thrown).toBeInstanceOf(ProblemError);
    expect((thrown as ProblemError).problem).toMatchObject({
      code: 'work-stopped',
      facts: { work: 'picture', limit: 'time', amount: 0.05 },
    });
    expect(worker.isEnded).toBe(true);
  });

  it('by a worker that cannot be loaded is an error, and no waiting', async () => {
    const worker = new MadeUpWorker([]);
    const waiting = decodedWithin(worker, asked);
    worker.tell('error', { message: 'not loaded' });
    await expect(waiting).rejects.toThrow('not loaded');
    expect(worker.isEnded).toBe(true);
  });
});
