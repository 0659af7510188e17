/** The keys that a page comes in with, and keeps for its session. */
import { describe, expect, it } from 'vitest';
import { keepRunKey, keptRunKey, takeEntryKey, type Place } from '../../../src-renderer/host/keys-of-the-page.ts';

describe('the keys of the page', () => {
  const KEY = 'k'.repeat(43);

  function place(
    hash: string,
    search = '?empty=',
  ): Place & { readonly addresses: unknown[]; readonly kept: Map<string, string> } {
    const kept = new Map<string, string>();
    const addresses: unknown[] = [];
    return {
      addresses,
      kept,
      location: { hash, pathname: '/', search },
      history: { state: null, replaceState: (...given) => void addresses.push(given[2]) },
      sessionStorage: { getItem: (name) => kept.get(name) ?? null, setItem: (name, key) => void kept.set(name, key) },
    };
  }

  it('are taken out of the address at once', () => {
    const opened = place(`#${KEY}`);
    expect(takeEntryKey(opened)).toBe(KEY);
    expect(opened.addresses).toEqual(['/?empty=']);
    const visit = place(`#${KEY}`, '?visit=0123456789ab');
    expect(takeEntryKey(visit)).toBe(KEY);
    expect(visit.addresses).toEqual(['/']);
  });

  it.each(['', '#', '#short', `#${KEY}x`])('are none in %j', (hash) => expect(takeEntryKey(place(hash))).toBeNull());

  it('are kept for the session, and for no longer than the browser allows', () => {
    const opened = place('');
    keepRunKey(opened, KEY);
    expect(keptRunKey(opened)).toBe(KEY);
    const forbid = (): never => {
      throw new Error('SecurityError');
    };
    const strict = { ...opened, sessionStorage: { getItem: forbid, setItem: forbid } };
    expect(() => keepRunKey(strict, KEY)).not.toThrow();
    expect(keptRunKey(strict)).toBeNull();
  });
});
