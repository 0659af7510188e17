/** The collection: motifs kept beyond one project, found again, put in another and stamped. */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { motifAlone } from '@shared/collection/index.ts';
import { gridFromText } from '@shared/grid/index.ts';
import { projectAround, projectToText, sampleProject } from '@shared/project/index.ts';
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { Chart, LIGHTHOUSE } from './chart.ts';
import { FilePanel } from './file-panel.ts';

const dialogOf = (page: Page): Locator => page.getByRole('dialog', { name: 'Collection', exact: true });

/** A motif in moss and rust, as somebody copied it into the folder. */
function put(folder: string, name: string, rows: readonly string[], file = name): void {
  mkdirSync(folder, { recursive: true });
  const yarns = [
    { name: 'moss', colour: '#5f6f3a', count: null, onHand: null },
    { name: 'rust', colour: '#a4492a', count: null, onHand: null },
  ];
  const project = projectAround(name, name, gridFromText(rows, '.#'), 0, 'worn', yarns);
  writeFileSync(join(folder, `${file}.walewright`), projectToText(project));
}

test('keeps a motif as a file of its own, and asks about one of its name, by mouse', async ({
  page,
  start,
  folder,
}) => {
  const own = join(folder, 'data', 'collection');
  await start();
  const dialog = dialogOf(page);
  await page.getByRole('button', { name: 'Collection of motifs…' }).click();
  await expect(dialog.getByText('No motif is kept here yet.')).toBeVisible();
  await expect(dialog.getByText(own)).toBeVisible();
  await expect(dialog.getByRole('button', { name: 'Put in the project' })).toBeDisabled();
  await dialog.getByRole('button', { name: 'Keep “lighthouse and gulls”' }).click();
  await expect(dialog.getByText('“lighthouse and gulls” is kept as lighthouse and gulls.walewright.')).toBeVisible();
  await expect(dialog.getByRole('radio')).toHaveCount(1);
  expect(readdirSync(own)).toEqual(['lighthouse and gulls.walewright']);
  await dialog.getByRole('button', { name: 'Close' }).click();

  await new Chart(page).click(1, 18);
  await page.getByRole('button', { name: 'Collection of motifs…' }).click();
  await dialog.getByRole('button', { name: 'Keep “lighthouse and gulls”' }).click();
  const question = page.getByRole('dialog', { name: '“lighthouse and gulls” is kept already' });
  await expect(question).toContainText('14 stitches × 18 rows, lighthouse and gulls.walewright');
  await appearAs(page, 'dark');
  await expectAccessible(page);
  await question.getByRole('button', { name: 'Keep both' }).click();
  await expect(dialog.getByText('is kept as lighthouse and gulls (2).walewright.')).toBeVisible();
  // Files tell two of a name apart.
  await expect(dialog.getByRole('radio', { name: 'lighthouse and gulls (2).walewright' })).toBeChecked();
  expect(readdirSync(own)).toHaveLength(2);
});

test('finds a motif among others and puts it in a project, in one step of undo, by mouse', async ({
  page,
  start,
  folder,
}) => {
  const own = join(folder, 'data', 'collection');
  for (const name of ['border', 'wave']) put(own, name, ['#..', '.#.']);
  writeFileSync(join(own, 'lighthouse.walewright'), projectToText(motifAlone(sampleProject(), 'lighthouse')));
  writeFileSync(join(own, 'torn.walewright'), '{"format": "walewright"');
  await start('empty');
  const chart = new Chart(page);
  const dialog = dialogOf(page);
  await page.getByRole('button', { name: 'Collection of motifs…' }).click();
  await expect(dialog.getByText('3 motifs')).toBeVisible();
  await dialog.getByText('1 file that cannot be used').click();
  await expect(dialog.getByText('torn.walewright: The file is not a whole project')).toBeVisible();
  await expect(dialog.getByRole('radio', { name: 'border' }).locator('..').locator('img')).toBeVisible();
  await dialog.getByLabel('Find').fill('rust');
  await expect(dialog.getByText('2 of 3 motifs')).toBeVisible();
  await dialog.getByLabel('Find').fill('14 × 18');
  await expect(dialog.getByText('1 of 3 motifs')).toBeVisible();
  await dialog.getByText('lighthouse and gulls', { exact: true }).click();
  await dialog.getByRole('button', { name: 'Put in the project' }).click();
  await expect(dialog).toBeHidden();
  const list = page.getByRole('radiogroup', { name: 'Motif on the bench' });
  await expect(list.getByRole('radio', { name: 'lighthouse and gulls' })).toBeChecked();
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
  await page.getByRole('button', { name: 'Undo add motif' }).click();
  await expect(list.getByRole('radio')).toHaveCount(1);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
});

