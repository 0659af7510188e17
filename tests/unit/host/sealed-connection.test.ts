/** The renderer's side of sealed calls, against a real host and against strangers in its place. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { startBrowserHost, type BrowserHost } from '../../../src-main/browser-host/index.ts';
import { SealedConnection, type Fetch } from '../../../src-renderer/host/sealed-connection.ts';
import { sealingHere } from '../../../src-renderer/host/sealing.ts';
import { ask } from './asking.ts';

const unreachable = { ok: false, problem: { code: 'host-unreachable', where: null, facts: {} } };

let folder: string;
let host: BrowserHost;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-client-'));
  await mkdir(join(folder, 'page'));
  await writeFile(join(folder, 'page', 'index.html'), '');
  host = await start();
});
afterEach(async () => {
  await host.close();
  await rm(folder, { recursive: true, force: true });
});

const start = (dataFolder = join(folder, 'data')) =>
  startBrowserHost({ pageFolder: join(folder, 'page'), dataFolder, homeFolder: folder });

interface Sent {
  readonly path: string;
  readonly body: string;
}

/** Says how long it is, as every server does that has the whole of it. */
function answerOf(content: string | Uint8Array<ArrayBuffer>, status = 200): Response {
  return new Response(content, { status, headers: { 'content-length': String(Buffer.byteLength(content)) } });
}

/** A window that is in, what goes out of it, and who answers in the host's place. */
async function window() {
  const address = new URL(await host.newAddress());
  const sent: Sent[] = [];
  const keptKeys: string[] = [];
  let stranger: Fetch | null = null;
  const toHost: Fetch = async (path, { body, headers, signal }) => {
    const sealedHeaders = headers as Record<string, string>;
    const bytes = body as Uint8Array;
    const asked = { method: 'POST', path, body: bytes, headers: { ...sealedHeaders, origin: address.origin } };
    const answer = await ask(address.origin, {
      ...asked,
      headers: { ...asked.headers, 'content-length': `${bytes.length}` },
    });
    signal?.throwIfAborted();
    return answerOf(answer.bytes, answer.status);
  };
  let patience = new AbortController();
  const connection = await SealedConnection.open(
    {
      authority: address.host,
      sealing: sealingHere,
      fetch: (path, request) => {
        sent.push({ path, body: Buffer.from(request.body as Uint8Array).toString('latin1') });
        return (stranger ?? toHost)(path, request);
      },
      keepRunKey: (key) => keptKeys.push(key),
      // The tests look by themselves.
      nextLook: () => new Promise(() => undefined),
      patience: () => (patience = new AbortController()).signal,
    },
    'enter',
    address.hash.slice(1),
  );
  if (typeof connection === 'string') throw new Error(connection);
  const standings: string[] = [];
  connection.onStanding((standing) => standings.push(standing));
  return {
    connection,
    standings,
    sent,
    keptKeys,
    toHost,
    loseSight: () => patience.abort(),
    putInPlace: (other: Fetch | null) => (stranger = other),
  };
}

describe('a call', () => {
  it('goes sealed to the path of its method and comes back as the outcome', async () => {
    const { connection, sent } = await window();
    const path = join(folder, 'of-nobody-else.walewright');
    expect(await connection.host.call('documents.forgetRecent', { path })).toEqual({ ok: true, value: [] });
    expect(sent.at(-1)?.path).toBe('/call/documents.forgetRecent');
    expect(sent.at(-1)?.body).not.toContain('nobody');
  });

  it('brings back the problem of the services', async () => {
    const { connection } = await window();
    const answer = await connection.host.call('documents.read', { path: join(folder, 'nowhere') });
    expect(answer).toMatchObject({ ok: false, problem: { code: 'file-missing' } });
    expect(connection.isJoined).toBe(true);
  });
});

