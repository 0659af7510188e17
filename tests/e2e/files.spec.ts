/** Projects and pictures as files: saved, opened, dropped, damaged, and never lost. */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { crc32 } from 'node:zlib';
import type { Page } from '@playwright/test';
import { PNG } from 'pngjs';
import { projectFromText } from '@shared/project/index.ts';
import { announced, expect, expectAccessible, test } from './app.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

const PROJECT = 'Skerry sleeve.walewright';

/** A PNG of one pixel a cell, topmost row first. */
function pngOf(rows: readonly string[], colours: Readonly<Record<string, readonly [number, number, number]>>): Buffer {
  const png = new PNG({ width: rows[0]?.length ?? 0, height: rows.length });
  rows
    .join('')
    .split('')
    .forEach((letter, index) => {
      png.data.set([...(colours[letter] ?? [0, 0, 0]), 255], index * 4);
    });
  return PNG.sync.write(png);
}

const HOOK = ['.#..', '.#..', '.##.', '....'];
const HOOK_PNG = pngOf(HOOK, { '.': [93, 117, 145], '#': [251, 247, 234] });

/** Drops a file on the window, as the platform hands it over. */
async function drop(page: Page, name: string, bytes: Uint8Array): Promise<void> {
  const transfer = await page.evaluateHandle(
    ({ name: called, data }) => {
      const dropped = new DataTransfer();
      dropped.items.add(new File([Uint8Array.from(data)], called));
      return dropped;
    },
    { name, data: [...bytes] },
  );
  await page.getByRole('main').dispatchEvent('dragover', { dataTransfer: transfer });
  await expect(page.getByText('Drop a project or a picture to open it')).toBeVisible();
  await page.getByRole('main').dispatchEvent('drop', { dataTransfer: transfer });
}

const title = (page: Page): ReturnType<Page['getByRole']> => page.getByRole('heading', { level: 1 });

async function changeCopies(page: Page, copies: string): Promise<void> {
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByLabel('Copies in each group').fill(copies);
  await page.getByLabel('Copies in each group').blur();
}

test('saves a new project where it is told to, and opens it again after a reload', async ({ page, start, home }) => {
  await start();
  await expect(page.getByText('not in a file yet')).toBeVisible();
  await changeCopies(page, '1, 2');
  await expect(page.getByText('not saved')).toBeVisible();
  await page.keyboard.press('Control+S');
  const panel = new FilePanel(page);
  await expect(panel.dialog.getByLabel('Name')).toHaveValue(PROJECT);
  await expectAccessible(page);
  await panel.dialog.getByRole('button', { name: 'Save here' }).click();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await expect(announced(page)).toHaveText(`Saved as ${PROJECT}.`);

  const written = projectFromText(readFileSync(join(home, PROJECT), 'utf8'));
  expect(written.bands[0]?.groups.map(({ across }) => across)).toEqual([1, 2]);

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
  await new FilePanel(page).dialog.getByRole('button', { name: 'Save here' }).click();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await changeCopies(page, '1');
  await expect(page.getByText('not saved')).toBeVisible();
  await page.keyboard.press('Control+Z');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await page.keyboard.press('Control+Shift+Z');
  await page.keyboard.press('Control+S');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  expect(projectFromText(readFileSync(join(home, PROJECT), 'utf8')).bands[0]?.groups).toHaveLength(1);
});

