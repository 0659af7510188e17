/** What a chart is understood to be: cells that break its repeat, and where one repeat may start. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gridFromText } from '@shared/grid/index.ts';
import { projectAround, projectToText, START_YARNS } from '@shared/project/index.ts';
import { announced, expect, expectAccessible, test } from './app.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';

/** A chart of the tile `..#` / `...`, one cell in a thousand or so spoilt. */
function spoilt(width: number, height: number, breaks: readonly (readonly [column: number, row: number])[]): string {
  const cells = Uint8Array.from({ length: width * height }, (_, at) => {
    const column = at % width;
    const row = Math.floor(at / width);
    const meant = column % 3 === 2 && row % 2 === 0 ? 1 : 0;
    return breaks.some(([c, r]) => c === column && r === row) ? 1 - meant : meant;
  });
  return projectToText(projectAround('spoilt', 'spoilt', { width, height, cells }, 0, 'worn', START_YARNS));
}

test('walks and mends slips by keys, and crops to one repeat from the cursor on', async ({ page, start, home }) => {
  const breaks = [
    [4, 1],
    [8, 6],
  ] as const;
  writeFileSync(join(home, 'spoilt.walewright'), spoilt(18, 12, breaks));
  await start('empty');
  await page.keyboard.press('Control+O');
  await new FilePanel(page).open('spoilt.walewright');
  await expect(page.getByText('nearly repeats every 3 stitches × 2 rows')).toBeVisible();
  await page.keyboard.press('x');
  await expect(announced(page)).toHaveText('1 of 2: row 2, stitch 5 is chalk; in its copies it is slate.');
  await page.keyboard.press('x');
  await expect(announced(page)).toHaveText('2 of 2: row 7, stitch 9 is slate; in its copies it is chalk.');
  await expectAccessible(page);
  const chart = new Chart(page);
  await expect(chart.grid).toBeFocused();
  await page.keyboard.press('Shift+M');
  await expect(page.getByText('nearly repeats')).toBeHidden();
  await page.keyboard.press('x');
  await expect(announced(page)).toHaveText('No cell breaks the repeat.');
  const start9 = page.getByRole('button', { name: /^At the cursor row 7, stitch 9/ });
  await expect(start9).toContainText('3 stitches × 2 rows');
  await start9.click();
  await expect.poll(() => chart.shown()).toEqual(['...', '#..']);
  await expect(page.getByRole('button', { name: 'Undo crop to repeat at the cursor' })).toBeEnabled();
});

/** Two copies of a bird, one above the other; the upper one has a cell of figure too many. */
function twoBirds(): string {
  const bird = ['........', '..XX....', '.XXXX...', '...XXX..', '..XXXXX.', '...XXXX.', '....X...', '...XX...'];
  const rows = [...bird, ...bird].map((line, fromTop) => (fromTop === 2 ? '.XXXX..X' : line));
  return projectToText(projectAround('birds', 'birds', gridFromText(rows, '.X'), 0, 'worn', START_YARNS));
}

test('shows two copies that differ side by side, and makes them what is chosen', async ({ page, start, home }) => {
  writeFileSync(join(home, 'birds.walewright'), twoBirds());
  await start('empty');
  await page.keyboard.press('Control+O');
  await new FilePanel(page).open('birds.walewright');
  const section = page.getByRole('region', { name: 'Copies that differ' });
  await section.getByRole('button', { name: 'Which is right?' }).click();
  await expect(section).toContainText('Two copies differ here. Which is right?');
  await expect(section).toContainText('Row 6, stitch 8: slate, in 1 copy');
  await expect(section).toContainText('Row 14, stitch 8: chalk, in 1 copy');
  // As many have one yarn as the other: nothing is mended by itself.
  const mend = section.getByRole('button', { name: 'Mend the cells that break the repeat' });
  await expect(mend).toBeDisabled();
  await expect(mend).toHaveAttribute('title', /choose which is right/);
  await expectAccessible(page);
  const chart = new Chart(page);
  const drawn = await chart.shown();

  // The whole question is in view at once.
  for (const yarn of ['Slate', 'Chalk'])
    await expect(section.getByRole('button', { name: `${yarn} is right` })).toBeInViewport({ ratio: 1 });

  // By the pointer: what the upper copy has.
  await section.getByRole('button', { name: 'Chalk is right' }).click();
  await expect(announced(page)).toHaveText('All copies of row 6, stitch 8 are chalk now.');
  await expect(section).toContainText('No cell breaks the repeat.');
  await expect(section.getByRole('button', { name: 'Go to the next cell that breaks the repeat' })).toBeDisabled();
  await expect.poll(async () => (await chart.shown())[10]).toBe('.####..#');
  await page.getByRole('button', { name: 'Undo make copies alike' }).click();
  await expect.poll(() => chart.shown()).toEqual(drawn);

  // By the keyboard: to the cell in the upper copy, and the other one is right.
  await chart.grid.focus();
  await page.keyboard.press('z');
  await expect(announced(page)).toHaveText(
    '2 of 2: row 14, stitch 8 is chalk; as many copies have another yarn there. Choose which is right.',
  );
  await page.keyboard.press('Shift+M');
  await expect(announced(page)).toHaveText('As many copies have one yarn there as another: choose which is right.');
  await expect.poll(() => chart.shown()).toEqual(drawn);
  await page.keyboard.press('w');
  await expect.poll(async () => (await chart.shown())[2]).toBe('.####...');
  await page.keyboard.press('Control+Z');
  await expect.poll(() => chart.shown()).toEqual(drawn);
  await page.keyboard.press('c');
  await expect.poll(async () => (await chart.shown())[10]).toBe('.####..#');
});

test.describe('in dark', () => {
  test.use({ colorScheme: 'dark' });

  test('measures a large chart beside the page, and a crop waits for it', async ({ page, start, home }) => {
    writeFileSync(join(home, 'large.walewright'), spoilt(198, 1000, []));
    await start('empty');
    await page.keyboard.press('Control+O');
    await new FilePanel(page).open('large.walewright');
    await expect(page.getByText('The repeat is 3 stitches × 2 rows.')).toBeVisible();
    await expect(page.getByRole('button', { name: 'Blank columns first' })).toContainText('3 stitches × 2 rows');
    await expectAccessible(page);
    const chart = new Chart(page);
    await chart.grid.focus();
    await page.keyboard.press('Space');
    // The stroke is not measured yet; the crop must ask.
    await page.keyboard.press('Shift+M');
    await expect(announced(page)).toHaveText('Mend the cells that break the repeat: done.');
    await page.keyboard.press('Shift+J');
    await expect.poll(async () => chart.size()).toEqual({ columns: 3, rows: 2 });
    await expect.poll(() => chart.shown()).toEqual(['...', '#..']);
  });
});

test('says what the drawing has become when the hand rests, and of another size at once', async ({ page, start }) => {
  await page.clock.install();
  await start();
  const chart = new Chart(page);
  const said = page.getByRole('group', { name: 'What it is' });
  await expect(said).toContainText('The last column is blank');
  const { x, y } = await chart.at(14, 5);
  // From here on no timer ends by itself.
  await page.clock.pauseAt(Date.now() + 60_000);
  await page.mouse.click(x, y);
  await expect(page.getByRole('button', { name: 'Undo draw' })).toBeEnabled();
  await expect(said).toContainText('The last column is blank');
  await page.clock.runFor(150);
  await expect(said).not.toContainText('The last column is blank');
  await page.getByRole('textbox', { name: 'Stitches' }).fill('15');
  await expect(said).toContainText('15 stitches × 18 rows');
  await expect(said).toContainText('The last column is blank');
});
