/** Work that an earlier version of the program kept, and that comes back in this one. */
import { copyFileSync, mkdirSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, expectAccessible } from './app.ts';
import { FilePanel } from './file-panel.ts';
import { planned } from './garment.ts';
import { test } from './hosts.ts';

const KEPT = resolve(import.meta.dirname, '../fixtures/kept');

test('of a project of version 2 is there in both its sizes, is saved as one of today, and is offered no more', async ({
  run,
  newWindow,
  folder,
  home,
}) => {
  // As that program called it: a run had one file, whatever its windows.
  const place = join(folder, 'data', 'recovery');
  mkdirSync(place, { recursive: true });
  copyFileSync(join(KEPT, 'whole-2.backup'), join(place, '0b5e9b1c-7a55-4d5c-9c1e-0d1e2f3a4b5c.backup'));

  const first = await run();
  const page = await newWindow(first);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Skerry sleeve');
  await expect(page.getByRole('region', { name: 'Notice' })).toContainText(
    '"Skerry sleeve" was not saved when the program ended.',
  );
  await expect(page.getByText('not saved', { exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  const drawing = page.getByRole('heading', { name: /on the needles$/ });
  const whatItIs = page.getByRole('region', { name: 'What it is' });
  await expect(drawing).toHaveText('Sleeve, size M, on the needles');
  // What was typed in that program: 96 to 124 stitches with four copies, and 104 to 132 with five.
  await expect(whatItIs).toContainText('From 96 to 124 stitches over 140 rows');
  await page.getByRole('grid').focus();
  await page.keyboard.press(']');
  await expect(drawing).toHaveText('Sleeve, size L, on the needles');
  await expect(whatItIs).toContainText('From 104 to 132 stitches over 150 rows');
  await expectAccessible(page);

  await page.keyboard.press('Control+S');
  await new FilePanel(page).saveHere();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await expect.poll(() => readdirSync(place)).toEqual([]);
  const file = join(home, 'Skerry sleeve.walewright');
  expect(planned(file, 'sleeve', 'M').piece).toMatchObject({ stitches: 96, rows: 140 });
  expect(planned(file, 'sleeve', 'L').piece).toMatchObject({ stitches: 104, rows: 150 });
  // Where the sheet of the sample has always had them.
  expect(planned(file, 'sleeve', 'M').groups.map(({ first: needle }) => needle)).toEqual(['L39', 'R11']);

  // The next run finds nothing to offer.
  await page.close();
  await first.close();
  const again = await newWindow(await run());
  await expect(again.getByText('not in a file yet')).toBeVisible();
  await expect(again.getByRole('region', { name: 'Notice' })).toHaveCount(0);
  await expect(again.getByRole('region', { name: 'Kept work' })).toHaveCount(0);
});
