/** Cells that a photo leaves in doubt: settled as the chart is read, and afterwards on the Motif bench. */
import type { Locator, Page } from '@playwright/test';
import jpeg from 'jpeg-js';
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs, restingBox } from './at-rest.ts';
import { Chart } from './chart.ts';

const CELL = 24;
const COLUMNS = 12;
const ROWS = 10;
/** Topmost row first: paper, ink, and cells of which half is inked. */
const DRAWN = [
  '............',
  '..###..###..',
  '.#...##...#.',
  '.#..?.....#.',
  '.#........#.',
  '..#..?...#..',
  '...#....#...',
  '....#..#?...',
  '.....##.....',
  '?...........',
];
/** The chart alone, with printed lines, as a scanner sees it. */
function scan(): Buffer {
  const [width, height] = [COLUMNS * CELL, ROWS * CELL];
  const data = Buffer.alloc(width * height * 4, 255);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const sign = DRAWN[Math.floor(y / CELL)]?.[Math.floor(x / CELL)];
      const isInked = sign === '#' || (sign === '?' && x % CELL < CELL / 2);
      const isLine = x % CELL === 0 || y % CELL === 0;
      const grey = isLine ? 150 : isInked ? 40 : 240;
      data.fill(grey, (y * width + x) * 4, (y * width + x) * 4 + 3);
    }
  }
  return jpeg.encode({ data, width, height }, 92).data;
}

async function drop(page: Page, name: string, picture: Buffer): Promise<void> {
  await page.evaluate(
    ({ name, base64 }) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const data = new DataTransfer();
      data.items.add(new File([bytes], name, { type: 'image/jpeg' }));
      document.querySelector('.window')?.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
    },
    { name, base64: picture.toString('base64') },
  );
  await page.getByRole('button', { name: /^A chart/ }).press('Enter');
}

const toSettle = (page: Page, cells: number): ReturnType<Page['getByRole']> =>
  page.getByRole('heading', { name: `${cells} ${cells === 1 ? 'cell' : 'cells'} to settle` });

/** The dropped scan, its corners confirmed, read, and one of its doubtful cells settled by keys. */
async function readScan(page: Page): Promise<void> {
  await drop(page, 'scan.jpg', scan());
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'The chart fills the picture' }).press('Enter');
  await expect(dialog.getByRole('textbox', { name: 'Columns' })).toHaveValue(String(COLUMNS));
  await expect(dialog.getByRole('textbox', { name: 'Rows' })).toHaveValue(String(ROWS));
  await expect(dialog.getByRole('button', { name: 'Use as the motif' })).toBeEnabled();
  await expect(dialog.getByText(/^4 of 120 cells are doubtful/)).toBeVisible();
  await dialog.getByRole('grid').focus();
  await page.keyboard.press('d');
  await expect(dialog.getByRole('status').filter({ hasText: 'Row 1, column 1:' })).toBeAttached();
  await page.keyboard.press('Enter');
  await expect(dialog.getByRole('status').filter({ hasText: 'Row 3, column 9:' })).toBeAttached();
}

/** Answers within a step that are not wholly in view once they have the focus, or lie under something else. */
async function cut(step: Locator): Promise<string[]> {
  return step.locator('.below').evaluate((below) => {
    const wrong: string[] = [];
    for (const control of below.querySelectorAll<HTMLElement>('button, select, input, summary')) {
      if (!control.checkVisibility() || control.matches(':disabled')) continue;
      control.focus();
      const { left, right, top, bottom } = control.getBoundingClientRect();
      const middle = (left + right) / 2;
      const isWhole = [top + 2, bottom - 2].every((y) => control.contains(document.elementFromPoint(middle, y)));
      if (!isWhole) wrong.push(control.getAttribute('aria-label') ?? control.textContent.trim());
    }
    return wrong;
  });
}

async function takeIt(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Use as the motif' }).press('Enter');
  await expect(announced(page)).toHaveText('Chart read: 12 stitches × 10 rows. 3 cells to settle.');
  await expect(toSettle(page, 3)).toBeVisible();
}

