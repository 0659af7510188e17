/** What is sent to the host at once, and senders that never come to an end. */
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { connect, type Socket } from 'node:net';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { CALL_HEADER, newSecret, sealingKeys, type SealingKeys } from '@shared/host/sealed/index.ts';
import { Admission } from '../../../src-main/browser-host/admission.ts';
import { startBrowserHost, type BrowserHost } from '../../../src-main/browser-host/index.ts';
import { callAs, comeIn, headerFor, type Caller } from './calling.ts';

const NOTHING = { kind: 'nothing' };
/** A project file of about so many bytes: JSON may end in blanks. */
const projectOf = (bytes: number): string => projectToText(sampleProject()) + ' '.repeat(bytes);

const MB = 1024 * 1024;
const never = new AbortController().signal;

describe('room for what is sent', () => {
  /** Asks for room and says whether it was given at once. */
  async function asks(admission: Admission, bytes: number, gone = never) {
    let giveBack: (() => void) | null | undefined;
    const room = admission.room(bytes, gone).then((given) => (giveBack = given));
    for (let turns = 0; turns < 5; turns++) await Promise.resolve();
    return { room, isIn: () => giveBack !== undefined, leave: () => giveBack?.() };
  }

  it('is for as much as was settled, and the rest waits in its order', async () => {
    const admission = new Admission(100 * MB);
    const first = await asks(admission, 59 * MB);
    const second = await asks(admission, 40 * MB);
    const third = await asks(admission, 59 * MB);
    const fourth = await asks(admission, MB);
    expect([first, second, third, fourth].map(({ isIn }) => isIn())).toEqual([true, true, false, false]);
    second.leave();
    expect(third.isIn()).toBe(false);
    first.leave();
    await Promise.all([third.room, fourth.room]);
  });

  it('is there for one that is larger than all, by itself, and for small ones at any time', async () => {
    const admission = new Admission(10 * MB);
    const large = await asks(admission, 50 * MB);
    const next = await asks(admission, MB);
    const small = await asks(admission, 1000);
    expect([large, next, small].map(({ isIn }) => isIn())).toEqual([true, false, true]);
    large.leave();
    await next.room;
  });

  it('is not kept for a sender that has gone', async () => {
    const admission = new Admission(10 * MB);
    const first = await asks(admission, 10 * MB);
    const gone = new AbortController();
    const second = await asks(admission, 10 * MB, gone.signal);
    const third = await asks(admission, 10 * MB);
    gone.abort();
    await expect(second.room).rejects.toThrow();
    first.leave();
    await third.room;
  });

  it('is refused where too many wait', async () => {
    const admission = new Admission(10 * MB);
    await asks(admission, 10 * MB);
    for (let waiting = 0; waiting < 32; waiting++) await asks(admission, MB);
    expect(await admission.room(MB, never)).toBeNull();
  });
});

describe('a host', () => {
  let folder: string;
  let host: BrowserHost;
  let caller: Caller;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'walewright-load-'));
    await mkdir(join(folder, 'page'));
    await writeFile(join(folder, 'page', 'index.html'), '');
    host = await startBrowserHost({
      pageFolder: join(folder, 'page'),
      dataFolder: join(folder, 'data'),
      homeFolder: folder,
    });
    caller = await comeIn(await host.newAddress());
  });
  afterEach(async () => {
    await host.close();
    await rm(folder, { recursive: true, force: true });
  });

  /** Announces a call and sends `body`, which is not all of it. */
  async function beginCall(
    { window, keys }: { readonly window: string; readonly keys: SealingKeys },
    length: number,
  ): Promise<Socket> {
    const socket = connect(Number(new URL(host.origin).port), '127.0.0.1');
    await once(socket, 'connect');
    socket.on('error', () => undefined);
    const head = { ...caller.head('documents.write'), window };
    socket.write(
      [
        'POST /call/documents.write HTTP/1.1',
        `Host: ${head.authority}`,
        `Origin: ${host.origin}`,
        `${CALL_HEADER}: ${await headerFor(keys, head)}`,
        `Content-Length: ${length}`,
        '',
        '',
      ].join('\r\n'),
    );
    socket.write(new Uint8Array(1));
    return socket;
  }

  it('ends at once though senders are slow in the middle of a head, a body, or a wait', async () => {
    const head = connect(Number(new URL(host.origin).port), '127.0.0.1');
    await once(head, 'connect');
    head.on('error', () => undefined);
    head.write('POST /call/');
    const slow = [head];
    for (const bytes of [1000, 59 * MB, 59 * MB]) slow.push(await beginCall(caller, bytes));
    // Has been answered by somebody who has seen the others before.
    expect(await callAs(caller, 'host.describe')).toMatchObject({ ok: true });
    const cutOff = Promise.all(slow.map((socket) => once(socket, 'close')));
    await host.close();
    await cutOff;
  });

  it.each([
    ['who has not come in', () => ({ window: newSecret(globalThis.crypto), keys: caller.keys })],
    [
      'who has heard the name of a window that has',
      async () => ({
        window: caller.window,
        keys: await sealingKeys(globalThis.crypto, newSecret(globalThis.crypto), 'run'),
      }),
    ],
  ])('gives no room to %s, and does not wait for the rest', async (_case, made) => {
    const strangers: Socket[] = [];
    for (let i = 0; i < 3; i++) strangers.push(await beginCall(await made(), 100 * MB));
    for (const stranger of strangers) {
      const [answer] = (await once(stranger, 'data')) as [Buffer];
      expect(answer.toString()).toMatch(/^HTTP\/1\.1 403 /);
      stranger.destroy();
    }
    const text = projectOf(5 * MB);
    expect(await callAs(caller, 'documents.write', { path: 'a.walewright', text, expect: NOTHING })).toMatchObject({
      ok: true,
    });
  });

  it('saves six large files that come at once, one after the other', async () => {
    const text = projectOf(12 * MB);
    const paths = Array.from({ length: 6 }, (_, index) => join(folder, `${index}.walewright`));
    const answers = await Promise.all(
      paths.map((path) => callAs(caller, 'documents.write', { path, text, expect: NOTHING })),
    );
    for (const answer of answers) expect(answer).toMatchObject({ ok: true });
    for (const path of paths) expect((await readFile(path, 'utf8')).length).toBe(text.length);
  });
});
