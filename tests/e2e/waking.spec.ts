/** What of the window wakes when something changes: what shows it, and nothing else. */
import { expect, test } from '@playwright/test';
import { withOwnPage } from './own-page.ts';
import type { WakingPage } from './page/waking.ts';

test('each part of the window wakes for what it shows, and for nothing else', async ({ page }) => {
  await withOwnPage('waking', async (address) => {
    await page.goto(address);
    await page.getByRole('radiogroup').first().waitFor();
    const woken = (by: keyof WakingPage) =>
      page.evaluate((name) => (window as unknown as { waking: WakingPage }).waking[name](), by);

    await test.step('the pointer wakes the status line alone', async () => {
      expect(await woken('point')).toEqual(['line.pointer']);
      expect(await woken('announce')).toEqual(['line.announcement', 'line.isAnnouncementPast']);
    });
    await test.step('a cell that is painted wakes pictures, contrasts and undo, and not the list of yarns', async () => {
      const first = await woken('paint');
      expect(first).toEqual(expect.arrayContaining(['motifs.motifs', 'pairs.motif', 'bar.undoName']));
      // What can be undone is called the same after another cell. No picture in the list is made again while a hand draws.
      expect(await woken('paint')).toEqual([
        ...['motifs.motifId', 'motifs.motifs'],
        ...['pairs.mainYarn', 'pairs.motif', 'pairs.yarns'],
      ]);
    });
    await test.step('a name wakes where it is shown, and neither yarns nor motifs', async () => {
      const parts = (await woken('rename')).map((name) => name.split('.')[0]);
      expect(new Set(parts)).toEqual(new Set(['bar']));
    });
    await test.step('a yarn wakes its list, and the pictures that show it', async () => {
      expect(await woken('recolour')).toEqual(expect.arrayContaining(['motifs.yarns', 'yarns.yarns']));
    });
    await test.step('what the bench shows of the chart wakes neither', async () => {
      expect(await woken('zoom')).toEqual([]);
    });
  });
});
