/** Windows that come in to the browser host, and its coming and going. */
import { writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { newSecret } from '@shared/host/sealed/index.ts';
import { type BrowserHost } from '../../../src-main/browser-host/index.ts';
import { callAs, comeIn, join as joinHost, type Caller } from './calling.ts';
import { hostForEachTest, startIn } from './host-in-folder.ts';

const PROJECT = projectToText(sampleProject());

let folder: string;
let host: BrowserHost;
let caller: Caller;
hostForEachTest((own) => ({ folder, host, caller } = own));

const start = (options = {}) => startIn(folder, options);

const keyOf = (address: string): string => new URL(address).hash.slice(1);

describe('an address', () => {
  it('is on this machine alone, with a key in the part that no browser sends', async () => {
    expect(await host.newAddress()).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/\?visit=[\w-]{12}#[\w-]{43}$/);
  });

  it('lets one window in, once', async () => {
    const key = keyOf(await host.newAddress());
    const first = await joinHost(host.origin, 'enter', key);
    expect(first.answer.status).toBe(200);
    expect(await callAs(first.caller as Caller, 'host.describe')).toMatchObject({ ok: true });
    const second = await joinHost(host.origin, 'enter', key);
    expect([second.answer.status, second.caller]).toEqual([403, null]);
  });

  it('lets one of two in that come at once', async () => {
    const key = keyOf(await host.newAddress());
    const both = await Promise.all([joinHost(host.origin, 'enter', key), joinHost(host.origin, 'enter', key)]);
    expect(both.map(({ answer }) => answer.status).sort()).toEqual([200, 403]);
  });

  it('that is used again is told to the person, since two have had it', async () => {
    let warnings = 0;
    const other = await start({ onUsedTwice: () => warnings++ });
    const key = keyOf(await other.newAddress());
    await joinHost(other.origin, 'enter', newSecret(globalThis.crypto));
    await joinHost(other.origin, 'enter', key);
    expect(warnings).toBe(0);
    await joinHost(other.origin, 'enter', key);
    expect(warnings).toBe(1);
    await other.close();
  });

  it('of another host opens nothing', async () => {
    const second = await start();
    expect(second.origin).not.toBe(host.origin);
    const { answer } = await joinHost(second.origin, 'enter', keyOf(await host.newAddress()));
    expect(answer.status).toBe(403);
    await second.close();
  });
});

describe('a page that is loaded again', () => {
  it("joins with the run's key, which is of no worth at the next host", async () => {
    const { caller: again } = await joinHost(host.origin, 'join', caller.runKey);
    expect(await callAs(again as Caller, 'host.describe')).toMatchObject({ ok: true });
    const { origin } = host;
    await host.close();
    host = await start();
    expect(host.origin).toBe(origin);
    expect((await joinHost(origin, 'join', caller.runKey)).answer.status).toBe(403);
  });
});

describe('a window whose host is gone', () => {
  it('joins the next one in its place with the storage key, and with no other', async () => {
    const { origin } = host;
    await host.close();
    host = await start();
    expect(await callAs(caller, 'host.describe')).toBeNull();
    const { caller: again } = await joinHost(origin, 'rejoin', caller.storageKey, { window: caller.window, count: 7 });
    expect(again?.runKey).not.toBe(caller.runKey);
    expect(again?.storageKey).toBe(caller.storageKey);
    expect(await callAs(again as Caller, 'host.describe')).toMatchObject({ ok: true });
    expect((await joinHost(origin, 'rejoin', caller.runKey)).answer.status).toBe(403);
  });
});

describe('the last port', () => {
  it('is taken again, and another where it is not free', async () => {
    const { origin } = host;
    await host.close();
    const stranger = createServer();
    await new Promise<void>((resolve) => stranger.listen(Number(new URL(origin).port), '127.0.0.1', resolve));
    const elsewhere = await start();
    expect(elsewhere.origin).not.toBe(origin);
    await new Promise((resolve) => stranger.close(resolve));
    // The last of all comes first, then those before.
    host = await start();
    expect(host.origin).toBe(origin);
    await elsewhere.close();
    await host.close();
    host = await start();
    expect(host.origin).toBe(origin);
  });

  it.each(['', 'null', '[1]', '["80"]', '[99999]'])('that cannot be read (%j) is forgotten', async (text) => {
    await host.close();
    await writeFile(join(folder, 'data', 'ports.json'), text);
    host = await start();
    expect(await callAs(await comeIn(await host.newAddress()), 'host.describe')).toMatchObject({ ok: true });
  });
});

describe('two hosts of one user', () => {
  const kept = (window: string, browser: string) => ({
    window,
    browser,
    work: window,
    laying: null,
    edition: 1,
    keptAt: '2026-11-26T05:00:00.000Z',
    name: `of ${window}`,
    text: '{}',
    file: null,
  });
  const asking = { window: 'window-asking', browser: 'browser-three', open: [] };

  it('keep their unsaved work apart and share the recent list', async () => {
    const second = await start();
    const other = await comeIn(await second.newAddress());
    expect(await callAs(caller, 'recovery.keep', kept('window-first', 'browser-one'))).toMatchObject({ ok: true });
    expect(await callAs(other, 'recovery.keep', kept('window-second', 'browser-two'))).toMatchObject({ ok: true });
    expect(await callAs(other, 'recovery.find', { asking })).toEqual({ ok: true, value: [] });

    await callAs(caller, 'documents.write', { path: 'a.walewright', text: PROJECT, expect: { kind: 'nothing' } });
    expect(await callAs(other, 'documents.recent')).toMatchObject({ value: [{ name: 'a.walewright' }] });
    await second.close();
  });

  it('hand on the unsaved work of the one that has ended', async () => {
    const second = await start();
    await callAs(await comeIn(await second.newAddress()), 'recovery.keep', kept('window-second', 'browser-two'));
    await second.close();
    expect(await callAs(caller, 'recovery.find', { asking })).toMatchObject({
      value: [{ of: 'ended-run', kept: { name: 'of window-second' } }],
    });
  });
});
