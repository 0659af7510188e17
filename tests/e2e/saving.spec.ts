/** Projects saved as files: where they are told to, over nothing of anybody else's, and never lost. */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { bandsOf } from '@shared/pattern/index.ts';
import { projectAt, projectFromText } from '@shared/project/index.ts';
import { announced, createOffered, expect, expectAccessible, intercept, test } from './app.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';
import { changeCopies } from './piece-bench.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

const PROJECT = 'Skerry sleeve.walewright';

test('saves a new project where it is told to, and opens it again after a reload', async ({ page, start, home }) => {
  await start();
  await expect(page.getByText('not in a file yet')).toBeVisible();
  await changeCopies(page, '1, 2');
  await expect(page.getByText('not saved')).toBeVisible();
  await page.keyboard.press('Control+S');
  const panel = new FilePanel(page);
  await expect(panel.dialog.getByLabel('Name')).toHaveValue(PROJECT);
  await expectAccessible(page);
  await panel.saveHere();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await expect(announced(page)).toHaveText(`Saved as ${PROJECT}.`);

  const written = projectAt(projectFromText(readFileSync(join(home, PROJECT), 'utf8')));
  expect(bandsOf(written)[0]?.groups.map(({ across }) => across)).toEqual([1, 2]);

  await page.reload();
  await page.getByRole('button', { name: 'Commands' }).waitFor();
  await page.keyboard.press('Control+O');
  await panel.open(PROJECT);
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(page.getByLabel('Copies in each group')).toHaveValue('1, 2');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
});

test('saves over its own file without asking, and clears the mark when undone back to it', async ({
  page,
  start,
  home,
}) => {
  await start();
  await page.keyboard.press('Control+S');
  await new FilePanel(page).saveHere();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await changeCopies(page, '1');
  await expect(page.getByText('not saved')).toBeVisible();
  await page.keyboard.press('Control+Z');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await page.keyboard.press('Control+Shift+Z');
  await page.keyboard.press('Control+S');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  expect(bandsOf(projectAt(projectFromText(readFileSync(join(home, PROJECT), 'utf8'))))[0]?.groups).toHaveLength(1);
});

test.describe('a name that another file has', () => {
  const other = textOf(twelveStitchMotif([1]));

  test('is asked about before it is taken, however it is typed', async ({ page, start, home }) => {
    mkdirSync(join(home, 'studio'));
    await start();
    const panel = new FilePanel(page);
    for (const { typed, file } of [
      { typed: PROJECT, file: PROJECT },
      { typed: 'sleeve', file: 'sleeve.walewright' },
      { typed: '../home/kept ', file: 'kept.walewright' },
      // The last, for the next panel would open in that folder.
      { typed: 'studio/sleeve', file: 'studio/sleeve.walewright' },
    ]) {
      await test.step(typed, async () => {
        const path = join(home, file);
        writeFileSync(path, other);
        await page.keyboard.press('Control+Shift+S');
        await panel.saveAs(typed);
        const name = basename(file);
        const question = page.getByRole('dialog', { name: `Replace "${name}"?` });
        await expect(question).toContainText('It is there already');
        // Any name is asked about by the same words.
        if (file === PROJECT) await expectAccessible(page);
        // Who keeps it may choose another name at once.
        await panel.replace(/^Replace/, false);
        await expect(panel.dialog.getByLabel('Name')).toHaveValue(name);
        expect(readFileSync(path, 'utf8')).toBe(other);
        await panel.saveAs(name);
        await panel.replace(/^Replace/, true);
        await expect(announced(page)).toHaveText(`Saved as ${name}.`);
        await expect(panel.dialog).toHaveCount(0);
        await expect(page.getByText('saved', { exact: true })).toBeVisible();
        expect(projectFromText(readFileSync(path, 'utf8')).name).toBe('Skerry sleeve');
      });
    }
  });

  test('is refused in place where it is hidden, or another kind of file', async ({ page, start, home }) => {
    writeFileSync(join(home, '.sleeve.walewright'), other);
    writeFileSync(join(home, 'diary.walewright'), 'Dear diary');
    await start();
    await page.keyboard.press('Control+S');
    const panel = new FilePanel(page);
    for (const { typed, complaint } of [
      { typed: '.sleeve', complaint: 'Hidden files and folders stay closed' },
      { typed: 'diary', complaint: 'a file of another kind, and is never replaced' },
      { typed: 'studio/', complaint: 'cannot be the name of a file' },
    ]) {
      await panel.saveAs(typed);
      await expect(panel.dialog.getByRole('alert')).toContainText(complaint);
      await expect(panel.dialog.getByLabel('Name')).toHaveValue(typed);
    }
    await panel.saveAs('sleeve');
    await expect(page.getByText('saved', { exact: true })).toBeVisible();
    expect(readFileSync(join(home, '.sleeve.walewright'), 'utf8')).toBe(other);
    expect(readFileSync(join(home, 'diary.walewright'), 'utf8')).toBe('Dear diary');
  });
});

