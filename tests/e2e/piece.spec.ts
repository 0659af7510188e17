/** The Piece bench: describing a piece, placing copies on it, and seeing what to watch. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { gridFromText } from '@shared/grid/index.ts';
import { announced, expect, expectAccessible, statusLine, test } from './app.ts';
import { FilePanel } from './file-panel.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

const NAME = 'twelve.walewright';

/** Everything that is written on canvases from now on, in the order of writing. */
async function listenToLabels(page: Page): Promise<() => Promise<string[]>> {
  await page.addInitScript(() => {
    const written: string[] = [];
    Object.assign(window, { written });
    const fillText = CanvasRenderingContext2D.prototype.fillText;
    CanvasRenderingContext2D.prototype.fillText = function (text, ...rest) {
      written.push(text);
      fillText.call(this, text, ...rest);
    };
  });
  return () => page.evaluate(() => (window as unknown as { written: string[] }).written);
}

/** What the canvases show, as one picture. */
async function picture(page: Page): Promise<string> {
  await page.mouse.move(5, 5);
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
  return page.evaluate(() => [...document.querySelectorAll('canvas')].map((canvas) => canvas.toDataURL()).join('|'));
}

async function openTwelve(page: Page, home: string, copies: readonly number[], to = {}): Promise<void> {
  writeFileSync(join(home, NAME), textOf(twelveStitchMotif(copies, to)));
  await page.keyboard.press('Control+O');
  await new FilePanel(page).open(NAME);
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
}

/** The middle of a stitch on the page, from where the grid says its cursor is. */
async function placeOf(page: Page, needle: number, row: number): Promise<{ x: number; y: number }> {
  const cell = page.getByRole('gridcell');
  const box = await cell.boundingBox();
  const label = (await cell.getAttribute('aria-label')) ?? '';
  const [, atRow, side, number] = /^Row (\d+) · needle ([LR])(\d+)/.exec(label) ?? [];
  if (!box || !atRow) throw new Error(`The grid says "${label}"`);
  const at = side === 'L' ? -Number(number) : Number(number) - 1;
  return {
    x: box.x + box.width * (needle - at + 0.5),
    y: box.y + box.height * (Number(atRow) - row + 0.5),
  };
}

test('places two groups of three so that the eye sees 13, 24, 13', async ({ page, start, home }) => {
  const labels = await listenToLabels(page);
  await start();
  await openTwelve(page, home, [1]);
  await page.getByLabel('Copies in each group').fill('3, 3');

  // Common practice, no source: L48 to L13 and R12 to R47.
  const meaning = page.getByRole('region', { name: 'What it is' });
  await expect(meaning).toContainText('120 stitches × 60 rows');
  await expect(meaning).toContainText('The groups start at needles L48 and R12');
  const best = page.getByRole('radio').first();
  await expect(best).toBeChecked();
  await expect(best).toHaveAccessibleName(/^Spaces 13, 24, 13\./);
  await expect(page.getByRole('listitem').filter({ hasText: 'Group 2: needles R12–R47' })).toBeAttached();
  await expect.poll(labels).toEqual(expect.arrayContaining(['L48', 'L13', 'R12', 'R47', '13', '24']));
});

test('goes through the choices by keyboard, and back by undo', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  const choices = page.getByRole('radiogroup', { name: 'Where they can stand' });
  const starts = page.getByRole('region', { name: 'What it is' });
  await choices.getByRole('radio').first().focus();
  await page.keyboard.press('ArrowDown');
  await expect(choices.getByRole('radio').nth(1)).toBeChecked();
  await expect(starts).not.toContainText('L48');
  await expect(page.getByRole('button', { name: 'Undo take a placing' })).toBeEnabled();

  await page.getByRole('button', { name: /^\d more$/ }).click();
  await expect(choices.getByRole('radio')).toHaveCount(8);
  await choices.getByText('Even to the eye').first().click();
  await expect(starts).toContainText('L48 and R12');
  await page.keyboard.press('Control+Z');
  await expect(starts).not.toContainText('L48');
});

