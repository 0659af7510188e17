/** The Piece bench: where groups of copies are placed. */
import { expect, expectAccessible, test } from './app.ts';
import { restingBox } from './at-rest.ts';
import { listenToLabels, openTwelve, picture } from './piece-bench.ts';

test('places two groups of three so that the eye sees 13, 24, 13', async ({ page, start, home }) => {
  const labels = await listenToLabels(page);
  await start();
  await openTwelve(page, home, [1]);
  await page.getByLabel('Copies in each group').fill('3, 3');

  // Common practice, no source: L48 to L13 and R12 to R47.
  const meaning = page.getByRole('region', { name: 'What it is' });
  await expect(meaning).toContainText('120 stitches × 60 rows');
  await expect(meaning).toContainText('The groups start at needles L48 and R12');
  const best = page.getByRole('radio').first();
  await expect(best).toBeChecked();
  await expect(best).toHaveAccessibleName(/^Spaces 13, 24, 13\./);
  await expect(page.getByRole('listitem').filter({ hasText: 'Group 2: needles R12–R47' })).toBeAttached();
  await expect.poll(labels).toEqual(expect.arrayContaining(['L48', 'L13', 'R12', 'R47', '13', '24']));
});

test('goes through the choices by keyboard, and back by undo', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  const choices = page.getByRole('radiogroup', { name: 'Possible placings' });
  const starts = page.getByRole('region', { name: 'What it is' });
  await choices.getByRole('radio').first().focus();
  await page.keyboard.press('ArrowDown');
  await expect(choices.getByRole('radio').nth(1)).toBeChecked();
  await expect(starts).not.toContainText('L48');
  await expect(page.getByRole('button', { name: 'Undo choose a placing' })).toBeEnabled();

  await page.getByRole('button', { name: /^\d more$/ }).click();
  await expect(choices.getByRole('radio')).toHaveCount(8);
  await choices.getByText('Both sides alike').first().click();
  await expect(starts).toContainText('L48 and R12');
  await page.keyboard.press('Control+Z');
  await expect(starts).not.toContainText('L48');
});

test('each placing that is clicked is a step of undo of its own', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  await page.getByRole('button', { name: /^\d more$/ }).click();
  const strips = page.getByRole('radiogroup', { name: 'Possible placings' }).locator('label');
  const chosen = (rank: number) => strips.nth(rank).getByRole('radio');
  for (const rank of [1, 2, 3]) {
    await strips.nth(rank).click();
    await expect(chosen(rank)).toBeChecked();
  }
  for (const rank of [2, 1, 0]) {
    await page.keyboard.press('Control+Z');
    await expect(chosen(rank)).toBeChecked();
  }
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();
});

test('follows the rule that is asked for', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  const best = page.getByRole('radio').first();
  await page.getByLabel('Space evenly').selectOption('blocks');
  // By the blocks: 120 − 72 = 48, so 12, 24, 12.
  await expect(best).toHaveAccessibleName(/^Spaces 12, 24, 12\./);
  await page.getByLabel('Spacing rule').selectOption('even');
  await expect(best).toHaveAccessibleName(/^Spaces 16, 16, 16\./);
  await page.getByLabel('Spacing rule').selectOption('gaps');
  await page.getByLabel('Each gap').fill('10');
  await expect(best).toHaveAccessibleName(/^Spaces 19, 10, 19\./);
  await page.getByLabel('Spacing rule').selectOption('by-hand');
  const needles = page.getByRole('textbox', { name: 'Left-hand needles' });
  await needles.fill('L50, R20');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('L50 and R20');
  await needles.fill('L50, R0');
  await expect(page.getByRole('alert')).toContainText('there is no needle 0');
  await needles.fill('L50');
  await expect(page.getByRole('alert')).toContainText('1 left-hand needle for 2 groups');
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('L50 and R20');
});

test('adds, mirrors and removes groups and bands, each one step of undo', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  const meaning = page.getByRole('region', { name: 'What it is' });
  const copies = page.getByLabel('Copies in each group');
  await page.getByRole('button', { name: 'Rows, copies, balls' }).click();
  const before = await picture(page);
  const mirrored = page.getByRole('group', { name: 'Group 2' }).getByRole('switch', { name: 'Mirrored' });
  await mirrored.focus();
  await page.keyboard.press('Space');
  await expect(mirrored).toBeChecked();
  await expect.poll(() => picture(page)).not.toBe(before);
  await page.getByRole('button', { name: 'Undo mirror a group' }).click();
  await expect.poll(() => picture(page)).toBe(before);

  await copies.fill('2, 2');
  await page.getByRole('button', { name: 'Add a group' }).click();
  await expect(copies).toHaveValue('2, 2, 2');
  await page.getByRole('button', { name: 'Remove group 2' }).click();
  await expect(copies).toHaveValue('2, 2');

  await page.getByRole('button', { name: 'Add a pattern band' }).click();
  await expect(page.getByLabel('Pattern band')).toHaveValue('1');
  await expect(copies).toHaveValue('1');
  await page.getByRole('button', { name: 'Remove this pattern band' }).click();
  await page.getByRole('button', { name: 'Remove this pattern band' }).click();
  await expect(meaning).toContainText('places nothing on the piece');
  await page.getByRole('button', { name: /^Place .* on the piece$/ }).click();
  await expect(copies).toHaveValue('1');
  await page.getByRole('button', { name: 'Undo add a pattern band' }).click();
  await page.getByRole('button', { name: 'Undo remove a pattern band' }).click();
  await expect(copies).toHaveValue('2, 2');
});