test('stamps a motif of a folder that was chosen, in yarns that come with it', async ({
  page,
  start,
  folder,
  home,
}) => {
  put(join(folder, 'data', 'collection'), 'border', ['#..', '.#.']);
  await start('empty');
  const chart = new Chart(page);
  const dialog = dialogOf(page);

  await test.step('stamped, in yarns that come with it', async () => {
    await page.getByRole('button', { name: 'Collection of motifs…' }).click();
    await dialog.getByText('border').click();
    await dialog.getByRole('button', { name: 'Stamp it' }).click();
    await expect(announced(page)).toHaveText('border is in the project. New yarn: rust.');
    // The motif on the bench stays.
    await expect.poll(() => chart.size()).toEqual({ columns: 24, rows: 24 });
    await chart.click(2, 2);
    await expect(announced(page)).toHaveText('Stamped.');
    await expect
      .poll(async () => (await chart.shown()).slice(-3).map((row) => row.slice(0, 4)))
      .toEqual(['?...', '.?..', '....']);
    // It is chosen among what is stamped, and another of the collection may be.
    await expect(page.getByRole('combobox', { name: 'It stamps' })).toHaveValue(/./);
    await expect(page.getByRole('button', { name: 'Collection of motifs…' })).toHaveCount(2);
  });

  await test.step('the folder may be another, and one that is gone is said to be', async () => {
    put(join(home, 'motifs'), 'wave', ['#.']);
    await page.getByRole('button', { name: 'Collection of motifs…' }).last().click();
    await dialog.getByRole('button', { name: 'Choose another…' }).click();
    const panel = new FilePanel(page);
    await page.getByRole('dialog', { name: 'Choose a folder' }).getByRole('button', { name: 'motifs, folder' }).click();
    await panel.dialog.getByRole('button', { name: 'Choose this folder' }).click();
    await expect(dialog.getByText(join(home, 'motifs'))).toBeVisible();
    await expect(dialog.getByRole('radio', { name: 'wave' })).toBeVisible();
    await dialog.getByRole('button', { name: 'Close' }).click();
    rmSync(join(home, 'motifs'), { recursive: true });
    await page.getByRole('button', { name: 'Collection of motifs…' }).last().click();
    await expect(dialog.getByRole('alert')).toContainText('There is no such file or folder.');
    await dialog.getByRole('button', { name: 'Back to the program’s own' }).click();
    await expect(dialog.getByText('1 motif', { exact: true })).toBeVisible();
  });
});

test('keeps a motif, finds another and puts it in with the keyboard alone', async ({ page, start, folder }) => {
  put(join(folder, 'data', 'collection'), 'star', ['#.#.', '.#.#']);
  await start();
  const chart = new Chart(page);
  const dialog = dialogOf(page);
  await chart.grid.focus();

  await page.keyboard.press('Control+Shift+B');
  await expect(dialog.getByText('“lighthouse and gulls” is kept as lighthouse and gulls.walewright.')).toBeVisible();
  await expect(dialog.getByLabel('Find')).toBeFocused();
  await expect(dialog.getByText('2 motifs')).toBeVisible();
  await expectAccessible(page);
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await expect(chart.grid).toBeFocused();

  // One press of Escape leaves, whatever is typed.
  await page.keyboard.press('Control+Shift+F');
  await expect(dialog.getByLabel('Find')).toBeFocused();
  await page.keyboard.type('x');
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();

  // Of those that fit the first is taken; Enter puts it in.
  await page.keyboard.press('Control+Shift+F');
  await expect(dialog.getByLabel('Find')).toBeFocused();
  await page.keyboard.type('repeat 2');
  await expect(dialog.getByText('1 of 2 motifs')).toBeVisible();
  await expect(dialog.getByRole('radio', { name: 'star' })).toBeChecked();
  await page.keyboard.press('Enter');
  await expect(dialog).toBeHidden();
  await expect(announced(page)).toContainText('star is in the project. New yarn: rust.');
  await expect.poll(() => chart.size()).toEqual({ columns: 4, rows: 2 });
  await expect(chart.grid).toBeFocused();
});

test('chooses among motifs with the arrow keys, and stamps one', async ({ page, start, folder }) => {
  put(join(folder, 'data', 'collection'), 'border', ['##.', '..#']);
  put(join(folder, 'data', 'collection'), 'star', ['#.#.', '.#.#']);
  await start();
  const chart = new Chart(page);
  const dialog = dialogOf(page);
  await chart.grid.focus();
  await page.keyboard.press('Control+Shift+F');
  await expect(dialog.getByText('2 motifs')).toBeVisible();
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowUp');
  const chosen = dialog.getByRole('radio', { checked: true });
  await expect(chosen).toBeFocused();
  await expect(chosen).toHaveAccessibleName(/border/);
  await dialog.getByRole('button', { name: 'Stamp it' }).press('Enter');
  await expect(dialog).toBeHidden();
  await expect(announced(page)).toContainText('border is in the project. New yarn: rust.');
  await expect(chart.grid).toBeFocused();
  await page.keyboard.press('Space');
  await expect(announced(page)).toHaveText('Stamped.');
  await page.keyboard.press('Control+z');
  await expect(announced(page)).toHaveText('Undone: stamp motif.');
});