test('follows the rule that is asked for', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  const best = page.getByRole('radio').first();
  await page.getByLabel('Make even').selectOption('blocks');
  // By the blocks: 120 − 72 = 48, so 12, 24, 12.
  await expect(best).toHaveAccessibleName(/^Spaces 12, 24, 12\./);
  await page.getByLabel('Spaces', { exact: true }).selectOption('even');
  await expect(best).toHaveAccessibleName(/^Spaces 16, 16, 16\./);
  await page.getByLabel('Spaces', { exact: true }).selectOption('gaps');
  await page.getByLabel('Each gap').fill('10');
  await expect(best).toHaveAccessibleName(/^Spaces 19, 10, 19\./);
  await page.getByLabel('Spaces', { exact: true }).selectOption('by-hand');
  const needles = page.getByLabel('First needles');
  await needles.fill('L50, R20');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('L50 and R20');
  await needles.fill('L50, R0');
  await expect(page.getByRole('alert')).toContainText('there is no needle 0');
  await needles.fill('L50');
  await expect(page.getByRole('alert')).toContainText('1 first needle for 2 groups');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('L50 and R20');
});

test('shows floats and wraps, and hides either', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  const floats = page.getByRole('button', { name: 'Show floats' });
  const wraps = page.getByRole('button', { name: 'Show wraps' });
  await expect(floats).toHaveAttribute('aria-pressed', 'true');
  const both = await picture(page);

  await page.keyboard.press('f');
  await expect(floats).toHaveAttribute('aria-pressed', 'false');
  const noFloats = await picture(page);
  expect(noFloats).not.toBe(both);

  await wraps.click();
  await expect(wraps).toHaveAttribute('aria-pressed', 'false');
  const neither = await picture(page);
  expect(neither).not.toBe(noFloats);

  await floats.click();
  await page.keyboard.press('w');
  expect(await picture(page)).toBe(both);

  const stitches = page.getByRole('button', { name: 'Show the fabric as stitches' });
  await stitches.click();
  await expect(stitches).toHaveAttribute('aria-pressed', 'true');
  expect(await picture(page)).not.toBe(both);
  await page.keyboard.press('v');
  expect(await picture(page)).toBe(both);
});

test('adds, mirrors and removes groups and bands, each one step of undo', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  const meaning = page.getByRole('region', { name: 'What it is' });
  const copies = page.getByLabel('Copies in each group');
  await page.getByRole('button', { name: 'Rows, copies, balls' }).click();
  const before = await picture(page);
  const mirrored = page.getByRole('group', { name: 'Group 2' }).getByRole('switch', { name: 'Mirrored' });
  await mirrored.focus();
  await page.keyboard.press('Space');
  await expect(mirrored).toBeChecked();
  expect(await picture(page)).not.toBe(before);
  await page.getByRole('button', { name: 'Undo mirror a group' }).click();
  expect(await picture(page)).toBe(before);

  await copies.fill('2, 2');
  await page.getByRole('button', { name: 'Add a group' }).click();
  await expect(copies).toHaveValue('2, 2, 2');
  await page.getByRole('button', { name: 'Remove group 2' }).click();
  await expect(copies).toHaveValue('2, 2');

  await page.getByRole('button', { name: 'Add a band' }).click();
  await expect(page.getByLabel('Band')).toHaveValue('1');
  await expect(copies).toHaveValue('1');
  await page.getByRole('button', { name: 'Remove this band' }).click();
  await page.getByRole('button', { name: 'Remove this band' }).click();
  await expect(meaning).toContainText('places nothing on the piece');
  await page.getByRole('button', { name: /^Place .* on the piece$/ }).click();
  await expect(copies).toHaveValue('1');
  await page.getByRole('button', { name: 'Undo add a band' }).click();
  await page.getByRole('button', { name: 'Undo remove a band' }).click();
  await expect(copies).toHaveValue('2, 2');
});

