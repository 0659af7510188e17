/** The Piece bench, used as a person uses it. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { restingBox } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

export const NAME = 'twelve.walewright';

/** Everything that is written on canvases from now on, in the order of writing. */
export async function listenToLabels(page: Page): Promise<() => Promise<string[]>> {
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

/** Forgets what was written until now, once nothing of it is still to be drawn. */
export async function forgetLabels(page: Page): Promise<void> {
  await picture(page);
  await page.evaluate(() => (window as unknown as { written: string[] }).written.splice(0));
}

/** What the canvases show, as one picture, once it is the same for two frames in a row. */
export async function picture(page: Page): Promise<string> {
  // The bench comes in after the key that asks for it.
  await page.locator('canvas').first().waitFor();
  await page.mouse.move(5, 5);
  return page.evaluate(async () => {
    const now = (): string => {
      const seen = [...document.querySelectorAll('canvas')].filter((canvas) =>
        canvas.checkVisibility({ visibilityProperty: true }),
      );
      return seen.map((canvas) => canvas.toDataURL()).join('|');
    };
    await new Promise(requestAnimationFrame);
    for (let last = now(); ;) {
      await new Promise(requestAnimationFrame);
      const shown = now();
      if (shown === last) return shown;
      last = shown;
    }
  });
}

/** Opens copies of twelve stitches; 3 and 3 of them on 120 stitches stand at L48 and R12 by the figure (common practice, no source). */
export async function openTwelve(page: Page, home: string, copies: readonly number[], to = {}): Promise<void> {
  writeFileSync(join(home, NAME), textOf(twelveStitchMotif(copies, to)));
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject(NAME, 'Twelve');
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
}

/** The line at the top of the panel, which counts what was found. */
export const findingsLine = (page: Page): Locator => page.getByRole('group', { name: 'What was found' });

/** Opens what was found in the panel, or brings its forms back; gives the part that tells it. */
export async function openFindings(page: Page, isOpen = true): Promise<Locator> {
  await findingsLine(page).getByRole('button', { expanded: !isOpen }).click();
  return page.getByRole('region', { name: 'What to watch' });
}

/** The middle of a stitch on the page, from where the grid says its cursor is. */
export async function placeOf(page: Page, needle: number, row: number): Promise<{ x: number; y: number }> {
  const cell = page.getByRole('gridcell');
  const box = await restingBox(cell);
  const label = (await cell.getAttribute('aria-label')) ?? '';
  const [, atRow, side, number] = /^Row (\d+) · needle ([LR])(\d+)/.exec(label) ?? [];
  if (!atRow) throw new Error(`The grid says "${label}"`);
  const at = side === 'L' ? -Number(number) : Number(number) - 1;
  return {
    x: box.x + box.width * (needle - at + 0.5),
    y: box.y + box.height * (Number(atRow) - row + 0.5),
  };
}

/** Changes the project on the Piece bench, to groups of so many copies each. */
export async function changeCopies(page: Page, copies: string): Promise<void> {
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await page.getByLabel('Copies in each group').fill(copies);
  await page.getByLabel('Copies in each group').blur();
}
