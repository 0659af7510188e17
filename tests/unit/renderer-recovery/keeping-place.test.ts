/** Where unsaved work is kept: with the host, and in the browser's storage while there is none. */
import { beforeEach, describe, expect, it } from 'vitest';
import type { Method } from '@shared/host/index.ts';
import type { Outcome } from '@shared/problem/index.ts';
import {
  handOver,
  hostOrStorage,
  storedWork,
  type StoredWork,
  type WorkNow,
  type WorkToKeep,
} from '../../../src-renderer/recovery/index.ts';

const unreachable: Outcome<never> = { ok: false, problem: { code: 'host-unreachable', where: null, facts: {} } };
const full: Outcome<never> = { ok: false, problem: { code: 'disk-full', where: '/data', facts: {} } };

const WORK: WorkToKeep = {
  window: 'window-1',
  browser: 'browser-1',
  work: 'work-one',
  laying: null,
  edition: 1,
  keptAt: '2026-01-02T03:04:05.678Z',
  name: 'Sleeve',
  text: 'work',
  file: null,
};

let atHost: Map<string, WorkToKeep>;
let inStorage: Map<string, WorkToKeep | null>;
let asked: Method[];
let answer: Outcome<never> | null;
let isStorageFull: boolean;
beforeEach(() => {
  atHost = new Map();
  asked = [];
  inStorage = new Map();
  answer = null;
  isStorageFull = false;
});

const now = (given: Partial<WorkToKeep> = {}, since: WorkNow['since'] = null): WorkNow => ({
  window: WORK.window,
  work: WORK.work,
  since,
  whole: () => ({ ...WORK, ...given }),
});
const key = ({ window, work }: { window: string; work: string }): string => `${window} ${work}`;
const host = {
  call: (async (method: Method, params: unknown): Promise<Outcome<unknown>> => {
    if (answer) return answer;
    asked.push(method);
    const work = params as WorkToKeep;
    const isKept = atHost.get(key(work))?.edition === work.edition - 1;
    if (method === 'recovery.append') return { ok: true, value: { isKept } };
    if (method === 'recovery.keep') atHost.set(key(work), work);
    else atHost.delete(key(work));
    return { ok: true, value: {} };
  }) as never,
};
const stored: StoredWork = {
  async keep(work) {
    if (isStorageFull) throw new DOMException('no room', 'QuotaExceededError');
    inStorage.set(key(work), work);
  },
  async drop(name) {
    inStorage.delete(key(name));
  },
  names: async () =>
    [...inStorage.keys()].map((name) => {
      const [window = '', work = ''] = name.split(' ');
      return { window, work };
    }),
  read: async (name) => inStorage.get(key(name)) ?? null,
};

