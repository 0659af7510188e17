/** The keyboard comes back to where it was, after every dialog, menu, notice and command. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { createOffered, expect, test } from './app.ts';
import { FilePanel } from './file-panel.ts';

const PICTURE =
  '<svg xmlns="http://www.w3.org/2000/svg" width="90" height="60"><rect width="90" height="60" fill="#8fb0d8"/>' +
  '<circle cx="40" cy="30" r="20" fill="#2f4858"/></svg>';

const dialog = (page: Page): Locator => page.getByRole('dialog');
const chart = (page: Page): Locator => page.getByRole('grid');

/** Gives a picture to the window as one that is dropped. */
async function drop(page: Page): Promise<void> {
  await page.evaluate((svg) => {
    const data = new DataTransfer();
    data.items.add(new File([svg], 'hills.svg', { type: 'image/svg+xml' }));
    document.querySelector('.window')?.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
  }, PICTURE);
}

/** A way into a dialog that can be taken from anywhere; Escape is a way out that changes nothing. */
interface Way {
  readonly name: string;
  readonly open: (page: Page) => Promise<void>;
  readonly shown: string | RegExp;
}

const BY_KEY: readonly Way[] = [
  { name: 'the list of commands', open: (page) => page.keyboard.press('Control+K'), shown: 'Commands' },
  { name: 'opening', open: (page) => page.keyboard.press('Control+O'), shown: 'Open a project or a picture' },
  { name: 'saving', open: (page) => page.keyboard.press('Control+Shift+S'), shown: 'Save the project' },
];

const FOR_PICTURES: readonly Way[] = [
  { name: 'a picture that is asked about', open: drop, shown: /./ },
  {
    name: 'any picture',
    async open(page) {
      await drop(page);
      await page.getByRole('button', { name: 'Any picture' }).press('Enter');
      await expect(dialog(page).getByRole('textbox', { name: 'Stitches' })).toBeVisible();
    },
    shown: 'Turn a picture into a motif',
  },
  {
    name: 'a chart in a photo',
    async open(page) {
      await drop(page);
      await page.getByRole('button', { name: /^A chart/ }).press('Enter');
      await expect(dialog(page).getByRole('button', { name: /^top left corner/ })).toBeVisible();
    },
    shown: 'Read a chart from a photo',
  },
];

for (const { dialogs, ways } of [
  { dialogs: 'dialogs that a key opens', ways: BY_KEY },
  { dialogs: 'dialogs for a picture', ways: FOR_PICTURES },
]) {
  test(`comes back after ${dialogs}`, async ({ page, start }) => {
    await start();
    const from = [chart(page), page.getByRole('switch').first(), page.getByRole('button', { name: 'File' })];
    for (const { name, open, shown } of ways) {
      await test.step(name, async () => {
        for (const place of from) {
          await place.focus();
          await open(page);
          await expect(page.getByRole('dialog', { name: shown })).toBeVisible();
          await expect(dialog(page).locator(':focus')).toHaveCount(1);
          await page.keyboard.press('Escape');
          await expect(dialog(page)).toHaveCount(0);
          await expect(place).toBeFocused();
        }
        // Pressed on nothing, there is nothing to come back to but the chart.
        await page.evaluate(() => (document.activeElement as HTMLElement).blur());
        await open(page);
        await expect(page.getByRole('dialog', { name: shown })).toBeVisible();
        await page.keyboard.press('Escape');
        await expect(dialog(page)).toHaveCount(0);
        await expect(chart(page)).toBeFocused();
      });
    }
  });
}

test('comes back after a save that asked for a name', async ({ page, start }) => {
  await start();
  for (const [index, place] of [chart(page), page.getByRole('switch').first()].entries()) {
    await place.focus();
    await page.keyboard.press('Control+Shift+S');
    await dialog(page).getByRole('textbox', { name: 'Name' }).fill(`kept-${index}.walewright`);
    const save = page.getByRole('button', { name: 'Save here' });
    // The folder is listed first.
    await expect(save).toBeEnabled();
    await save.press('Enter');
    await expect(dialog(page)).toHaveCount(0);
    await expect(place).toBeFocused();
  }
});

