/** Any picture, turned into a motif: from a file, from the clipboard, dropped. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import jpeg from 'jpeg-js';
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs, restingBox } from './at-rest.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';

const RED = [200, 30, 40];
const YELLOW = [240, 200, 60];
const BLUE = [30, 60, 160];

/** Three flat stripes side by side, 300 × 200 pixels. */
function stripes(): Buffer {
  const [width, height] = [300, 200];
  const data = Buffer.alloc(width * height * 4, 255);
  for (let pixel = 0; pixel < width * height; pixel++) {
    const colour = [RED, YELLOW, BLUE][Math.floor((pixel % width) / 100)] as number[];
    colour.forEach((channel, index) => data.writeUInt8(channel, pixel * 4 + index));
  }
  return jpeg.encode({ data, width, height }, 90).data;
}

test('turns a JPEG into a motif of three yarns and takes it back', async ({ page, start, home }) => {
  const photo = stripes();
  writeFileSync(join(home, 'stripes.jpg'), photo);
  writeFileSync(join(home, 'torn.jpg'), photo.subarray(0, photo.length / 2));
  await start();
  const chart = new Chart(page);
  const before = await chart.shown();

  await page.keyboard.press('Control+Shift+P');
  await new FilePanel(page).open('torn.jpg');
  await expect(page.getByRole('alert')).toContainText('The JPEG picture ends too early');
  await expect.poll(() => chart.shown()).toEqual(before);

  await page.keyboard.press('Control+Shift+P');
  await new FilePanel(page).open('stripes.jpg');
  const dialog = page.getByRole('dialog', { name: 'Turn a picture into a motif' });
  const field = (name: string) => dialog.getByRole('textbox', { name, exact: true });
  await field('Stitches').fill('21');
  // A gauge of 28 × 40: 21 stitches of a picture three wide to two tall are 20 rows.
  await expect(field('Rows')).toHaveValue('20');
  await field('Yarns').fill('17');
  await expect(dialog.getByRole('alert')).toContainText('A whole number from 2 to 16.');
  await field('Yarns').fill('3');
  await expect(dialog.getByRole('list', { name: 'Yarns it takes' }).getByRole('listitem')).toHaveCount(3);
  await expect(dialog.getByRole('img', { name: 'stripes in cells, 21 stitches × 20 rows' })).toBeVisible();
  await expectAccessible(page);

  // The left stripe alone, by its corner.
  const middle = async (corner: RegExp): Promise<{ x: number; y: number }> => {
    const box = await restingBox(dialog.getByRole('button', { name: corner }));
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  };
  const from = await middle(/^bottom right corner/);
  const left = await middle(/^bottom left corner/);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(left.x + (from.x - left.x) * (2 / 3), from.y, { steps: 4 });
  await page.mouse.up();
  await expect(field('Width')).toHaveValue('200');
  await dialog.getByRole('button', { name: /^bottom right corner/ }).focus();
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('ArrowLeft');
  await expect(field('Width')).toHaveValue('209');
  await dialog.getByRole('button', { name: /^The part as a whole/ }).focus();
  await page.keyboard.press('Shift+ArrowRight');
  await expect(field('From the left')).toHaveValue('10');
  await field('From the left').fill('0');
  await field('Width').fill('200');
  await expect(field('Rows')).toHaveValue('30');
  await dialog.getByRole('button', { name: 'Use all of it' }).click();
  await appearAs(page, 'dark');
  await expectAccessible(page);

  await dialog.getByRole('button', { name: 'Use it' }).click();
  await expect(announced(page)).toHaveText('lighthouse and gulls is now 21 stitches × 20 rows.');
  await expect.poll(() => chart.size()).toEqual({ columns: 21, rows: 20 });
  await page.getByRole('button', { name: 'Undo turn picture into motif' }).click();
  await expect.poll(() => chart.shown()).toEqual(before);
});

test('takes pictures from the clipboard and from a drop, and cells where they were copied last', async ({
  page,
  start,
}) => {
  await start();
  const chart = new Chart(page);
  const dialog = page.getByRole('dialog', { name: 'Turn a picture into a motif' });
  const give = (type: 'paste' | 'drop', name: string, kind: string, bytes: Buffer): Promise<void> =>
    page.evaluate(
      ({ type, name, kind, base64 }) => {
        const data = new DataTransfer();
        const pixels = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
        data.items.add(new File([pixels], name, { type: kind }));
        const event =
          type === 'paste'
            ? new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true })
            : new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true });
        document.querySelector('[role=grid]')?.dispatchEvent(event);
      },
      { type, name, kind, base64: bytes.toString('base64') },
    );

  /** A picture may be of a chart or anything; it is asked which. */
  const answer = (): Promise<void> =>
    page.getByRole('dialog', { name: 'What is on it?' }).getByRole('button', { name: 'Any picture' }).click();

  /** Copies by key; true if the program took it, false if it was left to the browser. */
  const copies = async (): Promise<boolean> => {
    const heard = await page.evaluateHandle(() => ({
      isTaken: new Promise<boolean>((resolve) =>
        window.addEventListener('copy', (event) => resolve(event.defaultPrevented), { once: true }),
      ),
    }));
    await page.keyboard.press('Control+c');
    return heard.evaluate(({ isTaken }) => isTaken);
  };

  // Nothing is selected: copying is the browser's, and a picture is taken though no cells were copied.
  await chart.grid.focus();
  expect(await copies()).toBe(false);
  await give('paste', 'image.jpg', 'image/jpeg', stripes());
  await expect(announced(page)).toContainText('what was copied last comes first');
  await answer();
  await expect(dialog.getByRole('group', { name: 'The picture clipboard' })).toBeVisible();
  await page.keyboard.press('Escape');

  await chart.grid.focus();
  await page.keyboard.press('Control+a');
  expect(await copies()).toBe(true);
  await expect(announced(page)).toHaveText('Copied.');
  // Text that is selected in the panel is copied as text, whatever cells are selected.
  await page.getByText('What it is', { exact: true }).dblclick();
  expect(await copies()).toBe(false);
  await page.evaluate(() => getSelection()?.removeAllRanges());
  await page.keyboard.press('Control+v');
  await expect(announced(page)).toContainText('Arrow keys move it');
  await page.keyboard.press('Escape');

  const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="80" height="40"><rect width="40" height="40"/></svg>';
  await give('drop', 'half.svg', 'image/svg+xml', Buffer.from(svg));
  await answer();
  await expect(dialog.getByRole('img', { name: /^half in cells, 60 stitches × 43 rows$/ })).toBeVisible();
  await dialog.getByRole('button', { name: 'Use it' }).click();
  await expect.poll(() => chart.size()).toEqual({ columns: 60, rows: 43 });
});
