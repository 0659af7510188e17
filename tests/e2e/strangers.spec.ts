/** Who is not the person at the window: other pages, other servers, other users of the machine. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from '@playwright/test';
import { CALL_HEADER } from '@shared/host/sealed/index.ts';
import { ask } from '../unit/host/asking.ts';
import { callAs, comeIn, join as joinHost, sealedRequest } from '../unit/host/calling.ts';
import { expect, expectAccessible, test as base } from './app.ts';
import { startBuiltHost, type BuiltHost } from './built-host.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';
import { textOf, twelveStitchMotif } from './projects.ts';
import { startStranger, type Gives, type Stranger } from './strangers.ts';

interface Fixtures {
  /** Starts a host with the test's data folder; all end with the test. */
  readonly run: () => Promise<BuiltHost>;
  readonly stranger: (html: string, port?: number, gives?: Gives) => Promise<Stranger>;
}

const test = base.extend<Fixtures>({
  run: async ({ folder, home }, use) => {
    const hosts: BuiltHost[] = [];
    await use(async () => {
      const host = await startBuiltHost(home, join(folder, 'data'));
      hosts.push(host);
      return host;
    });
    for (const host of hosts) await host.kill();
  },
  // Playwright reads from the pattern that no other fixture is needed.
  stranger: async ({}, use) => {
    const strangers: Stranger[] = [];
    await use(async (html, port, gives) => {
      const stranger = await startStranger(html, port, gives);
      strangers.push(stranger);
      return stranger;
    });
    for (const stranger of strangers) await stranger.close();
  },
});

async function openOn(page: Page, host: BuiltHost): Promise<void> {
  await page.goto(await host.newAddress());
  await page.getByRole('button', { name: 'Commands' }).waitFor();
}

/** All that the built page may ever load, by path. */
const ASSETS = new Map(
  readdirSync(resolve(import.meta.dirname, '../../out/renderer/assets'))
    .filter((name) => /\.(?:css|js)$/.test(name))
    .map((name) => [`/assets/${name}`, resolve(import.meta.dirname, '../../out/renderer/assets', name)]),
);

/** The script or style sheet that the build made, changed so that it is seen if it is taken. */
const tampered: Gives = (path) => {
  const file = ASSETS.get(path);
  if (file === undefined) return null;
  const [type, mark] = path.endsWith('.js')
    ? ['text/javascript', 'globalThis.strangerRan = true;']
    : ['text/css', 'html { --stranger: here; }'];
  return { type, body: mark + readFileSync(file, 'utf8') };
};

/** Whether anything of {@link tampered} was taken. */
const strangerRan = (page: Page): Promise<boolean> =>
  page.evaluate(
    () =>
      'strangerRan' in globalThis || getComputedStyle(document.documentElement).getPropertyValue('--stranger') !== '',
  );

const portOf = (origin: string): number => Number(new URL(origin).port);

test('a page of another server in the same browser gets nothing from the host', async ({
  page,
  run,
  stranger,
  home,
}) => {
  const host = await run();
  await openOn(page, host);
  const { origin } = await stranger('<title>hostile</title>');
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
  const other = await stranger('<title>hostile</title>');
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
  stranger,
  home,
}) => {
  const host = await run();
  await openOn(page, host);
  await host.kill();
  const other = await stranger('<title>hostile</title>', portOf(host.origin));
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
  await new FilePanel(page).dialog.getByRole('button', { name: 'Save here' }).click();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  expect(readdirSync(home)).toEqual(['Skerry sleeve.walewright']);
});

/** As from a stranger who has the port from one moment to the next, which the page cannot know. */
async function tamperWith(page: Page): Promise<void> {
  await page.route(/\/assets\//, (route) => {
    const given = tampered(new URL(route.request().url()).pathname);
    return given ? route.fulfill({ contentType: given.type, body: given.body }) : route.abort();
  });
}

