/** A tablet beside the machine: a piece from casting on to casting off by touch alone. */
import type { Locator, Page } from '@playwright/test';
import { expect, expectAccessible, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { reading } from './knit-bench.ts';

test.use({ hasTouch: true, isMobile: true, viewport: { width: 600, height: 960 } });

/** Large enough for a finger, with yarn in the hand. */
const LEAST = 64;

async function tapLarge(target: Locator): Promise<void> {
  const { height } = await restingBox(target);
  expect(Math.round(height), String(target)).toBeGreaterThanOrEqual(LEAST);
  await target.tap();
}

const done = (page: Page): Locator => page.getByRole('button', { name: 'Row done' });

async function tapTo(page: Page, rows: number): Promise<void> {
  for (let at = Number(await reading(page).textContent()); at < rows; at++) {
    // Two in one place within half a second are one double tap, which no row is as quick as.
    await done(page).tap({ position: { x: at % 2 === 0 ? 40 : 160, y: 36 } });
    await expect(reading(page)).toHaveText(String(at + 1));
  }
}

/** Types a reading on the keys of the tablet, and answers. */
async function say(page: Page, to: number, answer: string): Promise<void> {
  const dialog = page.getByRole('dialog', { name: 'Another reading' });
  await dialog.getByLabel('Reading').tap();
  await dialog.getByLabel('Reading').fill(String(to));
  await tapLarge(dialog.getByRole('button', { name: answer }));
  await expect(dialog).toHaveCount(0);
}

test('a piece is knitted by touch alone', async ({ page, start }) => {
  await start();
  await page.getByRole('button', { name: 'Knit', exact: true }).tap();
  await expect(reading(page)).toHaveText('0');
  const acts = page.getByRole('main').getByRole('listitem');
  await expect(acts.first()).toBeVisible();
  for (const act of await acts.all()) {
    await tapLarge(act.locator('label'));
    await expect(act.getByRole('checkbox')).toBeChecked();
  }
  await tapLarge(done(page));
  await expect(reading(page)).toHaveText('1');
  await tapTo(page, 26);
  await tapLarge(page.getByRole('button', { name: 'Back a row' }));
  await expect(reading(page)).toHaveText('25');
  await expectAccessible(page);

  // A row of the fabric leads to the dialog, and so does the button.
  await page.getByRole('button', { name: /^The fabric as it hangs/ }).tap();
  await say(page, 20, 'I ripped back to this');
  await expect(reading(page)).toHaveText('20');
  await expect(page.getByRole('region', { name: 'Before you go on' })).toContainText('Put back, in this order:');
  await tapLarge(page.getByRole('button', { name: 'At the right' }));
  await tapTo(page, 21);
  await tapLarge(page.getByRole('button', { name: 'Another reading, or ripped back' }));
  await say(page, 140, 'The counter reads this');
  await tapLarge(page.getByRole('button', { name: 'At the right' }));
  await tapLarge(page.getByRole('button', { name: 'It is off the needles' }));
  await expect(page.getByRole('main').getByRole('status')).toHaveText('This piece is off the needles.');
  await tapLarge(page.getByRole('button', { name: 'It is not: go back' }));
  await expect(reading(page)).toHaveText('140');
});
