/** Who may talk to the browser host, and what they get. */
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createHash } from 'node:crypto';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync, brotliDecompressSync, gunzipSync, gzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { CALL_HEADER, headText, newSecret, sealingKeys, type CallHead } from '@shared/host/sealed/index.ts';
import { startBrowserHost, type BrowserHost } from '../../../src-main/browser-host/index.ts';
import { nodeFiles } from '../../../src-main/services/index.ts';
import { ask, type Asked } from './asking.ts';
import { callAs, comeIn, join as joinHost, openedAnswer, sealedRequest, type Caller } from './calling.ts';

const PROJECT = projectToText(sampleProject());
const PAGE = '<!doctype html><title>Walewright</title>';

let folder: string;
let host: BrowserHost;
let caller: Caller;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-host-'));
  await mkdir(join(folder, 'page', 'assets'), { recursive: true });
  await writeFile(join(folder, 'page', 'index.html'), PAGE);
  await writeFile(join(folder, 'page', 'assets', 'index-1a2b.js'), 'export {};');
  await writeFile(join(folder, 'secret.txt'), 'secret');
  host = await start();
  caller = await comeIn(await host.newAddress());
});
afterEach(async () => {
  await host.close();
  await rm(folder, { recursive: true, force: true });
});

const start = (options = {}) =>
  startBrowserHost({
    pageFolder: join(folder, 'page'),
    dataFolder: join(folder, 'data'),
    homeFolder: folder,
    ...options,
  });

const get = (path: string, headers: Record<string, string> = {}) => ask(host.origin, { path, headers });

/** A good call of the services, ready to be spoilt. */
const goodCall = (head: CallHead = caller.head('host.describe')) => sealedRequest(host.origin, caller.keys, head);

/** How a request is answered, the given part of it put in place of the right one. */
async function statusWith(asked: Asked, headers: Readonly<Record<string, string>>): Promise<number> {
  return (await ask(host.origin, { ...asked, headers: { ...asked.headers, ...headers } })).status;
}

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
    let told = 0;
    const other = await start({ onUsedTwice: () => told++ });
    const key = keyOf(await other.newAddress());
    await joinHost(other.origin, 'enter', newSecret(globalThis.crypto));
    await joinHost(other.origin, 'enter', key);
    expect(told).toBe(0);
    await joinHost(other.origin, 'enter', key);
    expect(told).toBe(1);
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

