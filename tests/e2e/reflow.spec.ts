/**
 * Zoomed to 200 % and 400 %: 1280 × 800 leaves 640 × 400 and 320 × 200 CSS
 * pixels. Everything can be reached and nothing lies under something else
 * (WCAG 2.2, 1.4.10 and 2.4.11).
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';

const SIZES = [
  { width: 640, height: 400 },
  { width: 320, height: 256 },
  { width: 320, height: 200 },
] as const;

/** What cannot be pressed in its middle once it is scrolled to, and how far the page reaches across. */
async function trouble(within: Locator): Promise<string[]> {
  return within.evaluate((root) => {
    const wrong: string[] = [];
    const shown = 'button, select, input, textarea, summary, [role="grid"], [role="slider"]';
    for (const control of root.querySelectorAll<HTMLElement>(shown)) {
      const what = control.matches('.only-heard') ? control.closest('label') : control;
      if (!what?.checkVisibility() || control.closest(':disabled, [popover]:not(:popover-open)')) continue;
      what.scrollIntoView({ block: 'center', inline: 'center' });
      const { left, top, width, height } = what.getBoundingClientRect();
      const [from, to] = [Math.max(0, top), Math.min(innerHeight, top + height)];
      const hit = document.elementFromPoint(left + width / 2, (from + to) / 2);
      const label = control instanceof HTMLInputElement ? control.labels?.[0] : undefined;
      if (hit === null || !(what.contains(hit) || label?.contains(hit)))
        wrong.push(
          `${control.getAttribute('aria-label') ?? control.textContent.trim()}: ${hit?.outerHTML.slice(0, 80)}`,
        );
      if (left < -1 || left + width > innerWidth + 1) wrong.push(`${control.outerHTML.slice(0, 80)} reaches out`);
    }
    if (document.documentElement.scrollWidth > innerWidth)
      wrong.push(`the page is ${document.documentElement.scrollWidth} wide`);
    return wrong;
  });
}

/** How the drawing of a bench stands, all in one look: what comes late in the panel may scroll the page between two. */
async function standing(page: Page): Promise<{ isTall: boolean; isBelowHeading: boolean; isAboveZoom: boolean }> {
  return page.evaluate(() => {
    const boxOf = (selector: string): DOMRect | undefined => document.querySelector(selector)?.getBoundingClientRect();
    const drawing = boxOf('[role="grid"]');
    if (!drawing) return { isTall: false, isBelowHeading: false, isAboveZoom: false };
    return {
      isTall: drawing.height >= 100,
      isBelowHeading: (boxOf('main header')?.bottom ?? Infinity) <= drawing.top,
      isAboveZoom: (boxOf('[role="group"][aria-label="Size on the screen"]')?.top ?? -Infinity) >= drawing.bottom,
    };
  });
}

/** Drops a picture on the window; what is on it is asked. */
async function dropSvg(page: Page): Promise<void> {
  await page.evaluate(() => {
    const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="90" height="60"><rect width="90" height="60"/></svg>';
    const data = new DataTransfer();
    data.items.add(new File([svg], 'chart.svg', { type: 'image/svg+xml' }));
    document.querySelector('.window')?.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
  });
}

const body = (page: Page): Locator => page.locator('body');