for (const browser of ['this browser', 'a browser that knows no integrity policy']) {
  test(`no part that comes changed is run, whichever it is: ${browser}`, async ({ page, run }) => {
    const host = await run();
    if (browser !== 'this browser') {
      await page.route(`${host.origin}/?*`, async (route) => {
        const response = await route.fetch();
        const {
          'integrity-policy': policy,
          'content-encoding': _packed,
          'content-length': _length,
          ...headers
        } = response.headers();
        expect(policy).toBeDefined();
        await route.fulfill({ response, headers });
      });
    }
    await openOn(page, host);
    await tamperWith(page);
    const scripts = [...ASSETS.keys()].filter((path) => path.endsWith('.js'));
    // What stands already is not fetched again.
    const parts = await page.evaluate(
      (paths) => paths.filter((path) => !document.querySelector(`script[src$="${path}"]`)),
      scripts,
    );
    expect(parts.length).toBe(scripts.length - 1);
    const ran = await page.evaluate(async (paths) => {
      const runs = paths.map((path) =>
        import(path).then(
          () => [path],
          () => [],
        ),
      );
      return (await Promise.all(runs)).flat();
    }, parts);
    expect(ran).toEqual([]);
    expect(await strangerRan(page)).toBe(false);
  });
}

test('what the page does not know is run in no way: as a script, a worker or a service worker', async ({
  page,
  run,
}) => {
  await openOn(page, await run());
  await page.route(/\/assets\/unknown\.js/, (route) =>
    route.fulfill({ contentType: 'text/javascript', body: 'globalThis.strangerRan = true; self.postMessage("ran");' }),
  );
  const became = await page.evaluate(() => {
    const ran = (target: HTMLScriptElement | Worker): Promise<string> =>
      new Promise((settle) => {
        target.onerror = () => settle('refused');
        if (target instanceof Worker) target.onmessage = () => settle('ran');
        else {
          target.onload = () => settle('ran');
          document.head.append(target);
        }
      });
    const src = '/assets/unknown.js';
    return Promise.all([
      ran(Object.assign(document.createElement('script'), { src })),
      ran(Object.assign(document.createElement('script'), { src, type: 'module' })),
      ran(new Worker(src)),
      ran(new Worker(src, { type: 'module' })),
      // By the policy, not for what the script says.
      navigator.serviceWorker.register(src).then(
        () => 'registered',
        (error: DOMException) => error.name,
      ),
    ]);
  });
  expect(became).toEqual(['refused', 'refused', 'refused', 'refused', 'SecurityError']);
  expect(await strangerRan(page)).toBe(false);
});

test('all styles come with the page, and each is known to it', async ({ page, run }) => {
  await openOn(page, await run());
  const sheets = [...ASSETS.keys()].filter((path) => path.endsWith('.css'));
  const known = await page
    .locator('link[rel="stylesheet"][integrity^="sha384-"]')
    .evaluateAll((links) => links.map((link) => new URL((link as HTMLLinkElement).href).pathname));
  expect(known).toEqual(sheets);
  for (const [path, file] of ASSETS) {
    if (path.endsWith('.js')) expect(readFileSync(file, 'utf8')).not.toMatch(/[\w/-]+\.css\b/);
  }
});

test('a stranger on the port of a dead host is asked for no part, and the part comes with the next host', async ({
  page,
  run,
  stranger,
}) => {
  const host = await run();
  await openOn(page, host);
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.getByRole('heading', { name: 'What will be printed' }).waitFor();
  await host.kill();
  const other = await stranger('<title>hostile</title>', portOf(host.origin), tampered);
  await expect(page.getByRole('alert', { name: 'Program ended' })).toBeVisible();

  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  const missing = page.getByRole('main').getByRole('alert');
  await expect(missing).toContainText('The Piece bench cannot be loaded while the program');
  await expectAccessible(page);
  const asked = other.heard.length;
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect.poll(() => other.heard.length).toBeGreaterThan(asked + 1);
  // What was had before is had still.
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.getByRole('heading', { name: 'What will be printed' }).waitFor();
  await page.getByRole('button', { name: 'Motif', exact: true }).click();
  await new Chart(page).grid.focus();
  await page.keyboard.press('a');
  await expect(page.getByRole('dialog', { name: 'Lettering' }).getByRole('alert')).toContainText('cannot be loaded');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(missing).toBeVisible();
  expect(other.heard.filter(({ path }) => !path.startsWith('/call/'))).toEqual([]);
  expect(await strangerRan(page)).toBe(false);

  await other.close();
  await run();
  await expect(page.getByLabel('Copies in each group')).toBeVisible();
  await expect(missing).toHaveCount(0);
});