describe('a call', () => {
  it('reaches the services and brings back the outcome, to nobody else', async () => {
    const head = caller.head('documents.write');
    const params = { path: 'a.walewright', text: PROJECT, expect: { kind: 'nothing' } };
    const answer = await ask(host.origin, await sealedRequest(host.origin, caller.keys, head, params));
    const { status, headers } = answer;
    expect([status, headers['content-type'], headers['cache-control']]).toEqual([
      200,
      'application/octet-stream',
      'no-store',
    ]);
    expect(await openedAnswer(caller.keys, head, answer)).toMatchObject({
      ok: true,
      value: { path: join(folder, 'a.walewright') },
    });
    expect(answer.body).not.toContain('walewright');
    expect(await readFile(join(folder, 'a.walewright'), 'utf8')).toBe(PROJECT);
    // The answer to one call is none to another.
    expect(await openedAnswer(caller.keys, caller.head('documents.write'), answer)).toBeNull();
  });

  it('brings back the problem where there is one', async () => {
    expect(await callAs(caller, 'documents.read', { path: 'nowhere' })).toEqual({
      ok: false,
      problem: { code: 'file-missing', where: join(folder, 'nowhere'), facts: {} },
    });
  });

  it.each([
    ['documents.read', { path: 1 }],
    ['host.destroy', {}],
    ['constructor', {}],
  ])('that breaks the contract is told so: %s %j', async (method, params) => {
    expect(await callAs(caller, method, params)).toMatchObject({ problem: { code: 'request-invalid' } });
  });

  it('is carried out once, however often it comes', async () => {
    const head = caller.head('documents.write');
    const path = join(folder, 'once.walewright');
    const request = await sealedRequest(host.origin, caller.keys, head, {
      path,
      text: PROJECT,
      expect: { kind: 'nothing' },
    });
    expect((await ask(host.origin, request)).status).toBe(200);
    await rm(path);
    expect((await ask(host.origin, request)).status).toBe(403);
    await expect(readFile(path)).rejects.toThrow('ENOENT');
  });

  it('is carried out once when it comes twice at the same time', async () => {
    const request = await goodCall();
    const answers = await Promise.all([ask(host.origin, request), ask(host.origin, request)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 403]);
  });

  it('may be overtaken by others, but not by thousands', async () => {
    const { authority } = caller.head('here');
    const at = async (count: number): Promise<number> => {
      const head: CallHead = { authority, window: caller.window, count, method: 'here' };
      return (await ask(host.origin, await sealedRequest(host.origin, caller.keys, head))).status;
    };
    expect(await at(5000)).toBe(200);
    expect(await at(4999)).toBe(200);
    expect(await at(905)).toBe(200);
    expect(await at(904)).toBe(403);
    expect(await at(4999)).toBe(403);
  });

  it.each(['evil.example', 'localhost', '127.0.0.1', '127.0.0.1:1', '[::1]'])(
    'for the host %s is refused, and so is the page',
    async (name) => {
      expect(await statusWith(await goodCall(), { host: name })).toBe(403);
      expect((await get('/', { host: name })).status).toBe(403);
    },
  );

  it.each(['http://evil.example', 'null', 'http://127.0.0.1:1', 'http://localhost'])(
    'from a page of %s is refused',
    async (origin) => expect(await statusWith(await goodCall(), { origin })).toBe(403),
  );

  it('from a page that does not say which is refused', async () => {
    const { headers, ...rest } = await goodCall();
    const { origin: _, ...without } = headers as Record<string, string>;
    expect((await ask(host.origin, { ...rest, headers: without })).status).toBe(403);
  });

  it.each([
    ['nothing', null],
    ['no words', ''],
    ['other words', 'let me in'],
  ])('with %s over it is refused', async (_case, text) => {
    const { headers, ...rest } = await goodCall();
    const { [CALL_HEADER]: _said, ...without } = headers as Record<string, string>;
    const said = text === null ? without : { ...without, [CALL_HEADER]: text };
    expect((await ask(host.origin, { ...rest, headers: said })).status).toBe(403);
  });

  it.each([
    ['another host', { authority: '127.0.0.1:1' }],
    ['another window', { window: 'x'.repeat(43) }],
    ['another count', { count: 99 }],
    ['another method', { method: 'documents.recent' }],
  ] as const)('with %s written over it than it was sealed about is refused', async (_case, change) => {
    const head = caller.head('host.describe');
    const changed = { ...head, ...change };
    const said = { [CALL_HEADER]: headText(changed) };
    expect(await statusWith({ ...(await goodCall(head)), path: `/call/${changed.method}` }, said)).toBe(403);
    // And the call as it was is good.
    expect((await ask(host.origin, await goodCall(head))).status).toBe(200);
  });

  it('of another method than the address says is refused', async () => {
    expect((await ask(host.origin, { ...(await goodCall()), path: '/call/documents.recent' })).status).toBe(403);
  });

  it.each(['first', 'middle', 'last'])('with its %s byte changed is refused', async (which) => {
    const request = await goodCall();
    const at = { first: 0, middle: request.body.length >> 1, last: request.body.length - 1 }[which] ?? 0;
    request.body[at] = (request.body[at] ?? 0) ^ 1;
    expect((await ask(host.origin, request)).status).toBe(403);
  });

  it.each([0, 1, 27, 28])('of %d bytes is refused', async (length) => {
    const { body, ...rest } = await goodCall();
    expect(await statusWith({ ...rest, body: body.slice(0, length) }, { 'content-length': String(length) })).toBe(403);
  });

  it("sealed with the other way's key, with another secret, or by a window that is not in is refused", async () => {
    const stranger = await sealingKeys(globalThis.crypto, newSecret(globalThis.crypto), 'run');
    const turned = { toHost: caller.keys.toPage, toPage: caller.keys.toHost };
    for (const keys of [stranger, turned]) {
      expect((await ask(host.origin, await sealedRequest(host.origin, keys, caller.head('here')))).status).toBe(403);
    }
    const outside = { ...caller.head('here'), window: newSecret(globalThis.crypto) };
    expect((await ask(host.origin, await goodCall(outside))).status).toBe(403);
  });

  it('that does not say how long it is, or is longer than any, is refused before it is read', async () => {
    const { headers, body, ...rest } = await goodCall();
    const { 'content-length': _, ...chunked } = headers as Record<string, string>;
    const asked = { ...rest, body, headers: { ...chunked, 'transfer-encoding': 'chunked' } };
    expect((await ask(host.origin, asked)).status).toBe(411);
    const long = { ...headers, 'content-length': String(200 * 1024 * 1024) };
    expect((await ask(host.origin, { ...rest, headers: long }).catch(() => ({ status: 413 }))).status).toBe(413);
    const joining = await sealedRequest(host.origin, caller.keys, { ...caller.head('join') }, 'x'.repeat(2000));
    expect((await ask(host.origin, joining)).status).toBe(413);
  });

  it('that is going on when the host closes is carried out first', async () => {
    let goOn = (): void => undefined;
    const held = new Promise<void>((resolve) => (goOn = resolve));
    let hasAsked = (): void => undefined;
    const asked = new Promise<void>((resolve) => (hasAsked = resolve));
    const slow = await start({
      files: {
        ...nodeFiles,
        rename: async (from: string, to: string) => {
          hasAsked();
          await held;
          await nodeFiles.rename(from, to);
        },
      },
    });
    const window = await comeIn(await slow.newAddress());
    const answer = callAs(window, 'documents.write', {
      path: 'late.walewright',
      text: PROJECT,
      expect: { kind: 'nothing' },
    });
    await asked;
    const closed = slow.close();
    goOn();
    await closed;
    expect(await answer).toMatchObject({ ok: true });
    expect(await readFile(join(folder, 'late.walewright'), 'utf8')).toBe(PROJECT);
  });
});

