/** Parts of the page that are not as they were built are never run, whoever gives them. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, expectAccessible, intercept } from './app.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';
import { openOn, programEnded, test } from './hosts.ts';
import { textOf, twelveStitchMotif } from './projects.ts';
import { assets, strangerRan, tampered } from './tampered-page.ts';

/** As from a stranger who has the port from one moment to the next, which the page cannot know. */
async function tamperWith(page: Page): Promise<void> {
  await intercept(page, /\/assets\//, (route) => {
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
    const scripts = [...assets().keys()].filter((path) => path.endsWith('.js'));
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
  await intercept(page, /\/assets\/unknown\.js/, (route) =>
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
  const sheets = [...assets().keys()].filter((path) => path.endsWith('.css'));
  const known = await page
    .locator('link[rel="stylesheet"][integrity^="sha256-"]')
    .evaluateAll((links) => links.map((link) => new URL((link as HTMLLinkElement).href).pathname));
  expect(known).toEqual(sheets);
  for (const [path, file] of assets()) {
    if (path.endsWith('.js')) expect(readFileSync(file, 'utf8')).not.toMatch(/[\w/-]+\.css\b/);
  }
});

test('a stranger on the port of a dead host is asked for no part, and the part comes with the next host', async ({
  page,
  run,
  takeOver,
}) => {
  const host = await run();
  await openOn(page, host);
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.getByRole('heading', { name: 'What will be printed' }).waitFor();
  // Its pages are laid out by the worker, whose script has come then: what is asked of a host as it dies would be heard.
  await page.getByRole('region', { name: 'Pages of the placement sheet' }).locator('svg').first().waitFor();
  const other = await takeOver(host, tampered);
  await expect(programEnded(page)).toBeVisible();

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

test('what a stranger had the browser keep for our address is not taken for ours', async ({ page, run, takeOver }) => {
  const host = await run();
  const { search } = new URL(await host.newAddress());
  const kept = { 'cache-control': 'max-age=31536000, immutable' };
  const other = await takeOver(host, (path) => {
    const given = tampered(path);
    if (given) return { ...given, headers: kept };
    const all = [...assets().keys()].map((asset) => `fetch('${asset}')`).join(',');
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

test('a service worker that a stranger left at our address is taken away', async ({ page, run, takeOver }) => {
  const host = await run();
  const other = await takeOver(host, (path) =>
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