test('turns the piece to be seen as worn, and keeps the names of the needles', async ({ page, start, home }) => {
  const labels = await listenToLabels(page);
  await start();
  await openTwelve(page, home, [3, 3]);
  const cell = page.getByRole('gridcell');
  const needles = await cell.boundingBox();
  const grid = page.getByRole('grid');
  const whole = await grid.boundingBox();
  await page.evaluate(() => (window as unknown as { written: string[] }).written.splice(0));
  await page.getByRole('button', { name: 'Show the piece as worn' }).click();
  await expect(page.getByRole('main').getByText('L stands at the right here')).toBeVisible();
  // The first needle, L48, has gone from the left half to the right one, as far from the centre as before.
  await expect(cell).toHaveAccessibleName(/needle L48/);
  const worn = await cell.boundingBox();
  const middle = (whole?.x ?? 0) + (whole?.width ?? 0) / 2;
  expect(needles?.x).toBeLessThan(middle);
  expect(worn?.x).toBeGreaterThan(middle);
  // Strands lie behind the knit side, so their tags are gone; the ruler's labels are not.
  await picture(page);
  expect(await labels()).toContain('L48');
  expect(await labels()).not.toContain('25');

  await grid.focus();
  await page.keyboard.press('ArrowRight');
  await expect(cell).toHaveAccessibleName(/needle L49/);
  await page.keyboard.press('Home');
  await expect(cell).toHaveAccessibleName(/needle R60/);
  await page.keyboard.press('t');
  await expect(page.getByRole('main').getByText('The purl side faces you; the knit side will be seen.')).toBeVisible();
});

test('says how many copies fit and on how many stitches the rule comes out exactly', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  await page.getByText('What would be better').click();
  // Two figures of 35 on 120 stitches leave 50; the seam asks for quarters, so 48 and 52 come out exactly.
  await expect(page.getByText('It would come out exactly on 118 or 122 stitches.')).toBeVisible();
  const row = (copies: string) =>
    page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: copies, exact: true }) });
  // Ten copies of 12 fill 120 stitches.
  await expect(row('10')).toBeVisible();
  await page.getByRole('button', { name: 'Make it 122 stitches' }).click();
  await expect(page.getByText('The rule comes out exactly on this piece.')).toBeVisible();
  await expect(page.getByRole('radio', { checked: true })).toHaveAccessibleName(/^Spaces 13, 26, 13\./);
  await page.getByRole('button', { name: 'Place 4 copies, each by itself' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Copies in each group')).toHaveValue('1, 1, 1, 1');
  await page.getByRole('button', { name: 'Undo change copies' }).click();
  await expect(page.getByLabel('Copies in each group')).toHaveValue('3, 3');
});

test('tags the longest float with its stitches only while floats show', async ({ page, start, home }) => {
  const labels = await listenToLabels(page);
  await start();
  await openTwelve(page, home, [3, 3]);
  // The contrast floats from L12 to R12 and on over the blank column: 24 stitches on the bottom row, 25 above it.
  await expect.poll(labels).toContain('25');
  await page.evaluate(() => (window as unknown as { written: string[] }).written.splice(0));
  await page.keyboard.press('f');
  await picture(page);
  expect(await labels()).toContain('L48');
  expect(await labels()).not.toContain('25');
});

test('says what is under the pointer', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3], { band: { position: { kind: 'from-row', row: 20 } } });
  const { x, y } = await placeOf(page, -13, 20);
  await page.mouse.move(x, y);
  await expect(statusLine(page)).toHaveText(
    'Row 20 · needle L13 · contrast, last before the gap · carriage from the left · float of 24, too long, to the right',
  );
  const beside = await placeOf(page, 61, 20);
  await page.mouse.move(beside.x, beside.y);
  await expect(statusLine(page)).toHaveText('Row 20 · needle R62 · beside the piece');
});