test('says how many copies fit and on how many stitches the rule comes out exactly', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  await page.getByText('Better fits').click();
  // Two figures of 35 on 120 stitches leave 50; the seam asks for quarters, so 48 and 52 come out exactly.
  await expect(page.getByText('It would come out exactly on 118 or 122 stitches.')).toBeVisible();
  await page.getByRole('button', { name: 'Make it 122 stitches' }).click();
  await expect(page.getByText('The rule comes out exactly on this piece.')).toBeVisible();
  await expect(page.getByRole('radio', { checked: true })).toHaveAccessibleName(/^Spaces 13, 26, 13\./);
});

test('places groups by buttons: more copies, fewer, another group, one gone', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  const groups = page.getByRole('region', { name: 'Groups', exact: true });
  const copies = groups.getByLabel('Copies in each group');
  const starts = page.getByRole('region', { name: 'What it is' });
  await groups.getByRole('button', { name: 'One copy more in group 2' }).click();
  await expect(copies).toHaveValue('3, 4');
  await expect(groups.getByRole('listitem')).toHaveText([/Group 1.*3 copies/, /Group 2.*4 copies/]);
  await groups.getByRole('button', { name: 'One copy fewer in group 2' }).press('Enter');
  await expect(copies).toHaveValue('3, 3');
  await expect(starts).toContainText('L48 and R12');
  await groups.getByRole('button', { name: 'Add a group' }).click();
  await groups.getByRole('button', { name: 'One copy fewer in group 3' }).dblclick();
  await expect(copies).toHaveValue('3, 3, 1');
  // The least is one; the button stays where it is, and keeps the focus.
  const least = groups.getByRole('button', { name: 'One copy fewer in group 3' });
  await least.press('Enter');
  await expect(copies).toHaveValue('3, 3, 1');
  await expect(least).toBeFocused();
  await groups.getByRole('button', { name: 'Remove group 1' }).click();
  await expect(copies).toHaveValue('3, 1');
  for (const before of ['3, 3, 1', '3, 3, 2', '3, 3, 3', '3, 3', '3, 4', '3, 3']) {
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect(copies).toHaveValue(before);
  }
});

test('places six single motifs in one entry, with the counts that fit beside it', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3]);
  const groups = page.getByRole('region', { name: 'Groups', exact: true });
  const copies = groups.getByLabel('Copies in each group');
  const singles = groups.getByLabel('Single motifs');
  await expect(singles).toHaveValue('');
  await singles.fill('6');
  await expect(copies).toHaveValue('1, 1, 1, 1, 1, 1');
  await expect(groups.getByRole('listitem')).toHaveText(/6 single motifs/);
  // Six figures of 11 leave 54 of 120 stitches: two margins of 5, and 44 for five gaps, the middle one 8 and the others 9.
  const row = (count: string) =>
    groups.getByRole('row').filter({ has: page.getByRole('rowheader', { name: count, exact: true }) });
  await expect(row('6').getByRole('cell')).toContainText(['5', '8 to 9', '10']);
  // Ten copies of 12 fill 120 stitches.
  await expect(row('10')).toBeVisible();
  await groups.getByRole('button', { name: 'One single motif more' }).click();
  await expect(singles).toHaveValue('7');
  await groups.getByRole('button', { name: 'Place 4 copies, spaced singly' }).press('Enter');
  await expect(copies).toHaveValue('1, 1, 1, 1');
  await groups.getByRole('button', { name: 'One by one' }).click();
  await groups.getByRole('button', { name: 'One copy more in group 4' }).click();
  await expect(copies).toHaveValue('1, 1, 1, 2');
  await expect(singles).toHaveValue('');
  await expectAccessible(page);
  for (const before of ['1, 1, 1, 1', '1, 1, 1, 1, 1, 1, 1', '1, 1, 1, 1, 1, 1', '3, 3']) {
    await page.getByRole('button', { name: 'Undo change copies' }).click();
    await expect(copies).toHaveValue(before);
  }
});

