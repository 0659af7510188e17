/** Who may talk to the browser host, and what they get. */
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { startBrowserHost, type BrowserHost } from '../../../src-main/browser-host/index.ts';
import { nodeFiles } from '../../../src-main/services/index.ts';
import { ask, letIn, type Asked } from './asking.ts';

const PAGE = '<!doctype html><title>Walewright</title>';

let folder: string;
let host: BrowserHost;
let cookie: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-host-'));
  await mkdir(join(folder, 'page', 'assets'), { recursive: true });
  await writeFile(join(folder, 'page', 'index.html'), PAGE);
  await writeFile(join(folder, 'page', 'assets', 'index-1a2b.js'), 'export {};');
  await writeFile(join(folder, 'secret.txt'), 'secret');
  host = await start();
  cookie = await letIn(host.address);
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
    mostBodyBytes: 10_000,
    ...options,
  });

const get = (path: string, headers: Record<string, string> = {}) =>
  ask(host.origin, { path, headers: { cookie, ...headers } });

const call = (method: string, params: unknown = {}, asked: Asked = {}) =>
  ask(host.origin, {
    method: 'POST',
    path: `/call/${method}`,
    body: JSON.stringify(params),
    ...asked,
    headers: { cookie, origin: host.origin, 'content-type': 'application/json', ...asked.headers },
  });

describe('the address that the program prints', () => {
  it('is on this machine alone, on a port that was free', () => {
    expect(host.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/\?key=[\w-]{43}$/);
  });

  it('gives a cookie that no script sees and no other page sends, and takes the key off the address', async () => {
    const { pathname, search } = new URL(host.address);
    const { status, headers } = await ask(host.origin, { path: `${pathname}${search}&empty` });
    expect(status).toBe(303);
    expect(headers.location).toBe('/?empty=');
    expect(headers['set-cookie']).toEqual([
      expect.stringMatching(/^walewright-\d+=[\w-]{43}; HttpOnly; SameSite=Strict; Path=\/$/),
    ]);
    expect(headers['set-cookie']?.[0]).not.toContain(new URLSearchParams(search).get('key'));
  });

  it('opens as often as it is used', async () => {
    expect(await letIn(host.address)).toBe(cookie);
  });

  it('opens once where others can read it, on a command line', async () => {
    const address = host.addressForOnce();
    expect(await letIn(address)).toBe(cookie);
    expect(await letIn(address)).toBe('');
    expect(await letIn(host.addressForOnce())).toBe(cookie);
  });

  it.each(['', 'x', 'x'.repeat(43), 'a'.repeat(100_00)])('opens nothing with the key %j', async (key) => {
    const { status, headers, body } = await ask(host.origin, { path: `/?key=${key}`, headers: { cookie } });
    expect([status, headers['set-cookie']]).toEqual([403, undefined]);
    expect(body).toContain('Open the address that the program printed');
  });

  it('is another at every start', async () => {
    const second = await start();
    expect(second.origin).not.toBe(host.origin);
    expect((await ask(second.origin, { path: '/', headers: { cookie } })).status).toBe(403);
    const key = new URL(host.address).search;
    expect((await ask(second.origin, { path: `/${key}` })).status).toBe(403);
    await second.close();
  });
});

describe('a request', () => {
  it.each([
    ['without a cookie', {}],
    ['with a made-up cookie', { cookie: 'walewright=1' }],
    ['with an empty cookie', { cookie: '=;;=' }],
  ])('%s gets neither page nor answer', async (_case, headers) => {
    expect((await ask(host.origin, { path: '/', headers })).status).toBe(403);
    const answer = await ask(host.origin, {
      method: 'POST',
      path: '/call/host.describe',
      headers: { origin: host.origin, 'content-type': 'application/json', ...headers },
      body: '{}',
    });
    expect(answer.status).toBe(403);
    expect(JSON.parse(answer.body)).toMatchObject({ ok: false, problem: { code: 'request-refused' } });
  });

  it('with a wrong secret in the right cookie gets neither', async () => {
    const [name, value] = cookie.split('=') as [string, string];
    const wrong = `${name}=${value.slice(0, -1)}${value.endsWith('A') ? 'B' : 'A'}`;
    expect((await get('/', { cookie: wrong })).status).toBe(403);
  });

  it.each(['evil.example', 'localhost', '127.0.0.1', '127.0.0.1:1', '[::1]'])(
    'for the host %s is refused, even with cookie or key',
    async (name) => {
      expect((await get('/', { host: name })).status).toBe(403);
      expect((await call('host.describe', {}, { headers: { host: name } })).status).toBe(403);
      const keyed = await ask(host.origin, { path: `/${new URL(host.address).search}`, headers: { host: name } });
      expect([keyed.status, keyed.headers['set-cookie']]).toEqual([403, undefined]);
    },
  );

  it.each(['http://evil.example', 'null', 'http://127.0.0.1:1', 'http://localhost'])(
    'from a page of %s is refused',
    async (origin) => {
      const { status, body } = await call('host.describe', {}, { headers: { origin } });
      expect(status).toBe(403);
      expect(JSON.parse(body)).toMatchObject({ ok: false, problem: { code: 'request-refused' } });
    },
  );

  it('from a page that does not say which is refused', async () => {
    const { status } = await ask(host.origin, {
      method: 'POST',
      path: '/call/host.describe',
      headers: { cookie, 'content-type': 'application/json' },
      body: '{}',
    });
    expect(status).toBe(403);
  });

  it.each(['text/plain', 'application/x-www-form-urlencoded', 'application/jsonp', ''])(
    'of the type %j, as a form could send it, is refused',
    async (type) => {
      expect((await call('host.describe', {}, { headers: { 'content-type': type } })).status).toBe(415);
    },
  );

  it.each([
    ['said', { body: 'x'.repeat(10_001) }],
    ['and not said', { body: 'x'.repeat(2_000_000), headers: { 'transfer-encoding': 'chunked' } }],
  ])('of more bytes than any has, %s, is refused', async (_case, asked) => {
    const answer = await call('recovery.keep', {}, asked).catch((error: NodeJS.ErrnoException) => error.code);
    // The host answers and closes without reading on, which may reach the sender first.
    if (typeof answer === 'string') expect(['EPIPE', 'ECONNRESET']).toContain(answer);
    else expect(answer).toMatchObject({ status: 413 });
    expect((await get('/')).status).toBe(200);
  });

  it.each(['', '{', 'undefined'])('that is no JSON (%j) is refused', async (body) => {
    expect((await call('host.describe', {}, { body })).status).toBe(400);
  });

  it.each(['host.destroy', 'constructor', '', 'host.describe/x', '..%2f'])(
    'for the unknown call %j is refused',
    async (method) => {
      const { status, body } = await call(method);
      expect(status).toBe(400);
      expect(JSON.parse(body)).toMatchObject({ ok: false, problem: { code: 'request-invalid' } });
    },
  );

  it.each([
    ['PUT', '/'],
    ['DELETE', '/index.html'],
    ['POST', '/'],
    ['GET', '/call/host.describe'],
    ['OPTIONS', '/call/host.describe'],
  ])('by %s for %s is refused', async (method, path) => {
    const headers = { cookie, origin: host.origin, 'content-type': 'application/json' };
    expect((await ask(host.origin, { method, path, headers })).status).toBe(405);
  });

  it.each(['//evil.example/', '/%', '/\\', '/?%'])('for the odd address %s gets nothing', async (path) => {
    expect((await get(path)).status).toBeGreaterThanOrEqual(path === '/?%' ? 200 : 400);
  });
});

