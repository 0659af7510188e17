/** The Motif bench: size, yarns, and what the chart shows. */
import { announced, expect, statusLine, test } from './app.ts';
import { Chart, LIGHTHOUSE } from './chart.ts';

test('makes the motif larger and smaller on the side that is chosen', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  const stitches = page.getByRole('textbox', { name: 'Stitches' });
  await stitches.fill('16');
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE.map((line) => `${line}..`));
  await stitches.blur();
  await expect(page.getByRole('button', { name: 'Undo resize motif' })).toBeEnabled();

  await page.getByText('Name and resizing').click();
  await page.getByLabel('Add or remove columns').selectOption('left');
  await stitches.fill('17');
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE.map((line) => `.${line}..`));
  await page.getByLabel('Add or remove rows').selectOption('bottom');
  await page.getByRole('textbox', { name: 'Rows' }).fill('17');
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE.slice(0, -1).map((line) => `.${line}..`));
});

test('typing a size digit by digit cuts nothing', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  const stitches = page.getByRole('textbox', { name: 'Stitches' });
  await stitches.click();
  await stitches.press('Control+a');
  await stitches.pressSequentially('15');
  await stitches.press('Tab');
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE.map((line) => `${line}.`));
  await page.getByRole('button', { name: 'Undo resize motif' }).click();
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
});

test('refuses a size that cannot be, and says which can', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  const stitches = page.getByRole('textbox', { name: 'Stitches' });
  for (const wrong of ['0', '-3', '2.5', '1001', 'wide']) {
    await stitches.fill(wrong);
    await expect(page.getByText('A whole number from 1 to 1000.')).toBeVisible();
    await expect.poll(() => chart.size()).toEqual({ columns: 14, rows: 18 });
  }
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
});

test('forgets how long a yarn is in its ball when that is emptied, and undo knows it again', async ({
  page,
  start,
}) => {
  await start();
  await page.getByRole('button', { name: 'Change chalk' }).click();
  await page.getByLabel('Count on the label').selectOption('length of a ball');
  const inBall = page.getByLabel('Metres in a ball');
  await expect(inBall).toHaveValue('');
  const undo = page.getByRole('button', { name: 'Undo change yarns' });
  // What was not known and is emptied again changes nothing.
  await inBall.fill(' ');
  await expect(page.getByText(/A number from/)).toBeHidden();
  await inBall.blur();
  await expect(undo).toBeHidden();
  await inBall.fill('175');
  await inBall.blur();
  await expect(page.getByText('empty if not known')).toBeVisible();

  await inBall.fill('');
  await expect(page.getByText(/A number from/)).toBeHidden();
  await expect(announced(page)).toHaveText('The count of chalk is not known: only its length is told.');
  await inBall.blur();
  await expect(inBall).toHaveValue('');
  await expect(page.getByText('empty if not known')).toBeVisible();
  await undo.click();
  await page.getByRole('button', { name: 'Change chalk' }).click();
  await expect(inBall).toHaveValue('175');

  // Emptied on the way to another number it is one step with that.
  await inBall.fill('');
  await inBall.fill('200');
  await inBall.blur();
  await undo.click();
  await page.getByRole('button', { name: 'Change chalk' }).click();
  await expect(inBall).toHaveValue('175');
});

test('names, colours and adds yarns, and makes another one the ground', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  const palette = page.getByRole('radiogroup', { name: 'Drawing yarn' });
  await expect(palette.getByRole('radio', { name: /chalk, contrast/ })).toBeChecked();
  // Of the colours #fbf7ea and #5d7591, by WCAG's formula: (0.9321 + 0.05) / (0.1709 + 0.05).
  await expect(palette.getByRole('radio', { name: /contrast ratio 4.4 to 1/ })).toBeVisible();

  await page.getByRole('button', { name: 'Change chalk' }).click();
  await palette.getByRole('textbox', { name: 'Name' }).fill('foam');
  await expect(palette.getByRole('radio', { name: /foam, contrast/ })).toBeChecked();
  await palette.getByLabel('Colour').fill('#6a7f98');
  await expect(page.getByText('foam hardly shows against slate.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo change yarns' }).click();
  await expect(page.getByText('foam hardly shows against slate.')).toBeHidden();

  await page.getByRole('button', { name: 'Change foam' }).click();
  await page.getByRole('button', { name: 'Use as main' }).click();
  await expect(palette.getByRole('radio', { name: /foam, main/ })).not.toBeChecked();
  await expect(palette.getByRole('radio', { name: /slate, contrast/ })).toBeChecked();
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('No edge column is blank');
  await page.getByRole('button', { name: 'Undo choose ground' }).click();

  await page.getByRole('button', { name: 'Add a yarn' }).click();
  await expect(palette.getByRole('radio', { name: /yarn 3, contrast/ })).toBeChecked();
  await chart.click(1, 18);
  await expect.poll(async () => (await chart.shown())[0]).toBe('?.....#.......');
  await chart.hover(1, 18);
  await expect(statusLine(page)).toHaveText('Row 18, stitch 1 · yarn 3, contrast');
  await page.keyboard.press('[');
  await expect(palette.getByRole('radio', { name: /foam/ })).toBeChecked();
  await page.keyboard.press(']');

  // A yarn that undo takes away leaves the pen to one that is there.
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(palette.getByRole('radio')).toHaveCount(2);
  await expect(palette.getByRole('radio', { name: /foam/ })).toBeChecked();
  await chart.click(1, 18);
  await expect.poll(async () => (await chart.shown())[0]).toBe('#.....#.......');
});

test('keeps what the chart shows with the motif', async ({ page, start }) => {
  await start();
  await expect(page.getByText('As it will be seen')).toBeVisible();
  const drawn = page.getByLabel('Drawn', { exact: true });
  await drawn.selectOption('needles');
  await expect(page.getByText('As you see it on the bed while knitting.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo choose what the chart shows' }).click();
  await expect(drawn).toHaveValue('worn');
});
