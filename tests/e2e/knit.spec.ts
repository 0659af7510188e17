/** Beside the machine: row by row, and never losing the row. */
import type { Locator, Page } from '@playwright/test';
import { addressOf, announced, expect, expectAccessible, intercept, test } from './app.ts';
import { appearAs, restingBox } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';
import { done, knitTo, reading, say, toKnit } from './knit-bench.ts';

const row = (page: Page, name: string) => page.getByRole('region', { name });

test('carries the knitter from row to row, by Space, Enter, a pedal and the large button', async ({ page, start }) => {
  await start();
  await toKnit(page);
  await expect(reading(page)).toHaveText('0');
  await expect(page.getByLabel('Cast on 96 stitches, L48–R48, closed, in slate.')).toBeVisible();
  await expect(row(page, 'Row 1, plain')).toContainText('8 plain rows like this, until the counter reads 8');
  await expect(page.getByRole('img', { name: 'The carriage goes from the right to the left.' })).toBeVisible();
  // The button has the keyboard from the start.
  await expect(done(page)).toBeFocused();
  await page.keyboard.press('Space');
  await expect(reading(page)).toHaveText('1');
  await page.keyboard.press('Enter');
  await expect(reading(page)).toHaveText('2');
  await page.keyboard.press('PageDown');
  await expect(reading(page)).toHaveText('3');
  await done(page).click();
  await expect(reading(page)).toHaveText('4');
  await page.keyboard.press('PageUp');
  await expect(reading(page)).toHaveText('3');
  await page.getByRole('button', { name: 'Back a row' }).click();
  await expect(reading(page)).toHaveText('2');
  // A stretch of plain rows counts down.
  await expect(row(page, 'Row 3, plain')).toContainText('6 plain rows like this');

  await knitTo(page, 24);
  await expect(row(page, 'Row 25, in pattern')).toContainText('slate in the first feeder, chalk in the second');
  await expect(page.getByRole('img', { name: /^The bed: \d+ needles in work, \d+ forward$/ })).toBeVisible();
  const act = page.getByRole('checkbox').first();
  await act.check();
  await expect(act).toBeChecked();
  await page.getByRole('button', { name: 'Motif', exact: true }).click();
  await toKnit(page);
  await expect(reading(page)).toHaveText('24');
  await expect(page.getByRole('checkbox').first()).toBeChecked();
});

test('the row is ended by the same keys whatever was pressed before it, and once by a double click', async ({
  page,
  start,
}) => {
  await start();
  await toKnit(page);
  await knitTo(page, 24);
  const acts = page.getByRole('region', { name: 'Before the row' });
  // With the mouse: Space is for the row. By the keyboard it ticks, and Enter is for the row.
  await acts.getByRole('checkbox').first().click();
  await expect(acts.getByRole('checkbox').first()).toBeChecked();
  await expect(done(page)).toBeFocused();
  await acts.getByRole('checkbox').nth(1).focus();
  await page.keyboard.press('Space');
  await expect(acts.getByRole('checkbox').nth(1)).toBeChecked();
  await expect(acts.getByRole('checkbox').nth(1)).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(reading(page)).toHaveText('25');
  await page.getByRole('button', { name: 'Voice, sound and key' }).click();
  await page.getByRole('button', { name: 'Voice, sound and key' }).click();
  await expect(done(page)).toBeFocused();
  await page.keyboard.press('Space');
  await expect(reading(page)).toHaveText('26');
  await done(page).dblclick();
  await expect(reading(page)).toHaveText('27');
  // Nothing comes behind it.
  await page.keyboard.press('PageUp');
  await expect(reading(page)).toHaveText('26');
  // Nor does Space go back a row because a finger did.
  await page.getByRole('button', { name: 'Back a row' }).click();
  await expect(reading(page)).toHaveText('25');
  await expect(done(page)).toBeFocused();
});

