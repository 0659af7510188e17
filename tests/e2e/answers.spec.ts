/**
 * Whatever is asked of the program is answered so that it is seen: the drawing
 * changes, a sentence stands somewhere, or something opens. What cannot be done
 * says why in the list. Every command of the table is given once on its bench.
 */
import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';

/** What a person sees of an answer; each of these begins anew with `forget`. */
const answered = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const seen = (element: Element | null | undefined): boolean => element?.checkVisibility() === true;
    const said = document.querySelector('footer [role="status"] span:not(.only-heard):not([data-before])');
    if (said?.textContent !== '' && seen(said)) return 'said';
    if (document.querySelector('dialog[open], :popover-open') !== null) return 'opened';
    if (document.documentElement.hasAttribute('data-platform')) return 'opened by the platform';
    const places = document.querySelectorAll('[data-visited]:not([data-before]), [role="alert"]:not([data-before])');
    if ([...places].some(seen)) return 'shown';
    const pictures = [...document.querySelectorAll<HTMLCanvasElement>('main canvas')].map((canvas) =>
      canvas.toDataURL(),
    );
    return JSON.stringify(pictures) === (window as { before?: string }).before ? '' : 'drawn';
  });

/** From now on what stands there is no answer. */
const forget = (page: Page): Promise<void> =>
  page.evaluate(() => {
    document.documentElement.removeAttribute('data-platform');
    for (const element of document.querySelectorAll('footer span, [data-visited], [role="alert"]'))
      element.setAttribute('data-before', '');
    const pictures = [...document.querySelectorAll<HTMLCanvasElement>('main canvas')].map((canvas) =>
      canvas.toDataURL(),
    );
    (window as { before?: string }).before = JSON.stringify(pictures);
  });

/**
 * Closes what a command opened, and goes back to the bench. What is loaded when
 * it is first asked for may open after what was said: then all of it once more.
 */
async function tidy(page: Page, bench: string): Promise<void> {
  const dialogs = page.locator('dialog[open]');
  await expect(page.locator('[data-coming]')).toHaveCount(0);
  await expect(async () => {
    for (let open = await dialogs.count(); open > 0; open = await dialogs.count()) {
      await page.keyboard.press('Escape');
      await expect(dialogs).toHaveCount(open - 1, { timeout: 2000 });
    }
    const leave = page.getByRole('button', { name: 'Leave the tour' });
    if ((await leave.count()) > 0) await leave.click({ timeout: 2000 });
    await page.getByRole('button', { name: bench, exact: true }).click({ timeout: 2000 });
  }).toPass();
}

/** The commands of a bench, those of the benches that have many a half at a time. */
const WALKS = [
  { bench: 'Motif', half: [0, 0.5] },
  { bench: 'Motif', half: [0.5, 1] },
  { bench: 'Piece', half: [0, 0.5] },
  { bench: 'Piece', half: [0.5, 1] },
  { bench: 'Sheet', half: [0, 1] },
  // Its own alone: the others are given on each of the benches above.
  { bench: 'Knit', half: [0.85, 1] },
] as const;

for (const { bench, half } of WALKS) {
  test(`every command of the ${bench} bench has an answer that is seen, ${half.join(' to ')}`, async ({
    page,
    start,
  }) => {
    // The platform's own dialogs, for printing and for choosing a file, are answers too; here they are noted alone.
    await page.addInitScript(() => {
      const opened = (): void => document.documentElement.setAttribute('data-platform', '');
      window.print = opened;
      HTMLInputElement.prototype.click = opened;
    });
    await start();
    await page.getByRole('button', { name: bench, exact: true }).click();
    const list = page.getByRole('dialog', { name: 'Commands' });
    const options = list.getByRole('option');
    const unanswered: string[] = [];
    await page.keyboard.press('Control+K');
    await options.first().waitFor();
    const count = await options.count();
    expect(count).toBeGreaterThan(25);
    await page.keyboard.press('Escape');
    const [first, end] = half.map((part) => Math.floor(count * part)) as [number, number];
    for (let at = first; at < end; at++) {
      await page.locator('[data-drawing]').focus();
      await page.keyboard.press('Control+K');
      await options.first().waitFor();
      const option = options.nth(at);
      const name = (await option.locator('span').textContent()) ?? '';
      if ((await option.getAttribute('aria-disabled')) === 'true') {
        expect((await option.locator('small').textContent()) ?? '', name).toMatch(/\.$/);
        await page.keyboard.press('Escape');
        await expect(list).toHaveCount(0);
        continue;
      }
      await forget(page);
      const opened = await list.elementHandle();
      await option.click();
      // The list is a dialog too, and no answer.
      await expect.poll(() => opened?.evaluate((element) => element.isConnected)).toBe(false);
      const isAnswered = await expect
        .poll(() => answered(page), { message: name })
        .not.toBe('')
        .then(
          () => true,
          () => false,
        );
      if (!isAnswered) unanswered.push(name);
      await tidy(page, bench);
    }
    expect(unanswered).toEqual([]);
  });
}
