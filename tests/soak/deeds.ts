/** What a restless person does with the program, one deed at a time. */
import type { Locator, Page } from '@playwright/test';
import type { Random } from './random.ts';

type Deed = (page: Page, random: Random) => Promise<void>;

/** The drawing that takes the keys: the chart, the piece laid open, or the piece closed. */
const drawing = (page: Page): Locator => page.getByRole('main').locator('[role="grid"], [role="slider"]').first();

async function press(page: Page, ...keys: readonly string[]): Promise<void> {
  await drawing(page).focus();
  for (const key of keys) await page.keyboard.press(key);
}

const TOOLS = ['d', 'e', 'l', 'r', 'o', 'f', 's', 'i'];
const SHOWN = ['n', 'v', 'q', 'y', 'Shift+R', 'Shift+F', 't', ']', '['];
const WHOLE = ['Shift+H', 'Shift+V', 'Shift+A', 'Shift+D', 'Shift+W', 'Shift+S', 'Shift+E', 'Shift+I', 'Shift+O'];
const STEPS = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'];

const some = (random: Random, keys: readonly string[], most: number): string[] =>
  Array.from({ length: random.whole(1, most) }, () => random.of(keys));

/** Anywhere on the drawing, however it is zoomed: cells of it may lie under the bars. */
const drag: Deed = async (page, random) => {
  const box = await drawing(page).boundingBox();
  if (!box) throw new Error('There is no drawing to draw on');
  const go = (): Promise<void> =>
    page.mouse.move(box.x + 2 + (box.width - 4) * random.next(), box.y + 2 + (box.height - 4) * random.next());
  await go();
  await page.mouse.down();
  for (let corners = random.whole(0, 4); corners > 0; corners--) await go();
  await page.mouse.up();
};

const undo: Deed = async (page, random) => press(page, ...Array(random.whole(1, 6)).fill('Control+z'));
const redo: Deed = async (page, random) => press(page, ...Array(random.whole(1, 4)).fill('Control+Shift+z'));

const wheel: Deed = async (page, random) => {
  await drawing(page).hover();
  await page.mouse.wheel(random.whole(-60, 60), random.whole(-60, 60));
};

/** Everything that floats is laid down, and no part of a shape is left begun. */
const letGo: Deed = async (page) => press(page, 'Escape', 'Escape', 'd');

const MOTIF: readonly Deed[] = [
  drag,
  drag,
  drag,
  drag,
  async (page, random) => press(page, random.of(TOOLS)),
  async (page, random) => press(page, random.of(SHOWN)),
  async (page, random) => press(page, random.of(WHOLE)),
  async (page, random) => press(page, ...some(random, [...STEPS, ' '], 8)),
  async (page, random) =>
    press(page, 's', 'Control+a', 'Control+c', 'Control+v', ...some(random, [...STEPS, 'Shift+H'], 6), 'Enter'),
  async (page, random) => {
    await press(page, 'a');
    const dialog = page.getByRole('dialog', { name: 'Lettering' });
    await dialog.getByRole('textbox', { name: 'Text' }).fill(random.of(['A', 'I', 'Li']));
    if (random.next() < 0.5) await dialog.getByRole('button', { name: 'Place it on the chart' }).click();
    else await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    await press(page, 'Enter');
  },
  letGo,
  wheel,
  undo,
  redo,
];

const PIECE: readonly Deed[] = [
  async (page, random) => press(page, '.', ...some(random, STEPS, 5).map((key) => `Shift+${key}`)),
  async (page, random) => press(page, '.', ...some(random, ['Shift+PageUp', 'Shift+PageDown'], 3)),
  async (page, random) => press(page, random.of(['f', 'w', 'v', 't'])),
  async (page, random) => press(page, ...some(random, [...STEPS, 'Home', 'End'], 8)),
  async (page, random) => {
    const placings = page.getByRole('radiogroup', { name: 'Possible placings' }).locator('label');
    const count = await placings.count();
    if (count > 0) await placings.nth(random.whole(0, count - 1)).click();
    else await press(page, 'k');
  },
  async (page) => {
    await press(page, 'c');
    await press(page, 'ArrowRight', 'ArrowRight', 'c');
  },
  async (page) => {
    // A fill may be refused where groups stand; both ways it is taken back.
    await press(page, 'Shift+F', 'Control+z');
  },
  async (page, random) => {
    const box = await drawing(page).boundingBox();
    if (box) await page.mouse.move(box.x + box.width * random.next(), box.y + box.height * random.next(), { steps: 5 });
  },
  wheel,
  undo,
  redo,
];