test('a pedal is heard while a list has the keyboard', async ({ page, start }) => {
  await start();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByLabel('Knit how many').fill('2');
  await page.keyboard.press('Enter');
  await toKnit(page);
  const copies = page.getByLabel('Which one');
  await copies.focus();
  await page.keyboard.press('ArrowDown');
  await expect(copies).toHaveValue('2');
  await expect(reading(page)).toHaveText('0');
  await page.keyboard.press('PageDown');
  await expect(reading(page)).toHaveText('1');
  await page.keyboard.press('PageUp');
  await expect(reading(page)).toHaveText('0');
  await expect(copies).toHaveValue('2');
});

test('what is said above the row is in view, and what lies under the bed is led to', async ({ page, start }) => {
  await start();
  await toKnit(page);
  await expect(page.getByRole('button', { name: 'Voice, sound and key' })).toBeInViewport({ ratio: 1 });
  await knitTo(page, 24);
  await page.getByRole('button', { name: 'More below' }).click();
  await expect(page.getByText('Put the wrapped needles back')).toBeInViewport();
  await expect(page.getByRole('button', { name: 'More below' })).toHaveCount(0);
  await knitTo(page, 26);
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByLabel('Copies in each group').fill('1, 1');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Undo change copies' })).toBeEnabled();
  await toKnit(page);
  await expect(page.getByText('The design was changed since this piece was begun.')).toBeInViewport({ ratio: 1 });
});

test('goes nowhere by what is no reading, says what one is, and keeps what was typed', async ({ page, start }) => {
  await start();
  await toKnit(page);
  await knitTo(page, 2);
  await page.getByRole('button', { name: 'Another reading, or ripped back' }).click();
  const dialog = page.getByRole('dialog', { name: 'Another reading' });
  const field = dialog.getByLabel('Reading');
  const goTo = dialog.getByRole('button', { name: 'The counter reads this' });
  for (const typed of ['200', '-1', '999', 'abc', '', '12.5', '1e2', '0x10']) {
    await field.fill(typed);
    await expect(dialog.getByRole('alert')).toHaveText(/^A whole number from 0 to 140/);
    await expect(goTo).toBeDisabled();
    await expect(dialog.getByRole('button', { name: 'I ripped back to this' })).toBeDisabled();
    await field.press('Enter');
    await field.press('Tab');
    await expect(field).toHaveValue(typed);
  }
  await expectAccessible(page);
  await field.fill('20');
  await expect(goTo).toBeEnabled();
  await field.press('Enter');
  await expect(dialog).toHaveCount(0);
  await expect(reading(page)).toHaveText('20');
});

test('says what a changed design means for what is knitted, and leaves it to the knitter', async ({ page, start }) => {
  await start();
  await toKnit(page);
  await knitTo(page, 26);
  const forward = page.getByRole('img', { name: /^The bed/ });
  const before = await forward.getAttribute('aria-label');
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByLabel('Copies in each group').fill('1, 1');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Undo change copies' })).toBeEnabled();
  await toKnit(page);
  await expect(page.getByText('The design was changed since this piece was begun.')).toBeVisible();
  await expect(page.getByText(/^Rows 25–26 that you knitted would differ now: /)).toBeVisible();
  // It goes on as it was begun until that is decided.
  await expect(forward).toHaveAttribute('aria-label', before ?? '');
  await page.getByRole('button', { name: 'Take the changed design' }).click();
  await expect(forward).not.toHaveAttribute('aria-label', before ?? '');
  // What is to be put right is not gone with the question, nor with the window.
  const back = page.getByRole('region', { name: 'Before you go on' });
  const toPutRight = 'The changed design is taken. Put right, in this order:';
  await expect(back).toContainText(toPutRight);
  const list = await back.getByRole('list').textContent();
  await page.getByRole('button', { name: 'Motif', exact: true }).click();
  await toKnit(page);
  await expect(back).toContainText(toPutRight);
  await expect(back.getByRole('list')).toHaveText(list ?? '');
  await page.getByRole('button', { name: 'At the right' }).click();
  await expect(page.getByText('The design was changed')).toHaveCount(0);
  // The count is no part of the design: undo takes back the copies and not a row.
  await page.keyboard.press('Control+Z');
  await expect(reading(page)).toHaveText('26');
  await page.getByRole('button', { name: 'Go on as it was begun' }).click();
  await expect(page.getByText('The design was changed')).toHaveCount(0);
  await page.getByRole('button', { name: 'Motif', exact: true }).click();
  await toKnit(page);
  await expect(page.getByText('The design was changed')).toHaveCount(0);
});