test('what a stranger had the browser keep for our address is not taken for ours', async ({ page, run, stranger }) => {
  const host = await run();
  const { search } = new URL(await host.newAddress());
  await host.kill();
  const kept = { 'cache-control': 'max-age=31536000, immutable' };
  const other = await stranger('', portOf(host.origin), (path) => {
    const given = tampered(path);
    if (given) return { ...given, headers: kept };
    const all = [...ASSETS.keys()].map((asset) => `fetch('${asset}')`).join(',');
    const html = `<!doctype html><title>hostile</title><script>Promise.all([${all}]).then(() => (document.title = 'kept'));</script>`;
    return { type: 'text/html', body: html, headers: kept };
  });
  // An address that was good once, and the bare one.
  for (const address of [`${other.origin}/${search}`, other.origin]) {
    await page.goto(address);
    await expect(page).toHaveTitle('kept');
  }
  await other.close();

  const next = await run();
  expect(next.origin).toBe(host.origin);
  await openOn(page, next);
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.getByRole('heading', { name: 'What will be printed' }).waitFor();
  expect(await strangerRan(page)).toBe(false);
  // Nor where the address is opened as it stands, with the run's key in the session.
  const again = await page.context().newPage();
  await again.goto(next.origin);
  await expect(again.getByRole('alert')).toContainText('Its address does not let it in.');
  await again.close();
});

test('a service worker that a stranger left at our address is taken away', async ({ page, run, stranger }) => {
  const host = await run();
  await host.kill();
  const other = await stranger('', portOf(host.origin), (path) =>
    path === '/worker.js'
      ? {
          type: 'text/javascript',
          body: `addEventListener('install', () => skipWaiting());
            addEventListener('activate', (event) => event.waitUntil(clients.claim()));
            addEventListener('fetch', (event) => event.respondWith(fetch(event.request)));`,
        }
      : {
          type: 'text/html',
          body: `<!doctype html><script>
            navigator.serviceWorker.oncontrollerchange = () => (document.title = 'controlled');
            navigator.serviceWorker.register('/worker.js');</script>`,
        },
  );
  await page.goto(other.origin);
  await expect(page).toHaveTitle('controlled');
  await other.close();

  await openOn(page, await run());
  const left = await page.evaluate(async () => [
    navigator.serviceWorker.controller === null,
    (await navigator.serviceWorker.getRegistrations()).length,
  ]);
  expect(left).toEqual([true, 0]);
});