test('puts no button in place of another that is pressed, be the groups alike then', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [1]);
  const groups = page.getByRole('region', { name: 'Groups', exact: true });
  const add = groups.getByRole('button', { name: 'Add a group' });
  const stands = await restingBox(add);
  await add.click();
  await expect(groups.getByRole('listitem')).toHaveText([/Group 1.*1 copy/, /Group 2.*1 copy/]);
  expect(await restingBox(add)).toEqual(stands);
  await add.click();
  await expect(groups.getByRole('listitem')).toHaveCount(3);
  expect(await restingBox(add)).toEqual(stands);
  await groups.getByRole('button', { name: 'All together' }).click();
  await expect(groups.getByRole('listitem')).toHaveText(/3 single motifs/);
  expect(await restingBox(add)).toEqual(stands);
});

test('chooses the motif of a group by its picture, by keyboard too', async ({ page, start }) => {
  await start();
  await page.getByRole('button', { name: 'Duplicate the motif' }).click();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  const groups = page.getByRole('region', { name: 'Groups', exact: true });
  const second = groups.getByRole('button', { name: /^Motif of group 2: / });
  await expect(second).toHaveAccessibleName('Motif of group 2: lighthouse and gulls');
  await second.press('Enter');
  const choices = page.getByRole('group', { name: /^Motif of group 2/ });
  const taken = choices.getByRole('button', { name: 'lighthouse and gulls', exact: true });
  await expect(taken).toBeFocused();
  await expectAccessible(page);
  await page.keyboard.press('Escape');
  await expect(choices).toBeHidden();
  await expect(second).toBeFocused();
  await second.press('Enter');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(second).toHaveAccessibleName('Motif of group 2: lighthouse and gulls copy');
  await expect(second).toBeFocused();
  await page.getByRole('button', { name: 'Undo choose motif of a group' }).click();
  await expect(second).toHaveAccessibleName('Motif of group 2: lighthouse and gulls');
});

test('says what of a margin the seam takes, wherever the margin stands', async ({ page, start, home }) => {
  await start();
  await openTwelve(page, home, [3, 3], { piece: { seamAllowance: { left: 1, right: 1 } } });
  // Common practice, no source: 13, 24, 13; with a stitch of each edge in the seam 12 and 12 are left, 24 across it.
  const best = page.getByRole('radio').first();
  await expect(best).toHaveAccessibleName(
    /^Spaces 13 \(12 clear of the seam\), 24, 13 \(12 clear of the seam\)\. Even to the eye: .*; even all the way round\.$/,
  );
  await expect(page.getByText('12 clear of the seam')).toHaveCount(2);
  await page.getByText('Counts that fit').click();
  await expect(page.getByText('spaced singly; the edges with the 1 that the seam takes')).toBeVisible();
  // The margin that stands is taken over as it is asked for: clear of the seam. Nothing moves.
  await page.getByLabel('Spacing rule').selectOption('margins');
  await expect(page.getByLabel('Each margin')).toHaveValue('12');
  await expect(page.getByText('clear of the seam', { exact: true })).toBeVisible();
  await expect(page.getByRole('region', { name: 'What it is' })).toContainText('L48 and R12');
  // The same of it where the piece is seamed.
  await page.getByRole('button', { name: 'Show it seamed' }).click();
  await expect(page.getByRole('region', { name: 'Round the seam' })).toContainText(
    'across the seam 24, between the groups 24; even all the way round',
  );
});

test('says of a shaped piece on which row its spaces hold, and takes the cast-on that makes them exact', async ({
  page,
  start,
  home,
}) => {
  const labels = await listenToLabels(page);
  await start();
  // 100 stitches and 20 more at each edge: 120 on row 30, where the groups stand as on a straight piece of 120.
  const shape = { kind: 'tapered', stitches: 100, stitchesAtTop: 140, rows: 60, straightRows: 2 };
  await openTwelve(page, home, [3, 3], { piece: { shape } });
  await expect
    .poll(labels)
    .toEqual(expect.arrayContaining(['13', '24', 'on row 30', 'L48', 'L47', 'R47', 'L60', 'R60']));
  await expect(page.getByText('Counted on row 30, the first of the groups')).toBeVisible();
  await expect(page.getByRole('radio').first()).toHaveAccessibleName(/^Spaces 13, 24, 13 on row 30\. /);
  await page.getByText('Counts that fit').click();
  await expect(page.getByText(', spaced singly, on row 30', { exact: false })).toBeVisible();
  await page.getByText('Better fits').click();
  await expect(
    page.getByText('On row 30, where the groups stand, it would come out exactly on 118 or 122 stitches'),
  ).toBeVisible();
  await page.getByRole('button', { name: 'Cast on 102, 122 on row 30' }).click();
  await expect(page.getByText('The rule comes out exactly on this piece.')).toBeVisible();
  const what = page.getByRole('region', { name: 'What it is' });
  await expect(what).toContainText('From 102 to 142 stitches');
  await page.getByRole('button', { name: /^Undo / }).click();
  await expect(what).toContainText('From 100 to 140 stitches');
});