test('two windows on a project agree on the count', async ({ page, context, host, start }) => {
  await start();
  await toKnit(page);
  await knitTo(page, 2);
  const other = await context.newPage();
  await other.goto(await addressOf(host));
  await toKnit(other);
  await expect(reading(other)).toHaveText('2');
  await other.getByRole('button', { name: 'At the right' }).click();
  // The first window counts meanwhile, and is not asked.
  await expect(done(page)).toBeVisible();
  await expect(done(other)).toBeVisible();
  await other.getByRole('button', { name: 'Row done' }).click();
  await expect(reading(other)).toHaveText('3');
  await expect(reading(page)).toHaveText('3');
  const follows = (one: Page) => one.getByText('Another window counts this piece, and this one follows it.');
  await expect(follows(page)).toBeVisible();
  await expect(follows(other)).toHaveCount(0);
  await page.bringToFront();
  await done(page).click();
  await expect(reading(page)).toHaveText('4');
  await expect(follows(page)).toHaveCount(0);
  await expect(follows(other)).toBeVisible();
  await expect(reading(other)).toHaveText('4');
});

test('is read by anybody: axe, light and dark, small and large, and each row heard once', async ({ page, start }) => {
  await start();
  await toKnit(page);
  await knitTo(page, 24);
  for (const [width, height] of [
    [600, 960],
    [1280, 800],
    [1920, 1080],
  ] as const) {
    await page.setViewportSize({ width, height });
    for (const appearance of ['light', 'dark'] as const) {
      await appearAs(page, appearance);
      await expectAccessible(page);
    }
    await expect(done(page)).toBeInViewport({ ratio: 1 });
    // On a tablet the bed scrolls to where the work is.
    await expect(page.getByRole('img', { name: /^The bed/ })).toBeInViewport({ ratio: width < 800 ? 0.7 : 1 });
    const size = await reading(page).evaluate((element) => parseFloat(getComputedStyle(element).fontSize));
    expect(size).toBeGreaterThanOrEqual(96);
  }
  const heard = page.getByRole('main').getByRole('status');
  await expect(heard).toHaveText(/^Row 25\. Carriage at the right\. .* needles forward: /);
  await expect(announced(page)).not.toHaveText(/Row 25/);
});

test('is whole in a low window and in a narrow one, where the large button stays in view', async ({ page, start }) => {
  await start();
  await toKnit(page);
  await knitTo(page, 24);
  for (const [width, height] of [
    [640, 400],
    [320, 640],
  ] as const) {
    await page.setViewportSize({ width, height });
    await expect(reading(page)).toBeVisible();
    // Nothing is wider than the window but the bed, which scrolls by itself.
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(wide).toBeLessThanOrEqual(0);
    expect((await restingBox(done(page))).height).toBeGreaterThanOrEqual(64);
    await done(page).scrollIntoViewIfNeeded();
    await expect(done(page)).toBeInViewport({ ratio: 1 });
    await expectAccessible(page);
  }
});

test('goes on counting where nothing can be written, says so, and writes it later', async ({
  page,
  start,
  forgiven,
}) => {
  forgiven.push(/Failed to load resource|net::ERR/);
  await start();
  await toKnit(page);
  await knitTo(page, 2);
  const calls = /\/call\/knitting\.append/;
  await intercept(page, calls, (route) => route.abort());
  await page.keyboard.press('PageDown');
  await expect(reading(page)).toHaveText('3');
  const notice = page.getByText('The place is not kept on disk');
  await expect(notice).toBeVisible();
  // As large as what is to be done: read from two metres.
  const sizeOf = (one: Locator) => one.evaluate((element) => parseFloat(getComputedStyle(element).fontSize));
  expect(await sizeOf(notice)).toBeGreaterThanOrEqual(await sizeOf(page.getByText('Nothing to do before this row.')));
  await page.keyboard.press('PageDown');
  await expect(reading(page)).toHaveText('4');
  await page.unroute(calls);
  await expect(page.getByText('The place is not kept on disk')).toHaveCount(0);
  await expect(reading(page)).toHaveText('4');
});

