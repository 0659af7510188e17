/** Work that was not saved when the program ended, kept by each window for itself. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { bandsOf } from '@shared/pattern/index.ts';
import { projectAt, projectFromText } from '@shared/project/index.ts';
import { announced, createOffered, expect, expectAccessible } from './app.ts';
import { Chart, LIGHTHOUSE } from './chart.ts';
import { FilePanel } from './file-panel.ts';
import type { BuiltHost } from './built-host.ts';
import { keptGroups, keptLines, keptTexts, programEnded, test, type Starting } from './hosts.ts';
import { changeCopies } from './piece-bench.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

const PROJECT = 'Skerry sleeve.walewright';

const copiesOf = (page: Page): Promise<string> => page.getByLabel('Copies in each group').inputValue();

async function saveInHome(page: Page): Promise<void> {
  await page.keyboard.press('Control+S');
  await new FilePanel(page).saveHere();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
}

/** The program ends as in a crash, and its window with it, which could keep its work anew. */
async function crash(host: BuiltHost, page: Page): Promise<void> {
  await host.kill();
  await page.close({ runBeforeUnload: false });
}

/** The sample is saved, and other copies are kept when the program ends. */
async function crashUnsaved({ run, newWindow, folder }: Starting): Promise<void> {
  const host = await run();
  const page = await newWindow(host);
  await saveInHome(page);
  await changeCopies(page, '1, 1, 1');
  await expect.poll(() => keptGroups(folder)).toEqual(['1, 1, 1']);
  await crash(host, page);
}

test('says from when it is, and is not saved over what another program wrote since', async ({
  run,
  newWindow,
  folder,
  home,
}) => {
  await crashUnsaved({ run, newWindow, folder });
  writeFileSync(join(home, PROJECT), 'from elsewhere');

  const again = await newWindow(await run());
  await expect(
    again.getByRole('region', { name: 'Notice' }).filter({ hasText: 'was not saved when the program ended' }),
  ).toContainText(/This is the work as it was today at \d\d:\d\d; save it/);
  await expect(announced(again)).toContainText('was not saved when the program ended');
  await expectAccessible(again);
  await again.keyboard.press('Control+S');
  await expect(again.getByRole('alert')).toContainText('Another program has changed the file');
  expect(readFileSync(join(home, PROJECT), 'utf8')).toBe('from elsewhere');
});

test('is saved to its own file where nobody else wrote, and is not offered after that', async ({
  run,
  newWindow,
  folder,
  home,
}) => {
  await crashUnsaved({ run, newWindow, folder });

  const again = await newWindow(await run());
  await again.keyboard.press('Control+S');
  await expect(again.getByText('saved', { exact: true })).toBeVisible();
  const saved = projectAt(projectFromText(readFileSync(join(home, PROJECT), 'utf8')));
  expect(bandsOf(saved)[0]?.groups.map(({ across }) => across)).toEqual([1, 1, 1]);
  await expect.poll(() => keptGroups(folder)).toEqual([]);
});

test('has what changed since it was kept whole, taken back and done again', async ({ run, newWindow, folder }) => {
  const first = await run();
  const page = await newWindow(first);
  for (const copies of ['1', '2, 1', '3']) {
    await changeCopies(page, copies);
    await expect.poll(() => keptGroups(folder)).toEqual([copies]);
  }
  await page.keyboard.press('Control+Z');
  await expect.poll(() => keptGroups(folder)).toEqual(['2, 1']);
  expect(keptLines(folder)).toBeGreaterThanOrEqual(3);
  await crash(first, page);

  const again = await newWindow(await run());
  await again.keyboard.press('2');
  await expect.poll(() => copiesOf(again)).toBe('2, 1');
});

test('stays with a tab that outlives its host, whichever tab comes to the next host first', async ({
  run,
  newWindow,
  folder,
}) => {
  const first = await run();
  const one = await newWindow(first);
  await one.keyboard.press('2');
  const before = await copiesOf(one);
  await changeCopies(one, '1, 1, 1');
  await expect.poll(() => keptGroups(folder)).toEqual(['1, 1, 1']);
  await first.kill();

  const two = await newWindow(await run());
  await two.keyboard.press('2');
  expect(await copiesOf(two)).toBe(before);
  await expect(
    two.getByRole('region', { name: 'Notice' }).filter({ hasText: 'was not saved when the program ended' }),
  ).toHaveCount(0);
  await expect(programEnded(one)).toHaveCount(0);
  expect(await copiesOf(one)).toBe('1, 1, 1');
  await changeCopies(one, '2, 1');
  await expect.poll(() => keptGroups(folder)).toEqual(['2, 1']);
});

test('of two tabs is each its own: one that lets its work go leaves the other’s kept', async ({
  run,
  newWindow,
  folder,
}) => {
  const host = await run();
  const [one, two] = [await newWindow(host), await newWindow(host)];
  await changeCopies(one, '1');
  await changeCopies(two, '2');
  await expect.poll(() => keptGroups(folder)).toEqual(['1', '2']);
  await two.keyboard.press('Control+Shift+N');
  await two.getByRole('button', { name: 'Leave without saving' }).click();
  await createOffered(two);
  await expect.poll(() => keptGroups(folder)).toEqual(['1']);
  await one.reload();
  await one.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect.poll(() => copiesOf(one)).toBe('1');
});

