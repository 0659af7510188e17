/** What is pictured: one entry a view. A new view is one more entry. */
import type { Page } from 'playwright';

export interface View {
  readonly name: string;
  /** With which projects it is worth a picture. */
  readonly of: readonly ('empty' | 'sample')[];
  /** From any bench, with nothing open, to the view. */
  readonly show: (page: Page) => Promise<void>;
}

const bench =
  (key: string) =>
  async (page: Page): Promise<void> =>
    page.keyboard.press(key);

export const VIEWS: readonly View[] = [
  { name: 'motif', of: ['empty', 'sample'], show: bench('1') },
  {
    name: 'motif-lettering',
    of: ['sample'],
    async show(page) {
      await page.keyboard.press('1');
      await page.keyboard.press('a');
      await page.getByRole('textbox', { name: 'Text' }).fill('Skerry\nlight');
    },
  },
  {
    name: 'piece',
    of: ['empty', 'sample'],
    async show(page) {
      await page.keyboard.press('Escape');
      await page.keyboard.press('2');
    },
  },
  {
    name: 'piece-near',
    of: ['sample'],
    async show(page) {
      await page.keyboard.press('2');
      const cell = await page.getByRole('gridcell').boundingBox();
      if (!cell) throw new Error('The piece has no stitch');
      await page.mouse.move(cell.x + 60, cell.y - 20);
      await page.keyboard.down('Control');
      await page.mouse.wheel(0, -800);
      await page.keyboard.up('Control');
    },
  },
  {
    name: 'piece-form',
    of: ['sample'],
    async show(page) {
      await page.keyboard.press('2');
      await page.keyboard.press('Control+0');
      await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
    },
  },
  {
    name: 'piece-too-wide',
    of: ['sample'],
    async show(page) {
      await page.keyboard.press('2');
      await page.keyboard.press('Control+0');
      await page.getByLabel('Copies in each group').fill('4, 4');
    },
  },
  {
    name: 'sheet',
    of: ['empty', 'sample'],
    async show(page) {
      if (await page.getByRole('button', { name: 'Undo change copies' }).isVisible()) {
        await page.getByRole('button', { name: 'Undo change copies' }).click();
      }
      await page.getByRole('button', { name: 'Sheet', exact: true }).click();
    },
  },
];