test('goes to a row that is pressed on the fabric, once that is confirmed', async ({ page, start }) => {
  await start();
  await toKnit(page);
  await knitTo(page, 30);
  const fabric = page.getByRole('button', { name: /^The fabric as it hangs, purl side to you: 30 of 140 rows/ });
  const { height } = await restingBox(fabric);
  // 120 rows are shown below the one that is to come, the last one at the top: the tenth from there is row 21.
  await fabric.click({ position: { x: 150, y: Math.round(11 + (9.5 * (height - 11)) / 120) } });
  const dialog = page.getByRole('dialog', { name: 'Another reading' });
  await expect(dialog.getByLabel('Reading')).toHaveValue('20');
  await expectAccessible(page);
  await page.keyboard.press('Escape');
  await expect(reading(page)).toHaveText('30');
  await expect(done(page)).toBeFocused();
});

test('keeps the row when the project is saved, under another name too, and asks nothing', async ({ page, start }) => {
  await start();
  await toKnit(page);
  await knitTo(page, 3);
  await page.keyboard.press('Control+S');
  const panel = new FilePanel(page);
  await panel.saveAs('mine');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(reading(page)).toHaveText('3');
  await expect(done(page)).toBeVisible();
  await knitTo(page, 4);
  await page.keyboard.press('F2');
  await page.keyboard.type('Another');
  await page.keyboard.press('Enter');
  await expect(reading(page)).toHaveText('4');
  await knitTo(page, 5);
});

test('goes on where the design cannot be knitted any more, and begins anew when told to', async ({ page, start }) => {
  await start();
  await toKnit(page);
  await knitTo(page, 4);
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByLabel('Copies in each group').fill('9, 9');
  await page.keyboard.press('Enter');
  await toKnit(page);
  await expect(page.getByRole('button', { name: 'Go to the Piece bench' })).toBeVisible();
  await knitTo(page, 5);
  await page.getByRole('button', { name: 'Undo change copies' }).click();
  await page.getByRole('button', { name: 'Another reading, or ripped back' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Begin this piece anew' }).click();
  const sure = page.getByRole('dialog', { name: 'Begin anew?' });
  await expect(sure).toContainText('The count of 5 rows is put aside.');
  await expectAccessible(page);
  await page.keyboard.press('Escape');
  await expect(sure).toHaveCount(0);
  await expect(reading(page)).toHaveText('5');
  await page.getByRole('button', { name: 'Another reading, or ripped back' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Begin this piece anew' }).click();
  await sure.getByRole('button', { name: 'Begin this piece anew' }).click();
  await expect(reading(page)).toHaveText('0');
  await expect(done(page)).toBeVisible();
  await knitTo(page, 1);
});

test('counts each of two sleeves by itself, and goes from one to the other at the end', async ({ page, start }) => {
  await start();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByLabel('Knit how many').fill('2');
  await page.keyboard.press('Enter');
  await toKnit(page);
  await knitTo(page, 3);
  const which = page.getByLabel('Which one');
  await which.selectOption('2 of 2');
  await expect(reading(page)).toHaveText('0');
  await done(page).click();
  await expect(reading(page)).toHaveText('1');
  await which.selectOption('1 of 2');
  await expect(reading(page)).toHaveText('3');
  await page.getByRole('button', { name: 'At the left' }).click();
  await say(page, 140, 'The counter reads this');
  await page.getByRole('button', { name: 'At the right' }).click();
  await page.getByRole('button', { name: 'It is off the needles' }).click();
  await page.getByRole('button', { name: 'Begin 2 of 2' }).click();
  await expect(which).toHaveValue('2');
  await expect(reading(page)).toHaveText('1');
});

test('an empty project says why there is nothing to knit, or is knitted plain', async ({ page, start }) => {
  await start('empty');
  await page.getByRole('button', { name: 'Knit', exact: true }).click();
  await expect(page.getByRole('main')).toContainText(/./);
  await expect(page.getByRole('button', { name: 'Go to the Piece bench' }).or(done(page))).toBeVisible();
  await expectAccessible(page);
});
