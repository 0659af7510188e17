/** The renderer's side of the contract. */
import { describe, expect, it } from 'vitest';
import { bridgeHost, type Bridge } from '../../../src-renderer/shell/host/bridge.ts';
import { httpHost } from '../../../src-renderer/shell/host/http.ts';

const unreachable = { ok: false, problem: { code: 'host-unreachable', where: null, facts: {} } };
const silentBridge: Bridge = { call: async () => undefined, listen: () => () => undefined };

describe('calling a service over HTTP', () => {
  it('posts the parameters as JSON to the path of the method and returns the outcome', async () => {
    const seen: unknown[] = [];
    const host = httpHost(async (path, request) => {
      seen.push(path, request.method, request.headers, request.body);
      return Response.json({ ok: true, value: [] });
    });
    expect(await host.call('documents.forgetRecent', { path: '/a' })).toEqual({ ok: true, value: [] });
    expect(seen).toEqual([
      '/call/documents.forgetRecent',
      'POST',
      { 'content-type': 'application/json' },
      '{"path":"/a"}',
    ]);
  });

  it('passes on the problem of a refused call', async () => {
    const refused = { ok: false, problem: { code: 'request-refused', where: null, facts: { detail: 'x' } } };
    const host = httpHost(async () => Response.json(refused, { status: 403 }));
    expect(await host.call('host.describe', {})).toEqual(refused);
  });

  it.each([
    ['nobody answers', () => Promise.reject(new TypeError('Failed to fetch'))],
    ['the answer is no JSON', async () => new Response('<html>')],
    ['the answer is JSON, but no outcome', async () => Response.json(['?'])],
    ['the answer is cut off', async () => new Response('{"ok":tr')],
  ])('says that the host is out of reach when %s', async (_case, answer: () => Promise<Response>) => {
    expect(await httpHost(answer).call('host.describe', {})).toEqual(unreachable);
  });
});

describe('calling a service through the bridge', () => {
  it('passes method and parameters on and returns the outcome', async () => {
    const seen: unknown[] = [];
    const host = bridgeHost({
      ...silentBridge,
      call: async (...given) => {
        seen.push(given);
        return { ok: true, value: null };
      },
    });
    expect(await host.call('dialogs.openFile', {})).toEqual({ ok: true, value: null });
    expect(seen).toEqual([['dialogs.openFile', {}]]);
  });

  it.each([
    ['the main process is gone', () => Promise.reject(new Error('Object has been destroyed'))],
    ['the answer is no outcome', async () => undefined],
  ])('says that the host is out of reach when %s', async (_case, call) => {
    expect(await bridgeHost({ ...silentBridge, call }).call('host.describe', {})).toEqual(unreachable);
  });

  it('hands on events until the listener leaves', () => {
    const listeners = new Set<(event: never) => void>();
    const bridge: Bridge = {
      ...silentBridge,
      listen(listener) {
        listeners.add(listener);
        return () => listeners.delete(listener);
      },
    };
    const stop = bridgeHost(bridge).listen(() => undefined);
    expect(listeners.size).toBe(1);
    stop();
    expect(listeners.size).toBe(0);
  });
});