describe('a stranger in the place of the host', () => {
  const outcome = JSON.stringify({ ok: true, value: [] });
  const strangers: readonly (readonly [string, (toHost: Fetch) => Fetch])[] = [
    ['nobody answers', () => () => Promise.reject(new TypeError('Failed to fetch'))],
    ['the answer is a page', () => async () => answerOf('<html>')],
    ['the answer is an outcome that anybody could write', () => async () => answerOf(outcome)],
    ['the answer is empty', () => async () => answerOf('')],
    ['the host refuses', () => async () => answerOf('', 403)],
    [
      'the answer was changed on its way',
      (toHost) => async (path, request) => {
        const answer = new Uint8Array(await (await toHost(path, request)).arrayBuffer());
        answer[20] = (answer[20] ?? 0) ^ 1;
        return answerOf(answer);
      },
    ],
    [
      'the call is sent back',
      () =>
        async (_path, { body }) =>
          answerOf(body as Uint8Array<ArrayBuffer>),
    ],
  ];

  it.each(strangers)('is known when %s, and is sent nothing more but a request to join', async (_case, stranger) => {
    const { connection, standings, sent, putInPlace, toHost } = await window();
    putInPlace(stranger(toHost));
    expect(await connection.host.call('documents.recent', {})).toEqual(unreachable);
    expect([connection.isJoined, standings]).toEqual([false, ['lost']]);

    sent.length = 0;
    putInPlace(async () => answerOf(outcome));
    const secret = { suggestedName: 'secret' };
    expect(await connection.host.call('dialogs.saveFile', secret)).toEqual(unreachable);
    expect(await connection.look()).toBe(false);
    expect(sent.map(({ path }) => path)).toEqual(['/call/rejoin']);
    expect(standings).toEqual(['lost']);
  });

  it.each([
    ['says that little comes', '1000'],
    ['says nothing of how much comes', null],
    ['says that more comes than a host ever sends', '900000000'],
  ])('is not listened to when it sends without end and %s', async (_case, length) => {
    const { connection, putInPlace } = await window();
    const piece = new Uint8Array(64 * 1024);
    let pulled = 0;
    let isLeft = false;
    const endless = new ReadableStream({
      pull(controller) {
        if (++pulled > 100) controller.error(new Error('It was listened to for long'));
        else controller.enqueue(piece);
      },
      cancel: () => void (isLeft = true),
    });
    putInPlace(async () => new Response(endless, { headers: length === null ? {} : { 'content-length': length } }));
    expect(await connection.host.call('documents.recent', {})).toEqual(unreachable);
    expect([connection.isJoined, isLeft]).toEqual([false, true]);
  });

  it('is not believed with an answer that the host gave to another call', async () => {
    const { connection, putInPlace, toHost } = await window();
    const heard: Uint8Array<ArrayBuffer>[] = [];
    putInPlace(async (path, request) => {
      if (heard[0]) return answerOf(heard[0]);
      const answer = new Uint8Array(await (await toHost(path, request)).arrayBuffer());
      heard.push(answer);
      return answerOf(answer);
    });
    expect(await connection.host.call('documents.recent', {})).toMatchObject({ ok: true });
    expect(await connection.host.call('documents.recent', {})).toEqual(unreachable);
  });

  it('that keeps silent is given up, and with it all that was asked of it', async () => {
    const { connection, standings, putInPlace, loseSight } = await window();
    const asked: string[] = [];
    putInPlace((path, { signal }) => {
      asked.push(path);
      return new Promise((_, reject) => signal?.addEventListener('abort', () => reject(new Error('aborted'))));
    });
    const outcomes = Promise.all([connection.host.call('documents.recent', {}), connection.look()]);
    await expect.poll(() => asked).toHaveLength(2);
    loseSight();
    await expect.poll(() => asked).toHaveLength(3);
    expect(standings).toEqual([]);
    loseSight();
    expect(await outcomes).toEqual([unreachable, false]);
    expect(standings).toEqual(['lost']);
  });
});

describe('a host that is busy', () => {
  it.each([
    ['answered too late', (loseSight: () => void) => loseSight()],
    ['had its way cut', () => undefined],
  ])('is not said to be gone when one question %s', async (_case, happens) => {
    const { connection, standings, putInPlace, toHost, loseSight } = await window();
    let asked = 0;
    putInPlace((path, request) => {
      if (asked++ > 0) return toHost(path, request);
      happens(loseSight);
      return Promise.reject(new TypeError('Failed to fetch'));
    });
    expect(await connection.look()).toBe(true);
    expect([asked, standings]).toEqual([2, []]);
  });

  it('is asked whether it is there when a call did not come through, which is not sent again', async () => {
    const { connection, standings, sent, putInPlace, toHost } = await window();
    sent.length = 0;
    putInPlace((path, request) =>
      path.endsWith('recent') ? Promise.reject(new TypeError('Failed to fetch')) : toHost(path, request),
    );
    expect(await connection.host.call('documents.recent', {})).toEqual(unreachable);
    expect(sent.map(({ path }) => path)).toEqual(['/call/documents.recent', '/call/here']);
    expect([connection.isJoined, standings]).toEqual([true, []]);
  });
});

describe('a window whose host was gone', () => {
  it('joins the next one in its place by itself', async () => {
    const { connection, standings, keptKeys } = await window();
    await host.close();
    expect(await connection.look()).toBe(false);
    expect(await connection.look()).toBe(false);
    host = await start();
    expect(await connection.look()).toBe(true);
    expect(standings).toEqual(['lost', 'rejoined']);
    expect(await connection.host.call('documents.recent', {})).toMatchObject({ ok: true });
    // The key of the host that is there now is the one to keep.
    expect(keptKeys).toHaveLength(2);
    expect(new Set(keptKeys).size).toBe(2);
  });

  it('joins no host of another user', async () => {
    const { connection } = await window();
    const port = new URL(host.origin).port;
    await host.close();
    await mkdir(join(folder, 'other'));
    await writeFile(join(folder, 'other', 'ports.json'), `[${port}]`);
    host = await start(join(folder, 'other'));
    expect(new URL(host.origin).port).toBe(port);
    expect(await connection.look()).toBe(false);
    expect(await connection.look()).toBe(false);
  });
});

describe('work that is kept in the browser', () => {
  it('is opened by every window of the user, under its own name alone', async () => {
    const one = (await window()).connection.storage;
    const sealed = await one.sealForStorage('window 1', 'Maß für Maß');
    expect(Buffer.from(sealed).includes(Buffer.from('für'))).toBe(false);
    await host.close();
    host = await start();
    const other = (await window()).connection.storage;
    // What is opened is handed over.
    expect(await other.openFromStorage('window 1', sealed.slice())).toBe('Maß für Maß');
    expect(await other.openFromStorage('window 2', sealed.slice())).toBeNull();
    expect(await other.openFromStorage('window 1', sealed.slice(1))).toBeNull();
    expect(await other.openFromStorage('window 1', new Uint8Array())).toBeNull();
  });

  it('is opened by no window of another user', async () => {
    const sealed = await (await window()).connection.storage.sealForStorage('x', 'secret');
    await host.close();
    host = await start(join(folder, 'other'));
    expect(await (await window()).connection.storage.openFromStorage('x', sealed)).toBeNull();
  });
});
