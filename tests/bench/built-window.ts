/** The built window with a project in it, in a Chromium of its own. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright';
import { projectToText, type Project } from '@shared/project/index.ts';
import { startBrowserHost } from '../../src-main/browser-host/index.ts';
import { CHROMIUM_FLAGS, chromiumPath } from '../chromium.ts';
import { FilePanel } from '../e2e/file-panel.ts';

/** Opens a project in a window that nobody has used before. */
export type OpenWindow = (project: Project) => Promise<Page>;

/** Starts host and browser, and ends them whatever happens. */
export async function withWindows<T>(use: (open: OpenWindow) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'walewright-window-'));
  const home = join(folder, 'home');
  mkdirSync(home);
  const host = await startBrowserHost({ dataFolder: join(folder, 'data'), homeFolder: home });
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: CHROMIUM_FLAGS });
  let opened = 0;
  try {
    return await use(async (project) => {
      const file = `project ${++opened}.walewright`;
      writeFileSync(join(home, file), projectToText(project));
      const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
      const page = await context.newPage();
      // What is handed to the page has gone through a compiler that asks for this.
      await page.addInitScript('globalThis.__name = (named) => named');
      page.on('pageerror', (error) => console.error(error));
      await page.goto(await host.newAddress());
      await page.getByRole('button', { name: 'Commands' }).waitFor();
      await page.keyboard.press('Control+O');
      await new FilePanel(page).openProject(file, project.name);
      return page;
    });
  } finally {
    await browser.close();
    await host.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