describe('the page', () => {
  it('comes with its files, each with its type', async () => {
    const page = await get('/');
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

  it('is asked for again at every visit, its named files are not', async () => {
    expect((await get('/')).headers['cache-control']).toBe('no-store');
    expect((await get('/assets/index-1a2b.js')).headers['cache-control']).toContain('immutable');
  });

  it('that was never built stops the start', async () => {
    await expect(start({ pageFolder: join(folder, 'nowhere') })).rejects.toThrow('npm run build');
  });
});

describe('a call', () => {
  it('reaches the services and brings back the outcome', async () => {
    const { status, headers, body } = await call('documents.write', { path: 'a.walewright', text: '{}', over: null });
    expect([status, headers['content-type'], headers['cache-control']]).toEqual([200, 'application/json', 'no-store']);
    expect(JSON.parse(body)).toMatchObject({ ok: true, value: { path: join(folder, 'a.walewright') } });
    expect(await readFile(join(folder, 'a.walewright'), 'utf8')).toBe('{}');
  });

  it('brings back the problem where there is one', async () => {
    const { status, body } = await call('documents.read', { path: 'nowhere' });
    expect(status).toBe(200);
    expect(JSON.parse(body)).toEqual({
      ok: false,
      problem: { code: 'file-missing', where: join(folder, 'nowhere'), facts: {} },
    });
  });

  it('that breaks the contract is refused', async () => {
    const { status, body } = await call('documents.read', { path: 1 });
    expect(status).toBe(400);
    expect(JSON.parse(body)).toMatchObject({ problem: { code: 'request-invalid' } });
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
    const answer = ask(slow.origin, {
      method: 'POST',
      path: '/call/documents.write',
      headers: { cookie: await letIn(slow.address), origin: slow.origin, 'content-type': 'application/json' },
      body: JSON.stringify({ path: 'late.walewright', text: '{}', over: null }),
    });
    await asked;
    const closed = slow.close();
    goOn();
    await closed;
    expect(JSON.parse((await answer).body)).toMatchObject({ ok: true });
    expect(await readFile(join(folder, 'late.walewright'), 'utf8')).toBe('{}');
  });
});

describe('two hosts of one user', () => {
  async function callOf({ origin, address }: BrowserHost, method: string, params: unknown = {}): Promise<unknown> {
    const headers = { cookie: await letIn(address), origin, 'content-type': 'application/json' };
    const asked = { method: 'POST', path: `/call/${method}`, headers, body: JSON.stringify(params) };
    return JSON.parse((await ask(origin, asked)).body) as unknown;
  }

  it('keep their unsaved work apart and share the recent list', async () => {
    const second = await start();
    const here = (method: string, params?: unknown) => callOf(host, method, params);
    const there = (method: string, params?: unknown) => callOf(second, method, params);

    await here('recovery.keep', { text: 'of the first', path: null });
    expect(await there('recovery.find')).toEqual({ ok: true, value: null });
    await there('recovery.keep', { text: 'of the second', path: null });
    expect(await here('recovery.find')).toMatchObject({ value: { text: 'of the first' } });

    await here('documents.write', { path: 'a.walewright', text: '{}', over: null });
    expect(await there('documents.recent')).toMatchObject({ value: [{ name: 'a.walewright' }] });

    await second.close();
    expect(await here('recovery.find')).toMatchObject({ value: { text: 'of the first' } });
  });

  it('hand on the unsaved work of the one that has ended', async () => {
    const second = await start();
    await callOf(second, 'recovery.keep', { text: 'of the second', path: null });
    await second.close();
    const third = await start();
    expect(await callOf(third, 'recovery.find')).toMatchObject({
      value: { text: 'of the second' },
    });
    await third.close();
  });
});
