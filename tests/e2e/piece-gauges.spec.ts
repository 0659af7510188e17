/** A piece whose sections have gauges of their own, as it is drawn flat and seamed. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, expectAccessible, statusLine, test } from './app.ts';
import { appearAs, restingBox } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

const NAME = 'twelve.walewright';
/** 120 stitches on 60 rows: 20 of a rib at 14 stitches and 20 rows in 10 cm under a body at 28 and 40. */
const RIBBED = {
  gauge: { stitches: 28, rows: 40 },
  sections: [{ name: 'rib', rows: 20, isLined: false, gauge: { stitches: 14, rows: 20 }, tension: '' }],
};

async function openRibbed(page: Page, home: string): Promise<void> {
  writeFileSync(
    join(home, NAME),
    textOf(twelveStitchMotif([3, 3], { piece: RIBBED, band: { position: { kind: 'from-row', row: 31 } } })),
  );
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject(NAME, 'Twelve');
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
}

test('draws the stitches of a looser rib as wide and as tall as its gauge makes them', async ({
  page,
  start,
  home,
}) => {
  await start();
  await openRibbed(page, home);
  const flat = page.getByRole('grid');
  await flat.focus();
  const stitch = page.getByRole('gridcell');

  // The first stitch of the rib and the last one of the body: half as many in 10 cm are twice as wide and as tall.
  await page.keyboard.press('Control+Home');
  await expect(stitch).toHaveAccessibleName(/^Row 1 · needle L60/);
  const rib = await restingBox(stitch);
  await page.keyboard.press('Control+End');
  await expect(stitch).toHaveAccessibleName(/^Row 60 · needle R60/);
  const body = await restingBox(stitch);
  expect(rib.width / body.width).toBeCloseTo(2, 1);
  expect(rib.height / body.height).toBeCloseTo(2, 1);
  // Both lie round the same middle, the rib twice as far to both sides.
  await page.keyboard.press('Home');
  await expect(stitch).toHaveAccessibleName(/^Row 60 · needle L60/);
  const bodyStart = await restingBox(stitch);
  await page.keyboard.press('Control+Home');
  await expect(stitch).toHaveAccessibleName(/^Row 1 · needle L60/);
  await page.keyboard.press('End');
  await expect(stitch).toHaveAccessibleName(/^Row 1 · needle R60/);
  const ribEnd = await restingBox(stitch);
  const [ofRib, ofBody] = [
    [rib.x, ribEnd.x + ribEnd.width],
    [bodyStart.x, body.x + body.width],
  ] as [[number, number], [number, number]];
  expect(Math.abs(ofRib[0] + ofRib[1] - ofBody[0] - ofBody[1]) / 2).toBeLessThan(1);
  expect((ofRib[1] - ofRib[0]) / (ofBody[1] - ofBody[0])).toBeCloseTo(2, 2);

  // What is under the pointer is what is drawn there, in both.
  await page.mouse.move(rib.x + rib.width / 2, rib.y + rib.height / 2);
  await expect(statusLine(page)).toContainText('Row 1 · needle L60');
  await page.mouse.move(body.x + body.width / 2, body.y + body.height / 2);
  await expect(statusLine(page)).toContainText('Row 60 · needle R60');
  // Beside the body, over the end of the rib, there is nothing.
  await page.mouse.move(rib.x + rib.width / 2, body.y + body.height / 2);
  await expect(statusLine(page)).toContainText('beside the piece');
  await expectAccessible(page);
});

test('moves a group by stitches of the section that it stands on', async ({ page, start, home }) => {
  await start();
  await openRibbed(page, home);
  const flat = page.getByRole('grid');
  await flat.focus();
  const stitch = page.getByRole('gridcell');
  await expect(stitch).toHaveAccessibleName(/^Row 31 · needle L\d+/);
  const first = /needle L(\d+)/.exec((await stitch.getAttribute('aria-label')) ?? '')?.[1];
  const { x, y, width, height } = await restingBox(stitch);
  const at = { x: x + width * 2.5, y: y + height / 2 };
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x - 5 * width, at.y, { steps: 5 });
  await expect(statusLine(page)).toContainText(`L${Number(first) + 5}`);
  await page.mouse.up();
});

test('a group that goes down to a looser rib stays on the rows under the hand, and on its needles', async ({
  page,
  start,
  home,
}) => {
  await start();
  await openRibbed(page, home);
  await page.getByRole('grid').focus();
  const stitch = page.getByRole('gridcell');
  await expect(stitch).toHaveAccessibleName(/^Row 31 · needle L48/);
  const { x, y, width, height } = await restingBox(stitch);
  // Taken on its second row. The rib's rows are twice as tall: its 20 and 10 of the body lie under row 31.
  const hand = x + width * 2.5;
  const castOn = y + height + 10 * height + 20 * 2 * height;
  await page.mouse.move(hand, y - height / 2);
  await page.mouse.down();
  await page.mouse.move(hand, castOn - 9.5 * 2 * height, { steps: 8 });
  await expect(statusLine(page)).toContainText('needles L48–L13 · rows 9–11');
  await page.mouse.up();
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('9–11');
});

test('draws the seamed piece wider round a looser rib', async ({ page, start, home }) => {
  await start();
  await openRibbed(page, home);
  await page.getByRole('grid').focus();
  await page.keyboard.press('c');
  // 120 stitches at 14 in 10 cm are 857 mm round the lower edge, at 28 they are 429 mm round the upper.
  const round = page.getByRole('region', { name: 'Round the seam' });
  await expect(round).toContainText('85.7 cm round at the lower edge, 42.9 cm at the top');

  // 20 rows of 5 mm and 40 of 2.5 mm are each 10 cm tall, so that the drawing's middle is where they meet.
  const tube = page.getByRole('slider', { name: 'Piece, seamed, as worn' });
  const box = await restingBox(tube);
  const middle = box.x + box.width / 2;
  const beside = middle + box.width * 0.2;
  await page.mouse.move(middle, box.y + box.height - 60);
  await expect(statusLine(page)).toContainText(/^Row \d · /);
  await page.mouse.move(beside, box.y + box.height - 60);
  await expect(statusLine(page)).toContainText(/^Row \d · /);
  await page.mouse.move(middle, box.y + 120);
  await expect(statusLine(page)).toContainText(/^Row 5\d · /);
  await appearAs(page, 'dark');
  await expectAccessible(page);
});
