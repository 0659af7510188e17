/** The preview of a long sheet, which comes page by page. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { longBody } from '../long-body.ts';
import { readPdf } from '../pdf.ts';
import { announced, expect, expectAccessible, statusLine, test as base } from './app.ts';
import { appearAs } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';
import { textOf } from './projects.ts';

interface Held {
  letCome(): Promise<void>;
  hold(): Promise<void>;
}

/** Keeps back what comes from the worker after its first page of a sheet, until `letCome`, and again from `hold` on. */
async function holdPages(page: Page): Promise<Held> {
  await page.addInitScript(() => {
    type Listener = (event: MessageEvent) => unknown;
    const kept: (() => void)[] = [];
    let isHeld = true;
    Object.assign(window, {
      holdPages(isMeant: boolean): void {
        isHeld = isMeant;
        if (!isHeld) for (const come of kept.splice(0)) come();
      },
    });
    const { prototype } = Worker;
    const { set } = Object.getOwnPropertyDescriptor(prototype, 'onmessage') as { set: (listener: Listener) => void };
    Object.defineProperty(prototype, 'onmessage', {
      set(this: Worker, listener: Listener) {
        // What one worker says comes in its order.
        let isWaiting = false;
        set.call(this, (event: MessageEvent<{ part?: { kind: string } | null }>) => {
          isWaiting = isHeld && (isWaiting || event.data.part?.kind === 'page');
          if (isWaiting) kept.push(() => void listener.call(this, event));
          else listener.call(this, event);
        });
      },
    });
  });
  const hold = (isHeld: boolean): Promise<void> =>
    page.evaluate(
      (isMeant) => (window as unknown as { holdPages: (isMeant: boolean) => void }).holdPages(isMeant),
      isHeld,
    );
  return { letCome: () => hold(false), hold: () => hold(true) };
}

/** What every task seems to take, by the clock that the page sees, ms. */
type Pace = 'as it is' | 'slow' | 'fast';

/** The page's own clock, which goes on by itself at each look, or stands still. */
async function setPace(page: Page, pace: Pace): Promise<void> {
  if (pace === 'as it is') return;
  await page.addInitScript((step) => {
    let seen = 0;
    performance.now = () => (seen += step);
  }, { slow: 20, fast: 0 }[pace]);
}

/** How many elements of drawings have been put into the page between two frames at most, from now on. */
async function countDrawn(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(() => {
    const counted = Object.assign(window, { mostDrawn: 0 });
    const drawn = new Set<Element>();
    // Called once for all that one task has changed.
    new MutationObserver((changes) => {
      for (const node of changes.flatMap(({ addedNodes }) => [...addedNodes])) {
        if (node instanceof SVGElement) for (const element of [node, ...node.querySelectorAll('*')]) drawn.add(element);
      }
      counted.mostDrawn = Math.max(counted.mostDrawn, drawn.size);
    }).observe(document.querySelector('[data-drawing]') as Element, { childList: true, subtree: true });
    const frame = (): void => {
      drawn.clear();
      requestAnimationFrame(frame);
    };
    frame();
  });
  return () => page.evaluate(() => (window as unknown as { mostDrawn: number }).mostDrawn);
}

const stage = (page: Page): Locator => page.getByRole('region', { name: 'Pages of the placement sheet' });
/** Pages that have come: as a drawing near the view, elsewhere in words. */
const drawn = (page: Page): Locator => stage(page).getByRole('document');
const drawings = (page: Page): Locator => stage(page).locator('svg[role=document]');

/** A project of many pages on the table, of which no more than the first comes. */
const test = base.extend<{ pace: Pace; held: Held }>({
  pace: ['as it is', { option: true }],
  held: async ({ page, home, start, pace }, use) => {
    await setPace(page, pace);
    const held = await holdPages(page);
    writeFileSync(join(home, 'long.walewright'), textOf(longBody(7)));
    await start();
    await page.keyboard.press('Control+O');
    await new FilePanel(page).openProject('long.walewright', 'Long body');
    await use(held);
  },
});

