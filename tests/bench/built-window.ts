/** The built window with a project in it, in a Chromium of its own. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright';
import { projectToText, type Project } from '@shared/project/index.ts';
import { startBrowserHost } from '../../src-main/browser-host/index.ts';
import { CHROMIUM_FLAGS, headlessPath } from '../chromium.ts';
import { FilePanel } from '../e2e/file-panel.ts';
import { slowPage } from './slowed.ts';

/**
 * Opens a project in a window that nobody has used before. `isLeast`: another is
 * measured against it, so it is not held up when the bench itself is tested.
 */
export type OpenWindow = (project: Project, isLeast?: boolean) => Promise<Page>;

/** Host and browser that a bench has to itself. */
export interface Stand {
  readonly browser: Browser;
  /** The folder that the program's dialogs begin in. */
  readonly home: string;
  /** An address that lets one window in. */
  readonly newAddress: () => Promise<string>;
  readonly open: OpenWindow;
}

/** Starts host and browser, and ends them whatever happens. */
export async function withStand<T>(use: (stand: Stand) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'walewright-window-'));
  const home = join(folder, 'home');
  mkdirSync(home);
  const host = await startBrowserHost({ dataFolder: join(folder, 'data'), homeFolder: home });
  const browser = await chromium.launch({ executablePath: headlessPath(), args: CHROMIUM_FLAGS });
  const newAddress = (): Promise<string> => host.newAddress();
  let opened = 0;
  const open: OpenWindow = async (project, isLeast = false) => {
    const file = `project ${++opened}.walewright`;
    writeFileSync(join(home, file), projectToText(project));
    const page = await windowOf(browser);
    if (!isLeast) await slowPage(page);
    await page.goto(await newAddress());
    await page.getByRole('button', { name: 'Commands' }).waitFor();
    await page.keyboard.press('Control+O');
    await new FilePanel(page).openProject(file, project.name);
    return page;
  };
  try {
    return await use({ browser, home, newAddress, open });
  } finally {
    await browser.close();
    await host.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The same for those that open windows and no more. */
export async function withWindows<T>(use: (open: OpenWindow) => Promise<T>): Promise<T> {
  return withStand(({ open }) => use(open));
}

/** An empty page of a browser that has no other. */
export async function windowOf(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  const page = await context.newPage();
  // What is handed to the page has gone through a compiler that asks for this.
  await page.addInitScript('globalThis.__name = (named) => named');
  page.on('pageerror', (error) => console.error(error));
  return page;
}