describe('keeping work', () => {
  const place = hostOrStorage(host, stored);

  it('is the host’s while it is there', async () => {
    expect((await place.keep(now())).ok).toBe(true);
    expect([atHost.size, inStorage.size]).toEqual([1, 0]);
  });

  it('is the storage’s while there is no host, and the host’s again when there is one', async () => {
    answer = unreachable;
    expect((await place.keep(now())).ok).toBe(true);
    expect([atHost.size, inStorage.size]).toEqual([0, 1]);
    answer = null;
    await place.keep(now({ edition: 2 }));
    expect([atHost.size, inStorage.size]).toEqual([1, 0]);
  });

  it('is what changed where the host has the edition before, and else all of it', async () => {
    const { window, work, keptAt, file, laying } = WORK;
    const since = (edition: number) => ({ window, work, edition, keptAt, file, laying, edits: '[]' });
    await place.keep(now({}, since(1)));
    expect(asked).toEqual(['recovery.append', 'recovery.keep']);
    await place.keep(now({ edition: 2 }, since(2)));
    expect(asked.slice(2)).toEqual(['recovery.append']);
    answer = unreachable;
    await place.keep(now({ edition: 3 }, since(3)));
    expect(inStorage.get(key(WORK))).toMatchObject({ edition: 3, text: 'work' });
  });

  describe('with pictures', () => {
    const pictures = new Map([
      ['first', 'data:one'],
      ['second', 'data:two'],
    ]);
    const work = (): WorkNow => ({
      ...now({ text: 'all of it' }),
      apart: { pictures, whole: () => ({ ...WORK, text: 'named' }) },
    });
    /** A host that holds pictures, or none for long, and what it was asked. */
    const holding = (most: number) => {
      const held: string[] = [];
      const calls: [Method, string][] = [];
      const call = async (method: Method, params: { text?: string; picture?: string }): Promise<Outcome<unknown>> => {
        calls.push([method, params.text ?? params.picture ?? '']);
        if (method === 'recovery.picture' && held.length < most) held.push(params.picture as string);
        const missing = [...pictures].filter(([, picture]) => !held.includes(picture)).map(([hash]) => hash);
        return {
          ok: true,
          value: method === 'recovery.keep' && params.text === 'named' && missing.length > 0 ? { missing } : {},
        };
      };
      return { calls, place: hostOrStorage({ call: call as never }, stored) };
    };

    it('gives the host each of them once, and names them from then on', async () => {
      const { calls, place } = holding(2);
      await place.keep(work());
      expect(calls).toEqual([
        ['recovery.keep', 'named'],
        ['recovery.picture', 'data:one'],
        ['recovery.picture', 'data:two'],
        ['recovery.keep', 'named'],
      ]);
      await place.keep(work());
      expect(calls.slice(4)).toEqual([['recovery.keep', 'named']]);
    });

    it('has a name for one that the host was given, and none while there is no host', async () => {
      const call = async (): Promise<Outcome<unknown>> => answer ?? { ok: true, value: { hash: 'first' } };
      const { give } = hostOrStorage({ call: call as never }, stored);
      expect(await give({ window: WORK.window, picture: 'data:one' })).toBe('first');
      answer = unreachable;
      expect(await give({ window: WORK.window, picture: 'data:one' })).toBeNull();
    });

    it('gives all of it at once to a host that cannot hold them', async () => {
      const { calls, place } = holding(1);
      expect((await place.keep(work())).ok).toBe(true);
      expect(calls.at(-1)).toEqual(['recovery.keep', 'all of it']);
    });

    it('lies whole in the storage while there is no host', async () => {
      answer = unreachable;
      await place.keep(work());
      expect(inStorage.get(key(WORK))).toMatchObject({ text: 'all of it' });
    });

    it('says what keeps the host from taking one', async () => {
      const call = async (method: Method): Promise<Outcome<unknown>> =>
        method === 'recovery.picture' ? full : { ok: true, value: { missing: ['first'] } };
      expect(await hostOrStorage({ call: call as never }, stored).keep(work())).toEqual(full);
    });
  });

  it('that the host refuses for a reason of its own is said, and hidden nowhere', async () => {
    answer = full;
    expect(await place.keep(now())).toEqual(full);
    expect(inStorage.size).toBe(0);
  });

  it('that fits neither here nor there is said', async () => {
    answer = unreachable;
    isStorageFull = true;
    expect((await place.keep(now())).ok).toBe(false);
  });

  it('is done once the host has it, though the storage cannot be had', async () => {
    const denied = storedWork(
      {
        open: () => {
          throw new DOMException('The request was denied.', 'SecurityError');
        },
      } as never,
      { sealForStorage: async () => new Uint8Array(), openFromStorage: async () => null },
    );
    const withoutStorage = hostOrStorage(host, denied);
    expect((await withoutStorage.keep(now())).ok).toBe(true);
    expect((await withoutStorage.drop(WORK)).ok).toBe(true);
    expect(atHost.size).toBe(0);
    answer = unreachable;
    expect((await withoutStorage.keep(now())).ok).toBe(false);
  });

  it('ends in both places when the work is let go, and fails while the host cannot be told', async () => {
    await place.keep(now());
    inStorage.set(key(WORK), WORK);
    answer = unreachable;
    expect(await place.drop(WORK)).toEqual(unreachable);
    expect([atHost.size, inStorage.size]).toEqual([1, 0]);
    answer = null;
    expect((await place.drop(WORK)).ok).toBe(true);
    expect(atHost.size).toBe(0);
  });
});

describe('handing over what lies in the storage', () => {
  it('gives the host all but what open windows will give themselves', async () => {
    const open = { ...WORK, window: 'window-2' };
    for (const work of [WORK, open]) inStorage.set(key(work), work);
    expect(await handOver(host, stored, (window) => window === 'window-2')).toEqual({
      works: ['work-one'],
      isSomeLeft: false,
    });
    expect([...atHost.keys()]).toEqual([key(WORK)]);
    expect([...inStorage.keys()]).toEqual([key(open)]);
  });

  it('leaves what does not open, and what the host does not take', async () => {
    inStorage.set(key(WORK), null);
    expect(await handOver(host, stored, () => false)).toEqual({ works: [], isSomeLeft: true });
    inStorage.set(key(WORK), WORK);
    answer = full;
    expect(await handOver(host, stored, () => false)).toEqual({ works: [], isSomeLeft: true });
    expect(inStorage.size).toBe(1);
  });
});