test.describe('a name that another file has', () => {
  const other = textOf(twelveStitchMotif([1]));

  for (const { typed, file } of [
    { typed: PROJECT, file: PROJECT },
    { typed: 'Skerry sleeve', file: PROJECT },
    { typed: 'studio/sleeve', file: 'studio/sleeve.walewright' },
    { typed: '../home/Skerry sleeve ', file: PROJECT },
  ]) {
    test(`is asked about before it is taken: ${typed}`, async ({ page, start, home }) => {
      const path = join(home, file);
      mkdirSync(join(home, 'studio'));
      writeFileSync(path, other);
      await start();
      await page.keyboard.press('Control+S');
      const panel = new FilePanel(page);
      await panel.saveAs(typed);
      const name = basename(file);
      const question = page.getByRole('dialog', { name: `Replace "${name}"?` });
      await expect(question).toContainText('It is there already');
      await expectAccessible(page);
      // Who keeps it may choose another name at once.
      await panel.replace(/^Replace/, false);
      await expect(panel.dialog.getByLabel('Name')).toHaveValue(name);
      expect(readFileSync(path, 'utf8')).toBe(other);
      await panel.saveAs(name);
      await panel.replace(/^Replace/, true);
      await expect(page.getByText('saved', { exact: true })).toBeVisible();
      expect(projectFromText(readFileSync(path, 'utf8')).name).toBe('Skerry sleeve');
    });
  }

  test('is refused in place where it is hidden, or another kind of file', async ({ page, start, home }) => {
    writeFileSync(join(home, '.sleeve.walewright'), other);
    writeFileSync(join(home, 'diary.walewright'), 'Dear diary');
    await start();
    await page.keyboard.press('Control+S');
    const panel = new FilePanel(page);
    for (const { typed, said } of [
      { typed: '.sleeve', said: 'Hidden files and folders stay closed' },
      { typed: 'diary', said: 'a file of another kind, and is never replaced' },
      { typed: 'studio/', said: 'cannot be the name of a file' },
    ]) {
      await panel.saveAs(typed);
      await expect(panel.dialog.getByRole('alert')).toContainText(said);
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
  await page.route('**/call/documents.write', async (route) => {
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
  expect(projectFromText(readFileSync(join(home, 'sleeve.walewright'), 'utf8')).bands[0]?.groups).toHaveLength(2);
});

test('leaves another project alone when a save of the one before it ends late', async ({ page, start, home }) => {
  await start();
  await page.keyboard.press('Control+S');
  await new FilePanel(page).saveAs('sleeve');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await changeCopies(page, '1');
  let go = (): void => undefined;
  const ended = page.waitForResponse('**/call/documents.write');
  await page.route('**/call/documents.write', async (route) => {
    await new Promise<void>((resolve) => (go = resolve));
    await route.continue();
  });
  const asked = page.waitForRequest('**/call/documents.write');
  await page.keyboard.press('Control+S');
  await asked;
  await page.keyboard.press('Control+Shift+N');
  await page.getByRole('button', { name: 'Leave without saving' }).click();
  await expect(title(page)).toHaveText('Untitled');
  go();
  await ended;
  await expect(page.getByText('not in a file yet')).toBeVisible();
  expect(projectFromText(readFileSync(join(home, 'sleeve.walewright'), 'utf8')).name).toBe('Skerry sleeve');
});

test('does not write over what another program wrote in the meantime', async ({ page, start, home }) => {
  await start();
  await page.keyboard.press('Control+S');
  await new FilePanel(page).dialog.getByRole('button', { name: 'Save here' }).click();
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  writeFileSync(join(home, PROJECT), 'from elsewhere');
  await changeCopies(page, '1');
  await page.keyboard.press('Control+S');
  await expect(page.getByRole('alert')).toContainText('Another program has changed the file');
  await expect(page.getByText('not saved')).toBeVisible();
  expect(readFileSync(join(home, PROJECT), 'utf8')).toBe('from elsewhere');
});

test('lists what was opened last, newest first', async ({ page, start, home }) => {
  for (const name of ['one', 'two']) {
    writeFileSync(join(home, `${name}.walewright`), textOf({ ...twelveStitchMotif([1]), name }));
  }
  await start();
  for (const name of ['one', 'two']) {
    await page.keyboard.press('Control+O');
    await new FilePanel(page).open(`${name}.walewright`);
    await expect(title(page)).toHaveText(name);
  }
  await page.getByRole('button', { name: 'File', exact: true }).click();
  const menu = page.getByRole('group', { name: 'File' });
  const recent = menu.getByRole('button', { name: /\.walewright$/ });
  await expect(recent).toHaveText(['two.walewright', 'one.walewright']);
  await expectAccessible(page);
  await recent.nth(1).click();
  await expect(title(page)).toHaveText('one');
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
  await expect(title(page)).toHaveText('Untitled');
  expect(projectFromText(readFileSync(join(home, 'kept.walewright'), 'utf8')).bands[0]?.groups).toHaveLength(1);

  await changeCopies(page, '2');
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Open the sample project' }).click();
  await page.getByRole('button', { name: 'Leave without saving' }).click();
  await expect(title(page)).toHaveText('Skerry sleeve');
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
  await expect(page.getByText(/was not saved when the program ended/)).toBeVisible();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(page.getByLabel('Copies in each group')).toHaveValue('1, 1, 1');
  await expect(page.getByText('not saved', { exact: true })).toBeVisible();
});

test('reads in a PNG, one pixel a cell', async ({ page, start, home }) => {
  writeFileSync(join(home, 'hook.png'), HOOK_PNG);
  await start();
  await page.keyboard.press('Control+O');
  await new FilePanel(page).open('hook.png');
  await expect(title(page)).toHaveText('hook');
  await expect.poll(() => new Chart(page).shown()).toEqual(HOOK);
  await expect(page.getByText('not saved')).toBeVisible();
});

test('reads in a PBM that is dropped, 1 being the figure', async ({ page, start }) => {
  await start();
  // P1 of the Netpbm format description: digits, the topmost row first.
  await drop(page, 'hook.pbm', new TextEncoder().encode('P1\n4 4\n0100\n0100\n0110\n0000\n'));
  await expect(title(page)).toHaveText('hook');
  const grid = page.getByRole('grid');
  await expect(grid).toHaveAttribute('aria-colcount', '4');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('first and last columns are blank');
});

test('opens a project that is dropped, after asking about unsaved work', async ({ page, start }) => {
  await start();
  await changeCopies(page, '1');
  await drop(page, 'twelve.walewright', new TextEncoder().encode(textOf(twelveStitchMotif([3, 3]))));
  await page.getByRole('button', { name: 'Leave without saving' }).click();
  await expect(title(page)).toHaveText('Twelve');
  await expect(page.getByLabel('Copies in each group')).toHaveValue('3, 3');
});

test.describe('a file that cannot be opened', () => {
  const good = textOf(twelveStitchMotif([3, 3]));
  const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
  /** A PNG header of 20,000 × 20,000 pixels on nothing. */
  const huge = Uint8Array.from(HOOK_PNG);
  const header = new DataView(huge.buffer);
  header.setUint32(16, 20_000);
  header.setUint32(20, 20_000);
  // A checksum of type and data that fits (ISO/IEC 15948, 5.5).
  header.setUint32(29, crc32(huge.subarray(12, 29)));

  const rainbow = ((): Buffer => {
    const png = new PNG({ width: 10, height: 10 });
    for (let i = 0; i < 100; i++) png.data.set([i * 2, 255 - i * 2, 40, 255], i * 4);
    return PNG.sync.write(png);
  })();

  for (const { name, content, what, mend } of [
    { name: 'empty.png', content: bytes(''), what: 'empty', mend: 'Choose another file' },
    {
      name: 'note.png',
      content: bytes('not a picture'),
      what: 'no PNG, JPEG, WebP, BMP, SVG or PBM',
      mend: 'as PNG or JPEG',
    },
    { name: 'cut.png', content: HOOK_PNG.subarray(0, 50), what: 'ends too early', mend: 'Copy or save it again' },
    { name: 'huge.png', content: huge, what: '20000 × 20000', mend: 'Crop it to the chart' },
    { name: 'rainbow.png', content: rainbow, what: 'more than 64 colours', mend: 'a single flat colour for each yarn' },
    { name: 'cut.pbm', content: bytes('P1\n4 4\n0100\n'), what: 'ends too early', mend: 'Copy or save it again' },
    {
      name: 'torn.walewright',
      content: bytes(good.slice(0, 200)),
      what: 'not valid JSON',
      mend: 'Open an earlier copy',
    },
    {
      name: 'list.walewright',
      content: bytes('[1, 2]'),
      what: 'not a Walewright project',
      mend: 'Choose a .walewright file',
    },
    {
      name: 'newer.walewright',
      content: bytes(good.replace(/"version": \d+/, '"version": 99')),
      what: 'newer Walewright',
      mend: 'Open it with the newer program',
    },
    {
      name: 'bare.walewright',
      content: bytes(good.replace(/"hemRows": \d+,/, '')),
      what: 'piece.hemRows',
      mend: 'Mend that field',
    },
    {
      name: 'half.walewright',
      content: bytes(good.replace('"stitches": 120', '"stitches": 120.5')),
      what: 'piece.shape.stitches',
      mend: 'Mend that field',
    },
    {
      name: 'less.walewright',
      content: bytes(good.replace('"rows": 60', '"rows": -60')),
      what: 'piece.shape.rows',
      mend: 'Mend that field',
    },
  ]) {
    test(`such as ${name} is said by name, with what to do, and takes nothing away`, async ({ page, start }) => {
      await start();
      await changeCopies(page, '2, 1');
      await drop(page, name, content);
      const alert = page.getByRole('alert');
      await expect(alert).toContainText(name);
      await expect(alert).toContainText(what);
      await expect(alert).toContainText(mend);
      await expect(title(page)).toHaveText('Skerry sleeve');
      await expect(page.getByLabel('Copies in each group')).toHaveValue('2, 1');
      await expect(page.getByRole('button', { name: 'Undo change copies' })).toBeEnabled();
      await alert.getByRole('button', { name: 'Close' }).click();
      await expect(alert).toHaveCount(0);
    });
  }

  test('since it has gone is said too', async ({ page, start, home }) => {
    const path = join(home, 'gone.walewright');
    writeFileSync(path, good);
    await start();
    await page.keyboard.press('Control+O');
    const panel = new FilePanel(page);
    await expect(panel.dialog.getByRole('button', { name: 'gone.walewright' })).toBeVisible();
    rmSync(path);
    await panel.open('gone.walewright');
    await expect(page.getByRole('alert')).toContainText('There is no such file or folder.');
  });
});