const SHEET: readonly Deed[] = [
  async (page, random) => page.mouse.wheel(0, random.whole(-400, 400)),
  async (page) => {
    await page.keyboard.press('Control+k');
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'hidden' });
  },
  async (page) => page.keyboard.press('Control+z'),
];

/** Presses the button if it is there and can be used. */
async function pressIfThere(button: Locator): Promise<void> {
  if ((await button.count()) > 0 && (await button.first().isEnabled())) await button.first().click();
}

/** Opens a dialog by `open`, if there is anything to open it for, answers in it, and sees it gone. */
async function inReadingDialog(page: Page, open: Locator, answer: (dialog: Locator) => Promise<void>): Promise<void> {
  if ((await open.count()) === 0 || !(await open.isEnabled())) return;
  await open.click();
  const dialog = page.getByRole('dialog', { name: 'Another reading' });
  await dialog.waitFor();
  await answer(dialog);
  if ((await dialog.count()) > 0) await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'hidden' });
}

/** The key of a pedal is heard wherever the keyboard is; where the design cannot be knitted, or the side is asked, it counts nothing. */
const KNIT: readonly Deed[] = [
  async (page, random) => {
    for (let rows = random.whole(1, 12); rows > 0; rows--) await page.keyboard.press('PageDown');
  },
  async (page, random) => {
    for (let rows = random.whole(1, 4); rows > 0; rows--) await page.keyboard.press('PageUp');
  },
  async (page, random) => pressIfThere(page.getByRole('button', { name: random.of(['At the left', 'At the right']) })),
  async (page, random) => pressIfThere(page.getByRole('button', { name: random.of(['At the left', 'At the right']) })),
  async (page, random) => {
    const acts = page.getByRole('main').getByRole('checkbox');
    const count = await acts.count();
    if (count > 0) await acts.nth(random.whole(0, count - 1)).click();
  },
  async (page) => pressIfThere(page.getByRole('button', { name: 'Row done' })),
  async (page, random) =>
    pressIfThere(page.getByRole('button', { name: random.of(['Take the changed design', 'Go on as it was begun']) })),
  async (page, random) => {
    const to = random.whole(0, 60);
    const answer = random.of(['The counter reads this', 'I ripped back to this', 'Begin this piece anew']);
    await inReadingDialog(
      page,
      page.getByRole('button', { name: 'Another reading, or ripped back' }),
      async (dialog) => {
        await dialog.getByLabel('Reading').fill(String(to));
        await page.keyboard.press('Tab');
        await pressIfThere(dialog.getByRole('button', { name: answer }));
      },
    );
  },
  async (page) => inReadingDialog(page, page.getByRole('button', { name: /^The fabric as it hangs/ }), async () => {}),
  async (page, random) => {
    await page.getByRole('button', { name: 'Voice, sound and key' }).click();
    await page.getByLabel('The fabric is seen from').selectOption({ index: random.whole(0, 1) });
    await page.keyboard.press('Escape');
    await page.getByLabel('The fabric is seen from').waitFor({ state: 'hidden' });
  },
  async (page, random) => page.mouse.wheel(0, random.whole(-400, 400)),
  async (page) => page.keyboard.press('Control+z'),
];

const DEEDS = { Motif: MOTIF, Piece: PIECE, Sheet: SHEET, Knit: KNIT } as const;
export type BenchName = keyof typeof DEEDS;

/** Goes to a bench, and waits until it stands there. */
export async function goTo(page: Page, bench: BenchName): Promise<void> {
  await page.getByRole('navigation').getByRole('button', { name: bench, exact: true }).click();
  if (bench === 'Sheet') await page.getByRole('heading', { name: 'What will be printed' }).waitFor();
  else if (bench === 'Knit') {
    const cannot = page.getByRole('button', { name: 'Go to the Piece bench' });
    await page.getByRole('main').locator('.reading').or(cannot).first().waitFor();
  } else await drawing(page).waitFor();
}

/** Does one deed on the bench that is shown, and waits until the page has drawn it. */
export async function doSomething(page: Page, bench: BenchName, random: Random): Promise<void> {
  await random.of(DEEDS[bench])(page, random);
  await page.evaluate(() => new Promise(requestAnimationFrame));
}
