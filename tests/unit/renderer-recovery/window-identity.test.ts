/** Which window a page is: its own after it is loaded again, another than the tab it was copied from. */
import { describe, expect, it } from 'vitest';
import { windowIdentity } from '../../../src-renderer/recovery/window-identity.ts';

/** Locks as the Web Locks API has them: one holder, the next in line after it, a signal ends the wait. */
class Locks {
  readonly #held = new Map<string, string>();
  readonly #lines = new Map<string, (() => void)[]>();

  of(page: string): Pick<LockManager, 'request' | 'query'> {
    const request = (name: string, { signal }: LockOptions, work: () => unknown): Promise<unknown> =>
      new Promise((_resolve, reject) => {
        const grant = (): void => {
          this.#held.set(name, page);
          void work();
        };
        if (!this.#held.has(name)) return grant();
        this.#lines.set(name, [...(this.#lines.get(name) ?? []), grant]);
        signal?.addEventListener('abort', () => {
          this.#lines.set(name, this.#lines.get(name)?.filter((other) => other !== grant) ?? []);
          reject(signal.reason as Error);
        });
      });
    const query = async (): Promise<LockManagerSnapshot> => ({
      held: [...this.#held.keys()].map((name) => ({ name, mode: 'exclusive', clientId: '' })),
      pending: [],
    });
    return { request, query } as Pick<LockManager, 'request' | 'query'>;
  }

  /** The page is gone: its locks go to the next in line. */
  leave(page: string): void {
    for (const [name, holder] of [...this.#held]) {
      if (holder !== page) continue;
      this.#held.delete(name);
      this.#lines.get(name)?.shift()?.();
    }
  }
}

class Memory {
  readonly #items: Map<string, string>;
  constructor(copied?: Memory) {
    this.#items = new Map(copied ? copied.#items : []);
  }
  getItem(key: string): string | null {
    return this.#items.get(key) ?? null;
  }
  setItem(key: string, value: string): void {
    this.#items.set(key, value);
  }
}

let ids = 0;
const newId = (): string => `made-${String(ids++).padStart(8, '0')}`;

describe('a window', () => {
  it('is the same when it is loaded again, though the page before lets go late', async () => {
    const [locks, session, local] = [new Locks(), new Memory(), new Memory()];
    const first = await windowIdentity({ session, local, locks: locks.of('first'), newId });
    const again = windowIdentity({ session, local, locks: locks.of('again'), newId });
    await Promise.resolve();
    locks.leave('first');
    expect((await again).window).toBe(first.window);
    expect((await again).browser).toBe(first.browser);
  });

  it('that was duplicated is another, and goes on being it', async () => {
    const [locks, session, local] = [new Locks(), new Memory(), new Memory()];
    const first = await windowIdentity({ session, local, locks: locks.of('first'), newId });
    const copied = new Memory(session);
    const copy = await windowIdentity({ session: copied, local, locks: locks.of('copy'), newId });
    expect(copy.window).not.toBe(first.window);
    expect(copy.browser).toBe(first.browser);
    expect(new Set(await first.open())).toEqual(new Set([first.window, copy.window]));
    locks.leave('copy');
    const copyAgain = await windowIdentity({ session: copied, local, locks: locks.of('copy again'), newId });
    expect(copyAgain.window).toBe(copy.window);
  });

  it('knows which windows of its browser are open', async () => {
    const [locks, local] = [new Locks(), new Memory()];
    const one = await windowIdentity({ session: new Memory(), local, locks: locks.of('one'), newId });
    const two = await windowIdentity({ session: new Memory(), local, locks: locks.of('two'), newId });
    expect(new Set(await one.open())).toEqual(new Set([one.window, two.window]));
    locks.leave('two');
    expect(await one.open()).toEqual([one.window]);
  });

  it.each(['', 'X', 'a/b', '../../etc', 'a'.repeat(65)])('takes %j in its storage for no name', async (stored) => {
    const [locks, session] = [new Locks(), new Memory()];
    session.setItem('walewright-window', stored);
    const { window } = await windowIdentity({ session, local: null, locks: locks.of('page'), newId });
    expect(window).toMatch(/^made-/);
  });

  it('without storage or locks is one by itself', async () => {
    const one = await windowIdentity({ session: null, local: null, locks: null, newId });
    const two = await windowIdentity({ session: null, local: null, locks: null, newId });
    expect(one.window).not.toBe(two.window);
    expect(one.browser).not.toBe(two.browser);
    expect(await one.open()).toEqual([one.window]);
  });
});