test('comes back after the question about unsaved work, whatever the answer', async ({ page, start }) => {
  await start();
  const place = page.getByRole('switch').first();
  await chart(page).press('Control+End');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Space');
  await expect(page.getByText('not saved')).toBeVisible();
  await place.focus();
  await page.keyboard.press('Control+Shift+N');
  await expect(dialog(page)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(place).toBeFocused();

  // Saving asks for a name first, one dialog after the other.
  await page.keyboard.press('Control+Shift+N');
  await page.getByRole('button', { name: 'Save', exact: true }).press('Enter');
  await expect(page.getByRole('dialog', { name: 'Save the project' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(dialog(page)).toHaveCount(0);
  await expect(place).toBeFocused();

  await page.keyboard.press('Control+Shift+N');
  await page.getByRole('button', { name: 'Leave without saving' }).press('Enter');
  await createOffered(page);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Untitled');
  await expect(page.locator(':focus')).toHaveCount(1);
});

test('comes back after the dialogs of the benches', async ({ page, start }) => {
  await start();
  await chart(page).press('a');
  await expect(dialog(page)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(chart(page)).toBeFocused();

  const lettering = page.getByRole('button', { name: 'Lettering' }).first();
  await lettering.press('Enter');
  await expect(dialog(page)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(lettering).toBeFocused();

  await chart(page).press('2');
  await chart(page).press('s');
  await expect(dialog(page)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(chart(page)).toBeFocused();
});

test('comes back from the menu, and from what it opened', async ({ page, start }) => {
  await start();
  const file = page.getByRole('button', { name: 'File' });
  await file.press('Enter');
  const first = page.getByRole('button', { name: 'New project…' });
  await expect(first).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(file).toBeFocused();
  await file.press('Enter');
  await page.getByRole('button', { name: 'Open…' }).press('Enter');
  await expect(dialog(page)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(file).toBeFocused();
});

test('comes back when a notice is closed', async ({ page, start, home }) => {
  await start();
  writeFileSync(join(home, 'broken.png'), 'no picture');
  for (const place of [chart(page), page.getByRole('switch').first()]) {
    await place.focus();
    await page.keyboard.press('Control+O');
    await new FilePanel(page).open('broken.png');
    const close = page.getByRole('alert').getByRole('button', { name: 'Close' });
    await expect(place).toBeFocused();
    await close.press('Enter');
    await expect(page.getByRole('alert')).toHaveCount(0);
    await expect(place).toBeFocused();
  }
});

test('goes to the drawing when its place is gone', async ({ page, start }) => {
  await start();
  // A bench that was left by a command that was called from one of its switches.
  await page.getByRole('switch').first().focus();
  await page.keyboard.press('Control+K');
  await page.getByRole('combobox', { name: 'Find a command' }).fill('go to piece');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('grid', { name: /^sleeve/ })).toBeFocused();

  await page.keyboard.press('3');
  await expect(page.getByRole('region', { name: 'Pages of the placement sheet' })).toBeFocused();
  await page.keyboard.press('1');
  await expect(chart(page)).toBeFocused();

  // A button that has done its work and goes. What comes in its place takes the keyboard where it is a form of its own.
  await page.keyboard.press('2');
  await page.getByRole('button', { name: / all over$/ }).press('Enter');
  const form = page.getByRole('button', { name: 'Rows, edges, how it lies' });
  await expect(form).toBeFocused();
  await form.press('Enter');
  await page.getByRole('button', { name: 'Remove this all-over' }).press('Enter');
  await expect(form).toHaveCount(0);
  await expect(page.getByRole('grid', { name: /^sleeve/ })).toBeFocused();
});

test('comes back from a form that opens in place', async ({ page, start }) => {
  await start();
  await page.getByRole('button', { name: 'Add a yarn' }).press('Enter');
  const edit = page.getByRole('button', { name: 'Change yarn 3' });
  await edit.press('Enter');
  await expect(page.getByRole('textbox', { name: 'Name' })).toBeVisible();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('textbox', { name: 'Name' })).toBeFocused();
  await page.getByRole('button', { name: 'Done' }).press('Enter');
  await expect(edit).toBeFocused();
});

test('goes where a command takes it', async ({ page, start }) => {
  await start();
  await page.getByRole('switch').first().focus();
  await page.keyboard.press('Control+K');
  await page.getByRole('combobox', { name: 'Find a command' }).fill('select all');
  await page.keyboard.press('Enter');
  await expect(dialog(page)).toHaveCount(0);
  await expect(page.getByRole('switch').first()).toBeFocused();
});

test('stays in the chart while buttons around it are pressed with the mouse', async ({ page, start }) => {
  await start();
  await chart(page).focus();
  for (const name of ['Erase', 'Zoom in', 'Show the whole motif']) {
    await page.getByRole('button', { name, exact: true }).click();
    await expect(chart(page)).toBeFocused();
  }
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(page.getByRole('grid', { name: /^sleeve/ })).toBeFocused();
});