test('shows its first page while the others are drawn, says so once, and once that they are there', async ({
  page,
  held,
}) => {
  await page.keyboard.press('3');
  await expect(drawn(page)).toHaveCount(1);
  await expect(drawn(page).first()).toContainText('Long body');
  await expect(statusLine(page)).toHaveText(/^Page 1 of \d+$/);
  const count = Number((await statusLine(page).textContent())?.split(' ').at(-1));
  expect(count).toBeGreaterThan(20);
  await expect(stage(page)).toHaveAttribute('aria-busy', 'true');
  await expect(page.getByText(`1 of ${count} pages drawn.`)).toBeVisible();
  const progress = page.getByRole('progressbar', { name: 'The pages are being drawn…' });
  await expect(progress).toHaveAttribute('value', '1');
  await expect(announced(page)).toHaveText('The pages are being drawn…');
  for (const appearance of ['light', 'dark'] as const) {
    await appearAs(page, appearance);
    await expectAccessible(page);
  }
  // There is room for those that come: the last of them is reached, and what was drawn stays where it is.
  await stage(page).focus();
  await page.keyboard.press('End');
  await expect(statusLine(page)).toHaveText(`Page ${count} of ${count}`);

  await held.letCome();
  await expect(drawn(page)).toHaveCount(count);
  await expect(stage(page)).toHaveAttribute('aria-busy', 'false');
  await expect(progress).toHaveCount(0);
  await expect(announced(page)).toHaveText(`All ${count} pages are drawn.`);
  await expect(statusLine(page)).toHaveText(`Page ${count} of ${count}`);
  await expect(stage(page)).toBeFocused();
});

test('is of the project as it is now, though pages of the one before were still to come', async ({ page, held }) => {
  await page.keyboard.press('F2');
  await page.keyboard.type('Harbour cuff');
  await page.keyboard.press('Enter');
  await page.keyboard.press('3');
  await expect(drawn(page)).toHaveCount(1);
  await expect(drawn(page).first()).toContainText('Harbour cuff');

  await page.keyboard.press('Control+Z');
  await expect(drawn(page).first()).toContainText('Long body');
  await expect(drawn(page)).toHaveCount(1);
  await held.letCome();
  await expect(stage(page)).toHaveAttribute('aria-busy', 'false');
  // The running head of every page has the name.
  const pages = await drawn(page).allTextContents();
  expect(pages.length).toBeGreaterThan(20);
  for (const text of pages) expect(text).toMatch(/Long body/);
  expect(pages.join()).not.toContain('Harbour cuff');
});

test('begins again where somebody left while it was drawn, and is there at once where it was done', async ({
  page,
  held,
}) => {
  await page.keyboard.press('3');
  await expect(drawn(page)).toHaveCount(1);
  await page.keyboard.press('1');
  await expect(stage(page)).toHaveCount(0);
  await held.letCome();
  await page.keyboard.press('3');
  await expect(stage(page)).toHaveAttribute('aria-busy', 'false');
  const count = await drawn(page).count();
  expect(count).toBeGreaterThan(20);
  const first = drawings(page).first();
  await first.evaluate((svg) => Object.assign(svg, { isTheSame: true }));
  const all = await first.textContent();
  await page.keyboard.press('1');
  await expect(stage(page)).toHaveCount(0);
  // Were it drawn again, it would come to its first page.
  await held.hold();
  await page.keyboard.press('3');
  await expect(drawn(page)).toHaveCount(count);
  expect(await first.evaluate((svg) => 'isTheSame' in svg)).toBe(true);
  // Left while it is put in, a little in each frame, it is whole all the same when one comes back.
  for (const key of ['1', '3', '1', '3']) await page.keyboard.press(key);
  await expect(first).toHaveText(all ?? '');
});

