/** A piece of all needles of a bed and a thousand rows, beside the machine. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectToText } from '@shared/project/index.ts';
import { fullBody } from '../long-body.ts';
import { settled } from '../written-projects.ts';
import { addressOf, expect, expectAccessible, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';
import { done, knitTo, reading, toKnit } from './knit-bench.ts';

const BANDS = 36;

test('a piece of 200 × 1000 is knitted from any of its rows', async ({ page, host, start, home }) => {
  const { whole } = settled(fullBody(BANDS));
  writeFileSync(join(home, 'body.walewright'), projectToText(whole));
  const open = async (): Promise<void> => {
    await page.keyboard.press('Control+O');
    await new FilePanel(page).openProject('body.walewright', whole.name);
    await toKnit(page);
  };
  await start('empty');
  await open();
  await expect(page.getByText('Row 1 of 1000')).toBeVisible();
  await expect(page.getByRole('img', { name: 'The bed: 200 needles in work' })).toBeVisible();
  await knitTo(page, 12);
  await expect(page.getByRole('region', { name: 'Row 13, in pattern' })).toBeVisible();

  await test.step('near the end, and over it', async () => {
    await page.getByRole('button', { name: 'Another reading, or ripped back' }).click();
    const dialog = page.getByRole('dialog', { name: 'Another reading' });
    await dialog.getByLabel('Reading').fill('997');
    await dialog.getByRole('button', { name: 'The counter reads this' }).click();
    // It starts at the right, so after an odd number of rows it stands at the left.
    await page.getByRole('button', { name: 'At the left' }).click();
    await knitTo(page, 1000);
    await page.getByRole('button', { name: 'It is off the needles' }).click();
    await expect(page.getByRole('main').getByRole('status')).toHaveText('This piece is off the needles.');
  });

  await test.step('after a rip over nearly all of it, kept over an end of everything', async () => {
    await page.getByRole('button', { name: 'It is not: go back' }).click();
    await page.getByRole('button', { name: 'Another reading, or ripped back' }).click();
    const dialog = page.getByRole('dialog', { name: 'Another reading' });
    await dialog.getByLabel('Reading').fill('40');
    await dialog.getByRole('button', { name: 'I ripped back to this' }).click();
    await expect(page.getByText('Ripped back from 1000 to 40. Put back, in this order:')).toBeVisible();
    await page.getByRole('button', { name: 'At the right' }).click();
    await knitTo(page, 41);
    await page.goto(await addressOf(host, 'empty'));
    await page.getByRole('button', { name: 'Commands' }).waitFor();
    await open();
    await expect(reading(page)).toHaveText('41');
    await page.getByRole('button', { name: 'At the left' }).click();
    await expect(done(page)).toBeVisible();
  });

  await test.step('on a tablet the bed goes on beyond its edge, and shows where the work is', async () => {
    await page.setViewportSize({ width: 600, height: 960 });
    await knitTo(page, 45);
    const bed = page.getByRole('group', { name: 'The bed' });
    const work = page.locator('.bracket').first();
    const [frame, group] = [await restingBox(bed), await restingBox(work)];
    expect(await bed.evaluate((element) => element.scrollWidth > element.clientWidth)).toBe(true);
    expect(group.x).toBeGreaterThanOrEqual(frame.x - 1);
    expect(group.x).toBeLessThan(frame.x + frame.width);
    // What scrolls is scrolled by keys too.
    await bed.focus();
    const before = await bed.evaluate((element) => element.scrollLeft);
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => bed.evaluate((element) => element.scrollLeft)).toBeGreaterThan(before);
    await expectAccessible(page);
  });
});
