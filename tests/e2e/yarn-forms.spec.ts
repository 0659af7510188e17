/** The count of a yarn, what is on hand of it, and the yarn in a stitch: typed, refused, taken back, and told on the Piece bench. */
import type { Page } from '@playwright/test';
import { words } from '@shared/words/index.ts';
import { yarnWords } from '@shared/words/yarn.ts';
import { expect, expectAccessible, test } from './app.ts';
import { appearAs } from './at-rest.ts';

const { count, onHand, loop } = yarnWords;

async function changeYarn(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: 'Motif', exact: true }).click();
  await page.getByRole('button', { name: `Change ${name}` }).click();
}

/** A field by the beginning of its label: a hint may follow. */
const fieldOf = (page: Page, label: string) =>
  page.getByRole('textbox', { name: new RegExp(`^${label.replace(/[()?.]/g, '\\$&')}`) });

async function type(page: Page, label: string, value: string): Promise<void> {
  const field = fieldOf(page, label);
  await field.fill(value);
  await field.press('Enter');
}

/** The part of the Piece bench that tells the yarn, unfolded. */
async function lookAtYarn(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  const fold = page.locator('details', { has: page.locator('summary', { hasText: /^Yarn$/ }) });
  await fold.locator('summary').click();
}

test('a count is taken in the system of the label, and the same yarn in another', async ({ page, start }) => {
  await start();
  await changeYarn(page, 'slate');
  await expect(page.getByText(count.unknown)).toBeVisible();
  const system = page.getByLabel(count.system, { exact: true });
  await system.selectOption(count.systems.metric);
  await type(page, count.value('metric'), '7');
  // Nm 7 is 7 m to a gram, so 1000 / 7 tex (ISO 1144).
  await expect(page.getByText('142.9 tex: 350 m in 50 g.')).toBeVisible();
  await type(page, count.plies, '2');
  // Two plies weigh twice as much for their length.
  await expect(page.getByText('285.7 tex: 175 m in 50 g.')).toBeVisible();
  await expectAccessible(page);
  await appearAs(page, 'dark');
  await expectAccessible(page);
  // The label's system changes; the yarn is the same.
  await system.selectOption(count.systems.ball);
  await expect(fieldOf(page, count.inBall.cm)).toHaveValue('175');
  await expect(page.getByText('285.7 tex: 175 m in 50 g.')).toBeVisible();
  for (const [label, right] of [
    [count.ballGrams, '50'],
    [count.inBall.cm, '175'],
  ] as const) {
    const field = fieldOf(page, label);
    for (const wrong of ['0', '-3', 'twenty', '1e9']) {
      await field.fill(wrong);
      await field.press('Enter');
      await expect(field, `${label}: ${wrong}`).toHaveAttribute('aria-invalid', 'true');
      await expect(page.getByText('285.7 tex: 175 m in 50 g.')).toBeVisible();
    }
    await field.fill(right);
  }
});

test('what is on hand is told with the row in which it runs out, and taken back by undo', async ({ page, start }) => {
  await start();
  await changeYarn(page, 'chalk');
  await page.getByLabel(count.system, { exact: true }).selectOption(count.systems.ball);
  await type(page, count.inBall.cm, '50');
  await type(page, onHand.amount('grams', 'cm'), '3');
  await page.getByRole('button', { name: 'Done' }).click();
  await lookAtYarn(page);
  const told = page.getByText(/^chalk: all in all /);
  // Some 9 m of it are needed, and 3 g are 3 m.
  await expect(told).toHaveText(/On hand 3 g: runs out in row (2[5-9]|3\d|4[0-2]) of sleeve/);
  await expectAccessible(page);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(told).not.toHaveText(/runs out/);
});

test('a swatch of the knitter’s own narrows what a stitch takes', async ({ page, start }) => {
  await start();
  await lookAtYarn(page);
  const from = page.getByLabel(loop.from, { exact: true });
  await expect(page.getByText(loop.narrower)).toBeVisible();
  /** From and to, mm. */
  const range = async (): Promise<number> => {
    const text = (await page.getByText(/of yarn in a stitch; it may be/).textContent()) ?? '';
    const [least, most] = /be (\d+(?:\.\d+)?) to (\d+(?:\.\d+)?)/.exec(text)?.slice(1).map(Number) ?? [];
    return (most as number) - (least as number);
  };
  const byGauge = await range();
  await from.selectOption(loop.froms.unravelled);
  await type(page, loop.stitches.unravelled, '200');
  await type(page, loop.unravelled.cm, '240');
  // 240 cm in 200 stitches.
  await expect(page.getByText(/^12 mm of yarn in a stitch/)).toBeVisible();
  expect(await range()).toBeLessThan(byGauge);
  await expectAccessible(page);
  const stitches = fieldOf(page, loop.stitches.unravelled);
  for (const wrong of ['0', 'many', '1e7']) {
    await stitches.fill(wrong);
    await stitches.press('Enter');
    await expect(stitches, wrong).toHaveAttribute('aria-invalid', 'true');
    await expect(page.getByText(/^12 mm of yarn in a stitch/)).toBeVisible();
  }
  await stitches.press('Escape');
  await from.selectOption(loop.froms.weighed);
  await expect(page.getByText(loop.unweighed)).toBeVisible();
  await appearAs(page, 'dark');
  await expectAccessible(page);
  // Chosen, two fields, chosen again.
  for (let times = 0; times < 4; times++) {
    await page.getByRole('button', { name: `Undo ${words.changes.names.loop}` }).click();
  }
  await expect(from).toHaveValue('gauge');
});
