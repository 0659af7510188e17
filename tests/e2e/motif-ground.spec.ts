/** Drawing the ground without another tool: by the right button, the eraser of a pen, and on cells that are drawn. */
import { expect, test } from './app.ts';
import { Chart } from './chart.ts';
import type { Page } from '@playwright/test';

async function smallChart(page: Page): Promise<Chart> {
  await page.getByRole('textbox', { name: 'Stitches' }).fill('6');
  await page.getByRole('textbox', { name: 'Rows' }).fill('3');
  const chart = new Chart(page);
  await chart.drag([1, 2], [5, 2]);
  await expect.poll(() => chart.shown()).toEqual(['......', '#####.', '......']);
  return chart;
}
/** Drags from one cell to another with the right button. */
async function dragRight(page: Page, chart: Chart, from: [number, number], to: [number, number]): Promise<void> {
  const [begin, end] = [await chart.at(...from), await chart.at(...to)];
  await page.mouse.move(begin.x, begin.y);
  await page.mouse.down({ button: 'right' });
  await page.mouse.move(end.x, end.y);
  await page.mouse.up({ button: 'right' });
}

test('the right button erases with the pen, and draws shapes of ground, one step of undo each', async ({
  page,
  start,
}) => {
  await start('empty');
  const chart = await smallChart(page);
  await dragRight(page, chart, [2, 2], [3, 2]);
  await expect.poll(() => chart.shown()).toEqual(['......', '#..##.', '......']);
  await page.getByRole('button', { name: 'Undo erase' }).click();
  await expect.poll(() => chart.shown()).toEqual(['......', '#####.', '......']);

  await page.getByRole('button', { name: 'Draw a rectangle' }).click();
  await page.getByLabel('Filled').check();
  await chart.drag([1, 1], [6, 3]);
  await expect.poll(() => chart.shown()).toEqual(['######', '######', '######']);
  await dragRight(page, chart, [2, 1], [3, 2]);
  await expect.poll(() => chart.shown()).toEqual(['######', '#..###', '#..###']);
  // The next shape is of the yarn in the pen again.
  await chart.drag([2, 2], [2, 2], [3, 2]);
  await expect.poll(() => chart.shown()).toEqual(['######', '######', '#..###']);

  // Nothing is drawn with a tool that draws nothing.
  await page.getByRole('button', { name: 'Pick a yarn from the chart' }).click();
  await dragRight(page, chart, [5, 1], [6, 1]);
  await expect.poll(() => chart.shown()).toEqual(['######', '######', '#..###']);
});

test('the eraser of a pen erases', async ({ page, start }) => {
  await start('empty');
  const chart = await smallChart(page);
  const at = await chart.at(4, 2);
  // Playwright has no pen: its events are made here.
  await page.evaluate(({ x, y }) => {
    const on = document.elementFromPoint(x, y) as HTMLElement;
    // A pointer that no device has cannot be captured.
    on.setPointerCapture = () => undefined;
    const event = (type: string, buttons: number): PointerEvent =>
      new PointerEvent(type, {
        bubbles: true,
        pointerId: 77,
        pointerType: 'pen',
        clientX: x,
        clientY: y,
        button: 5,
        buttons,
      });
    on.dispatchEvent(event('pointerdown', 32));
    on.dispatchEvent(event('pointerup', 0));
  }, at);
  await expect.poll(() => chart.shown()).toEqual(['......', '###.#.', '......']);
});

test('the pen takes drawn cells away where that is switched on, by pointer and by keyboard', async ({
  page,
  start,
}) => {
  await start('empty');
  const chart = await smallChart(page);
  await page.getByRole('switch', { name: 'Drawing on a drawn cell takes it away' }).check();
  await chart.drag([2, 2], [3, 2]);
  await expect.poll(() => chart.shown()).toEqual(['......', '#..##.', '......']);
  await chart.drag([2, 1], [3, 1]);
  await expect.poll(() => chart.shown()).toEqual(['......', '#..##.', '.##...']);
  await chart.grid.focus();
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Space');
  await expect.poll(() => chart.shown()).toEqual(['......', '#..##.', '..#...']);
  await page.keyboard.press('g');
  await expect(page.getByRole('switch', { name: 'Drawing on a drawn cell takes it away' })).not.toBeChecked();
  await page.keyboard.press('Space');
  await page.keyboard.press('Space');
  await expect.poll(() => chart.shown()).toEqual(['......', '#..##.', '.##...']);
});
