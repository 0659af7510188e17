/** Undo and Redo by mouse, by keyboard, and as they are heard. */
import type { Page } from '@playwright/test';
import type { ChangeName } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { announced, expect, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { Chart, LIGHTHOUSE } from './chart.ts';
import { withOwnPage } from './own-page.ts';
import type { TopBarPage } from './page/top-bar.ts';

const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });
const redo = (page: Page) => page.getByRole('button', { name: /^Redo/ });

/** Five steps of four names, each on another cell or of the whole motif. */
async function makeFiveSteps(page: Page, chart: Chart): Promise<void> {
  await chart.click(1, 18);
  await chart.click(2, 18);
  await chart.grid.focus();
  await page.keyboard.press('Shift+H');
  await page.keyboard.press('e');
  await chart.click(7, 10);
  await page.keyboard.press('d');
  await chart.drag([1, 17], [1, 15]);
  await expect(undo(page)).toHaveAccessibleName('Undo draw');
}

test('five presses of the mouse on Undo, without moving it, are five undos', async ({ page, start }) => {
  await start();
  const chart = new Chart(page);
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
  await makeFiveSteps(page, chart);
  await expect.poll(() => chart.shown()).not.toEqual(LIGHTHOUSE);
  const box = await restingBox(undo(page));
  // The right end: where Redo came to lie when the name of the step became shorter.
  await page.mouse.move(box.x + box.width - 3, box.y + box.height / 2);
  for (const next of ['Undo erase', 'Undo flip left to right', 'Undo draw', 'Undo draw', 'Undo']) {
    await page.mouse.down();
    await page.mouse.up();
    await expect(undo(page)).toHaveAccessibleName(next);
  }
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
  await expect(undo(page)).toBeDisabled();
  // One press too many does nothing.
  await page.mouse.down();
  await page.mouse.up();
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
  await expect(redo(page)).toHaveAccessibleName('Redo draw');
  // With nothing left to do again the keyboard stays on the button.
  await redo(page).focus();
  for (const next of ['Redo draw', 'Redo flip left to right', 'Redo erase', 'Redo draw', 'Redo']) {
    await page.keyboard.press('Enter');
    await expect(redo(page)).toHaveAccessibleName(next);
  }
  await expect(redo(page)).toBeDisabled();
  await expect(redo(page)).toBeFocused();
});

test('the step is named in the tooltip, and heard each time, also when two of one name follow', async ({
  page,
  start,
}) => {
  await start();
  const chart = new Chart(page);
  await chart.click(1, 18);
  await chart.click(2, 18);
  await expect(undo(page)).toHaveAttribute('title', /^Undo draw \((Ctrl\+|⌘)Z\)$/);
  await announced(page).evaluate((region) => {
    const heard: string[] = [];
    Object.assign(window, { heard });
    new MutationObserver((changes) => {
      for (const { addedNodes } of changes) for (const node of addedNodes) heard.push(node.textContent?.trim() ?? '');
    }).observe(region, { childList: true, subtree: true, characterData: true });
  });
  await undo(page).click();
  await undo(page).click();
  await expect(undo(page)).toBeDisabled();
  const heard = await page.evaluate(() => (window as unknown as { heard: string[] }).heard.filter((text) => text));
  expect(heard).toEqual([words.changes.undone('draw'), words.changes.undone('draw')]);
  await expect(redo(page)).toHaveAttribute('title', /^Redo draw \(/);
});

test('neither button moves or changes its size, whatever the step is called', async ({ page }) => {
  await withOwnPage('top-bar', async (address) => {
    await page.goto(address);
    await undo(page).waitFor();
    await page.evaluate(() => document.fonts.ready);
    const places = await page.evaluate(
      (names) => {
        const { topBar } = window as unknown as { topBar: TopBarPage };
        const found = new Map<string, string[]>();
        for (const name of names) {
          for (const isUndone of [false, true]) {
            topBar.step(name, isUndone);
            const buttons = [...document.querySelectorAll('button')].filter((one) =>
              /^\s*(Un|Re)do/.test(one.textContent),
            );
            const boxes = buttons.map((one) => JSON.stringify(one.getBoundingClientRect()));
            found.set(boxes.join(' '), [
              ...(found.get(boxes.join(' ')) ?? []),
              `${isUndone ? 'redo' : 'undo'} ${name}`,
            ]);
          }
        }
        return [...found.values()];
      },
      Object.keys(words.changes.names) as ChangeName[],
    );
    // One place of both for all of them, and there are a hundred and more.
    expect(places).toHaveLength(1);
    expect(places[0]?.length).toBeGreaterThan(100);
  });
});

test('stand level with the button beside them', async ({ page, start }) => {
  await start();
  const tops = await page.getByRole('banner').evaluate((bar) =>
    ['Undo', 'Redo', 'Commands'].map((word) => {
      const walker = document.createTreeWalker(bar, NodeFilter.SHOW_TEXT);
      while (walker.nextNode()) {
        const { currentNode } = walker;
        if (currentNode.nodeValue?.trim() !== word) continue;
        const text = document.createRange();
        text.selectNodeContents(currentNode);
        return {
          top: text.getBoundingClientRect().top,
          button: currentNode.parentElement?.closest('button')?.clientHeight,
        };
      }
      return null;
    }),
  );
  expect(tops[0]).not.toBeNull();
  expect(tops).toEqual([tops[2], tops[2], tops[2]]);
});
