/** What is pictured: one entry a view. A new view is one more entry. */
import type { Page } from 'playwright';

export interface View {
  readonly name: string;
  /** With which projects it is worth a picture. */
  readonly of: readonly ('empty' | 'sample')[];
  /** From any bench, with nothing open, to the view. */
  readonly show: (page: Page) => Promise<void>;
}

/** A picture to turn into a motif, as an SVG. */
const HILLS =
  '<svg xmlns="http://www.w3.org/2000/svg" width="900" height="600"><rect width="900" height="600" fill="#8fb0d8"/>' +
  '<circle cx="660" cy="180" r="100" fill="#f2c14e"/><path d="M0 600 260 260 480 600z" fill="#2f4858"/>' +
  '<path d="M300 600 560 340 900 600z" fill="#33658a"/></svg>';

/** Drops a picture onto the window; runs in the page. */
function drop(svg: string): void {
  const data = new DataTransfer();
  data.items.add(new File([svg], 'hills.svg', { type: 'image/svg+xml' }));
  document.querySelector('.window')?.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
}

const goTo = (page: Page, bench: 'Motif' | 'Piece' | 'Sheet'): Promise<void> =>
  page.getByRole('button', { name: bench, exact: true }).click();

/** Single keys act in the drawing alone. */
const press = (page: Page, key: string): Promise<void> => page.locator('[data-drawing]').press(key);

export const VIEWS: readonly View[] = [
  { name: 'motif', of: ['empty', 'sample'], show: (page) => goTo(page, 'Motif') },
  {
    name: 'motif-menu',
    of: ['sample'],
    async show(page) {
      await goTo(page, 'Motif');
      await press(page, 's');
      await page.getByRole('button', { name: 'Selection', exact: true }).click();
      await page.getByText('Nothing is selected.').waitFor();
    },
  },
  {
    name: 'motif-lettering',
    of: ['sample'],
    async show(page) {
      await goTo(page, 'Motif');
      await press(page, 'a');
      await page.getByRole('textbox', { name: 'Text' }).fill('Skerry\nlight');
    },
  },
  {
    name: 'from-picture',
    of: ['sample'],
    async show(page) {
      await page.keyboard.press('Escape');
      await page.evaluate(drop, HILLS);
      await page.getByRole('button', { name: 'Any picture' }).click();
      await page.getByRole('textbox', { name: 'Yarns' }).fill('4');
    },
  },
  {
    name: 'piece',
    of: ['empty', 'sample'],
    async show(page) {
      await page.keyboard.press('Escape');
      await goTo(page, 'Piece');
    },
  },
  {
    name: 'piece-near',
    of: ['sample'],
    async show(page) {
      await goTo(page, 'Piece');
      const cell = await page.getByRole('gridcell').boundingBox();
      if (!cell) throw new Error('The piece has no stitch');
      await page.mouse.move(cell.x + 60, cell.y - 20);
      await page.keyboard.down('Control');
      await page.mouse.wheel(0, -800);
      await page.keyboard.up('Control');
    },
  },
  {
    name: 'piece-closed',
    of: ['sample'],
    async show(page) {
      await goTo(page, 'Piece');
      await press(page, 'c');
      await page.getByRole('slider').waitFor();
    },
  },
  {
    name: 'piece-closed-turned',
    of: ['sample'],
    async show(page) {
      await page.getByRole('slider').focus();
      await page.keyboard.press('PageUp');
      await page.keyboard.press('.');
    },
  },
  {
    name: 'piece-form',
    of: ['sample'],
    async show(page) {
      await goTo(page, 'Piece');
      await press(page, 'c');
      await page.getByRole('button', { name: 'Fit the whole piece' }).click();
      await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
    },
  },
  {
    name: 'piece-too-wide',
    of: ['sample'],
    async show(page) {
      await goTo(page, 'Piece');
      await page.getByRole('button', { name: 'Fit the whole piece' }).click();
      await page.getByLabel('Copies in each group').fill('4, 4');
    },
  },
  {
    name: 'piece-sizes',
    of: ['sample'],
    async show(page) {
      await page.getByRole('button', { name: 'Undo change copies' }).click();
      await press(page, 's');
      await page.getByRole('button', { name: 'Add a size' }).click();
      await page.getByRole('button', { name: 'Add size 2' }).click();
      await page.getByLabel('Stitches at the cast-on, size 2').fill('104');
      await page.getByLabel('Stitches at the cast-on, size 2').blur();
    },
  },
  {
    name: 'piece-new-size',
    of: ['sample'],
    async show(page) {
      await page.getByRole('button', { name: 'Add a size' }).click();
      await page.getByLabel('It comes', { exact: true }).selectOption('between 1 and 2');
    },
  },
  {
    name: 'sheet',
    of: ['empty', 'sample'],
    async show(page) {
      // What is proposed is given up first, then the table.
      await page.keyboard.press('Escape');
      await page.keyboard.press('Escape');
      if (await page.getByRole('button', { name: 'Undo change copies' }).isVisible()) {
        await page.getByRole('button', { name: 'Undo change copies' }).click();
      }
      await page.getByRole('button', { name: 'Sheet', exact: true }).click();
    },
  },
  {
    name: 'knit',
    of: ['sample'],
    async show(page) {
      await page.getByRole('button', { name: 'Knit', exact: true }).click();
      const done = page.getByRole('button', { name: 'Row done' });
      // Into the pattern, where there is something to wrap.
      for (let row = 0; row < 26; row++) await done.click();
      await page.getByText('Row 27 of 140').waitFor();
    },
  },
  {
    name: 'piece-fill',
    of: ['sample'],
    async show(page) {
      await goTo(page, 'Piece');
      await press(page, 'Shift+F');
      await page.getByRole('region', { name: 'All-over pattern', exact: true }).scrollIntoViewIfNeeded();
    },
  },
];
