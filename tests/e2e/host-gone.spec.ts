/** The host goes away while the window is open: said at once, work kept in the browser, joined again by itself. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { bandsOf } from '@shared/pattern/index.ts';
import { projectAt, projectFromText } from '@shared/project/index.ts';
import { expect, expectAccessible } from './app.ts';
import { keptGroups, openOn, programEnded, test } from './hosts.ts';
import { changeCopies } from './piece-bench.ts';

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

test('is said at once; work is kept sealed in the browser, and is the host’s again when one is back', async ({
  page,
  run,
  folder,
}) => {
  const first = await run();
  await openOn(page, first);
  await changeCopies(page, '1');
  await first.kill();
  await expect(programEnded(page)).toBeVisible();
  await expectAccessible(page);
  await changeCopies(page, '1, 2');
  await expect.poll(() => stored(page)).toEqual({ works: 1, readable: false });

  await run();
  await expect(programEnded(page)).toHaveCount(0);
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
  await openOn(page, first);
  await changeCopies(page, '1');
  await first.kill();
  await expect(programEnded(page)).toBeVisible();
  await expect.poll(() => stored(page)).toEqual({ works: 1, readable: false });
  const before = await storedTexts(page);
  await changeCopies(page, '1, 2, 3');
  await expect.poll(() => storedTexts(page)).not.toEqual(before);
  await page.close({ runBeforeUnload: false });

  // A host takes the port that it had last, and storage belongs to an address.
  const second = await run();
  expect(second.origin).toBe(first.origin);
  const again = await context.newPage();
  await openOn(again, second);
  await expect(
    again.getByRole('region', { name: 'Notice' }).filter({ hasText: 'was not saved when the program ended' }),
  ).toBeVisible();
  await again.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(again.getByLabel('Copies in each group')).toHaveValue('1, 2, 3');
  await expect.poll(() => stored(again)).toEqual({ works: 0, readable: false });
});

test('lets the person save a copy, which opens again', async ({ page, run }) => {
  const host = await run();
  await openOn(page, host);
  await changeCopies(page, '3, 1');
  await host.kill();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    programEnded(page).getByRole('button', { name: 'Save a copy to downloads' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('Skerry sleeve.walewright');
  const copy = projectAt(projectFromText(readFileSync(await download.path(), 'utf8')));
  expect(bandsOf(copy)[0]?.groups.map(({ across }) => across)).toEqual([3, 1]);
  // Nobody tells the page what became of a download: the work counts as unsaved.
  await expect(page.getByText('not saved', { exact: true })).toBeVisible();
});