test('is read stitch by stitch from the keyboard', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3], { band: { position: { kind: 'from-row', row: 20 } } });
  const grid = page.getByRole('grid', { name: /as on the needles/ });
  await expect(grid).toHaveAttribute('aria-rowcount', '60');
  await expect(grid).toHaveAttribute('aria-colcount', '120');
  await grid.focus();
  await expect(grid.getByRole('gridcell')).toHaveAccessibleName(/^Row 20 · needle L48 · main/);
  await page.keyboard.press('ArrowRight');
  await expect(statusLine(page)).toHaveText(/^Row 20 · needle L47 · contrast, first of the pattern/);
  await expect(announced(page)).toHaveText(/^Row 20 · needle L47/);
  await page.keyboard.press('ArrowUp');
  await expect(grid.getByRole('row')).toHaveAttribute('aria-rowindex', '21');
  await page.keyboard.press('End');
  await expect(statusLine(page)).toHaveText(/^Row 21 · needle R60 · main, edge stitch/);
  await page.keyboard.press('ArrowRight');
  await expect(statusLine(page)).toHaveText(/needle R60/);
  await page.keyboard.press('Control+Home');
  await expect(statusLine(page)).toHaveText(/^Row 1 · needle L60/);
});

test('keeps the project while a number makes no sense, and says what it takes', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
  const rows = page.getByRole('textbox', { name: 'Rows', exact: true });
  for (const text of ['0', '-4', '12.5', 'many', '5000', '']) {
    await rows.fill(text);
    await expect(rows).toHaveAttribute('aria-invalid', 'true');
    await expect(page.getByRole('alert')).toHaveText('A whole number from 1 to 4000.');
  }
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('over 140 rows');
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
  await rows.blur();
  await expect(rows).toHaveValue('140');

  const copies = page.getByLabel('Copies in each group');
  await copies.fill('2, two');
  await expect(page.getByRole('alert')).toContainText('Write how many copies each group has');
  await copies.blur();
  await expect(copies).toHaveValue('2, 2');
});

test('keeps the piece on the stage when the groups are wider than it, and says what to do', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  const placed = await picture(page);
  const copies = page.getByLabel('Copies in each group');
  await copies.fill('4, 4');
  // 8 copies of 14 stitches; on row 25 the sleeve has 96 + 2 × 2 = 100.
  const problem = page.getByRole('alert');
  await expect(problem).toContainText('112');
  await expect(problem).toContainText('Use fewer copies, fewer groups, or a wider piece.');
  await expect(page.getByText('The plain piece is shown.')).toBeVisible();
  await expect(page.getByRole('grid')).toHaveAccessibleName('sleeve, 124 stitches × 140 rows, as on the needles');
  expect(await picture(page)).not.toBe(placed);
  await expectAccessible(page);

  await copies.fill('2, 2');
  await expect(problem).toHaveCount(0);
  await copies.blur();
  expect(await picture(page)).toBe(placed);
});

test('describes a folded hem and sets up for it', async ({ page, start, home }) => {
  await start();
  // Common practice, no source: hem of 100 rows folded in half, 31 rows of motif, pattern on rows 61–91, set up at 59.
  const motif = Array.from({ length: 31 }, () => '.###########');
  const project = twelveStitchMotif([3]);
  const tall = { ...project, motifs: [{ ...project.motifs[0], grid: gridFromText(motif, '.#') }] } as typeof project;
  writeFileSync(join(home, NAME), textOf(tall));
  await page.keyboard.press('Control+O');
  await new FilePanel(page).open(NAME);
  await page.keyboard.press('2');
  await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
  await page.getByRole('textbox', { name: 'Rows', exact: true }).fill('100');
  await page.getByLabel(/^Rows of the hem(?!, )/).fill('100');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('on rows 61–91');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText(
    '50 hidden and 50 shown: it folds after row 50',
  );
  await expect(page.getByRole('region', { name: 'Before you knit' })).toContainText('stands at 59.');
  await page.getByRole('switch', { name: /^Turning row/ }).check();
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText(
    'row 50, the last of the hidden half, is the turning row',
  );

  // A section above the hem, of fabric that takes more stitches to the width.
  await page.getByRole('textbox', { name: 'Rows', exact: true }).fill('130');
  await page.getByText('Sections above the hem').click();
  await page.getByRole('button', { name: 'Add a section' }).click();
  const section = page.getByRole('group', { name: 'Section 1 from below' });
  await section.getByLabel('Called').fill('gulls');
  await section.getByRole('switch', { name: 'Gauge of its own' }).check();
  // 20 rows at 50 rows in 10 cm: 4 cm.
  await section.getByRole('textbox', { name: 'Rows in 10 cm' }).fill('50');
  await expect(section.getByLabel('Rows of it, in cm')).toHaveValue('4');
  await page.getByRole('button', { name: 'Undo change gauge of section' }).click();
  await expect(section.getByLabel('Rows of it, in cm')).toHaveValue('5');
});

