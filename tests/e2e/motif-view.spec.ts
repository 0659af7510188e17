/** The Motif bench: how the chart is shown and looked at. */
import { expect, expectAccessible, statusLine, test } from './app.ts';
import { appearAs, restingBox } from './at-rest.ts';
import { Chart, LIGHTHOUSE } from './chart.ts';

test('shows the sample with row 1 at the bottom, in the proportion of its gauge', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
  const { width, height } = await chart.cellSize();
  // 40 rows and 28 stitches in 10 cm: a stitch is 40/28 times as wide as tall.
  expect(width / height).toBeCloseTo(40 / 28, 3);

  await page.getByLabel('Cell shape').selectOption('square');
  await expect
    .poll(async () => {
      const square = await chart.cellSize();
      return square.width / square.height;
    })
    .toBeCloseTo(1, 3);
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
});

test('zooms at the pointer, scrolls, pans and fits', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  const fitted = await chart.cellSize();
  const place = await chart.at(7, 10);

  await page.mouse.move(place.x, place.y);
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, -300);
  await page.keyboard.up('Control');
  await expect.poll(async () => (await chart.cellSize()).height).toBeGreaterThan(fitted.height * 1.3);
  const zoomed = await chart.at(7, 10);
  // Wheel events tell whole pixels.
  expect(Math.abs(zoomed.x - place.x)).toBeLessThan(1.5);
  expect(Math.abs(zoomed.y - place.y)).toBeLessThan(1.5);
  await expect(statusLine(page)).toHaveText('Row 10, stitch 7 · slate, main');

  const moved = async (): Promise<readonly [number, number]> => {
    const { x, y } = await chart.at(7, 10);
    return [Math.round(x - zoomed.x), Math.round(y - zoomed.y)];
  };
  await page.mouse.wheel(30, 40);
  await expect.poll(moved).toEqual([-30, -40]);

  await chart.grid.focus();
  await page.keyboard.down('Space');
  await page.mouse.down();
  await page.mouse.move(place.x + 50, place.y + 60);
  await page.mouse.up();
  await page.keyboard.up('Space');
  await expect.poll(moved).toEqual([20, 20]);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();

  await page.mouse.down({ button: 'middle' });
  await page.mouse.move(place.x + 30, place.y + 40);
  await page.mouse.up({ button: 'middle' });
  await expect.poll(moved).toEqual([0, 0]);

  await page.keyboard.press('0');
  await expect.poll(async () => chart.cellSize()).toEqual(fitted);
  await page.keyboard.press('+');
  await expect.poll(async () => (await chart.cellSize()).height).toBeCloseTo(fitted.height * 1.25, 6);
  await page.keyboard.press('-');
  await expect.poll(async () => (await chart.cellSize()).height).toBeCloseTo(fitted.height, 6);
  await page.getByRole('button', { name: 'Zoom in' }).click();
  await expect.poll(async () => (await chart.cellSize()).height).toBeCloseTo(fitted.height * 1.25, 6);
  await page.getByRole('button', { name: 'Show the whole motif' }).click();
  await expect.poll(async () => chart.cellSize()).toEqual(fitted);
});

test('leaves Ctrl with plus, minus and 0 to the platform', async ({ page, start }) => {
  await start();
  await page.evaluate(() => {
    const taken: string[] = [];
    Object.assign(window, { taken });
    window.addEventListener('keydown', ({ key, defaultPrevented }) => taken.push(`${key} ${defaultPrevented}`));
  });
  for (const bench of ['Motif', 'Piece']) {
    await test.step(bench, async () => {
      await page.getByRole('button', { name: bench, exact: true }).click();
      await page.getByRole('grid').focus();
      const before = await restingBox(page.getByRole('gridcell'));
      for (const key of ['+', '=', '-', '0']) await page.keyboard.press(`Control+${key}`);
      const taken = await page.evaluate(() => (window as unknown as { taken: string[] }).taken.splice(0));
      expect(taken.filter((key) => !key.startsWith('Control'))).toEqual(['+ false', '= false', '- false', '0 false']);
      await expect.poll(() => restingBox(page.getByRole('gridcell'))).toEqual(before);
    });
  }
});

test('brings the cell cursor into view', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  await chart.grid.focus();
  for (let i = 0; i < 8; i++) await page.keyboard.press('+');
  const stage = await restingBox(chart.grid);
  for (const corner of ['Control+End', 'Control+Home']) {
    await page.keyboard.press(corner);
    const cell = await restingBox(chart.cell);
    expect(cell.x).toBeGreaterThanOrEqual(stage.x);
    expect(cell.y).toBeGreaterThanOrEqual(stage.y);
    expect(cell.x + cell.width).toBeLessThanOrEqual(stage.x + stage.width);
    expect(cell.y + cell.height).toBeLessThanOrEqual(stage.y + stage.height);
  }
});

