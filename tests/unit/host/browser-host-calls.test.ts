/** Who may call the browser host, and what they get. */
import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { CALL_HEADER, newSecret, sealingKeys, type CallHead } from '@shared/host/sealed/index.ts';
import { type BrowserHost } from '../../../src-main/browser-host/index.ts';
import { nodeFiles } from '../../../src-main/services/index.ts';
import { ask, type Asked } from './asking.ts';
import { callAs, comeIn, headerFor, openedAnswer, sealedRequest, type Caller } from './calling.ts';
import { hostForEachTest, startIn } from './host-in-folder.ts';

const PROJECT = projectToText(sampleProject());

let folder: string;
let host: BrowserHost;
let caller: Caller;
hostForEachTest((own) => ({ folder, host, caller } = own));

const start = (options = {}) => startIn(folder, options);

const get = (path: string, headers: Record<string, string> = {}) => ask(host.origin, { path, headers });

/** A good call of the services, ready to be spoilt. */
const goodCall = (head: CallHead = caller.head('host.describe')) => sealedRequest(host.origin, caller.keys, head);

/** How a request is answered, the given part of it put in place of the right one. */
async function statusWith(asked: Asked, headers: Readonly<Record<string, string>>): Promise<number> {
  return (await ask(host.origin, { ...asked, headers: { ...asked.headers, ...headers } })).status;
}

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
    const callHeaders = text === null ? without : { ...without, [CALL_HEADER]: text };
    expect((await ask(host.origin, { ...rest, headers: callHeaders })).status).toBe(403);
  });

  it.each([
    ['another host', { authority: '127.0.0.1:1' }],
    ['another window', { window: 'x'.repeat(43) }],
    ['another count', { count: 99 }],
    ['another method', { method: 'documents.recent' }],
  ] as const)('with %s written over it than it was sealed about is refused', async (_case, change) => {
    const head = caller.head('host.describe');
    const changed = { ...head, ...change };
    const callHeaders = { [CALL_HEADER]: await headerFor(caller.keys, changed) };
    expect(await statusWith({ ...(await goodCall(head)), path: `/call/${changed.method}` }, callHeaders)).toBe(403);
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