describe('a request that is no call', () => {
  it.each([
    ['PUT', '/'],
    ['DELETE', '/index.html'],
    ['POST', '/'],
    ['GET', '/call/host.describe'],
    ['OPTIONS', '/call/host.describe'],
  ])('is refused by %s for %s, and no other page is told that it may ask', async (method, path) => {
    const { status, headers } = await ask(host.origin, { method, path });
    expect(status).toBe(405);
    expect(Object.keys(headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
  });

  it.each(['//evil.example/', '/%', '/\\', '/?%'])('for the odd address %s gets nothing', async (path) => {
    expect((await get(path)).status).toBeGreaterThanOrEqual(path === '/?%' ? 200 : 400);
  });
});

describe('the page', () => {
  it('comes with its files, each with its type, to anybody, and holds no key', async () => {
    const page = await get('/');
    expect(page.headers['set-cookie']).toBeUndefined();
    expect([page.status, page.body, page.headers['content-type']]).toEqual([200, PAGE, 'text/html; charset=utf-8']);
    const script = await get('/assets/index-1a2b.js?v');
    expect([script.status, script.headers['content-type']]).toEqual([200, 'text/javascript; charset=utf-8']);
  });

  it.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/assets/..%5c..%5csecret.txt',
    '/assets/%2e%2e%2f%2e%2e%2fsecret.txt',
    '/assets',
    '/assets/',
    '/index.html%00',
    '/etc/passwd',
    '//etc/passwd',
  ])('gives no file outside it: %s', async (path) => {
    const { status, body } = await get(path);
    expect(status).toBe(404);
    expect(body).toBe('');
  });

  it.each(['/', '/assets/index-1a2b.js', '/nothing'])('is guarded by its headers: %s', async (path) => {
    const { headers } = await get(path);
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'referrer-policy': 'no-referrer',
    });
    const policy = headers['content-security-policy'] as string;
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe');
    expect(policy).not.toContain('*');
  });

  it.each([
    ['br', 'br', brotliDecompressSync],
    ['gzip, deflate, br', 'br', brotliDecompressSync],
    ['GZIP', 'gzip', gunzipSync],
    ['gzip;q=1.0, br;q=0', 'gzip', gunzipSync],
    ['deflate, brotli', undefined, Buffer.from],
    ['br;q=0, gzip; q=0.000', undefined, Buffer.from],
    ['', undefined, Buffer.from],
  ])('is sent as a browser takes it that accepts %j: %j', async (accepted, encoding, unpacked) => {
    for (const [ending, pack] of [
      ['br', brotliCompressSync],
      ['gz', gzipSync],
    ] as const) {
      await writeFile(join(folder, 'page', 'assets', `packed.js.${ending}`), pack('let packed;'));
    }
    await writeFile(join(folder, 'page', 'assets', 'packed.js'), 'let packed;');
    await host.close();
    host = await start();
    const { headers, bytes } = await get('/assets/packed.js', { 'accept-encoding': accepted });
    expect(headers).toMatchObject({ 'content-type': 'text/javascript; charset=utf-8', vary: 'accept-encoding' });
    expect(headers['content-encoding']).toBe(encoding);
    expect(unpacked(bytes).toString()).toBe('let packed;');
    expect((await get('/assets/packed.js.br')).status).toBe(404);
  });

  it('is kept by no browser, and takes away what others had it keep', async () => {
    for (const path of ['/', '/assets/index-1a2b.js', '/nowhere']) {
      expect((await get(path)).headers['cache-control']).toBe('no-store');
    }
    // Not "storage": that holds unsaved work.
    for (const path of ['/', '/index.html', '/?visit=0123456789ab']) {
      expect((await get(path)).headers['clear-site-data']).toBe('"cache"');
    }
    expect((await get('/assets/index-1a2b.js')).headers).not.toHaveProperty('clear-site-data');
  });

  it('may run what it names, and no other text in it', async () => {
    const map = '{"integrity":{"./assets/index-1a2b.js":"sha384-AAAA"}}';
    await writeFile(join(folder, 'page', 'index.html'), `<script type="importmap">${map}</script><script>1</script>`);
    await host.close();
    host = await start();
    const { headers } = await get('/');
    const digest = createHash('sha256').update(map).digest('base64');
    expect(headers['content-security-policy']).toContain(`script-src 'self' 'sha256-${digest}';`);
    expect(headers['content-security-policy']).toContain('worker-src blob:;');
    expect(headers['integrity-policy']).toBe('blocked-destinations=(script)');
  });

  it('that was never built stops the start', async () => {
    await expect(start({ pageFolder: join(folder, 'nowhere') })).rejects.toThrow('npm run build');
  });
});

describe('two hosts of one user', () => {
  const kept = (window: string, browser: string) => ({
    window,
    browser,
    work: window,
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