test('shows neighbouring copies while drawing, and hides them', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  const isDrawnBeside = async (): Promise<boolean> => {
    const { x, y } = await chart.at(0, 1);
    return page.evaluate(
      ([atX, atY]) => {
        const canvas = document.querySelector('canvas');
        if (!canvas) throw new Error('The chart has no canvas');
        const { left, top } = canvas.getBoundingClientRect();
        const ratio = canvas.width / canvas.clientWidth;
        const pixel = canvas.getContext('2d')?.getImageData((atX - left) * ratio, (atY - top) * ratio, 1, 1);
        return (pixel?.data[3] ?? 0) > 0;
      },
      [x, y] as const,
    );
  };
  await expect.poll(isDrawnBeside).toBe(true);
  await expect(page.getByText('neighbouring copies shown faintly')).toBeVisible();
  await page.getByRole('switch', { name: 'Show neighbours' }).click();
  await expect.poll(isDrawnBeside).toBe(false);
  await expect(page.getByText('neighbouring copies shown faintly')).toBeHidden();
});

test('is whole and accessible, empty and drawn, light and small, dark and large', async ({ page, start }) => {
  const inBoth = async (): Promise<void> => {
    for (const { appearance, width, height } of [
      { appearance: 'light', width: 1280, height: 800 },
      { appearance: 'dark', width: 1920, height: 1080 },
    ] as const) {
      await test.step(`${appearance} on ${width} × ${height}`, async () => {
        await page.setViewportSize({ width, height });
        await appearAs(page, appearance);
        await expectAccessible(page);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
      });
    }
  };
  await start('empty');
  await inBoth();
  await start('sample');
  const chart = new Chart(page);
  await page.getByRole('button', { name: 'Change chalk' }).click();
  await chart.grid.focus();
  await page.keyboard.press('ArrowRight');
  await inBoth();
});

test('follows a change of appearance at once', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
  await appearAs(page, 'dark');
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
  await page.keyboard.press('Control+k');
  await page.keyboard.type('light');
  await page.keyboard.press('Enter');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'light');
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
});

test('the purl side of the fabric shows the floats, and tells in words how long they are', async ({ page, start }) => {
  await start('empty');
  await page.getByRole('textbox', { name: 'Stitches' }).fill('9');
  await page.getByRole('textbox', { name: 'Rows' }).fill('1');
  const chart = new Chart(page);
  await chart.click(1, 1);
  const showing = page.getByRole('combobox', { name: 'Shown as' });
  await showing.selectOption('fabric, knit side');
  await expect(page.getByText('the knit side is seen')).toBeVisible();
  await expect(page.getByText('longest float')).toHaveCount(0);
  /** How many pixels in the middle of the stitches 4 to 7 are chalk as a float is: on stitches it has light and shadow. */
  const chalk = (): Promise<number> =>
    chart.at(4, 1).then(async ({ x, y }) => {
      const { width, height } = await chart.cellSize();
      return page.evaluate(
        ({ x, y, width, height }) => {
          const canvas = document.querySelector('canvas');
          const context = canvas?.getContext('2d');
          if (!canvas || !context) throw new Error('The chart has no canvas');
          const { left, top } = canvas.getBoundingClientRect();
          const ratio = canvas.width / canvas.clientWidth;
          const { data } = context.getImageData(
            (x - left) * ratio,
            (y - height / 2 - top) * ratio,
            3 * width * ratio,
            height * 2 * ratio,
          );
          let count = 0;
          for (let at = 0; at < data.length; at += 4) if (data[at] === 251 && data[at + 3] === 255) count++;
          return count;
        },
        { x, y, width, height },
      );
    });
  expect(await chalk()).toBe(0);
  await showing.selectOption('fabric, purl side');
  await expect(
    page.getByText('the purl side is seen · 1 float over the limit, longest float 8 stitches'),
  ).toBeVisible();
  await expect.poll(chalk).toBeGreaterThan(20);
  // Within the limit: nothing to warn of.
  await showing.selectOption('chart');
  await page.getByRole('textbox', { name: 'Stitches' }).fill('4');
  await showing.selectOption('fabric, purl side');
  await expect(page.getByText('the purl side is seen · longest float 3 stitches')).toBeVisible();
  await expectAccessible(page);
});