test('cells in doubt are settled by keys: in the dialog, then on the bench; undo asks again', async ({
  page,
  start,
}) => {
  await start('empty');
  await readScan(page);
  await expectAccessible(page);
  await takeIt(page);
  const list = page.getByRole('listbox', { name: 'Cells to settle' });
  await expect(list.getByRole('option')).toHaveCount(3);
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);

  // From the chart to the next one, whose name says that it is in doubt.
  const chart = new Chart(page);
  await chart.grid.focus();
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('j');
  await expect(announced(page)).toHaveText(/^1 of 3: Row 3, stitch 9: /);
  await expect(chart.cell).toHaveAccessibleName(/^Row 3, stitch 9, .*, in doubt$/);
  await expect(chart.grid).toBeFocused();
  await page.keyboard.press('Control+Shift+Enter');
  await expect(announced(page)).toHaveText(/^3 of 3: Row 7, stitch 5: /);

  // In the list: the next, right as read, and another yarn than was read.
  await list.focus();
  await page.keyboard.press('Home');
  await expect(list.getByRole('option', { selected: true })).toHaveText(/Row 3, stitch 9: /);
  await page.keyboard.press('Enter');
  await expect(toSettle(page, 2)).toBeVisible();
  await expect(list.getByRole('option', { selected: true })).toHaveText(/Row 5, stitch 6: /);
  const ink = page.getByRole('group', { name: 'This cell is' }).getByRole('button').nth(1);
  const isInk = (await ink.getAttribute('aria-pressed')) === 'true';
  await page.keyboard.press(isInk ? '1' : '2');
  await expect(toSettle(page, 1)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo settle cell' })).toBeEnabled();
  await expect(list).toBeFocused();

  // Other benches leave them; undo of the paint asks again, and so does the button for what was right.
  await page.getByRole('button', { name: 'Piece', exact: true }).press('Enter');
  await expect(page.getByRole('button', { name: 'Piece', exact: true })).toHaveAttribute('aria-current', 'page');
  await page.getByRole('button', { name: 'Motif', exact: true }).press('Enter');
  await expect(toSettle(page, 1)).toBeVisible();
  await page.getByRole('button', { name: 'Undo settle cell' }).press('Enter');
  await expect(toSettle(page, 2)).toBeVisible();
  await page.getByRole('button', { name: 'Ask again about the last' }).press('Enter');
  await expect(toSettle(page, 3)).toBeVisible();

  // A cell that is painted another yarn than was read is settled.
  const first = list.getByRole('option').first();
  await expect(first).toHaveText(/Row 3, stitch 9: /);
  await chart.click(9, 3, { button: (await first.textContent())?.includes('colour 2') === true ? 'right' : 'left' });
  await expect(toSettle(page, 2)).toBeVisible();
  // What settles them stays where it is, whatever is left to settle.
  const all = page.getByRole('button', { name: 'All are right as read' });
  const stands = await restingBox(all);
  await all.press('Enter');
  await expect(page.getByText('Every cell is settled.')).toBeVisible();
  await expect(all).toBeDisabled();
  expect(await restingBox(all)).toEqual(stands);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('heading', { name: /to settle$/ })).toHaveCount(0);
});

test('at 640 × 400 no answer of any step is cut', async ({ page, start }) => {
  await page.setViewportSize({ width: 640, height: 400 });
  await start('empty');
  await drop(page, 'scan.jpg', scan());
  const dialog = page.getByRole('dialog');
  const step = (name: string): Locator => dialog.getByRole('region', { name });
  const corners = step('1. Set the corners');
  await dialog.getByRole('button', { name: 'The chart fills the picture' }).waitFor();
  await expect(dialog.getByText(/Looking for the chart/)).toHaveCount(0);
  // What the corners are set by is seen as the dialog opens.
  for (const button of await corners.locator('.below').getByRole('button').all())
    await expect(button).toBeInViewport({ ratio: 1 });
  await dialog.getByRole('button', { name: 'The chart fills the picture' }).press('Enter');
  await expect(dialog.getByText(/^4 of 120 cells are doubtful/)).toBeVisible();
  await dialog.getByRole('grid').focus();
  await page.keyboard.press('d');
  await expect(dialog.getByRole('group', { name: 'This cell is' })).toBeVisible();
  await corners.getByText('Corners in numbers').press('Enter');
  await expect(corners.getByRole('textbox')).toHaveCount(8);
  for (const name of ['1. Set the corners', '2. Check columns and rows', '3. Check the cells'])
    expect(await cut(step(name)), name).toEqual([]);
  await dialog.evaluate((element) => element.scrollTo(0, 0));
  const first = corners.getByRole('button', { name: /^(Click the four corners|The chart fills|Turn it)/ });
  await expect(first).toHaveCount(3);
  for (const button of await first.all()) await expect(button).toBeInViewport({ ratio: 1 });
});
