/** What a worker does is done by the window where workers die. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { words } from '@shared/words/index.ts';
import { findingWords } from '@shared/words/findings.ts';
import { longBody } from '../long-body.ts';
import { expect, test } from './app.ts';
import { FilePanel } from './file-panel.ts';
import { textOf } from './projects.ts';
import { openFindings } from './piece-bench.ts';

test('remedies, sizes and the sheet come all the same', async ({ page, home, start }) => {
  await page.addInitScript(() => {
    /** Is ended by the first thing that it is asked. */
    class DyingWorker {
      onmessage: unknown = null;
      onerror: ((event: ErrorEvent) => void) | null = null;
      addEventListener(): void {}
      terminate(): void {}
      postMessage(): void {
        (window as unknown as { died: number }).died++;
        queueMicrotask(() => this.onerror?.(new ErrorEvent('error', { message: 'Out of memory' })));
      }
    }
    Object.assign(window, { Worker: DyingWorker, died: 0 });
  });
  writeFileSync(join(home, 'long.walewright'), textOf(longBody(4)));
  await start();
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject('long.walewright', 'Long body');

  await page.keyboard.press('2');
  const found = await openFindings(page);
  await expect(found.getByRole('button', { name: findingWords.remedy.label['hook-up'] }).first()).toBeVisible();

  await page.getByRole('button', { name: words.piece.tools.short.sizes }).click();
  const sizes = page.getByRole('dialog');
  await expect(sizes.getByRole('table')).toBeVisible();
  await expect(sizes.getByText(words.sizes.dialog.working)).toHaveCount(0);
  await page.keyboard.press('Escape');
  await expect(sizes).toHaveCount(0);

  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  const pages = page.getByRole('region', { name: 'Pages of the placement sheet' });
  await expect(pages).toHaveAttribute('aria-busy', 'false');
  expect(await pages.getByRole('document').count()).toBeGreaterThan(10);
  await expect(page.getByRole('alert')).toHaveCount(0);
  expect(await page.evaluate(() => (window as unknown as { died: number }).died)).toBeGreaterThanOrEqual(3);
});
