/** The list of commands: all there is, each with its shortcut. */
import { announced, expect, test } from './app.ts';

test('gives every command of every bench a shortcut of its own', async ({ page, start }) => {
  await start();
  for (const bench of ['Motif', 'Piece', 'Sheet']) {
    await page.getByRole('button', { name: bench, exact: true }).click();
    await page.getByRole('button', { name: 'Commands' }).click();
    const rows = await page
      .getByRole('dialog')
      .getByRole('option')
      .evaluateAll((options) =>
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