test('a page that a stranger puts in place of a window finds a key there that opens nothing any more', async ({
  page,
  run,
  stranger,
}) => {
  const host = await run();
  await openOn(page, host);
  await host.kill();
  const other = await stranger('<title>hostile</title>', portOf(host.origin));
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
  await new FilePanel(page).dialog.getByRole('button', { name: 'Save here' }).click();
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

test('what is large is opened beside the page, by a worker that came with it', async ({ page, run, home }) => {
  // A project, for which no other worker is started; JSON may end in blanks.
  writeFileSync(join(home, 'large.walewright'), textOf(twelveStitchMotif([1])) + ' '.repeat(1_000_000));
  await openOn(page, await run());
  const worker = page.waitForEvent('worker', (made) => made.url().startsWith('blob:'));
  await page.keyboard.press('Control+O');
  await new FilePanel(page).open('large.walewright');
  await worker;
  await expect(page.getByRole('contentinfo').getByRole('status')).toContainText('opened');
});

const isRoot = process.getuid?.() === 0;
/** `nobody`, by the number that Linux gives it. */
const NOBODY = 65_534;

test.describe(isRoot ? 'another user' : 'another user (skipped: only root can become one)', () => {
  test.skip(!isRoot, 'only root can become another user');

  /** What a program of that user prints. */
  function asNobody(script: string, ...given: readonly string[]): string {
    const { stdout, stderr, status } = spawnSync(process.execPath, ['-e', script, '--', ...given], {
      uid: NOBODY,
      gid: NOBODY,
      cwd: '/',
      encoding: 'utf8',
    });
    if (status !== 0) throw new Error(stderr);
    return stdout;
  }

  test('reads in the list of processes where the key lies, and cannot read it there', async ({ page, folder }) => {
    // All folders above are open, so that nothing but our own guard stands before the key.
    const [data, bin, isOpen] = [join(folder, 'data'), join(folder, 'bin'), join(folder, 'open')];
    mkdirSync(bin);
    for (const open of [folder, data, bin]) chmodSync(open, 0o755);
    const script = `#!/bin/sh\n: > ${isOpen}\ntrap 'exit 0' TERM\nwhile :; do /bin/sleep 0.1; done\n`;
    writeFileSync(join(bin, 'chromium'), script, { mode: 0o755 });
    const launcher = spawn(
      process.execPath,
      [resolve(import.meta.dirname, '../../out/main/launcher.cjs'), '--shell', 'browser'],
      { env: { ...process.env, WALEWRIGHT_DATA: data, DISPLAY: ':99', PATH: bin }, stdio: 'ignore' },
    );
    const ended = once(launcher, 'close');
    try {
      await expect.poll(() => existsSync(isOpen)).toBe(true);
      const processes = asNobody(`
        const fs = require('node:fs');
        for (const pid of fs.readdirSync('/proc').filter((name) => /^\\d+$/.test(name))) {
          try { console.log(fs.readFileSync('/proc/' + pid + '/cmdline', 'utf8').split('\\0').join(' ')); } catch {}
        }`);
      const ours = processes.split('\n').find((line) => line.includes(bin) && line.includes('--app=')) ?? '';
      expect(ours).toContain(pathToFileURL(join(data, 'enter')).href);
      expect(ours).not.toContain('#');
      const [page1 = ''] = readdirSync(join(data, 'enter'));
      const tried = asNobody(
        `
        const fs = require('node:fs');
        const [folder, ...files] = process.argv.slice(1);
        const code = (work) => { try { work(); return 'read'; } catch (error) { return error.code; } };
        console.log(JSON.stringify([code(() => fs.readdirSync(folder)), ...files.map((file) => code(() => fs.readFileSync(file)))]));`,
        join(data, 'enter'),
        join(data, 'enter', page1),
        join(data, 'storage-key'),
      );
      expect(JSON.parse(tried)).toEqual(['EACCES', 'EACCES', 'EACCES']);

      // The person's own browser can; the page is gone with that.
      await page.goto(pathToFileURL(join(data, 'enter', page1)).href, { waitUntil: 'commit' });
      await page.getByRole('button', { name: 'Commands' }).waitFor();
      expect(page.url()).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
      await expect.poll(() => readdirSync(join(data, 'enter'))).toEqual([]);
    } finally {
      launcher.kill('SIGTERM');
      await ended;
    }
  });

  test('reaches the port, and gets the page without a key', async ({ run }) => {
    const host = await run();
    const answered = asNobody(
      `
      const [origin] = process.argv.slice(1);
      (async () => {
        const page = await fetch(origin);
        const call = await fetch(origin + '/call/host.describe', { method: 'POST', headers: { origin }, body: '{}' });
        console.log(JSON.stringify([page.status, call.status, page.headers.get('set-cookie')]));
      })();`,
      host.origin,
    );
    expect(JSON.parse(answered)).toEqual([200, 403, null]);
    expect(await callAs(await comeIn(await host.newAddress()), 'host.describe')).toMatchObject({ ok: true });
  });
});
