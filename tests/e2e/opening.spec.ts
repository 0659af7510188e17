/** Projects and pictures opened from files: chosen, dropped, recent, damaged. */
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import type { Page } from '@playwright/test';
import { PNG } from 'pngjs';
import { expect, expectAccessible, test } from './app.ts';
import { Chart } from './chart.ts';
import { FilePanel } from './file-panel.ts';
import { changeCopies } from './piece-bench.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

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

test('a file that is dropped while a dialog is up is not gone to, and the dialog stays', async ({ page, start }) => {
  await start();
  await page.getByRole('grid').press('a');
  const dialog = page.getByRole('dialog', { name: 'Lettering' });
  await expect(dialog).toBeVisible();
  // A browser goes to a dropped file where nobody has refused that.
  const refused = await dialog.evaluate((shown) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File(['P1 1 1 1'], 'dot.pbm'));
    return ['dragover', 'drop'].map((type) => {
      const event = new DragEvent(type, { dataTransfer, bubbles: true, cancelable: true });
      shown.dispatchEvent(event);
      return event.defaultPrevented;
    });
  });
  expect(refused).toEqual([true, true]);
  await expect(dialog).toBeVisible();
  await expect(page.getByText('Drop a project or a picture to open it')).toBeHidden();
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

  const unopenable: readonly {
    readonly name: string;
    readonly content: Uint8Array;
    readonly what: string;
    readonly mend: string;
  }[] = [
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
      what: 'perSize[1].hemRows',
      mend: 'Mend that field',
    },
    {
      name: 'half.walewright',
      content: bytes(good.replace('"stitches": 120', '"stitches": 120.5')),
      what: 'perSize[1].shape.stitches',
      mend: 'Mend that field',
    },
    {
      name: 'less.walewright',
      content: bytes(good.replace('"rows": 60', '"rows": -60')),
      what: 'perSize[1].shape.rows',
      mend: 'Mend that field',
    },
  ];

  test('is said by name, with what to do, and takes nothing away', async ({ page, start }) => {
    await start();
    await changeCopies(page, '2, 1');
    const alert = page.getByRole('alert');
    for (const { name, content, what, mend } of unopenable) {
      await test.step(name, async () => {
        await drop(page, name, content);
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
  });

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
