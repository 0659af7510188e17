/** What is dragged has another way: two presses, fields or buttons (WCAG 2.2, 2.5.7). */
import type { Page } from '@playwright/test';
import { announced, expect, test } from './app.ts';
import { restingBox } from './at-rest.ts';

async function drop(page: Page): Promise<void> {
  await page.evaluate(() => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="90" height="60"><rect width="90" height="60" fill="#888"/></svg>';
    const data = new DataTransfer();
    data.items.add(new File([svg], 'grey.svg', { type: 'image/svg+xml' }));
    document.querySelector('.window')?.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
  });
}

test('a corner of a chart goes where the photo is pressed next', async ({ page, start }) => {
  await start();
  await drop(page);
  await page.getByRole('button', { name: /^A chart/ }).click();
  const ring = page.getByRole('button', { name: /^top left corner/ });
  const name = (await ring.getAttribute('aria-label')) ?? '';
  const photo = await restingBox(
    page
      .getByRole('group', { name: /^The photo/ })
      .locator('canvas')
      .first(),
  );
  await ring.click();
  await expect(ring).toHaveAttribute('aria-label', name);
  await page.mouse.click(photo.x + photo.width / 4, photo.y + photo.height / 2);
  await expect(ring).not.toHaveAttribute('aria-label', name);
  const box = await restingBox(ring);
  expect(Math.abs(box.x + box.width / 2 - (photo.x + photo.width / 4))).toBeLessThan(2);
  expect(Math.abs(box.y + box.height / 2 - (photo.y + photo.height / 2))).toBeLessThan(2);
  // The next press moves nothing.
  await page.mouse.click(photo.x + photo.width / 2, photo.y + photo.height / 2);
  expect(await restingBox(ring)).toEqual(box);
});

test('a corner of the part of a picture goes where the picture is pressed next', async ({ page, start }) => {
  await start();
  await drop(page);
  await page.getByRole('button', { name: 'Any picture' }).click();
  const dialog = page.getByRole('dialog');
  const width = dialog.getByRole('textbox', { name: 'Width' });
  const height = dialog.getByRole('textbox', { name: 'Height' });
  const whole = [Number(await width.inputValue()), Number(await height.inputValue())] as const;
  const corner = await restingBox(dialog.locator('.corner.right.bottom'));
  const picture = await restingBox(dialog.getByRole('img').first());
  await page.mouse.click(corner.x + 12, corner.y + 12);
  await expect(width).toHaveValue(String(whole[0]));
  await page.mouse.click(picture.x + picture.width / 2, picture.y + picture.height / 2);
  // A pixel of the screen is some pixels of the picture.
  const share = async (): Promise<string> =>
    `${(Number(await width.inputValue()) / whole[0]).toFixed(1)} ${(Number(await height.inputValue()) / whole[1]).toFixed(1)}`;
  await expect.poll(share).toBe('0.5 0.5');
});

test('a group is chosen and moved by buttons', async ({ page, start }) => {
  await start();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByText('Move a group by buttons').click();
  const group = page.getByRole('group', { name: 'Move a group by buttons' });
  const buttons = group.getByRole('button');
  await expect(buttons).toHaveCount(8);
  await buttons.nth(1).click();
  await expect(announced(page)).toHaveText(/^Group 1/);
  const before = await announced(page).textContent();
  await buttons.nth(3).click();
  await expect(announced(page)).not.toHaveText(before ?? '');
  await expect(page.getByRole('button', { name: /^Undo move/ })).toBeVisible();
});