test('takes a remedy, and says what it does before it is taken', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  const before = page.getByRole('region', { name: 'Before you knit' });
  await expect(before).toContainText('floats over up to 25 stitches');
  await expect(before).toContainText('It takes 2 balls and');
  await before.getByRole('button', { name: 'Give each group its own ball' }).click();
  await expect(before).not.toContainText('up to 25 stitches');
  await page.getByRole('button', { name: 'Rows, copies, balls' }).click();
  await expect(page.getByRole('switch', { name: 'A ball for each group' })).toBeChecked();
  await page.getByRole('button', { name: 'Undo change balls' }).click();
  await expect(before).toContainText('floats over up to 25 stitches');
});

test('warns where an infant could be hurt', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  const before = page.getByRole('region', { name: 'Before you knit' });
  await expect(before).toContainText('Hooks and latches are sharp');
  await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
  await page.getByRole('switch', { name: /For an infant/ }).check();
  await expect(before).toContainText('fingers and toes');
});

test('makes one step of undo of a number that is stepped up', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
  const rows = page.getByRole('textbox', { name: 'Rows', exact: true });
  await rows.focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowUp');
  await expect(rows).toHaveValue('143');
  await rows.blur();
  await page.getByRole('button', { name: 'Undo change size of piece' }).click();
  await expect(rows).toHaveValue('140');
  await expect(page.getByText('not in a file yet')).toBeVisible();
});

test('zooms at the pointer, pans, and comes back to the whole piece', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  const cell = page.getByRole('gridcell');
  const whole = await cell.boundingBox();
  const grid = await page.getByRole('grid').boundingBox();
  if (!whole || !grid) throw new Error('The piece is not drawn');
  const [x, y] = [grid.x + grid.width / 2, grid.y + grid.height / 2];
  await page.mouse.move(x, y);
  const said = await statusLine(page).textContent();
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, -400);
  await page.keyboard.up('Control');
  await expect.poll(async () => (await cell.boundingBox())?.width ?? 0).toBeGreaterThan(whole.width * 1.5);
  await expect(statusLine(page)).toHaveText(said ?? '');

  const near = await cell.boundingBox();
  await page.mouse.down();
  await page.mouse.move(x + 60, y + 30, { steps: 4 });
  await page.mouse.up();
  await expect.poll(async () => ((await cell.boundingBox())?.x ?? 0) - (near?.x ?? 0)).toBeCloseTo(60, 0);
  await page.keyboard.press('Control+0');
  await expect.poll(async () => cell.boundingBox()).toEqual(whole);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`in ${colorScheme}`, () => {
    test.use({ colorScheme });
    test('has nothing that axe finds wrong, folded and unfolded', async ({ page, start }) => {
      await start();
      await page.keyboard.press('2');
      await expectAccessible(page);
      for (const name of ['Size, gauge, edges', 'Rows, copies, balls', 'Carriage, bed, limits', '6 more']) {
        await page.getByRole('button', { name }).click();
      }
      await page.getByText('What would be better').click();
      await page.getByLabel('Copies in each group').fill('x');
      await expectAccessible(page);
    });
  });
}
