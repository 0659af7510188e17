/** What was found of a piece: one line at the top, the way to each, and a piece that the bed cannot hold. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { gridFromText } from '../../src-shared/grid/index.ts';
import { startAllOver } from '../../src-shared/project/index.ts';
import { announced, expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';
import { FilePanel } from './file-panel.ts';
import { listenToLabels, NAME, openFindings, openTwelve, picture } from './piece-bench.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

/** The line that counts them. */
const line = (page: Page): Locator => page.getByRole('group', { name: 'What was found' });
/** The card of one of them. */
const card = (page: Page, at: string): Locator =>
  page.getByRole('region', { name: 'What to watch' }).getByRole('group', { name: at });

const rectangle = (stitches: number) => ({ piece: { shape: { kind: 'rectangle' as const, stitches, rows: 60 } } });

test('are counted at the top, and gone to one by one by buttons and keys', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  // Contrast floats over 24 and 25 stitches, main over 11: common practice, no source.
  await expect(line(page).getByText('2 things to watch')).toBeVisible();
  await expect(line(page)).toBeInViewport({ ratio: 1 });
  const unmarked = await picture(page);

  await line(page).getByRole('button', { name: 'Next thing to watch' }).click();
  await expect(card(page, '1 of 2')).toBeFocused();
  await expect(card(page, '1 of 2')).toBeInViewport({ ratio: 1 });
  const first = await picture(page);
  expect(first).not.toBe(unmarked);

  // The keys are heard in the panel, where the keyboard is now; the line stays in view.
  await page.keyboard.press('F8');
  await expect(card(page, '2 of 2')).toBeFocused();
  await expect(line(page)).toBeInViewport({ ratio: 1 });
  await expect.poll(() => picture(page)).not.toBe(first);
  await page.keyboard.press('F8');
  await expect(card(page, '1 of 2')).toBeFocused();
  await page.keyboard.press('Shift+F8');
  await expect(card(page, '2 of 2')).toBeFocused();
  await expectAccessible(page);

  // A press on the piece lets it go.
  await page.getByRole('grid').click({ position: { x: 300, y: 300 } });
  await page.mouse.move(5, 5);
  await expect(page.getByRole('grid')).toBeFocused();
  await page.keyboard.press('F8');
  await expect(card(page, '1 of 2')).toBeFocused();
});

test('are gone to by the remedies that stand on their cards, and fewer are left', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  await expect(line(page).getByText('2 things to watch')).toBeVisible();
  await page.keyboard.press('F8');
  await expect(card(page, '1 of 2')).toBeFocused();
  // What would help with the first is unfolded; its own line comes before it.
  await page.keyboard.press('Tab');
  await expect(card(page, '1 of 2').locator('summary')).toBeFocused();
  await expect(card(page, '1 of 2').getByRole('figure').first()).toBeVisible();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(line(page).getByText('to watch')).toHaveCount(0);
});

test('are left as they are, listed, watched again, and come back by themselves when they lie elsewhere', async ({
  page,
  start,
  home,
}) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  await expect(line(page).getByText('2 things to watch')).toBeVisible();
  await page.keyboard.press('F8');
  await expect(card(page, '1 of 2')).toBeFocused();
  await card(page, '1 of 2').getByRole('button', { name: 'Leave it' }).press('Enter');
  await expect(announced(page)).toHaveText('Left as it is, until it lies elsewhere.');
  await expect(line(page).getByText('1 thing to watch')).toBeVisible();
  await page.getByText('1 left as it is').click();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Watch it again' }).click();
  await expect(line(page).getByText('2 things to watch')).toBeVisible();
  await page.getByRole('button', { name: 'Undo watch what was found' }).click();
  await expect(line(page).getByText('1 thing to watch')).toBeVisible();

  // It lies elsewhere once the groups are moved by what helps with the other one, or by hand.
  await page.keyboard.press('Control+Z');
  await expect(line(page).getByText('2 things to watch')).toBeVisible();
  await page.keyboard.press('Control+Y');
  await expect(line(page).getByText('1 thing to watch')).toBeVisible();
  await page.getByRole('grid').focus();
  await page.keyboard.press('.');
  await page.keyboard.press('Shift+ArrowRight');
  await expect(line(page).getByText('2 things to watch')).toBeVisible();
});

test('are shown on the purl side too, and each remedy has its picture', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  await expect(line(page).getByText('2 things to watch')).toBeVisible();
  await page.keyboard.press('F8');
  const first = card(page, '1 of 2');
  await expect(first).toBeFocused();
  await expect(first.getByRole('figure').first()).toBeVisible();
  await expect(first.getByText('Then: no long float').first()).toBeVisible();
  await expectAccessible(page);
  await first.getByRole('button', { name: 'Show it on the purl side' }).click();
  await expect(page.getByRole('button', { name: 'Show the purl side' })).toHaveAttribute('aria-pressed', 'true');
  await expect(first).toBeFocused();

  // However far it is scrolled, the forms come back as they were left.
  const panel = page.getByRole('complementary');
  const scrolled = (): Promise<number> => panel.evaluate(({ scrollTop }) => scrollTop);
  await panel.evaluate((element) => element.scrollTo({ top: 120 }));
  await expect.poll(scrolled).toBe(120);
  await openFindings(page, false);
  await expect(page.getByRole('region', { name: 'Groups' })).toBeVisible();
  await expect.poll(scrolled).toBe(0);
});

