/**
 * Host and browser killed at random moments while rows are counted. After each
 * start the piece stands at the last row that was shown as done and kept, or at
 * the one that was in hand; a row that is shown where nothing can be kept says so.
 */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { chromium, type Page } from 'playwright';
import { projectAt, projectToText, sampleProject } from '@shared/project/index.ts';
import { CHROMIUM_FLAGS, headlessPath } from '../chromium.ts';
import { startBuiltHost } from '../e2e/built-host.ts';
import { settled } from '../written-projects.ts';
import type { Chance } from './chance.ts';
import { killBrowser } from './kill-browser.ts';

/** Of a piece; the next one is begun where fewer are left than can be counted before a kill. */
const ROWS = 300;
const MOST_ROWS_A_KILL = 150;
/** How long is knitted before a kill, ms, and how much later the second of the two is killed. */
const LONGEST_MS = 900;
const LONGEST_BETWEEN_MS = 300;
const NAME = 'Counted';

export interface KilledWhileKnitting {
  readonly kills: number;
  readonly rows: number;
  /** After so many of them the row in hand was on the disk, though it was not shown yet. */
  readonly inHand: number;
}

/** What a page showed last: the reading, and whether it was kept. */
interface Shown {
  reading: number;
  kept: number;
  pressed: number;
}

const NOTHING: Shown = { reading: 0, kept: 0, pressed: 0 };

/** Kills `kills` times. Throws at the first time that the piece stands elsewhere than it was shown. */
export async function killWhileKnitting(kills: number, chance: Chance): Promise<KilledWhileKnitting> {
  const folder = await mkdtemp(join(tmpdir(), 'walewright-kills-'));
  try {
    for (const name of ['home', 'data']) await mkdir(join(folder, name));
    const pieceOf = async (kill: number): Promise<string> => {
      const path = join(folder, 'home', `counted ${kill}.walewright`);
      await writeFile(path, tallProject());
      return path;
    };
    let document = await pieceOf(1);
    let [rows, inHand] = [0, 0];
    let before: Shown = NOTHING;
    for (let kill = 1; kill <= kills; kill += 1) {
      const after = await killOnce(folder, document, before, chance, `Kill ${kill}`);
      if (after.stood > before.kept) inHand += 1;
      before = after.shown;
      if (kill < kills && before.pressed <= ROWS - MOST_ROWS_A_KILL) continue;
      const { stood } = await killOnce(folder, document, before, null, `The start after kill ${kill}`);
      rows += stood;
      if (stood > before.kept) inHand += 1;
      [document, before] = [await pieceOf(kill + 1), NOTHING];
    }
    return { kills, rows, inHand };
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

function tallProject(): string {
  const sample = projectAt(sampleProject());
  const shape = { kind: 'rectangle', stitches: 96, rows: ROWS } as const;
  return projectToText({ ...settled(sample, { piece: { ...sample.piece, shape } }).whole, name: NAME });
}

/** Looks where the piece stands, and unless `chance` is null counts rows until a kill. */
async function killOnce(
  folder: string,
  document: string,
  before: Shown,
  chance: Chance | null,
  about: string,
): Promise<{ readonly stood: number; readonly shown: Shown }> {
  const host = await startBuiltHost(join(folder, 'home'), join(folder, 'data'), document);
  const server = await chromium.launchServer({ executablePath: headlessPath(), args: CHROMIUM_FLAGS });
  try {
    const browser = await chromium.connect(server.wsEndpoint());
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    // What is run in the page names its functions by this, as tsx writes them.
    await page.addInitScript('globalThis.__name = (named) => named');
    await page.goto(await host.newAddress());
    await page.getByRole('heading', { level: 1, name: NAME }).waitFor();
    await page.getByRole('button', { name: 'Knit', exact: true }).click();
    const reading = page.locator('.reading');
    await reading.waitFor();
    const stood = Number(await reading.textContent());
    if (stood < before.kept || stood > before.pressed) {
      throw new Error(`${about}: ${stood} rows, where ${before.kept} were shown as kept and ${before.pressed} pressed`);
    }
    if (chance === null) return { stood, shown: before };
    // It starts at the right.
    if (stood > 0) await page.getByRole('button', { name: stood % 2 === 0 ? 'At the right' : 'At the left' }).click();
    await page.getByRole('button', { name: 'Row done' }).waitFor();
    const shown: Shown = { reading: stood, kept: stood, pressed: stood };
    let begin = (): void => undefined;
    const isBegun = new Promise<void>((resolve) => (begin = resolve));
    const knitting = knit(page, shown, begin).catch((error: unknown) => error);
    const end = await Promise.race([isBegun, knitting]);
    if (end instanceof Error) throw new Error(`${about}: no row was counted`, { cause: end });
    await setTimeout(chance() * LONGEST_MS);
    const between = chance() < 0.4 ? 0 : chance() * LONGEST_BETWEEN_MS;
    const hostFirst = chance() < 0.5;
    if (hostFirst) await host.kill();
    else killBrowser(server);
    await setTimeout(between);
    if (hostFirst) killBrowser(server);
    else await host.kill();
    await knitting;
    return { stood, shown };
  } finally {
    killBrowser(server);
    await host.kill();
  }
}

/** Presses for a row as soon as the one before is shown, until the page is gone; says when the first one is. */
async function knit(page: Page, shown: Shown, begin: () => void): Promise<void> {
  let next = (): void => undefined;
  await page.exposeFunction('showsRow', (reading: number, isKept: boolean) => {
    shown.reading = reading;
    if (isKept) shown.kept = Math.max(shown.kept, reading);
    next();
  });
  await page.evaluate(() => {
    const { showsRow } = globalThis as unknown as { showsRow: (reading: number, isKept: boolean) => void };
    const tell = (): void => {
      const reading = document.querySelector('.reading')?.textContent;
      if (reading) showsRow(Number(reading), document.querySelector('main [role="alert"]') === null);
    };
    new MutationObserver(tell).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  const gone = new Promise<never>((_, reject) => page.once('close', () => reject(new Error('The page is gone'))));
  gone.catch(() => undefined);
  for (;;) {
    const wanted = shown.reading + 1;
    if (wanted > ROWS) throw new Error(`More than ${MOST_ROWS_A_KILL} rows were counted before a kill`);
    shown.pressed = wanted;
    const isShown = new Promise<void>((resolve) => {
      next = () => void (shown.reading >= wanted && resolve());
    });
    await page.keyboard.press('PageDown');
    await Promise.race([isShown, gone]);
    begin();
  }
}
