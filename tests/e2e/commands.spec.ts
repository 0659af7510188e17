/** The list of commands: all there is, each with its shortcut. */
import { announced, expect, expectAccessible, intercept, test } from './app.ts';
import { Chart } from './chart.ts';

test('gives every command of every bench a shortcut of its own', async ({ page, start }) => {
  await start();
  for (const bench of ['Motif', 'Piece', 'Sheet', 'Knit']) {
    await page.getByRole('button', { name: bench, exact: true }).click();
    await page.getByRole('button', { name: 'Commands' }).click();
    const options = page.getByRole('dialog').getByRole('option');
    await options.first().waitFor();
    const rows = await options.evaluateAll((options) =>
      options.map((option) => {
        const keys = option.querySelector('kbd')?.textContent ?? '';
        return { name: option.textContent?.replace(keys, '').trim(), keys };
      }),
    );
    expect(rows.length).toBeGreaterThan(10);
    expect(rows.filter(({ keys }) => keys === '')).toEqual([]);
    const first = new Map<string, string | undefined>();
    for (const { keys, name } of rows) {
      expect(first.get(keys), `${keys} is also ${name}`).toBeUndefined();
      first.set(keys, name);
    }
    await page.keyboard.press('Escape');
  }
});

test('that are switches say the same again, and no more, when they are given again', async ({ page, start }) => {
  await start();
  for (let times = 0; times < 2; times++) {
    await page.keyboard.press('Control+Shift+L');
    await expect(announced(page)).toHaveText('Light appearance');
    // What would be said beside it is said by now.
    await page.evaluate(() => undefined);
    await expect(announced(page)).toHaveText('Light appearance');
  }
});

test('are found by other names, and say why they cannot be used now, in the list and at the foot', async ({
  page,
  start,
}) => {
  await start('empty');
  await page.keyboard.press('Control+K');
  const list = page.getByRole('dialog', { name: 'Commands' });
  const field = list.getByRole('combobox');
  await field.fill('rotate');
  await expect(list.getByRole('option')).toHaveText([/^Turn 90° clockwise/]);
  await field.fill('undo');
  const undo = list.getByRole('option', { name: 'Undo' });
  await expect(undo).toContainText('There is nothing to undo.');
  await expect(undo).toHaveAttribute('aria-disabled', 'true');
  await expectAccessible(page);
  await page.keyboard.press('Escape');

  await page.keyboard.press('Control+Z');
  await expect(announced(page)).toHaveText('There is nothing to undo.');
  await expect(announced(page)).toBeInViewport();
});

test('what is said in passing is seen at the foot, and the cursor of the keyboard has a reading of its own', async ({
  page,
  start,
}) => {
  await start('empty');
  const chart = new Chart(page);
  const foot = page.getByRole('contentinfo');
  await chart.grid.focus();
  await page.keyboard.press('ArrowRight');
  await expect(foot.getByText('Cursor: Row 1, stitch 2')).toBeVisible();
  await chart.hover(3, 2);
  await expect(foot.getByText('Row 2, stitch 3')).toBeVisible();
  await page.keyboard.press('Space');
  await page.keyboard.press('Control+Z');
  await expect(foot.getByText('Undone: draw.')).toBeVisible();
  await expect(foot.getByText('Cursor: Row 1, stitch 2')).toBeVisible();
  await expect(foot.getByText('Row 2, stitch 3')).toBeVisible();
});

test('are done by Enter after another name also where the other names are still to come', async ({ page, start }) => {
  await start();
  let send = (): void => undefined;
  const isSent = new Promise<void>((resolve) => (send = resolve));
  await intercept(page, /\/synonyms-[^/]*\.js/, async (route) => {
    await isSent;
    await route.continue();
  });
  await page.keyboard.press('Control+K');
  await page.getByRole('combobox', { name: 'Find a command' }).fill('tutorial');
  await expect(page.getByRole('dialog').getByRole('option')).toHaveCount(0);
  await page.keyboard.press('Enter');
  send();
  await expect(page.getByRole('region', { name: 'Tour' })).toBeVisible();
});
