/** What shows of a photo at once, read at a glance, until the photo itself is read. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { encode } from 'jpeg-js';
import { photograph } from '../unit/reading/chart-photo.ts';
import { charts } from '../unit/reading/charts.ts';
import { blobs } from '../unit/reading/motifs.ts';
import { expect, expectAccessible, test } from './app.ts';
import { FilePanel } from './file-panel.ts';

const [, printed] = charts as [unknown, (typeof charts)[number]];
const grid = blobs(30, 24, 3, 5);
const camera = { width: 1800, height: 1450, roll: 3, tilt: 8, pan: -5, fill: 0.84 };

function photo(): Uint8Array {
  const { picture } = photograph(grid, { ...printed.style, cellHeight: 1 }, camera, { blur: 0.8, noise: 3 });
  return encode({ width: picture.width, height: picture.height, data: picture.rgba }, 85).data;
}

/** Lets the photo itself be looked over only when the test says so. */
async function heldUp(page: Page): Promise<() => Promise<void>> {
  await page.addInitScript(() => {
    const held: (() => void)[] = [];
    const page = window as unknown as { letGo: (() => void) | null };
    page.letGo = () => {
      page.letGo = null;
      for (const send of held) send();
    };
    const { Worker } = window;
    const progress = { stage: 'find-chart', done: 0.5 };
    window.Worker = class extends Worker {
      override postMessage(message: unknown, given?: Transferable[] | StructuredSerializeOptions): void {
        const send = (): void => super.postMessage(message, given as Transferable[]);
        const { ask, id } = (message ?? {}) as { ask?: unknown; id?: number };
        if (!page.letGo || ask !== 'find') {
          send();
          return;
        }
        held.push(send);
        // As one that takes long says how far it is, again and again.
        const saying = setInterval(() => {
          if (!page.letGo) clearInterval(saying);
          else this.onmessage?.(new MessageEvent('message', { data: { kind: 'progress', id, progress } }));
        }, 50);
      }
    };
  });
  return () => page.evaluate(() => (window as unknown as { letGo: () => void }).letGo());
}

test('cells show at a glance, and are taken once the photo itself is read', async ({ page, start, home }) => {
  const letGo = await heldUp(page);
  await start();
  writeFileSync(join(home, 'large.jpg'), photo());
  await page.keyboard.press('Control+Shift+G');
  await new FilePanel(page).open('large.jpg');

  const dialog = page.getByRole('dialog');
  const cells = dialog.getByRole('grid', { name: 'What was read: 30 columns, 24 rows' });
  const step = dialog.getByRole('region', { name: '3. Check the cells' });
  const atAGlance = step.getByRole('status').filter({ hasText: /^Read at a glance/ });
  const take = dialog.getByRole('button', { name: 'Use as the motif' });
  await expect(cells).toBeVisible();
  await expect(atAGlance).toContainText('The photo is being read exactly, and some cells may change.');
  await expect(take).toBeDisabled();
  // Nothing is said of doubt, and nobody settles what may change.
  await expect(step.getByText(/is doubtful|are doubtful|look doubtful/)).toHaveCount(0);
  await cells.focus();
  await page.keyboard.press('ArrowRight');
  await expect(cells.getByRole('gridcell')).toHaveAccessibleName(/at a glance/);
  await page.keyboard.press('1');
  await expectAccessible(page);

  await letGo();
  await expect(step.getByRole('status').filter({ hasText: 'The photo is read exactly.' })).toBeAttached();
  await expect(atAGlance).toHaveCount(0);
  await expect(cells).toBeVisible();
  await expect(cells.getByRole('gridcell')).toHaveAccessibleName(/sure/);
  await expect(take).toBeEnabled();
  await page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
});

test('what was given up at a glance is looked over when it is taken up again', async ({ page, start, home }) => {
  const letGo = await heldUp(page);
  await start();
  writeFileSync(join(home, 'large.jpg'), photo());
  await page.keyboard.press('Control+Shift+G');
  await new FilePanel(page).open('large.jpg');
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('grid', { name: 'What was read: 30 columns, 24 rows' })).toBeVisible();
  await dialog.getByRole('button', { name: 'Stop' }).click();
  await expect(dialog.getByText('Read at a glance, not exactly: cells may be wrong.')).toBeVisible();
  await expect(dialog.getByRole('button', { name: 'Use as the motif' })).toBeDisabled();
  await letGo();
  await dialog.getByRole('button', { name: 'Continue' }).click();
  await expect(dialog.getByRole('button', { name: 'Use as the motif' })).toBeEnabled();
});

/** What each worker of the page was asked, and what they answered, in order. */
async function listeningIn(page: Page): Promise<(about: string) => Promise<readonly string[]>> {
  await page.addInitScript(() => {
    const heard: string[] = [];
    (window as unknown as { heard: string[] }).heard = heard;
    let count = 0;
    const { Worker } = window;
    window.Worker = class extends Worker {
      readonly #number = count++;

      constructor(...given: ConstructorParameters<typeof Worker>) {
        super(...given);
        this.addEventListener('message', ({ data }: MessageEvent) => {
          if (data?.kind === 'ended' && data.id < 0) heard.push(`glimpse practised by ${this.#number}`);
        });
      }

      override postMessage(message: unknown, given?: Transferable[] | StructuredSerializeOptions): void {
        const { ask, kind } = (message ?? {}) as { ask?: unknown; kind?: string };
        if (ask === 'glimpse') heard.push(`glimpse asked of ${this.#number}`);
        if (kind === 'given' || kind === 'pixels') heard.push(`decoding asked of ${this.#number}`);
        super.postMessage(message, given as Transferable[]);
      }
    };
  });
  return (about) =>
    page.evaluate(
      (start) => (window as unknown as { heard: string[] }).heard.filter((said) => said.startsWith(start)),
      about,
    );
}

test('its workers are ready once its file is chosen', async ({ page, start, home }) => {
  const heard = await listeningIn(page);
  await start();
  writeFileSync(join(home, 'large.jpg'), photo());
  await page.keyboard.press('Control+Shift+G');
  await expect.poll(() => heard('glimpse practised')).toHaveLength(1);
  await new FilePanel(page).open('large.jpg');
  await expect(page.getByRole('grid', { name: 'What was read: 30 columns, 24 rows' })).toBeVisible();

  // One looked at the file and decoded it; the one that had practised saw the chart.
  const [looked, decoded, ...none] = await heard('decoding asked');
  expect([decoded, none]).toEqual([looked, []]);
  const [practised, saw] = await heard('glimpse asked');
  expect(saw).toBe(practised);
});

test('they come up once while pictures are held over the window', async ({ page, start }) => {
  const heard = await listeningIn(page);
  await start();
  const held = (name: string): Promise<void> =>
    page.evaluate((name) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File(['held'], name, { type: 'image/jpeg' }));
      window.dispatchEvent(new DragEvent('dragover', { dataTransfer }));
      window.dispatchEvent(new DragEvent('dragleave', { dataTransfer }));
    }, name);
  await held('chart.jpg');
  await held('other.jpg');
  await expect.poll(() => heard('glimpse practised')).toHaveLength(1);
  expect(await heard('glimpse asked')).toHaveLength(1);
});
