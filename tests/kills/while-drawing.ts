/** Host and browser killed together while a hand draws without a rest: at most the last second is missing. */
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { chromium, type BrowserServer, type Page } from 'playwright';
import { gridToText, makeGrid, mirrorAcross } from '@shared/grid/index.ts';
import { emptyProject, projectFromText, projectToText, type Project } from '@shared/project/index.ts';
import { keptWorkFromText } from '../../src-main/services/kept-journal.ts';
import { CHROMIUM_FLAGS, headlessPath } from '../chromium.ts';
import { startBuiltHost, type BuiltHost } from '../e2e/built-host.ts';
import { Chart } from '../e2e/chart.ts';
import type { Chance } from './chance.ts';
import { killBrowser } from './kill-browser.ts';

/** What may be missing, ms. */
const MOST_MISSING_MS = 1000;
const SHORTEST_MS = 1200;
const LONGEST_MS = 4000;

export interface KilledWhileDrawing {
  readonly kills: number;
  /** How old the oldest cell was that was missing, ms; of all kills the worst. */
  readonly worstMs: number;
}

const SIDE = 60;
const NAME = 'Blank';

/** Kills `kills` times. Throws at the first time that more than a second is missing, or nothing comes back. */
export async function killWhileDrawing(kills: number, chance: Chance): Promise<KilledWhileDrawing> {
  const folder = await mkdtemp(join(tmpdir(), 'walewright-kills-'));
  try {
    for (const name of ['home', 'data']) await mkdir(join(folder, name));
    const document = join(folder, 'home', 'blank.walewright');
    await writeFile(document, blankProject());
    let worstMs = 0;
    for (let kill = 1; kill <= kills; kill += 1) {
      const missing = await killOnce(folder, document, SHORTEST_MS + chance() * (LONGEST_MS - SHORTEST_MS));
      if (missing > MOST_MISSING_MS) throw new Error(`Kill ${kill}: what was drawn ${missing} ms before is missing`);
      worstMs = Math.max(worstMs, missing);
    }
    await comesBack(folder);
    return { kills, worstMs };
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

function blankProject(): string {
  const project = emptyProject(NAME, 'motif');
  const [motif] = project.motifs;
  if (!motif) throw new Error('A project has a motif');
  return projectToText({ ...project, motifs: [{ ...motif, grid: makeGrid(SIDE, SIDE, project.mainYarn) }] });
}

/** How old the oldest cell is that is missing after a kill, ms; 0 if none is. */
async function killOnce(folder: string, document: string, afterMs: number): Promise<number> {
  const before = await keptNames(folder);
  const host = await startBuiltHost(join(folder, 'home'), join(folder, 'data'), document);
  const browser = await chromium.launchServer({ executablePath: headlessPath(), args: CHROMIUM_FLAGS });
  const page = await openWindow(browser, host);
  await page.getByRole('heading', { level: 1, name: NAME }).waitFor();
  // What was kept at the kills before is still offered.
  if (before.length > 0) await page.getByRole('region', { name: 'Kept work' }).waitFor();
  const drawn: Drawn[] = [];
  const drawing = draw(page, drawn).catch((error: unknown) => error);
  await setTimeout(afterMs);
  const at = performance.now();
  killBrowser(browser);
  await host.kill();
  const end = await drawing;
  if (drawn.length === 0) throw new Error('Nothing was drawn', { cause: end });
  const [name, ...more] = (await keptNames(folder)).filter((kept) => !before.includes(kept));
  if (name === undefined || more.length > 0) throw new Error(`Not one work was kept, but ${more.length + 1}: ${name}`);
  const cells = (await keptProject(folder, name)).motifs[0]?.grid.cells ?? [];
  const missing = drawn.find(({ cell }) => cells[cell] !== 1);
  return missing ? Math.max(0, Math.round(at - missing.at)) : 0;
}

/** A start without a file brings the newest work back, cell for cell. */
async function comesBack(folder: string): Promise<void> {
  const newest = (await Promise.all((await keptNames(folder)).map((name) => keptProject(folder, name)))).map(
    ({ motifs }) => motifs[0]?.grid ?? makeGrid(1, 1),
  );
  const host = await startBuiltHost(join(folder, 'home'), join(folder, 'data'));
  const browser = await chromium.launchServer({ executablePath: headlessPath(), args: CHROMIUM_FLAGS });
  try {
    const page = await openWindow(browser, host);
    await page
      .getByRole('region', { name: 'Notice' })
      .filter({ hasText: 'was not saved when the program ended' })
      .waitFor();
    // On the fabric nothing is marked; it may be seen from the other side than it was drawn from.
    await page.getByRole('combobox', { name: 'Shown as' }).selectOption('fabric, knit side');
    await page.getByText('the knit side is seen').waitFor();
    const shown = (await new Chart(page).yarns()).join('');
    const isOne = newest
      .flatMap((grid) => [grid, mirrorAcross(grid)])
      .some((grid) => gridToText(grid, '.#').join('') === shown || gridToText(grid, '#.').join('') === shown);
    if (!isOne) throw new Error('What came back is none of what was kept');
  } finally {
    await browser.close();
    await host.kill();
  }
}

async function openWindow(server: BrowserServer, host: BuiltHost): Promise<Page> {
  const browser = await chromium.connect(server.wsEndpoint());
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  // What is run in the page names its functions by this, as tsx writes them.
  await page.addInitScript('globalThis.__name = (named) => named');
  await page.goto(await host.newAddress());
  await page.getByRole('button', { name: 'Commands' }).waitFor();
  return page;
}

interface Drawn {
  readonly cell: number;
  /** When the page had taken it. */
  readonly at: number;
}

/** One stroke over every cell, row by row, until the page is gone. */
async function draw(page: Page, drawn: Drawn[]): Promise<void> {
  const chart = new Chart(page);
  const first = await chart.at(1, 1);
  const next = await chart.at(2, 2);
  await page.mouse.move(first.x, first.y);
  await page.mouse.down();
  for (let step = 0; step < SIDE * SIDE; step += 1) {
    const row = Math.floor(step / SIDE);
    const column = row % 2 === 0 ? step % SIDE : SIDE - 1 - (step % SIDE);
    await page.mouse.move(first.x + (next.x - first.x) * column, first.y + (next.y - first.y) * row);
    drawn.push({ cell: row * SIDE + column, at: performance.now() });
  }
}

async function keptNames(folder: string): Promise<string[]> {
  const names = await readdir(join(folder, 'data', 'recovery')).catch((): string[] => []);
  return names.filter((name) => name.endsWith('.backup'));
}

async function keptProject(folder: string, name: string): Promise<Project> {
  const text = await readFile(join(folder, 'data', 'recovery', name), 'utf8');
  const kept = keptWorkFromText(text);
  if (kept === null || kept.rest === 'damaged') throw new Error(`${name} cannot be read`);
  return projectFromText(kept.text);
}
