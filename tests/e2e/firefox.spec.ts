/**
 * The editor in a person's own Firefox, where no Chromium is found.
 *
 * It is driven over WebDriver BiDi (https://www.w3.org/TR/webdriver-bidi/), for
 * which Playwright's own Firefox is not needed. Says why not where there is none.
 */
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import puppeteer, { type Browser, type ElementHandle, type Page } from 'puppeteer-core';
import { bandsOf } from '@shared/pattern/index.ts';
import { projectAt, projectFromText } from '@shared/project/index.ts';
import { findFirefox } from '../firefox.ts';
import { expect, test as base } from './app.ts';

const firefox = findFirefox();
const reason = firefox === null ? 'no Firefox is there; WALEWRIGHT_FIREFOX names one' : null;

interface Fixtures {
  readonly mozilla: Browser;
  /** A window of it on the sample project; what it complains of fails the test. */
  readonly fox: Page;
}

const test = base.extend<Fixtures>({
  mozilla: async ({ folder }, use) => {
    const browser = await puppeteer.launch({
      browser: 'firefox',
      executablePath: firefox ?? '',
      userDataDir: join(folder, 'profile'),
      defaultViewport: { width: 1280, height: 800 },
    });
    await use(browser);
    await browser.close();
  },
  fox: async ({ mozilla, host }, use) => {
    const page = await mozilla.newPage();
    const complaints: string[] = [];
    page.on('pageerror', (error) => complaints.push(String(error)));
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    await page.goto(await host.newAddress());
    await page.waitForSelector('[role="grid"]');
    await use(page);
    expect(complaints).toEqual([]);
  },
});

/** The control that is called so, by its own label or by what it says that is not hidden, or null. */
async function controlNow(page: Page, name: string): Promise<ElementHandle | null> {
  const found = await page.evaluateHandle((wanted) => {
    const said = (element: Element): string =>
      element.getAttribute('aria-label') ??
      [...element.childNodes]
        .map((node) => {
          if (node instanceof Element) return node.getAttribute('aria-hidden') === 'true' ? '' : said(node);
          return node.textContent ?? '';
        })
        .join('')
        .trim();
    const labels = [...document.querySelectorAll('label')].filter((label) => said(label) === wanted);
    const labelled = labels.map((label) => label.control).find((control) => control !== null);
    const controls = document.querySelectorAll('button:not([aria-disabled="true"])');
    return labelled ?? [...controls].find((control) => said(control) === wanted) ?? null;
  }, name);
  return found.asElement() as ElementHandle | null;
}

/** The same once it is there. Asked again from here: the page's policy forbids what would wait in it, a function made of text. */
async function called(page: Page, name: string): Promise<ElementHandle> {
  let control: ElementHandle | null = null;
  await expect.poll(async () => (control = await controlNow(page, name)) !== null, { message: name }).toBe(true);
  return control as unknown as ElementHandle;
}

const press = async (page: Page, name: string): Promise<void> => (await called(page, name)).click();

/** How many colours the drawing has, among points a few pixels apart. */
const coloursDrawn = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const colours = new Set<number>();
    for (const canvas of document.querySelectorAll<HTMLCanvasElement>('main canvas')) {
      const { width, height } = canvas;
      // One that shows nothing has no pixels.
      if (!canvas.checkVisibility({ visibilityProperty: true })) continue;
      const { data } = canvas.getContext('2d')?.getImageData(0, 0, width, height) ?? { data: new Uint8ClampedArray() };
      for (let at = 0; at < data.length; at += 4 * 7) {
        if (data[at + 3] === 255)
          colours.add(((data[at] ?? 0) << 16) | ((data[at + 1] ?? 0) << 8) | (data[at + 2] ?? 0));
      }
    }
    return colours.size;
  });

async function chord(page: Page, held: 'Control', key: 's'): Promise<void> {
  await page.keyboard.down(held);
  await page.keyboard.press(key);
  await page.keyboard.up(held);
}

test.describe(reason === null ? 'in Firefox' : `in Firefox (skipped, ${reason})`, () => {
  test.skip(reason !== null, reason ?? '');

  test('a motif is drawn, placed, seen seamed, printed as a sheet and saved', async ({ fox, home }) => {
    mkdirSync(join(home, 'print'));
    await test.step('drawing, with the mouse and by the keyboard', async () => {
      await expect.poll(() => coloursDrawn(fox)).toBeGreaterThan(2);
      await fox.click('[role="grid"]');
      await called(fox, 'Undo draw');
      await fox.keyboard.press('ArrowUp');
      await fox.keyboard.press(' ');
      await press(fox, 'Undo draw');
      await called(fox, 'Redo draw');
    });

    await test.step('placing', async () => {
      await press(fox, 'Piece');
      const copies = await called(fox, 'Copies in each group');
      await copies.click({ count: 3 });
      await fox.keyboard.type('1, 1, 1');
      await fox.keyboard.press('Enter');
      await called(fox, 'Undo change copies');
      await expect.poll(() => coloursDrawn(fox)).toBeGreaterThan(2);
    });

    await test.step('the seamed view', async () => {
      await press(fox, 'Show it seamed');
      await fox.waitForSelector('[role="slider"][aria-label$="seamed, as worn"]');
      await expect.poll(() => coloursDrawn(fox)).toBeGreaterThan(2);
    });

    await test.step('the sheet', async () => {
      await press(fox, 'Sheet');
      await fox.waitForSelector('[data-drawing] svg');
      await press(fox, 'Row list (CSV)');
      await press(fox, 'print, folder');
      await press(fox, 'Choose this folder');
      const written = (): string[] => readdirSync(join(home, 'print')).filter((name) => name.endsWith('.csv'));
      await expect.poll(written).toHaveLength(1);
    });

    await test.step('saving', async () => {
      await chord(fox, 'Control', 's');
      await press(fox, 'Save here');
      const file = join(home, 'Skerry sleeve.walewright');
      const copies = (): number[] =>
        bandsOf(projectAt(projectFromText(readFileSync(file, 'utf8'))))[0]?.groups.map(({ across }) => across) ?? [];
      await fox.waitForSelector('::-p-text(Saved as Skerry sleeve.walewright)');
      await expect.poll(() => readdirSync(home)).toContain('Skerry sleeve.walewright');
      expect(copies()).toEqual([1, 1, 1]);
    });
  });
});