for (const { processor, pace, least, most } of [
  { processor: 'a slow processor', pace: 'slow', least: 0, most: 200 },
  { processor: 'a fast one', pace: 'fast', least: 200, most: 1000 },
] as const) {
  test.describe(`on ${processor}`, () => {
    test.use({ pace });
    test('puts in as much in a frame as it can lay out', async ({ page, held }) => {
      await held.letCome();
      await page.keyboard.press('3');
      await expect(stage(page)).toHaveAttribute('aria-busy', 'false');
      await expect(drawings(page).first()).toBeInViewport();
      const mostDrawn = await countDrawn(page);
      await stage(page).focus();
      await page.keyboard.press('End');
      const last = drawings(page).last();
      const count = await drawn(page).count();
      await expect(last).toContainText(`Page ${count} of ${count}`);
      await page.keyboard.press('PageUp');
      await expect(drawings(page).and(page.getByLabel(`Page ${count - 1} of ${count}`))).toBeInViewport();
      // However many come near at once: a page has more than two hundred.
      await expect.poll(mostDrawn).toBeGreaterThan(least);
      expect(await mostDrawn()).toBeLessThan(most);
    });
  });
}

test('draws what is near the view, and any other page once it is scrolled to, found or printed', async ({
  page,
  held,
}) => {
  await held.letCome();
  await page.keyboard.press('3');
  await expect(stage(page)).toHaveAttribute('aria-busy', 'false');
  const count = await drawn(page).count();
  expect(count).toBeGreaterThan(20);
  const drawing = (number: number): Locator => drawings(page).and(page.getByLabel(`Page ${number} of ${count}`));
  const length = (): Promise<number> => stage(page).evaluate((list) => list.scrollHeight);
  await expect(drawing(1)).toBeInViewport();
  const before = await length();
  await expectAccessible(page);

  // By keyboard: to the end, and a view up.
  await stage(page).focus();
  await page.keyboard.press('End');
  await expect(drawing(count)).toBeInViewport();
  await expect(drawing(1)).toHaveCount(0);
  await page.keyboard.press('PageUp');
  await expect(drawing(count - 1)).toBeInViewport();
  // By pointer: to the middle, and up to the top.
  await stage(page).hover();
  await page.mouse.wheel(0, -before / 2);
  await expect(drawing(count)).toHaveCount(0);
  await expect(statusLine(page)).toHaveText(new RegExp(`^Page 1[3-8] of ${count}$`));
  const number = Number(/\d+/.exec((await statusLine(page).textContent()) ?? '')?.[0]);
  await expect(drawing(number)).toBeInViewport();
  // In another size it is looked at where it was.
  const said = (await statusLine(page).textContent()) ?? '';
  await page.getByLabel('Preview').selectOption('page');
  await expect.poll(length).toBeLessThan(before);
  await expect(drawing(number)).toBeInViewport();
  await expect(statusLine(page)).toHaveText(said);
  await page.getByLabel('Preview').selectOption('width');
  await expect.poll(length).toBe(before);
  await expect(statusLine(page)).toHaveText(said);
  await stage(page).hover();
  await page.mouse.wheel(0, -before);
  await expect(drawing(1)).toBeInViewport();
  const last = await drawn(page).last().textContent();
  expect(last).toContain(`Page ${count} of ${count}`);
  // The browser's own search: it finds, and brings into view where that is.
  const found = await page.evaluate((text) => {
    getSelection()?.removeAllRanges();
    (window as unknown as { find(text: string): boolean }).find(text);
    const at = getSelection();
    at?.anchorNode?.parentElement?.scrollIntoView();
    return at?.toString();
  }, `Page ${count} of`);
  expect(found).toBe(`Page ${count} of`);
  await expect(drawing(count)).toBeInViewport();
  // Two or three are near a view, and nothing moves when they come and go.
  await expect(drawing(1)).toHaveCount(0);
  expect(await drawings(page).count()).toBeLessThan(6);
  expect(await length()).toBe(before);

  // All of it is there in the end, and in its order.
  await expect.poll(() => drawing(count).textContent()).toBe(last?.replaceAll('\n', ''));
});

test('prints all pages, though few are drawn', async ({ page, held }) => {
  await held.letCome();
  await page.keyboard.press('3');
  await expect(stage(page)).toHaveAttribute('aria-busy', 'false');
  const count = await drawn(page).count();
  await expect(drawings(page).first()).toBeInViewport();
  expect(await drawings(page).count()).toBeLessThan(6);
  const printed = await readPdf(await page.pdf({ preferCSSPageSize: true }));
  expect(printed).toHaveLength(count);
  for (const [index, { squeezed }] of printed.entries()) expect(squeezed).toContain(`Page${index + 1}of${count}`);
});