test('at the edges go into the seam by a button, in one step, by pointer and by keyboard', async ({
  page,
  start,
  home,
}) => {
  await start();
  // Shaped, end needles on, and a machine whose forward needles cannot be seen: common practice, no source.
  const steps = [
    { row: 7, left: 1, right: 1 },
    { row: 12, left: -1, right: -1 },
  ];
  const shape = { kind: 'steps', stitches: 16, rows: 20, steps } as const;
  const twelve = twelveStitchMotif([], { piece: { shape } });
  const machine = { ...twelve.machine, chooses: 'ahead-unseen' } as const;
  const motifs = twelve.motifs.map((motif) => ({ ...motif, grid: gridFromText(['#...', '.#..'], '.#') }));
  const shaped = { ...twelve, machine, motifs, patterns: [{ ...startAllOver('m', 3), endNeedles: true }] };
  writeFileSync(join(home, NAME), textOf(shaped));
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject(NAME, 'Twelve');
  await page.getByRole('button', { name: 'Piece', exact: true }).click();

  const found = await openFindings(page);
  const unseen = found.getByRole('group').filter({ hasText: 'no needle can be pushed to put the edges right' });
  const line = found.getByRole('group').filter({ hasText: 'it shows as a line along the edge' });
  await expect(unseen).toContainText('Keep it in the seam.');
  await expect(line).toBeVisible();
  await expectAccessible(page);
  await unseen.getByRole('button', { name: 'Set a seam allowance of 2 stitches' }).click();
  await expect(announced(page)).toHaveText('The seam allowance is 2 stitches at each edge.');
  await expect(unseen).toHaveCount(0);
  await expect(line).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo change seam allowance' }).click();
  await expect(line).toBeVisible();
  await expect(unseen).toBeVisible();

  // One stitch hides the line, and not what is beside a stitch that was made.
  const one = line.getByRole('button', { name: 'Set a seam allowance of 1 stitch' });
  await one.focus();
  await page.keyboard.press('Enter');
  await expect(announced(page)).toHaveText('The seam allowance is 1 stitch at each edge.');
  await expect(line).toHaveCount(0);
  await unseen.getByRole('button', { name: 'Set a seam allowance of 2 stitches' }).focus();
  await page.keyboard.press('Enter');
  await expect(unseen).toHaveCount(0);
  await page.keyboard.press('Control+Z');
  await expect(unseen).toBeVisible();
  await page.keyboard.press('Control+Z');
  await expect(line).toBeVisible();
});

test('a panel that is folded away opens for the one that is gone to', async ({ page, start, home }) => {
  await page.setViewportSize({ width: 640, height: 400 });
  await start();
  await openTwelve(page, home, [3, 3]);
  await expect(page.getByRole('complementary')).toBeHidden();
  await expect(line(page).getByText('2 things to watch')).toBeInViewport({ ratio: 1 });
  await page.keyboard.press('F8');
  await expect(page.getByRole('complementary')).toBeVisible();
  await expect(card(page, '1 of 2')).toBeFocused();
});

test.describe('a piece that the bed cannot hold', () => {
  test('says so over the drawing, marks the ends of the bed, and is mended there', async ({ page, start, home }) => {
    const labels = await listenToLabels(page);
    await start();
    await openTwelve(page, home, [3, 3], rectangle(220));
    const main = page.getByRole('main');
    const said = main.getByText(
      'The bed has 200 needles, and row 1 takes 220: 10 too many at the left and 10 at the right.',
    );
    await expect(said).toBeInViewport({ ratio: 1 });
    await expect(line(page).getByText('2 things to watch, 1 that cannot be knitted')).toBeVisible();
    await expect.poll(labels).toContain('L100');
    await expect.poll(labels).toContain('R100');
    await expectAccessible(page);
    await appearAs(page, 'dark');
    await expectAccessible(page);

    // Where it could be parted is drawn and said.
    const whole = await picture(page);
    const parts = main.getByRole('button', { name: 'Show where to part it in 2' });
    await parts.press('Enter');
    await expect(parts).toHaveAttribute('aria-pressed', 'true');
    await expect(main.getByText(/^Knit it in 2 parts of 111 stitches each, parted after needle L1/)).toBeVisible();
    await expect.poll(() => picture(page)).not.toBe(whole);

    await main.getByRole('button', { name: 'Make it 200 stitches wide' }).click();
    await expect(announced(page)).toHaveText('The piece is narrower, and stands on the bed.');
    await expect(said).toHaveCount(0);
    await expect(page.getByRole('grid')).toHaveAttribute('aria-colcount', '200');
    // The keyboard goes on where there is something to do.
    await expect(page.getByRole('grid')).toBeFocused();
    await page.keyboard.press('Control+Z');
    await expect(said).toBeVisible();

    await main.getByRole('button', { name: /^Knit it looser, [\d.]+ stitches in 10 cm$/ }).click();
    await expect(said).toHaveCount(0);
    await page.keyboard.press('Control+Z');
    await main.getByRole('button', { name: 'Set another bed' }).click();
    await expect(
      page.getByRole('region', { name: 'The machine' }).getByRole('button', { name: 'Say what it can do' }),
    ).toBeFocused();
  });

  test('is moved onto it where it stands beside it', async ({ page, start, home }) => {
    await start();
    await openTwelve(page, home, [3, 3], { piece: { ...rectangle(120).piece, offset: 60 } });
    const main = page.getByRole('main');
    await expect(
      main.getByText('The bed has 200 needles, and row 1 takes 120: 20 too many at the right.'),
    ).toBeVisible();
    await main.getByRole('button', { name: 'Move it to the middle' }).click();
    await expect(announced(page)).toHaveText('The piece stands on the bed.');
    await expect(main.getByRole('button', { name: 'Set another bed' })).toHaveCount(0);
  });
});
