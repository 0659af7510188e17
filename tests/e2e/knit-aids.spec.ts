/** What helps where both hands are busy: a key of one's own, the voice, the side of the fabric, and yarn that runs out. */
import type { Page } from '@playwright/test';
import { yarnWords } from '@shared/words/yarn.ts';
import { addressOf, expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { changeCopies } from './piece-bench.ts';
import { done, knitTo, reading, toKnit } from './knit-bench.ts';

const aids = (page: Page) => page.getByRole('group', { name: 'Voice, sound and key' });

async function openAids(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Voice, sound and key' }).click();
  await expect(aids(page)).toBeVisible();
}

test('a key or pedal that is taught ends a row, in later runs too, until it is forgotten', async ({
  page,
  host,
  start,
}) => {
  await start();
  await toKnit(page);
  await openAids(page);
  await expect(aids(page)).toContainText('No key of your own ends a row.');
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);
  const teach = aids(page).getByRole('button', { name: 'Teach a key or pedal' });
  await teach.press('Enter');
  await expect(aids(page)).toContainText('Press the key or the pedal.');
  // What does something already is not taken: a row back, the list of commands, a bench.
  for (const key of ['PageUp', 'Tab', 'Control+K', '1']) {
    await page.keyboard.press(key);
    await expect(aids(page)).toContainText('That key does something else.');
  }
  await page.keyboard.press('Escape');
  await expect(aids(page)).toBeHidden();
  await openAids(page);
  await teach.press('Enter');
  await page.keyboard.press('b');
  await expect(aids(page)).toContainText('Your own key that ends a row: B');
  await page.keyboard.press('Escape');
  await page.keyboard.press('b');
  await expect(reading(page)).toHaveText('1');
  // A key that is held ends one row.
  await page.keyboard.down('b');
  await page.keyboard.down('b');
  await expect(reading(page)).toHaveText('2');
  await page.keyboard.up('b');
  await page.keyboard.press('Shift+B');
  await expect(reading(page)).toHaveText('3');
  // Where text is typed, or something is asked, it is a key as others are.
  await page.getByRole('button', { name: 'Another reading, or ripped back' }).click();
  await page.keyboard.press('b');
  await page.keyboard.press('Escape');
  await expect(reading(page)).toHaveText('3');

  await page.goto(await addressOf(host));
  await toKnit(page);
  await page.getByRole('button', { name: 'At the left' }).click();
  await expect(done(page)).toBeVisible();
  await page.keyboard.press('b');
  await expect(reading(page)).toHaveText('4');
  await openAids(page);
  await aids(page).getByRole('button', { name: 'Forget it' }).click();
  await expect(aids(page)).toContainText('No key of your own ends a row.');
  await page.keyboard.press('Escape');
  await page.keyboard.press('b');
  await knitTo(page, 5);
});

/** Has what a page says by voice written down from its start. */
async function hearVoice(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const spoken: string[] = [];
    Object.assign(globalThis, { spoken });
    speechSynthesis.speak = (one) => void spoken.push(one.text);
  });
}

function allSpoken(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => (globalThis as unknown as { spoken: string[] }).spoken);
}

test('a row is said in full or in short, in the words that are heard besides', async ({ page, start }) => {
  await hearVoice(page);
  const spoken = async (): Promise<string | undefined> => (await allSpoken(page)).at(-1);
  const heard = page.getByRole('main').getByRole('status').last();
  await start();
  await toKnit(page);
  await knitTo(page, 24);
  expect(await spoken()).toBeUndefined();
  await openAids(page);
  const speak = aids(page).getByLabel('Speak rows');
  await speak.selectOption('in full');
  const full = /^Row 25\. Carriage at the right\. .* needles forward: L\d+/;
  await expect(heard).toHaveText(full);
  await expect.poll(spoken).toMatch(full);
  await speak.selectOption('in short');
  const short = /^Row 25\. .*\d+ needles forward\.$/;
  await expect(heard).toHaveText(short);
  await expect.poll(spoken).toMatch(short);
  // What else is set meanwhile says the row no second time.
  const times = async (): Promise<number> => (await allSpoken(page)).length;
  const before = await times();
  await aids(page).getByRole('switch', { name: 'Tell the time left' }).click();
  await expect(aids(page).getByRole('switch', { name: 'Tell the time left' })).not.toBeChecked();
  expect(await times()).toBe(before);
  await page.keyboard.press('Escape');
  await knitTo(page, 25);
  await expect.poll(spoken).toMatch(/^Row 26\. /);
  // The command switches the voice off.
  await done(page).focus();
  await page.keyboard.press('s');
  await knitTo(page, 26);
  expect(await spoken()).toMatch(/^Row 26\. /);
});

