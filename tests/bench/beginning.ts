/**
 * The program's start in a browser that is four times as slow: what passes from
 * asking for it until it can be worked in, against a page that loads the same
 * bytes (looks, fonts and scripts, these compiled and not run); and the longest
 * task meanwhile.
 */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { brotliCompressSync } from 'node:zlib';
import type { Browser, Page } from 'playwright';
import type { Bar } from './bar.ts';
import { windowOf, withStand } from './built-window.ts';
import { longestBars } from './longest.ts';
import { slowPage } from './slowed.ts';
import { tasksOf, type Task } from './tasks.ts';

const SLOW_DOWN = 4;
const MOST_TIMES = 3;
const MOST_MS = 200;
const ROUNDS = 4;

interface Loaded {
  readonly path: string;
  readonly type: string;
  readonly body: Buffer;
}

interface Start {
  readonly ms: number;
  readonly tasks: Task[];
}

/** Starts at an address in a browser that has nothing of it, and waits until what `stands` names is painted, its fonts too. */
async function startAt(browser: Browser, address: string, stands: string, isOurs: boolean): Promise<Start> {
  const page = await windowOf(browser);
  if (isOurs) await slowPage(page);
  await page.addInitScript((wanted) => {
    const look = (): void => {
      if (document.querySelector(wanted) === null) requestAnimationFrame(look);
      else
        void document.fonts.ready.then(() =>
          requestAnimationFrame(() => setTimeout(() => Object.assign(window, { startedMs: performance.now() }))),
        );
    };
    look();
  }, stands);
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOW_DOWN });
  let ms = NaN;
  const tasks = await tasksOf(page, async () => {
    // Waited for in the page alone, however long it takes.
    await page.goto(address, { waitUntil: 'commit', timeout: 0 });
    const started = page.waitForFunction(() => (window as { startedMs?: number }).startedMs, null, {
      ...{ polling: 100, timeout: 0 },
    });
    ms = (await (await started).jsonValue()) as number;
  });
  await page.context().close();
  return { ms, tasks };
}

/** All that the program loads to start, but for the page itself and what it says to its host. */
async function loadedFrom(browser: Browser, address: string): Promise<Loaded[]> {
  const page: Page = await windowOf(browser);
  const coming: Promise<Loaded>[] = [];
  page.on('response', (response) => {
    const { pathname, protocol } = new URL(response.url());
    if (response.request().method() !== 'GET' || !protocol.startsWith('http') || pathname === '/') return;
    const type = response.headers()['content-type'] ?? '';
    coming.push(response.body().then((body) => ({ path: pathname, type, body })));
  });
  await page.goto(address);
  await page.getByRole('button', { name: 'Commands' }).waitFor();
  await page.evaluate(() => document.fonts.ready);
  const loaded = await Promise.all(coming);
  await page.context().close();
  return [...new Map(loaded.map((one) => [one.path, one])).values()];
}

function leastPage(loaded: readonly Loaded[]): string {
  const links = loaded.map(({ path, type }) => {
    const link = (rest: string): string => `<link href="${path}" crossorigin ${rest} onload="one()">`;
    if (type.includes('javascript')) return link('rel="modulepreload"');
    if (type.includes('css')) return link('rel="stylesheet"');
    return link(type.includes('font') ? 'rel="preload" as="font"' : 'rel="preload" as="fetch"');
  });
  const count = `let left=${loaded.length};const one=()=>{if(--left===0)document.body.dataset.loaded=''}`;
  return `<!doctype html><meta charset="utf-8"><script>${count}</script>${links.join('')}<body><p>A line of text</p></body>`;
}

async function serve(loaded: readonly Loaded[]): Promise<{ readonly server: Server; readonly address: string }> {
  const page = leastPage(loaded);
  const files = new Map(
    [...loaded, { path: '/', type: 'text/html', body: Buffer.from(page) }].map(({ path, type, body }) => [
      path,
      { type, packed: brotliCompressSync(body) },
    ]),
  );
  const server = createServer((request, response) => {
    const file = files.get(request.url ?? '');
    if (!file) return response.writeHead(404).end();
    return response.writeHead(200, { 'content-type': file.type, 'content-encoding': 'br' }).end(file.packed);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return { server, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` };
}

export async function beginningBars(): Promise<Bar[]> {
  return withStand(async ({ browser, newAddress }) => {
    const { server, address } = await serve(await loadedFrom(browser, await newAddress()));
    try {
      const ours: Start[] = [];
      const least: Start[] = [];
      for (let round = 0; round < ROUNDS; round++) {
        least.push(await startAt(browser, address, '[data-loaded]', false));
        ours.push(await startAt(browser, await newAddress(), 'main [role=grid]', true));
      }
      const best = (starts: readonly Start[]): number => Math.min(...starts.map(({ ms }) => ms));
      return [
        {
          name: `the start, ${SLOW_DOWN} × slower, until it can be worked in, against a page that loads the same bytes`,
          kind: 'at most',
          limit: MOST_TIMES,
          ratio: best(ours) / best(least),
          ours: best(ours),
          against: best(least),
        },
        ...longestBars(
          `of the start, ${SLOW_DOWN} × slower`,
          MOST_MS,
          ours.map(({ tasks }) => tasks),
        ),
      ];
    } finally {
      server.close();
    }
  });
}