test('of a tab and its duplicate is each its own', async ({ run, newWindow, folder }) => {
  const page = await newWindow(await run());
  await changeCopies(page, '1');
  await expect.poll(() => keptGroups(folder)).toEqual(['1']);
  // A window that is opened from another begins with a copy of its session storage (HTML, "create a new top-level
  // traversable", 7.3.1), as a duplicated tab does.
  const opened = page.waitForEvent('popup');
  await page.evaluate(() => void window.open(location.href));
  const copy = await opened;
  await copy.getByRole('button', { name: 'Commands' }).waitFor();
  await changeCopies(copy, '2');
  await expect.poll(() => keptGroups(folder)).toEqual(['1', '2']);
  await changeCopies(page, '3');
  await expect.poll(() => keptGroups(folder)).toEqual(['2', '3']);
});

test('is offered beside a file that is named at the start, and opened when asked for', async ({
  run,
  newWindow,
  folder,
  home,
}) => {
  const first = await run();
  const before = await newWindow(first);
  await changeCopies(before, '1, 2, 1');
  await expect.poll(() => keptGroups(folder)).toEqual(['1, 2, 1']);
  await first.kill();
  await before.close({ runBeforeUnload: false });
  const named = join(home, 'named.walewright');
  writeFileSync(named, textOf({ ...twelveStitchMotif([1]), name: 'Named' }));

  const second = await run(named);
  const page = await newWindow(second);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Named');
  const bar = page.getByRole('region', { name: 'Kept work' });
  await expect(bar).toContainText('"Skerry sleeve" as it was today at');
  await expectAccessible(page);
  // Put off, it stays kept and can be asked for.
  const place = page.getByRole('switch').first();
  await place.focus();
  await bar.getByRole('button', { name: 'Later' }).click();
  await expect(bar).toHaveCount(0);
  await expect(place).toBeFocused();
  await page.keyboard.press('Control+K');
  await page.getByRole('combobox', { name: 'Find a command' }).fill('kept');
  await page.keyboard.press('Enter');
  // A hand that presses twice asks once.
  const answered = page.waitForResponse((response) => response.url().includes('recovery.take'));
  await bar.getByRole('button', { name: 'Open kept work' }).dblclick();
  await answered;
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Skerry sleeve');
  await expect(page.getByText('Another window has opened this work.')).toHaveCount(0);
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect.poll(() => copiesOf(page)).toBe('1, 2, 1');
  await expect(bar).toHaveCount(0);
});

test('that cannot be read is told of and stays where it is, whatever is drawn and saved', async ({
  run,
  newWindow,
  folder,
}) => {
  const first = await run();
  const before = await newWindow(first);
  await changeCopies(before, '2, 1');
  await expect.poll(() => keptGroups(folder)).toEqual(['2, 1']);
  // Without a page that outlives the host and keeps it anew.
  await before.close({ runBeforeUnload: false });
  await first.kill();
  const place = join(folder, 'data', 'recovery');
  const [name = ''] = readdirSync(place);
  const newer = readFileSync(join(place, name), 'utf8').replace('"version":2', '"version":3');
  writeFileSync(join(place, name), newer);

  const page = await newWindow(await run());
  await expect(page.getByRole('region', { name: 'Kept work' })).toContainText(name);
  await changeCopies(page, '1');
  await saveInHome(page);
  expect(readFileSync(join(place, name), 'utf8')).toBe(newer);
});

/** The lighthouse moved right by three stitches, with its last ones over the edge. */
const MOVED = LIGHTHOUSE.map((row) => `...${row.slice(0, -3)}`);

/** Lifts the whole motif and moves it right by three stitches. */
async function moveInHand(page: Page): Promise<void> {
  await page.getByRole('grid').focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.press('m');
  for (let times = 0; times < 3; times++) await page.keyboard.press('ArrowRight');
  await expect(page.getByText('Outside the chart: 2 stitches at the right.')).toBeVisible();
}

test('has lifted cells where they were moved to, and what they were before one step back', async ({
  run,
  newWindow,
  folder,
}) => {
  const first = await run();
  const page = await newWindow(first);
  await moveInHand(page);
  await expect.poll(() => keptGroups(folder)).toHaveLength(1);
  // In a file a cell of the second yarn is an X. What is kept may be a step behind at first.
  const top = `"${MOVED[0]?.replaceAll('#', 'X')}"`;
  await expect.poll(() => keptTexts(folder).join()).toContain(top);
  await expect(page.getByText('not saved', { exact: true })).toBeVisible();
  await crash(first, page);

  const again = await newWindow(await run());
  const chart = new Chart(again);
  await expect.poll(() => chart.shown()).toEqual(MOVED);
  await again.getByRole('button', { name: 'Undo move cells' }).click();
  await expect.poll(() => chart.shown()).toEqual(LIGHTHOUSE);
});

test('is saved with the cells in hand laid, and says what they lose over the edge', async ({
  run,
  newWindow,
  home,
}) => {
  const page = await newWindow(await run());
  await moveInHand(page);
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await saveInHome(page);
  await expect(page.getByRole('region', { name: 'Notice' })).toContainText(
    'Left off outside the chart: 2 stitches at the right.',
  );
  const saved = projectAt(projectFromText(readFileSync(join(home, PROJECT), 'utf8')));
  await page.getByRole('button', { name: 'Motif', exact: true }).click();
  await expect.poll(() => new Chart(page).shown()).toEqual(MOVED);
  expect(saved.motifs[0]?.grid.cells.slice(0, 4)).toEqual(new Uint8Array([0, 0, 0, 1]));
});
