/** The panel of the Piece bench: how wide it is, folded away, and as it was left. */
import type { Locator, Page } from '@playwright/test';
import { expect, expectAccessible, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { openTwelve } from './piece-bench.ts';

const panel = (page: Page): Locator => page.getByRole('complementary', { name: 'What it means' });
const foldAway = (page: Page): Locator => page.getByRole('button', { name: 'What it means' });
const bench = (page: Page, name: string): Promise<void> => page.getByRole('button', { name, exact: true }).click();
const scrolledBy = (page: Page): Promise<number> => panel(page).evaluate((element) => Math.round(element.scrollTop));

for (const [size, width] of [
  [{ width: 1280, height: 800 }, 320],
  [{ width: 1600, height: 900 }, 400],
  [{ width: 1920, height: 1080 }, 400],
] as const) {
  test(`is ${width} pixels wide in a window of ${size.width}`, async ({ page, start }) => {
    await page.setViewportSize(size);
    await start();
    await bench(page, 'Piece');
    await expect(page.getByRole('grid')).toBeVisible();
    expect((await restingBox(panel(page))).width).toBe(width);
  });
}

test('is folded away for a larger drawing and brought back, by one button that stays where it is', async ({
  page,
  start,
}) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await start();
  await bench(page, 'Piece');
  const grid = page.getByRole('grid');
  const before = await restingBox(grid);
  const button = await restingBox(foldAway(page));
  await foldAway(page).press('Enter');
  await expect(panel(page)).toBeHidden();
  await expect(foldAway(page)).toHaveAttribute('aria-expanded', 'false');
  await expect(foldAway(page)).toBeFocused();
  expect(await restingBox(foldAway(page))).toEqual(button);
  expect((await restingBox(grid)).width).toBe(before.width + 280);
  // What was found is still said.
  await expect(page.getByRole('main').getByRole('group', { name: 'What was found' })).toBeVisible();
  await expectAccessible(page);

  // It stays away, and comes back as it was.
  await bench(page, 'Motif');
  await bench(page, 'Piece');
  await expect(panel(page)).toBeHidden();
  await page.keyboard.press('F8');
  await expect(panel(page)).toBeVisible();
  await foldAway(page).click();
  await expect(panel(page)).toBeHidden();
  await foldAway(page).click();
  await expect(panel(page)).toBeVisible();
});

test('keeps what was unfolded and how far it was scrolled, over another bench and another piece', async ({
  page,
  start,
}) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await start();
  await bench(page, 'Piece');
  const more = page.getByRole('region', { name: 'What it is' }).getByRole('button', { name: /edges/ });
  await more.click();
  await page.getByText('From a swatch').click();
  const swatch = page.getByLabel(/counted/i).first();
  await expect(swatch).toBeVisible();
  // The pointer scrolls it, as a person does.
  await panel(page).hover();
  await page.mouse.wheel(0, 300);
  await expect.poll(() => scrolledBy(page)).toBe(300);

  await bench(page, 'Motif');
  await expect(
    page.getByRole('toolbar', { name: 'Tools' }).getByRole('button', { name: 'Draw', exact: true }),
  ).toBeVisible();
  await bench(page, 'Piece');
  await expect(more).toHaveAttribute('aria-expanded', 'true');
  await expect(swatch).toBeVisible();
  await expect.poll(() => scrolledBy(page)).toBe(300);

  // Another piece has its own place in the panel.
  await page.getByRole('grid').press('Shift+N');
  await expect(page.getByRole('toolbar', { name: 'Pieces' }).getByRole('button')).toHaveCount(2);
  await panel(page).hover();
  await page.mouse.wheel(0, -300);
  await expect.poll(() => scrolledBy(page)).toBe(0);
  await page.getByRole('grid').press('p');
  await expect.poll(() => scrolledBy(page)).toBe(300);
  await expect(more).toHaveAttribute('aria-expanded', 'true');
});

test('has its labels on one line each, and gauge above the sizes that follow from it', async ({
  page,
  start,
  home,
}) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await start();
  await openTwelve(page, home, [3, 3]);
  await expect(panel(page).getByRole('heading', { name: 'Before you knit' })).toBeVisible();
  // What is folded within what is folded is there once that is open.
  const folded = panel(page)
    .locator('section > div > button[aria-expanded="false"], details:not([open]) > summary')
    .filter({ visible: true });
  while ((await folded.count()) > 0) {
    await folded.first().click();
    await expect(panel(page).locator('details[open] > div:empty')).toHaveCount(0);
  }
  const wrapped = await panel(page).evaluate((element) => {
    const lineOf = (label: Element): number => {
      const range = document.createRange();
      const [text] = label.childNodes;
      if (!text) return 0;
      range.selectNode(text);
      return new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size;
    };
    const labels = [...element.querySelectorAll('label[for]')].filter((label) => label.checkVisibility());
    const right = element.getBoundingClientRect().right;
    return labels
      .filter((label) => lineOf(label) > 1 || label.getBoundingClientRect().right > right)
      .map(({ textContent }) => textContent);
  });
  expect(wrapped).toEqual([]);
  const labels = await panel(page).locator('label[for]').allTextContents();
  const at = (pattern: RegExp): number => labels.findIndex((label) => pattern.test(label));
  expect(at(/^Stitches in 10 cm/)).toBeGreaterThanOrEqual(0);
  expect(at(/^Stitches in 10 cm/)).toBeLessThan(at(/^Stitches$/));
  // None reaches out of the panel.
  expect(await panel(page).evaluate((element) => element.scrollWidth - element.clientWidth)).toBe(0);
});
