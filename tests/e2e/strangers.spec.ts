/** Who is not the person at the window: other pages, other servers, and what they overhear. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { CALL_HEADER } from '@shared/host/sealed/index.ts';
import { ask } from '../unit/host/asking.ts';
import { comeIn, join as joinHost, sealedRequest } from '../unit/host/calling.ts';
import { expect, expectAccessible } from './app.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';
import { HOSTILE, openOn, test } from './hosts.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

test('a page of another server in the same browser gets nothing from the host', async ({
  page,
  run,
  stranger,
  home,
}) => {
  const host = await run();
  await openOn(page, host);
  const { origin } = await stranger(HOSTILE);
  const hostile = await page.context().newPage();
  await hostile.goto(origin);
  // A good call that was never made: all that the page lacks is the right to make it.
  const caller = await comeIn(await host.newAddress());
  const path = join(home, 'stolen.walewright');
  const params = { path, text: textOf(twelveStitchMotif([1])), expect: { kind: 'nothing' } };
  const good = await sealedRequest(host.origin, caller.keys, caller.head('documents.write'), params);
  const got = await hostile.evaluate(
    async ({ at, call, name, head, body }) => {
      const fails = (asked: Promise<unknown>): Promise<string> =>
        asked.then(
          () => 'was answered',
          () => 'failed',
        );
      const element = <Name extends 'img' | 'script' | 'iframe'>(tag: Name, src: string): Promise<string> =>
        new Promise((settle) => {
          const made = document.createElement(tag);
          made.onload = () => {
            let inside = 'nothing';
            try {
              inside = made instanceof HTMLIFrameElement ? (made.contentDocument?.title ?? 'nothing') : 'loaded';
            } catch {
              inside = 'nothing';
            }
            settle(inside);
          };
          made.onerror = () => settle('failed');
          made.src = src;
          document.body.append(made);
        });
      return {
        page: await fails(fetch(`${at}/`)),
        plain: await fails(fetch(`${at}${call}`, { method: 'POST', mode: 'no-cors', body: new Uint8Array(body) })),
        sealed: await fails(
          fetch(`${at}${call}`, { method: 'POST', headers: { [name]: head }, body: new Uint8Array(body) }),
        ),
        script: await element('script', `${at}/index.html`),
        frame: await element('iframe', `${at}/`),
        cookies: document.cookie,
      };
    },
    {
      at: host.origin,
      call: good.path ?? '',
      name: CALL_HEADER,
      head: good.headers?.[CALL_HEADER] ?? '',
      body: [...good.body],
    },
  );
  expect(got).toEqual({
    page: 'failed',
    plain: 'failed',
    sealed: 'failed',
    script: 'failed',
    frame: 'nothing',
    cookies: '',
  });
  expect(existsSync(path)).toBe(false);
  const { status } = await ask(host.origin, good);
  expect([status, existsSync(path)]).toEqual([200, true]);
  expect(hostile.frames().map((frame) => frame.url())).not.toContain(`${host.origin}/`);
  await hostile.close();
});

test('a server on another port is sent nothing that opens the host', async ({ page, run, stranger }) => {
  const host = await run();
  await openOn(page, host);
  const other = await stranger(HOSTILE);
  const hostile = await page.context().newPage();
  await hostile.goto(other.origin);
  expect(await page.context().cookies()).toEqual([]);
  expect(other.heard.length).toBeGreaterThan(0);
  for (const { headers } of other.heard) expect(headers).not.toHaveProperty('cookie');
  // What pages keep is kept by address, the port with it.
  expect(await hostile.evaluate(() => sessionStorage.length + localStorage.length)).toBe(0);
  await hostile.close();
});

test('a server on the port of a dead host learns nothing, and the window joins the next host by itself', async ({
  page,
  run,
  takeOver,
  home,
}) => {
  const host = await run();
  await openOn(page, host);
  const other = await takeOver(host);
  await expect.poll(() => other.heard.some(({ path }) => path === '/call/rejoin')).toBe(true);
  const before = other.heard.length;
  // Work goes on, and nothing of it goes to the stranger.
  await new Chart(page).click(1, 18);
  await expect(page.getByText('not saved', { exact: true })).toBeVisible();
  await expect.poll(() => other.heard.length - before).toBeGreaterThan(2);
  expect(new Set(other.heard.slice(before).map(({ method, path }) => `${method} ${path}`))).toEqual(
    new Set(['POST /call/rejoin']),
  );
  for (const { body, headers } of other.heard) {
    expect(body).not.toMatch(/Skerry|walewright|[{}"]{3}/);
    expect(headers).not.toHaveProperty('cookie');
  }

  // What it heard is of no worth at the next host, which is on the same port.
  const { heard } = other;
  await other.close();
  const joined = page.waitForResponse(
    async (response) => response.url().endsWith('/call/window.setState') && response.status() === 200,
  );
  const next = await run();
  expect(next.origin).toBe(host.origin);
  for (const { path, headers, body } of heard.filter(({ path: asked }) => /^\/call\/(?!rejoin$)/.test(asked))) {
    const again = {
      origin: host.origin,
      [CALL_HEADER]: String(headers[CALL_HEADER]),
      'content-length': `${body.length}`,
    };
    const request = { method: 'POST', path, headers: again, body: Buffer.from(body, 'latin1') };
    expect((await ask(next.origin, request)).status).toBe(403);
  }
  // The window is in again, and saves.
  await joined;
  await page.keyboard.press('Control+S');
  await new FilePanel(page).saveHere();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  expect(readdirSync(home)).toEqual(['Skerry sleeve.walewright']);
});

test('a page that a stranger puts in place of a window finds a key there that opens nothing any more', async ({
  page,
  run,
  takeOver,
}) => {
  const host = await run();
  await openOn(page, host);
  const other = await takeOver(host);
  await page.reload();
  await expect(page).toHaveTitle('hostile');
  const found = await page.evaluate(() => ({ ...sessionStorage, ...localStorage }));
  const keys = Object.values(found).filter((text) => /^[\w-]{43}$/.test(text));
  expect(keys.length).toBeGreaterThan(0);
  await other.close();
  const next = await run();
  for (const key of keys) {
    for (const way of ['enter', 'join', 'rejoin'] as const) {
      expect((await joinHost(next.origin, way, key)).answer.status).toBe(403);
    }
  }
});

test('a call that is heard on its way is good for nothing: not again, not changed, not elsewhere', async ({
  page,
  run,
}) => {
  const host = await run();
  const saving = page.waitForRequest((request) => request.url().endsWith('/call/documents.write'));
  await openOn(page, host);
  await page.keyboard.press('Control+S');
  await new FilePanel(page).saveHere();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  const saved = await saving;
  const body = saved.postDataBuffer() ?? Buffer.alloc(0);
  const head = (await saved.allHeaders())[CALL_HEADER] ?? '';
  expect(body.length).toBeGreaterThan(1000);
  const sentWith = async (text: string, bytes: Buffer, method = 'documents.write'): Promise<number> => {
    const headers = { origin: host.origin, [CALL_HEADER]: text, 'content-length': `${bytes.length}` };
    return (await ask(host.origin, { method: 'POST', path: `/call/${method}`, headers, body: bytes })).status;
  };
  const changed = Buffer.from(body);
  changed[100] = (changed[100] ?? 0) ^ 1;
  const later = head.replace(/ \d+ /, ' 999 ');
  expect(later).not.toBe(head);
  expect(await sentWith(head, body)).toBe(403);
  expect(await sentWith(later, body)).toBe(403);
  expect(await sentWith(later, changed)).toBe(403);
  expect(await sentWith(head.replace('documents.write', 'recovery.keep'), body, 'recovery.keep')).toBe(403);
});

test('an answer that was given before is not believed again', async ({ page, run }) => {
  const host = await run();
  const rejoins = page.waitForRequest((request) => request.url().endsWith('/call/rejoin'));
  let first: Buffer | null = null;
  await page.route('**/call/here', async (route) => {
    const answer = await route.fetch();
    first ??= await answer.body();
    await route.fulfill({ response: answer, body: first });
  });
  await openOn(page, host);
  await rejoins;
});

test('a key that was spent before the browser came lets nobody in again, and both are told', async ({ page, run }) => {
  const host = await run();
  const address = await host.newAddress();
  await comeIn(address);
  await page.goto(address);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('This page is not connected to Walewright');
  await expect(page.getByRole('alert')).toContainText('has been used before');
  await expectAccessible(page);
  await expect.poll(() => host.complaints()).toContain('An address was used a second time');
  // The next address is pasted into the same tab.
  await page.goto(await host.newAddress());
  await page.getByRole('button', { name: 'Commands' }).waitFor();
  expect(new URL(page.url()).hash).toBe('');
});

test('the page by itself is let in nowhere', async ({ page, run }) => {
  const host = await run();
  await page.goto(host.origin);
  await expect(page.getByRole('alert')).toContainText('Its address does not let it in.');
  await expect(page.getByText('Press Enter in the terminal')).toBeVisible();
});
