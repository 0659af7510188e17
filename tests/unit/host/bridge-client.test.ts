/** The renderer's side of Electron's bridge. */
import { describe, expect, it } from 'vitest';
import { bridgeConnection, bridgeHost, type Bridge } from '../../../src-renderer/host/bridge.ts';

const unreachable = { ok: false, problem: { code: 'host-unreachable', where: null, facts: {} } };
const silentBridge: Bridge = { call: async () => undefined, listen: () => () => undefined };

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
    expect(await host.call('dialogs.openFile', { what: 'any' })).toEqual({ ok: true, value: null });
    expect(seen).toEqual([['dialogs.openFile', { what: 'any' }]]);
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

  it('is always joined: the main process outlives its windows', async () => {
    const connection = bridgeConnection(silentBridge);
    expect([connection.isJoined, await connection.look(), connection.storage]).toEqual([true, true, null]);
  });
});
