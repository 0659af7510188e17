/** What the machine can do, how a piece begins and ends, its tensions and notes. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { addressOf, createOffered, expect, expectAccessible, test } from './app.ts';
import { FilePanel } from './file-panel.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

test('asks once what the machine can do, and takes the answers', async ({ page, start }) => {
  await start();
  await page.keyboard.press('2');
  const machine = page.getByRole('region', { name: 'The machine' });
  await expect(page.getByText('What can your machine do?')).toBeVisible();
  await expect(machine).toContainText('It chooses the needles of a pattern row a row ahead, and they stand forward');
  await page.getByRole('button', { name: 'Describe it' }).press('Enter');
  await expect(page.getByText('What can your machine do?')).toHaveCount(0);
  await expect(machine.getByRole('button', { name: 'Say what it can do' })).toBeFocused();
  await machine.getByLabel('Needles of a pattern row').selectOption('chosen by hand');
  await expect(machine).toContainText('The needles of a pattern row are pushed forward by hand.');
  await machine.getByLabel('A pattern can stand').selectOption('in repeats from a needle');
  await machine.getByLabel('Needles in a repeat').fill('30');
  await machine.getByLabel('Counted from needle').fill('needle');
  await expect(page.getByRole('alert')).toBeVisible();
  await machine.getByLabel('Counted from needle').fill('R1');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await machine.getByLabel('End-needle selection').selectOption('there is none');
  await machine.getByLabel('Shaping before a row').selectOption("at the carriage's side");
  await machine.getByRole('switch', { name: 'Weights hang on the fabric' }).press('Space');
  await expect(machine).toContainText(
    "A pattern stands in repeats of 30 needles, counted from R1. It has no end-needle selection. A stitch can be made or taken only at the carriage's side before a row. No weights hang on the fabric.",
  );
  await expectAccessible(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Undo change the machine' }).click();
  await expect(machine.getByRole('switch', { name: 'Weights hang on the fabric' })).toBeChecked();
});

test('keeps what the machine can do for new projects, and asks no more', async ({ page, host, start }) => {
  await start();
  await page.keyboard.press('2');
  const machine = page.getByRole('region', { name: 'The machine' });
  const asked = page.getByText('What can your machine do?');
  await page.getByRole('button', { name: 'Describe it' }).click();
  await machine.getByLabel('Needles of a pattern row').selectOption('chosen by hand');
  await machine.getByLabel('A pattern can stand').selectOption('in repeats from a needle');
  // Taken back while the answers are open, it is not what new projects have.
  await machine.getByLabel('End-needle selection').selectOption('there is none');
  await page.getByRole('button', { name: 'Undo change the machine' }).click();
  const says = 'pushed forward by hand. A pattern stands in repeats of 24 needles, counted from L12. End-needle';
  await expect(machine).toContainText(says);

  await page.keyboard.press('Control+Shift+N');
  await page.getByRole('button', { name: 'Leave without saving' }).click();
  await createOffered(page);
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(machine).toContainText(says);
  await expect(asked).toHaveCount(0);

  // Another window has it as well.
  const other = await page.context().newPage();
  await other.goto(await addressOf(host, 'empty'));
  await other.getByRole('button', { name: 'Commands' }).waitFor();
  await other.keyboard.press('2');
  await expect(other.getByRole('region', { name: 'The machine' })).toContainText(says);
  await expect(other.getByText('What can your machine do?')).toHaveCount(0);
});

test('leaves what the machine can do as it was said when another project is opened for another machine', async ({
  page,
  start,
  home,
}) => {
  writeFileSync(join(home, 'twelve.walewright'), textOf(twelveStitchMotif([3, 3])));
  await start();
  await page.keyboard.press('2');
  const machine = page.getByRole('region', { name: 'The machine' });
  await page.getByRole('button', { name: 'Describe it' }).click();
  await machine.getByLabel('Needles of a pattern row').selectOption('chosen by hand');
  await page.keyboard.press('Control+O');
  await new FilePanel(page).open('twelve.walewright');
  await page.getByRole('button', { name: 'Leave without saving' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Twelve');
  await expect(machine).toContainText('It chooses the needles of a pattern row a row ahead');

  await page.keyboard.press('Control+Shift+N');
  await createOffered(page);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Untitled');
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  await expect(machine).toContainText('pushed forward by hand');
});

test('says how a piece begins and ends, with the tensions of the rows that it has, and notes', async ({
  page,
  start,
}) => {
  await start();
  await page.keyboard.press('2');
  const making = page.getByRole('region', { name: 'How it is knitted' });
  await expect(making).toContainText('Cast on with a closed edge. Cast off at the end.');
  await making.getByRole('button', { name: 'Beginning, end, tension, notes' }).click();
  const tensions = making.getByRole('group', { name: 'Tension, as you write it' });
  const asked = tensions.getByRole('textbox');
  await expect(asked).toHaveCount(3);
  await expect(making.getByLabel('It begins').locator('option').first()).toHaveText('as usual: cast on closed');
  await making.getByLabel('It begins').selectOption('picked up');
  await making.getByLabel('It ends').selectOption('on a thread');
  await expect(making).toContainText('Begun with stitches picked up. Taken off on a thread at the end.');
  await expect(asked).toHaveCount(2);
  await tensions.getByLabel('Rows in pattern').fill('7.1');
  await page.getByRole('button', { name: 'Undo change tension' }).click();
  await expect(tensions.getByLabel('Rows in pattern')).toHaveValue('');
  await tensions.getByLabel('Main part').fill('a tension that nobody would write on a dial');
  await expect(page.getByRole('alert')).toHaveText('At most 24 letters.');
  await tensions.getByLabel('Main part').fill('6');
  await making.getByLabel('Notes on this piece').fill('The left sleeve.\nIts cuff is lined.');
  await making.getByLabel('Notes on the project').fill('For the fair.');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Undo change notes on the project' }).click();
  await expect(making.getByLabel('Notes on the project')).toHaveValue('');
  await expect(making.getByLabel('Notes on this piece')).toHaveValue('The left sleeve.\nIts cuff is lined.');
  // A hem is begun open, and has rows of its own.
  await making.getByLabel('It begins').selectOption('as usual: cast on closed');
  const what = page.getByRole('region', { name: 'What it is' });
  await what.getByRole('button', { name: 'Size, gauge, edges' }).click();
  await what.getByLabel(/^Rows of the hem(?!,)/).fill('20');
  await what.getByLabel('Turning row').selectOption('knitted looser');
  await expect(making).toContainText('Begun open, on waste yarn.');
  for (const name of ['Waste yarn', 'Hem facing', 'Turning row', 'Hem outside', 'Row that joins the hem'])
    await expect(tensions.getByLabel(name, { exact: true })).toBeVisible();
});