test.describe('zoomed in', () => {
  test.use({ viewport: SIZES[0] });

  /** Looks at the window in each size, as a person zooms further in. */
  async function atEachSize(page: Page, look: () => Promise<void>): Promise<void> {
    for (const size of SIZES) {
      await test.step(`at ${size.width} × ${size.height}`, async () => {
        await page.setViewportSize(size);
        await expect.poll(() => page.evaluate(() => [innerWidth, innerHeight])).toEqual([size.width, size.height]);
        await look();
      });
    }
  }

  /** Goes to a bench and waits for it. */
  async function goTo(page: Page, bench: string): Promise<void> {
    const button = page.getByRole('button', { name: bench, exact: true });
    await button.press('Enter');
    await expect(button).toHaveAttribute('aria-current', 'page');
    await expect(page.locator('[data-drawing]')).toBeVisible();
  }

  /** What is above and below the chart of the Motif bench. */
  async function lookAtStrip(page: Page): Promise<void> {
    const strip = page.getByRole('region', { name: 'Yarns and drawing options' });
    const options = strip.getByRole('button', { name: 'Drawing options' });
    await expect(strip.getByRole('combobox')).toHaveCount(0);
    await options.press('Enter');
    await expect(strip.getByRole('combobox')).toHaveCount(3);
    expect(await trouble(strip)).toEqual([]);
    await strip.getByRole('button', { name: 'Selection', exact: true }).press('Enter');
    const menu = page.getByRole('group', { name: 'Selection', exact: true });
    await expect(menu.getByRole('button', { name: 'Select all cells', exact: true })).toBeVisible();
    expect(await trouble(menu)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(menu).toBeHidden();
    await options.press('Enter');
  }

  for (const bench of ['Motif', 'Piece', 'Sheet'] as const) {
    test(`the ${bench} bench is whole, with its panel folded and open`, async ({ page, start }) => {
      await start();
      await goTo(page, bench);
      const fold = page.getByRole('button', { name: 'What it means' });
      await atEachSize(page, async () => {
        await expect(fold).toHaveAttribute('aria-expanded', 'false');
        await expect(page.getByRole('complementary')).toBeHidden();
        expect(await trouble(body(page))).toEqual([]);
        if (bench !== 'Sheet')
          await expect.poll(() => standing(page)).toMatchObject({ isTall: true, isAboveZoom: true });
        if (bench === 'Motif') await lookAtStrip(page);
        await fold.press('Enter');
        await expect(page.getByRole('complementary')).toBeVisible();
        expect(await trouble(body(page))).toEqual([]);
        if (bench === 'Piece')
          await expect.poll(() => standing(page)).toMatchObject({ isTall: true, isBelowHeading: true });
        await fold.press('Enter');
      });
    });
  }

  test('the list of commands and the file panel are whole', async ({ page, start }) => {
    await start();
    const dialog = page.getByRole('dialog');
    await atEachSize(page, async () => {
      await page.keyboard.press('Control+K');
      await expect(dialog.getByRole('option').first()).toBeVisible();
      expect(await trouble(dialog)).toEqual([]);
      await page.keyboard.press('Escape');
      await expect(dialog).toHaveCount(0);
      await page.keyboard.press('Control+O');
      await expect(dialog.getByRole('list')).toBeVisible();
      expect(await trouble(dialog)).toEqual([]);
      await page.keyboard.press('Escape');
      await expect(dialog).toHaveCount(0);
    });
  });

  test('lettering, sizes and the question about unsaved work are whole', async ({ page, start }) => {
    await start();
    const dialog = page.getByRole('dialog');
    // The last stitch of the top row is blank in the sample.
    await page.keyboard.press('Control+End');
    await page.keyboard.press('Space');
    await expect(page.getByRole('button', { name: 'Undo draw' })).toBeEnabled();
    await atEachSize(page, async () => {
      await goTo(page, 'Motif');
      await page.getByRole('grid').press('a');
      await page.getByRole('textbox', { name: 'Text' }).waitFor();
      expect(await trouble(dialog)).toEqual([]);
      await page.keyboard.press('Escape');
      await expect(dialog).toHaveCount(0);

      await page.keyboard.press('Control+Shift+N');
      await dialog.getByRole('button', { name: 'Leave without saving' }).waitFor();
      expect(await trouble(dialog)).toEqual([]);
      await page.keyboard.press('Escape');
      await expect(dialog).toHaveCount(0);

      await page.keyboard.press('2');
      await page.getByRole('grid', { name: /on the needles$/ }).press('s');
      await dialog.getByLabel('Name of size 1').waitFor();
      expect(await trouble(dialog)).toEqual([]);
      await page.keyboard.press('Escape');
      await expect(dialog).toHaveCount(0);
    });
  });

  test('any picture turned into a motif keeps its picture', async ({ page, start }) => {
    await start();
    const dialog = page.getByRole('dialog', { name: 'Turn a picture into a motif' });
    await atEachSize(page, async () => {
      await dropSvg(page);
      await page.getByRole('button', { name: 'Any picture' }).press('Enter');
      const picture = dialog.getByRole('group', { name: /^The picture/ });
      await expect(picture).toBeVisible();
      expect((await restingBox(picture)).height).toBeGreaterThanOrEqual(60);
      expect(await trouble(dialog)).toEqual([]);
      await page.keyboard.press('Escape');
      await expect(page.getByRole('dialog')).toHaveCount(0);
    });
  });

  test('the reading of a photo keeps its picture', async ({ page, start }) => {
    await start();
    await atEachSize(page, async () => {
      await dropSvg(page);
      await page.getByRole('button', { name: /^A chart/ }).press('Enter');
      const photo = page.getByRole('group', { name: /^The photo/ });
      await expect(photo).toBeVisible();
      expect((await restingBox(photo)).height).toBeGreaterThanOrEqual(120);
      expect((await restingBox(photo.locator('canvas').first())).height).toBeGreaterThanOrEqual(80);
      // Its answers are in view wherever it is scrolled to, where there is room for both.
      if ((page.viewportSize()?.height ?? 0) >= 400) {
        const dialog = page.getByRole('dialog');
        for (const share of [0, 0.5, 1]) {
          await dialog.evaluate((element, part) => element.scrollTo(0, part * element.scrollHeight), share);
          for (const name of ['Cancel', 'Use as the motif'])
            await expect(dialog.getByRole('button', { name })).toBeInViewport({ ratio: 1 });
        }
      }
      expect(await trouble(page.getByRole('dialog'))).toEqual([]);
      await page.keyboard.press('Escape');
      await expect(page.getByRole('dialog')).toHaveCount(0);
    });
  });
});

test.describe('at 640 × 400', () => {
  test.use({ viewport: SIZES[0] });

  test('the file panel shows its buttons without being scrolled', async ({ page, start }) => {
    await start();
    for (const keys of ['Control+Shift+S', 'Control+O']) {
      await page.keyboard.press(keys);
      const panel = page.getByRole('dialog');
      await expect(panel.getByRole('list')).toBeVisible();
      for (const button of await panel.getByRole('button', { name: /^(Cancel|Save here|Open)$/ }).all()) {
        await expect(button).toBeInViewport({ ratio: 1 });
      }
      await page.keyboard.press('Escape');
    }
  });

  test('a notice takes no room from the bench, which is scrolled to', async ({ page, start, home }) => {
    await start();
    const main = page.getByRole('main');
    const before = (await restingBox(main)).height;
    writeFileSync(join(home, 'no-picture.png'), 'no picture');
    await page.keyboard.press('Control+O');
    await new FilePanel(page).open('no-picture.png');
    await expect(page.getByRole('alert')).toBeVisible();
    expect((await restingBox(main)).height).toBeGreaterThanOrEqual(Math.min(before, 200));
    expect(await trouble(body(page))).toEqual([]);
  });
});

test('the panel stands beside the work where there is room', async ({ page, start }) => {
  await start();
  await expect(page.getByRole('complementary')).toBeVisible();
  await expect(page.getByRole('button', { name: 'What it means' })).toBeHidden();
});
