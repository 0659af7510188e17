/** Commands for the whole motif, by key and from the list of commands. */
import { announced, expect, expectAccessible, test } from './app.ts';
import { Chart } from './chart.ts';

test('turns, shifts, widens and inverts the motif by keys alone', async ({ page, start }) => {
  await start('empty');
  await page.getByRole('textbox', { name: 'Stitches' }).fill('4');
  await page.getByRole('textbox', { name: 'Rows' }).fill('2');
  const chart = new Chart(page);
  await chart.grid.focus();
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Space');
  const steps = [
    { keys: 'Shift+H', name: 'flip left to right', gives: ['....', '...#'] },
    { keys: 'Shift+W', name: 'shift', gives: ['...#', '....'] },
    { keys: 'Shift+D', name: 'shift', gives: ['#...', '....'] },
    { keys: 'Shift+C', name: 'insert column', gives: ['.#...', '.....'] },
    { keys: 'Shift+B', name: 'delete row', gives: ['.#...'] },
    { keys: 'Shift+O', name: 'outline figure', gives: ['###..'] },
    { keys: 'Shift+I', name: 'invert figure and ground', gives: ['...##'] },
    { keys: 'Shift+T', name: 'turn 90° clockwise', gives: ['.', '.', '.', '#', '#'] },
  ];
  for (const { keys, name, gives } of steps) {
    await page.keyboard.press(keys);
    await expect.poll(() => chart.shown()).toEqual(gives);
    await expect(page.getByRole('button', { name: `Undo ${name}` })).toBeEnabled();
  }
  await expect(announced(page)).toHaveText('Turn 90° clockwise: done.');
  for (let step = steps.length; step > 0; step--) await page.keyboard.press('Control+z');
  await expect.poll(() => chart.shown()).toEqual(['....', '#...']);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Shift+H');
  await expect(announced(page)).toHaveText('Nothing to change.');
});

test('mirrors from the list of commands', async ({ page, start }) => {
  await start('empty');
  await page.getByRole('textbox', { name: 'Stitches' }).fill('3');
  await page.getByRole('textbox', { name: 'Rows' }).fill('2');
  const chart = new Chart(page);
  await chart.click(1, 1);
  await page.getByRole('button', { name: 'Commands' }).click();
  await page.keyboard.type('flip');
  await expectAccessible(page);
  await page.getByRole('option', { name: 'Flip top to bottom' }).click();
  await expect.poll(() => chart.shown()).toEqual(['#..', '...']);
});

test('mends what breaks the repeat from the panel, and crops to one repeat', async ({ page, start }) => {
  await start('empty');
  await page.getByRole('textbox', { name: 'Stitches' }).fill('24');
  await page.getByRole('textbox', { name: 'Rows' }).fill('4');
  const chart = new Chart(page);
  await chart.grid.focus();
  await page.keyboard.press('Control+Home');
  // A column of contrast every third stitch, and one cell too many.
  for (let column = 0; column < 24; column += 3) {
    await page.keyboard.press('Control+Home');
    for (let step = 0; step < column; step++) await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Space');
    for (let row = 1; row < 4; row++) await page.keyboard.press('Shift+ArrowUp');
  }
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Space');
  const mend = page.getByRole('button', { name: 'Mend the cells that break the repeat' });
  await mend.click();
  await expect.poll(() => chart.shown()).toEqual(Array.from({ length: 4 }, () => '#..'.repeat(8)));
  await expect(mend).toBeDisabled();
  await page.keyboard.press('Shift+J');
  await expect.poll(() => chart.shown()).toEqual(['#..']);
  await expect(page.getByRole('button', { name: 'Undo crop to repeat' })).toBeEnabled();
});