test('saves as often as it is asked to, one after the other', async ({ page, start, home }) => {
  await start();
  await page.keyboard.press('Control+S');
  await new FilePanel(page).saveAs('sleeve');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await changeCopies(page, '1');
  // Each save is held until all have been asked for.
  const held: (() => void)[] = [];
  await intercept(page, '**/call/documents.write', async (route) => {
    await new Promise<void>((go) => held.push(go));
    await route.continue();
  });
  for (let times = 0; times < 5; times += 1) await page.keyboard.press('Control+S');
  await changeCopies(page, '2, 1');
  await page.keyboard.press('Control+S');
  for (let saved = 1; saved <= 6; saved += 1) {
    await expect.poll(() => held.length).toBe(saved);
    held.at(-1)?.();
  }
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await expect(page.getByRole('alert')).toHaveCount(0);
  expect(
    bandsOf(projectAt(projectFromText(readFileSync(join(home, 'sleeve.walewright'), 'utf8'))))[0]?.groups,
  ).toHaveLength(2);
});

test('leaves another project alone when a save of the one before it ends late', async ({ page, start, home }) => {
  await start();
  await page.keyboard.press('Control+S');
  await new FilePanel(page).saveAs('sleeve');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await changeCopies(page, '1');
  let go = (): void => undefined;
  const ended = page.waitForResponse('**/call/documents.write');
  await intercept(page, '**/call/documents.write', async (route) => {
    await new Promise<void>((resolve) => (go = resolve));
    await route.continue();
  });
  const asked = page.waitForRequest('**/call/documents.write');
  await page.keyboard.press('Control+S');
  await asked;
  await page.keyboard.press('Control+Shift+N');
  await page.getByRole('button', { name: 'Leave without saving' }).click();
  await createOffered(page);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Untitled');
  go();
  await ended;
  await expect(page.getByText('not in a file yet')).toBeVisible();
  expect(projectFromText(readFileSync(join(home, 'sleeve.walewright'), 'utf8')).name).toBe('Skerry sleeve');
});

test('does not write over what another program wrote in the meantime', async ({ page, start, home }) => {
  await start();
  await page.keyboard.press('Control+S');
  await new FilePanel(page).saveHere();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  writeFileSync(join(home, PROJECT), 'from elsewhere');
  await changeCopies(page, '1');
  await page.keyboard.press('Control+S');
  await expect(page.getByRole('alert')).toContainText('Another program has changed the file');
  await expect(page.getByText('not saved')).toBeVisible();
  expect(readFileSync(join(home, PROJECT), 'utf8')).toBe('from elsewhere');
});

