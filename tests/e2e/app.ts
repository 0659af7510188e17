/**
 * The program as a person meets it: the built page in Chromium, behind it a
 * built browser host in a process of its own, with a home and a data folder
 * that belong to one test alone. Whatever page or host complain of fails it.
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axeCore from 'axe-core';
import { expect, test as base, type Page, type Route } from '@playwright/test';
import { motionEnds } from './at-rest.ts';
import { startBuiltHost, type BuiltHost } from './built-host.ts';

interface Fixtures {
  /** A folder with `home` and `data` in it, gone after the test. */
  readonly folder: string;
  readonly home: string;
  readonly host: BuiltHost;
  /** What the page may complain of, where a test takes something away from it. */
  readonly forgiven: RegExp[];
  /** The page with the program running: the sample project, or an empty one. */
  readonly start: (what?: 'sample' | 'empty') => Promise<void>;
}

export const test = base.extend<Fixtures>({
  // Playwright reads from the pattern that no other fixture is needed.
  folder: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'walewright-e2e-'));
    for (const name of ['home', 'data']) mkdirSync(join(folder, name));
    await use(folder);
    rmSync(folder, { recursive: true, force: true });
  },
  home: async ({ folder }, use) => use(join(folder, 'home')),
  host: async ({ folder, home }, use) => {
    const host = await startBuiltHost(home, join(folder, 'data'));
    await use(host);
    await host.close();
  },
  forgiven: async ({}, use) => use([]),
  // Playwright's own `only-on-failure` takes a picture at the end of each test, some 0.3 s, and throws it away.
  page: async ({ page }, use, test) => {
    await use(page);
    if (test.status === test.expectedStatus || page.isClosed()) return;
    const path = test.outputPath('test-failed-1.png');
    const isTaken = await page.screenshot({ path, timeout: 5000 }).then(
      () => true,
      () => false,
    );
    if (isTaken) test.attachments.push({ name: 'screenshot', path, contentType: 'image/png' });
  },
  start: async ({ page, host, forgiven }, use) => {
    const complaints: string[] = [];
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    await use(async (what = 'sample') => {
      await page.goto(await addressOf(host, what));
      // All of the window is there: it comes up part by part.
      await page.locator('.window:not([aria-busy])').waitFor();
      await page.evaluate(() => document.fonts.ready);
    });
    expect(complaints.filter((complaint) => !forgiven.some((pattern) => pattern.test(complaint)))).toEqual([]);
  },
});

export { expect };

/** A new address of the host that lets one window in. */
export async function addressOf(host: BuiltHost, what: 'sample' | 'empty' = 'sample'): Promise<string> {
  const address = new URL(await host.newAddress());
  if (what === 'empty') address.search = 'empty';
  return address.href;
}

/**
 * Fails on anything axe finds wrong on the page as it stands (WCAG 2.2 A and
 * AA, and its best practices), once nothing moves. In the dark the page differs in nothing but its
 * colours, so only the rules about these are asked again: a whole scan takes
 * seconds.
 */
export async function expectAccessible(page: Page): Promise<void> {
  await motionEnds(page);
  const isDark = await page.evaluate(() => matchMedia('(prefers-color-scheme: dark)').matches);
  // A page has it once and for all: to be given it takes as long as a scan.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axeCore.source);
  const violations = await page.evaluate(
    async (rules) => {
      const { axe } = window as unknown as { axe: typeof axeCore };
      const found = await axe.run(document, { resultTypes: ['violations'], ...(rules && { runOnly: rules }) });
      return found.violations.map(({ id, nodes }) => ({ id, at: nodes.map(({ target }) => target.join(' ')) }));
    },
    isDark ? ['color-contrast', 'link-in-text-block'] : null,
  );
  expect(violations).toEqual([]);
}

/**
 * Has requests of an open page answered by `handle`. Resolves once it is so:
 * Chromium tells that it intercepts before the page's own way out has changed,
 * and a request that is sent at once goes past.
 */
export async function intercept(page: Page, url: string | RegExp, handle: (route: Route) => unknown): Promise<void> {
  await page.route(url, handle);
  await page.route(/\/\?is-it-intercepted$/, (route) => route.fulfill({ headers: { 'x-intercepted': 'yes' } }));
  const isIntercepted = (): Promise<boolean> =>
    page.evaluate(async () => (await fetch('/?is-it-intercepted', { method: 'HEAD' })).headers.has('x-intercepted'));
  await expect.poll(isIntercepted).toBe(true);
}

/** Creates what the dialog for a new project offers first: a motif of 24 × 24. */
export async function createOffered(page: Page): Promise<void> {
  await page.getByRole('dialog', { name: 'New project' }).getByRole('button', { name: 'Create' }).click();
}

/** What the line at the foot of the window says of what is under the pointer. */
export function statusLine(page: Page): ReturnType<Page['locator']> {
  return page.getByRole('contentinfo').locator('p').first();
}

/** What it says, beside that, of what the keyboard's cursor is on. */
export function cursorLine(page: Page): ReturnType<Page['locator']> {
  return page.getByRole('contentinfo').locator('p').nth(1);
}

/** What was last said to assistive technology. */
export function announced(page: Page): ReturnType<Page['locator']> {
  return page.getByRole('contentinfo').getByRole('status');
}
