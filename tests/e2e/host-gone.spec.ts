/** The host goes away while the window is open: said at once, work kept in the browser, joined again by itself. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { projectFromText } from '@shared/project/index.ts';
import { expect, expectAccessible, test as base } from './app.ts';
import { startBuiltHost, type BuiltHost } from './built-host.ts';

interface Fixtures {
  /** Starts a host; all end with the test. */
  readonly run: () => Promise<BuiltHost>;
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
});

async function open(page: Page, host: BuiltHost): Promise<void> {
  await page.goto(await host.newAddress());
  await page.getByRole('button', { name: 'Commands' }).waitFor();
}

async function changeCopies(page: Page, copies: string): Promise<void> {
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByLabel('Copies in each group').fill(copies);
  await page.getByLabel('Copies in each group').blur();
}

/** The groups of every project that is kept with the host. */
function keptGroups(folder: string): string[] {
  const place = join(folder, 'data', 'recovery');
  if (!existsSync(place)) return [];
  return readdirSync(place)
    .filter((name) => name.endsWith('.backup'))
    .map((name) => readFileSync(join(place, name), 'utf8'))
    .map((text) => text.slice(text.indexOf('\n') + 1, text.lastIndexOf('\nend ')))
    .map((text) => (projectFromText(text).bands[0]?.groups ?? []).map(({ across }) => across).join(', '));
}

/** How many works lie in the browser's own storage, and whether any of them can be read there. */
async function stored(page: Page): Promise<{ works: number; readable: boolean }> {
  const texts = await storedTexts(page);
  return { works: texts.length, readable: texts.some((text) => /motif|Skerry/.test(text)) };
}

/** What lies in the browser's own storage, as text that says nothing where it is sealed. */
async function storedTexts(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    const opening = indexedDB.open('walewright', 1);
    const database = await new Promise<IDBDatabase>((resolve) => {
      opening.onsuccess = () => resolve(opening.result);
    });
    const asking = database.transaction('kept-work').objectStore('kept-work').getAll();
    const found = await new Promise<Uint8Array[]>((resolve) => {
      asking.onsuccess = () => resolve(asking.result as Uint8Array[]);
    });
    database.close();
    return found.map((bytes) => new TextDecoder('latin1').decode(bytes));
  });
}

const gone = (page: Page): ReturnType<Page['getByRole']> => page.getByRole('alert', { name: 'Program ended' });

test('is said at once; work is kept sealed in the browser, and is the host’s again when one is back', async ({
  page,
  run,
  folder,
}) => {
  const first = await run();
  await open(page, first);
  await changeCopies(page, '1');
  await first.kill();
  await expect(gone(page)).toBeVisible();
  await expectAccessible(page);
  await changeCopies(page, '1, 2');
  await expect.poll(() => stored(page)).toEqual({ works: 1, readable: false });

  await run();
  await expect(gone(page)).toHaveCount(0);
  await expect.poll(() => keptGroups(folder)).toEqual(['1, 2']);
  await expect.poll(() => stored(page)).toEqual({ works: 0, readable: false });
  // It goes on as before: what is drawn is kept with the host, and can be saved.
  await changeCopies(page, '2, 1');
  await expect.poll(() => keptGroups(folder)).toEqual(['2, 1']);
});

test('keeps what was drawn without a host for the next start, when the window is closed too', async ({
  page,
  context,
  run,
}) => {
  const first = await run();
  await open(page, first);
  await changeCopies(page, '1');
  await first.kill();
  await expect(gone(page)).toBeVisible();
  await expect.poll(() => stored(page)).toEqual({ works: 1, readable: false });
  const before = await storedTexts(page);
  await changeCopies(page, '1, 2, 3');
  await expect.poll(() => storedTexts(page)).not.toEqual(before);
  await page.close({ runBeforeUnload: false });

  // A host takes the port that it had last, and storage belongs to an address.
  const second = await run();
  expect(second.origin).toBe(first.origin);
  const again = await context.newPage();
  await open(again, second);
  await expect(again.getByText(/was not saved when the program ended/)).toBeVisible();
  await again.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(again.getByLabel('Copies in each group')).toHaveValue('1, 2, 3');
  await expect.poll(() => stored(again)).toEqual({ works: 0, readable: false });
});

test('lets the person save a copy, which opens again', async ({ page, run }) => {
  const host = await run();
  await open(page, host);
  await changeCopies(page, '3, 1');
  await host.kill();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    gone(page).getByRole('button', { name: 'Save a copy to downloads' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('Skerry sleeve.walewright');
  const copy = projectFromText(readFileSync(await download.path(), 'utf8'));
  expect(copy.bands[0]?.groups.map(({ across }) => across)).toEqual([3, 1]);
  // Nobody tells the page what became of a download: the work counts as unsaved.
  await expect(page.getByText('not saved', { exact: true })).toBeVisible();
});
