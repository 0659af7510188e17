/** Coming back to a piece on the needles: after an end of the program, after ripping back, to a damaged journal. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { addressOf, expect, expectAccessible, test } from './app.ts';
import { done, knitTo, reading, say, toKnit } from './knit-bench.ts';

test('keeps the row over an end of everything, and asks at which side the carriage stands', async ({
  page,
  host,
  start,
}) => {
  await start();
  await toKnit(page);
  await knitTo(page, 5);
  await page.goto(await addressOf(host));
  await page.getByRole('button', { name: 'Commands' }).waitFor();
  await toKnit(page);
  await expect(reading(page)).toHaveText('5');
  // Five rows begun at the right end at the left. No row is counted before that is said.
  await expect(page.getByRole('region', { name: 'Before you go on' })).toBeVisible();
  await expect(done(page)).toHaveCount(0);
  await page.getByRole('button', { name: 'At the right' }).click();
  await expect(
    page.getByText('The carriage stands at the right; when the counter reads 5 it stands at the left.'),
  ).toBeVisible();
  await expect(done(page)).toHaveCount(0);
  await page.getByRole('button', { name: 'At the left' }).click();
  await expect(done(page)).toBeVisible();
  await knitTo(page, 6);
});

test('says all that is put back after ripping out rows of the pattern', async ({ page, start }) => {
  await start();
  await toKnit(page);
  await knitTo(page, 27);
  await say(page, 20, 'I ripped back to this');
  await expect(reading(page)).toHaveText('20');
  const back = page.getByRole('region', { name: 'Before you go on' });
  await expect(back).toContainText('Ripped back from 27 to 20. Put back, in this order:');
  const things = await back.getByRole('listitem').count();
  await expect(
    page.getByRole('status').filter({ hasText: `Ripped back from 27 to 20. ${things} things to put back` }),
  ).toHaveCount(1);
  await expect(back.getByRole('listitem').first()).toContainText(
    'Hang the loops of row 20 on L50–R50, each on its own needle.',
  );
  await expect(back).toContainText('Set the row counter to 20.');
  await expect(back).toContainText('without knitting or counting');
  await expect(back).toContainText('Take chalk out of feeder 2.');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'At the right' }).click();
  await knitTo(page, 21);
  // A miscount is put right without any of it.
  await say(page, 23, 'The counter reads this');
  await expect(back).not.toContainText('Put back');
  await page.getByRole('button', { name: 'At the left' }).click();
  await expect(done(page)).toBeVisible();
});

test('no press made by habit answers where the carriage stands, and what was to be put back stays at hand', async ({
  page,
  start,
}) => {
  await start();
  await toKnit(page);
  await knitTo(page, 27);
  await say(page, 21, 'I ripped back to this');
  const back = page.getByRole('region', { name: 'Before you go on' });
  await expect(back).toBeFocused();
  for (const key of ['Space', 'Enter', 'PageDown']) await page.keyboard.press(key);
  await expect(back).toContainText('Ripped back from 27 to 21.');
  await expect(reading(page)).toHaveText('21');
  // The question stands where the row is ended, above nothing and under nothing.
  const left = page.getByRole('button', { name: 'At the left' });
  await expect(left).toBeInViewport({ ratio: 1 });
  await left.click();
  await expect(done(page)).toBeFocused();
  await page.getByText('What was to be put back').click();
  await expect(page.getByText('Set the row counter to 21.')).toBeVisible();
  await page.keyboard.press('PageDown');
  await expect(reading(page)).toHaveText('22');
  await expect(page.getByText('What was to be put back')).toHaveCount(0);
});

test('leads whoever comes back to the piece that was counted last', async ({ page, host, start }) => {
  await start();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByLabel('Knit how many').fill('2');
  await page.keyboard.press('Enter');
  await toKnit(page);
  await knitTo(page, 2);
  await page.getByLabel('Which one').selectOption('2 of 2');
  await expect(reading(page)).toHaveText('0');
  await knitTo(page, 3);
  await page.goto(await addressOf(host));
  await toKnit(page);
  await expect(reading(page)).toHaveText('2');
  await expect(page.getByText('Last counted: 2 of 2, to 3. It is not off the needles yet.')).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Go on with it' }).click();
  await expect(reading(page)).toHaveText('3');
  await expect(page.getByText('Last counted')).toHaveCount(0);
  await page.getByRole('button', { name: 'At the left' }).click();
  await knitTo(page, 4);
});

test('says at the end where the carriage is, and shows an empty bed once the piece is off', async ({ page, start }) => {
  await start();
  await toKnit(page);
  await knitTo(page, 1);
  await say(page, 140, 'The counter reads this');
  await page.getByRole('button', { name: 'At the right' }).click();
  const count = page.getByRole('region', { name: 'The counter reads' });
  await expect(count).toContainText(/at the right\s*All 140 rows are knitted/);
  await expect(page.getByText('before the carriage moves')).toHaveCount(0);
  await expect(page.getByRole('img', { name: 'The bed: 124 needles in work' })).toBeVisible();
  await page.getByRole('button', { name: 'It is off the needles' }).click();
  await expect(page.getByRole('main').getByRole('status')).toHaveText('This piece is off the needles.');
  await expect(page.getByRole('img', { name: 'The bed: no needle in work' })).toBeVisible();
  await expect(page.getByText('As it hangs')).toHaveCount(0);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'It is not: go back' }).click();
  await expect(count).toContainText('at the right');
  await expect(page.getByRole('button', { name: 'It is off the needles' })).toBeFocused();
});

test('a project that was never saved has none of the rows of another of the same name', async ({ page, start }) => {
  await start();
  const anew = async (): Promise<void> => {
    await page.keyboard.press('Control+Shift+N');
    const dialog = page.getByRole('dialog', { name: 'New project' });
    await dialog.getByRole('radio', { name: 'A piece' }).check();
    await dialog.getByRole('button', { name: 'Create' }).click();
    await toKnit(page);
  };
  await anew();
  await knitTo(page, 2);
  await anew();
  await expect(reading(page)).toHaveText('0');
});

test('asks for the reading that a damaged journal cannot tell, and for nothing before it', async ({
  page,
  host,
  folder,
  start,
}) => {
  await start();
  await toKnit(page);
  await knitTo(page, 5);
  const journals = join(folder, 'data', 'knitting');
  const [name = ''] = readdirSync(journals).filter((one) => one.endsWith('.journal'));
  const lines = readFileSync(join(journals, name), 'utf8').split('\n');
  writeFileSync(join(journals, name), lines.toSpliced(3, 1).join('\n'));
  await page.goto(await addressOf(host));
  await toKnit(page);
  const dialog = page.getByRole('dialog', { name: 'Another reading' });
  await expect(dialog.getByLabel('Reading')).toHaveValue('');
  await expectAccessible(page);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
  // At which side the carriage stands can be judged by a reading alone.
  await expect(page.getByRole('button', { name: 'At the left' })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Back a row' })).toBeDisabled();
  await page.keyboard.press('PageUp');
  await expect(page.getByRole('status').filter({ hasText: 'Say first what the row counter reads.' })).toHaveCount(1);
  await expect(page.getByText('The journal of this piece is damaged')).toBeInViewport({ ratio: 1 });
  await page.getByRole('button', { name: 'Say what the row counter reads' }).click();
  await dialog.getByLabel('Reading').fill('5');
  await dialog.getByRole('button', { name: 'The counter reads this' }).click();
  await page.getByRole('button', { name: 'At the left' }).click();
  await expect(reading(page)).toHaveText('5');
  await expect(done(page)).toBeFocused();
});
