/** Each remedy by hand: found on its card with its effect, taken in one step by pointer or keys, and taken back. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { RemedyCode } from '@shared/check/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import { findingWords } from '@shared/words/findings.ts';
import { BLANK_ROWS, COLUMNS, HOOKED, IN_SECTION, LEANING, NEAR, THREE_YARNS, UNEVEN } from '../unit/check/mendable.ts';
import { expect, test } from './app.ts';
import { FilePanel } from './file-panel.ts';
import { openFindings } from './piece-bench.ts';
import { textOf } from './projects.ts';

interface Helped {
  /** The finding, from 1. */
  readonly number: number;
  readonly code: RemedyCode;
  /** What is undone. */
  readonly undo: string;
}

const PROJECTS: readonly { readonly about: string; readonly project: ProjectAt; readonly helped: readonly Helped[] }[] =
  [
    {
      about: 'two columns far apart',
      project: COLUMNS,
      helped: [
        { number: 1, code: 'own-balls', undo: 'change balls' },
        { number: 1, code: 'anchors', undo: 'change anchor stitches' },
        { number: 1, code: 'hook-up', undo: 'choose what is done about long floats' },
        { number: 1, code: 'move-groups', undo: 'move a group' },
        { number: 1, code: 'lining', undo: 'change piece' },
      ],
    },
    {
      about: 'groups of five and four',
      project: UNEVEN,
      helped: [
        { number: 1, code: 'latch-up', undo: 'choose what is done about long floats' },
        { number: 2, code: 'other-placing', undo: 'choose a placing' },
      ],
    },
    {
      about: 'copies that lean to one side',
      project: LEANING,
      helped: [{ number: 1, code: 'mirrored-order', undo: 'mirror a group' }],
    },
    {
      about: 'a pattern in a section',
      project: IN_SECTION,
      helped: [{ number: 1, code: 'line-section', undo: 'change lining of section' }],
    },
    {
      about: 'the edge needles in the pattern',
      project: NEAR,
      helped: [{ number: 1, code: 'end-needles-off', undo: 'change end-needle selection' }],
    },
    {
      about: 'an all-over with blank rows',
      project: BLANK_ROWS,
      // The first says that its edges are seen, which no remedy is for.
      helped: [{ number: 2, code: 'cut-carries', undo: 'choose what is done about long carries' }],
    },
    {
      about: 'the same with its floats hooked up',
      project: HOOKED,
      helped: [{ number: 2, code: 'end-needles-on', undo: 'change end-needle selection' }],
    },
    {
      about: 'rows of three yarns',
      project: THREE_YARNS,
      helped: [{ number: 1, code: 'other-yarn', undo: 'knit in another yarn of the row' }],
    },
  ];

for (const { about, project, helped } of PROJECTS) {
  const codes = helped.map(({ code }) => code).join(', ');
  test(`${about}: ${codes} helps, and is taken back`, async ({ page, start, home }) => {
    await start();
    writeFileSync(join(home, 'mend.walewright'), textOf(project));
    await page.keyboard.press('Control+O');
    await new FilePanel(page).openProject('mend.walewright', project.name);
    await page.getByRole('button', { name: 'Piece', exact: true }).click();
    const found = await openFindings(page);
    const undo = page.getByRole('button', { name: /^Undo/ });
    for (const [at, { number, code, undo: what }] of helped.entries()) {
      const card = found.getByRole('group', { name: new RegExp(`^${number} of `) });
      const help = card.locator('details').filter({ hasText: findingWords.panel.help }).first();
      if ((await help.getAttribute('open')) === null) await help.locator('summary').first().click();
      const button = page.getByRole('button', { name: findingWords.remedy.label[code] });
      const remedy = card.locator('.remedy').filter({ has: button });
      await expect(card.locator('.remedy').first()).toBeVisible();
      // Of more than three the others are folded away.
      const more = page.getByText(/^\d+ more remed/);
      const others = card.locator('details details').filter({ has: more });
      await expect(remedy.or(others).first()).toBeVisible();
      // It stays unfolded, and what is in it comes one after the other.
      const isFolded = async (): Promise<boolean> =>
        !(await remedy.isVisible()) && (await others.getAttribute('open')) === null;
      if (await isFolded()) await others.locator('summary').click();
      await expect(remedy).toBeVisible();
      const effect = (await remedy.locator('p').first().textContent()) ?? '';
      expect(effect).toMatch(/^(Leaves|The lining covers) /);
      if (at % 2 === 0) await remedy.getByRole('button').click();
      else await remedy.getByRole('button').press('Enter');
      await expect(undo).toHaveAccessibleName(`Undo ${what}`);
      await expect(page.getByRole('contentinfo').getByRole('status')).toHaveText(effect);
      await page.keyboard.press('Control+Z');
      await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
      await expect(found.getByRole('group', { name: new RegExp(`^${number} of `) })).toBeVisible();
    }
  });
}

test('rows of three yarns are laid by hand with one press or key, and watched again', async ({ page, start, home }) => {
  await start();
  writeFileSync(join(home, 'mend.walewright'), textOf(THREE_YARNS));
  await page.keyboard.press('Control+O');
  await new FilePanel(page).openProject('mend.walewright', THREE_YARNS.name);
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  const found = await openFindings(page);
  const lay = found.getByRole('button', { name: 'Lay these rows by hand' });
  const left = found.getByText('1 left as it is');
  const undo = page.getByRole('button', { name: /^Undo/ });
  // Three contrast stitches to a copy on each of two rows, in two copies.
  const card = found.getByRole('group', { name: /^1 of / });
  await expect(card).toContainText('12 contrast stitches to lay on 2 rows, each row in one pass; no cell changes.');
  for (const press of [() => lay.click(), () => lay.press('Enter')]) {
    await press();
    await expect(page.getByRole('contentinfo').getByRole('status')).toHaveText(
      'To be laid by hand: 12 stitches on 2 rows.',
    );
    await expect(undo).toHaveAccessibleName('Undo lay rows by hand');
    await expect(lay).toHaveCount(0);
    await expect(left).toBeVisible();
    await page.keyboard.press('Control+Z');
    await expect(lay).toBeVisible();
    await expect(left).toHaveCount(0);
  }
  await lay.click();
  await left.click();
  await found.getByRole('button', { name: 'Watch it again' }).click();
  await expect(lay).toBeVisible();
});