test('guards unsaved work before another project takes its place', async ({ page, start, home }) => {
  await start();
  await changeCopies(page, '3');
  await page.keyboard.press('Control+Shift+N');
  const guard = page.getByRole('dialog', { name: 'Save "Skerry sleeve" first?' });
  await expectAccessible(page);
  await page.keyboard.press('Escape');
  await expect(guard).toHaveCount(0);
  await expect(page.getByLabel('Copies in each group')).toHaveValue('3');

  await page.keyboard.press('Control+Shift+N');
  await guard.getByRole('button', { name: 'Save', exact: true }).click();
  await new FilePanel(page).saveAs('kept');
  await createOffered(page);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Untitled');
  expect(
    bandsOf(projectAt(projectFromText(readFileSync(join(home, 'kept.walewright'), 'utf8'))))[0]?.groups,
  ).toHaveLength(1);

  await new Chart(page).click(2, 2);
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Open the sample project' }).click();
  await page.getByRole('button', { name: 'Leave without saving' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Skerry sleeve');
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(page.getByLabel('Copies in each group')).toHaveValue('2, 2');
});

test('asks the browser to guard the window, and brings unsaved work back after all', async ({ page, start }) => {
  await start();
  const asked: string[] = [];
  page.on('dialog', (dialog) => {
    asked.push(dialog.type());
    void dialog.accept();
  });
  // Kept aside within a second.
  const kept = page.waitForResponse((response) => response.url().endsWith('/call/recovery.keep') && response.ok());
  await changeCopies(page, '1, 1, 1');
  await kept;
  await page.reload();
  await page.getByRole('button', { name: 'Commands' }).waitFor();
  expect(asked).toEqual(['beforeunload']);
  await expect(
    page.getByRole('region', { name: 'Notice' }).filter({ hasText: 'was not saved when the program ended' }),
  ).toBeVisible();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(page.getByLabel('Copies in each group')).toHaveValue('1, 1, 1');
  await expect(page.getByText('not saved', { exact: true })).toBeVisible();
});

test('saves into the folder that was typed, however soon the button is pressed after it', async ({
  page,
  start,
  home,
}) => {
  mkdirSync(join(home, 'sleeves'));
  await start();
  await page.keyboard.press('Control+S');
  const panel = new FilePanel(page);
  const folder = panel.dialog.getByLabel('Folder', { exact: true });
  await expect(folder).toHaveValue(home);
  let letGo: () => void = () => undefined;
  const held = new Promise<void>((resolve) => (letGo = resolve));
  await intercept(page, '**/call/folders.list', async (route) => {
    await held;
    await route.continue();
  });
  await folder.fill(join(home, 'sleeves'));
  await panel.saveHere();
  letGo();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  expect(existsSync(join(home, 'sleeves', PROJECT))).toBe(true);
  expect(existsSync(join(home, PROJECT))).toBe(false);

  // One that is not there is said, and nothing is saved anywhere else.
  await page.keyboard.press('Control+Shift+S');
  await folder.fill(join(home, 'nowhere'));
  await panel.saveHere();
  await expect(panel.dialog.getByRole('alert')).toContainText('There is no such file or folder.');
  await expect(panel.dialog).toBeVisible();
  expect(readdirSync(home).filter((name) => name.endsWith('.walewright'))).toEqual([]);
});

test('keeps the folder that is typed while the first one is still being listed', async ({ page, start, home }) => {
  mkdirSync(join(home, 'sleeves'));
  await start();
  let letGo: () => void = () => undefined;
  const held = new Promise<void>((resolve) => (letGo = resolve));
  let lists = 0;
  await intercept(page, '**/call/folders.list', async (route) => {
    if (++lists === 1) await held;
    await route.continue();
  });
  await page.keyboard.press('Control+S');
  const panel = new FilePanel(page);
  const folder = panel.dialog.getByLabel('Folder', { exact: true });
  await folder.fill(join(home, 'sleeves'));
  const listed = page.waitForResponse('**/call/folders.list');
  letGo();
  await listed;
  await expect(panel.dialog.getByRole('button', { name: 'Save here' })).toBeEnabled();
  await expect(folder).toHaveValue(join(home, 'sleeves'));
  await panel.saveHere();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  expect(existsSync(join(home, 'sleeves', PROJECT))).toBe(true);
});