test('of two windows on a piece the one that counts is heard', async ({ page, context, host, start }) => {
  await hearVoice(page);
  await start();
  await toKnit(page);
  await knitTo(page, 2);
  await openAids(page);
  await aids(page).getByLabel('Speak rows').selectOption('in short');
  await expect.poll(async () => (await allSpoken(page)).length).toBe(1);
  await page.keyboard.press('Escape');
  const other = await context.newPage();
  await hearVoice(other);
  await other.goto(await addressOf(host));
  await toKnit(other);
  await other.getByRole('button', { name: 'At the right' }).click();
  await done(other).click();
  await expect(reading(other)).toHaveText('3');
  await expect(reading(page)).toHaveText('3');
  await expect.poll(async () => (await allSpoken(other)).at(-1)).toMatch(/^Row 4\. /);
  expect(await allSpoken(page)).toEqual([expect.stringMatching(/^Row 3\. /)]);
  // Whoever goes on counting is heard again.
  await page.bringToFront();
  await done(page).click();
  await expect(reading(page)).toHaveText('4');
  await expect.poll(async () => (await allSpoken(page)).at(-1)).toMatch(/^Row 5\. /);
  await expect(reading(other)).toHaveText('4');
  expect((await allSpoken(other)).at(-1)).toMatch(/^Row 4\. /);
});

test('the fabric is seen from the knit side when that is wanted', async ({ page, host, start }) => {
  await start();
  // One copy less at the right: left and right can be told apart.
  await changeCopies(page, '2, 1');
  await toKnit(page);
  await knitTo(page, 26);
  const picture = (): Promise<string> =>
    page.locator('canvas').evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL());
  const purl = await picture();
  await openAids(page);
  await aids(page).getByLabel('The fabric is seen from').selectOption('the knit side');
  await expect(page.getByText('As it hangs, seen from the knit side')).toBeVisible();
  await expect.poll(picture).not.toBe(purl);
  await page.goto(await addressOf(host));
  await toKnit(page);
  await expect(page.getByText('As it hangs, seen from the knit side')).toBeVisible();
});

test('says in which row what is on hand of a yarn runs out', async ({ page, start }) => {
  const { count, onHand } = yarnWords;
  await start();
  await page.getByRole('button', { name: 'Change chalk' }).click();
  await page.getByLabel(count.system, { exact: true }).selectOption(count.systems.ball);
  for (const [label, value] of [
    [count.inBall.cm, '50'],
    [onHand.amount('grams', 'cm'), '3'],
  ] as const) {
    const field = page.getByRole('textbox', { name: new RegExp(`^${label.replace(/[()?.]/g, '\\$&')}`) });
    await field.fill(value);
    await field.press('Enter');
  }
  await page.getByRole('button', { name: 'Done' }).click();
  await toKnit(page);
  // Some 9 m of it are needed, and 3 g are 3 m.
  const told = page.getByRole('region', { name: 'The counter reads' });
  await expect(told).toContainText(/Chalk on hand runs out in row (2[5-9]|3\d|4[0-2])\./);
  const [, row] = /in row (\d+)/.exec((await told.textContent()) ?? '') ?? [];
  await knitTo(page, Number(row));
  await expect(told).toContainText(`Chalk on hand was to run out in row ${row}: look how much is left.`);
  await expectAccessible(page);
});
