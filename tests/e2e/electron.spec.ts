/**
 * The program in Electron's own window.
 *
 * Runs where Electron's binary has been fetched and a window can open; says
 * why not anywhere else.
 */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { _electron, expect, test as base, type ElectronApplication, type Page } from '@playwright/test';
import { projectFromText } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { electronBinary, electronPackage } from '../../src-main/launcher/electron-package.ts';
import { hasDisplay } from '../../src-main/launcher/display.ts';
import { Chart } from './chart.ts';

const root = resolve(import.meta.dirname, '../..');
const electron = electronPackage();
const binary = electron ? electronBinary(electron) : null;
/** Chromium cannot sandbox what root runs on Linux. */
const canSandbox = !(process.platform === 'linux' && process.getuid?.() === 0);

interface Fixtures {
  readonly folder: string;
  readonly program: ElectronApplication;
  readonly page: Page;
}

const test = base.extend<Fixtures>({
  folder: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'walewright-electron-'));
    await use(folder);
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  },
  program: async ({ folder }, use) => {
    const program = await _electron.launch({
      executablePath: binary ?? '',
      args: [root],
      // Playwright turns the sandbox off on Linux unless it is told not to.
      chromiumSandbox: canSandbox,
      env: { ...(process.env as Record<string, string>), WALEWRIGHT_DATA: join(folder, 'data') },
    });
    await use(program);
    // A window with unsaved work would ask first.
    await program.evaluate(({ app }) => app.exit(0)).catch(() => undefined);
    await program.close().catch(() => undefined);
  },
  page: async ({ program }, use) => {
    const page = await program.firstWindow();
    await page.getByRole('button', { name: 'Commands' }).waitFor();
    await use(page);
  },
});

/** Why these tests cannot run here, or null. */
function obstacle(): string | null {
  if (binary === null) return "Electron's binary has not been fetched: node node_modules/electron/install.js";
  if (!hasDisplay(process.env, process.platform)) return 'there is no display: xvfb-run gives one';
  if (!existsSync(join(root, 'out/main/electron.cjs'))) return 'the program has not been built: npm run build';
  return null;
}

const reason = obstacle();

// The reason stands in the title, where every reporter shows it.
test.describe(reason === null ? 'in Electron' : `in Electron (skipped, ${reason})`, () => {
  test.skip(reason !== null, reason ?? '');

  test('opens one window with the sample project in it', async ({ program, page }) => {
    expect(page.url()).toBe('walewright://page/');
    await expect(page.getByText('Skerry sleeve')).toBeVisible();
    const windows = await program.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows().map((window) => ({ isVisible: window.isVisible(), title: window.getTitle() })),
    );
    expect(windows).toEqual([{ isVisible: true, title: 'Skerry sleeve – Walewright' }]);
  });

  test('gives the page nothing of Node or Electron but one bridge', async ({ page }) => {
    const seen = await page.evaluate(() => {
      const here = window as unknown as Record<string, unknown>;
      return {
        node: ['require', 'process', 'module', 'Buffer', 'global', 'ipcRenderer'].filter((name) => name in here),
        bridge: Object.keys(here['walewrightBridge'] as object).sort(),
      };
    });
    expect(seen).toEqual({ node: [], bridge: ['call', 'listen'] });
  });

  test('refuses calls that break the contract', async ({ page }) => {
    const answers = await page.evaluate(async () => {
      type Bridge = { call(method: unknown, params: unknown): Promise<unknown> };
      const { call } = (window as unknown as { walewrightBridge: Bridge }).walewrightBridge;
      return [
        await call('host.describe', {}),
        await call('constructor', {}),
        await call('documents.read', { path: 1 }),
      ];
    });
    expect(answers).toMatchObject([
      { ok: true, value: { shell: 'electron', hasFileDialogs: true, hasPrintDialog: true } },
      { ok: false, problem: { code: 'request-invalid' } },
      { ok: false, problem: { code: 'request-invalid' } },
    ]);
  });

  test('lets the page go nowhere, open nothing and ask for nothing', async ({ program, page }) => {
    const tried = await page.evaluate(async () => ({
      opened: window.open('https://walewright.invalid/') !== null,
      location: await navigator.permissions.query({ name: 'geolocation' }).then(({ state }) => state),
      fetched: await fetch('https://walewright.invalid/').then(
        () => true,
        () => false,
      ),
    }));
    expect(tried).toEqual({ opened: false, location: 'denied', fetched: false });
    await page.evaluate(() => void (location.href = 'https://walewright.invalid/'));
    await page.getByRole('button', { name: 'Commands' }).click();
    expect(page.url()).toBe('walewright://page/');
    expect(await program.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)).toBe(1);
  });

  test('runs the page in the sandbox', async ({ program, page }) => {
    test.skip(!canSandbox, 'root has no sandbox on Linux');
    const found = await program.evaluate(({ BrowserWindow, app }) => {
      const [window] = BrowserWindow.getAllWindows();
      const renderer = app.getAppMetrics().find(({ pid }) => pid === window?.webContents.getOSProcessId());
      // Electron says this on Windows and macOS alone.
      return { pid: renderer?.pid ?? 0, sandboxed: renderer?.sandboxed ?? null };
    });
    if (process.platform === 'linux') {
      // proc_pid_status(5): mode 2 is SECCOMP_MODE_FILTER, Chromium's second layer.
      expect(readFileSync(`/proc/${found.pid}/status`, 'utf8')).toMatch(/^Seccomp:\s*2$/m);
    } else expect(found.sandboxed).toBe(true);
    await expect(page.getByRole('grid')).toBeVisible();
  });

  test("saves a project where the platform's dialog says, and remembers it", async ({ program, page, folder }) => {
    const path = join(folder, 'sleeve.walewright');
    await program.evaluate(({ dialog }, filePath) => {
      dialog.showSaveDialog = (async () => ({ canceled: false, filePath })) as typeof dialog.showSaveDialog;
    }, path);
    const chart = new Chart(page);
    await chart.click(1, 18);
    await page.keyboard.press('ControlOrMeta+s');
    await expect(page.getByText('Saved as sleeve.walewright.')).toBeAttached();
    const project = projectFromText(readFileSync(path, 'utf8'));
    expect(project.name).toBe('Skerry sleeve');
    // Topmost row, first stitch: ground in the sample, contrast now.
    expect(project.motifs[0]?.grid.cells[17 * 14]).toBe(1);
  });

  test('runs a command that is chosen in the menu', async ({ program, page }) => {
    await program.evaluate(({ Menu }) => {
      const items = Menu.getApplicationMenu()?.items.flatMap((column) => column.submenu?.items ?? []) ?? [];
      items.find(({ label }) => label === 'Go to Sheet')?.click();
    });
    await expect(page.getByRole('navigation').locator('[aria-current]')).toHaveText('Sheet');
  });

  test('asks before it closes on unsaved work, and closes when told to', async ({ program, page }) => {
    await new Chart(page).click(1, 18);
    await expect(page.getByText('not saved')).toBeVisible();
    const close = () => program.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.close());
    await close();
    await expect(page.getByText('Save "Skerry sleeve" first?')).toBeVisible();
    await page.getByRole('button', { name: 'Stay here' }).click();
    expect(await program.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)).toBe(1);
    await close();
    const closed = program.waitForEvent('close');
    await page.getByRole('button', { name: 'Leave without saving' }).click();
    await closed;
  });

  /** Answers the boxes of the platform with the button of that name, and writes down what they said. */
  async function answerBoxes(program: ElectronApplication, button: string): Promise<() => Promise<string[]>> {
    await program.evaluate(({ dialog }, wanted) => {
      const messages: string[] = [];
      Object.assign(globalThis, { messages });
      const show = async (_owner: unknown, options: { message: string; buttons?: string[] }) => {
        messages.push(options.message);
        return { response: options.buttons?.indexOf(wanted) ?? -1, checkboxChecked: false };
      };
      dialog.showMessageBox = show as unknown as typeof dialog.showMessageBox;
    }, button);
    return () => program.evaluate(() => (globalThis as unknown as { messages: string[] }).messages);
  }
  /** What the window shows, asked of Electron: Playwright loses sight of a page whose process has ended. */
  const shown = (program: ElectronApplication): Promise<string> =>
    program.evaluate(async ({ BrowserWindow }) => {
      const page = BrowserWindow.getAllWindows()[0]?.webContents;
      return page && !page.isCrashed() ? page.executeJavaScript('document.body.innerText') : '';
    });

  test('says that the page has ended, loads it again, and offers the work that was kept', async ({
    program,
    page,
    folder,
  }) => {
    const { ended } = words.windowTrouble;
    const messages = await answerBoxes(program, ended.reload);
    await new Chart(page).click(1, 18);
    await expect(page.getByText('not saved')).toBeVisible();
    // Work is kept within a second; until then there is nothing to offer.
    const recovery = join(folder, 'data', 'recovery');
    const kept = (): string[] => (existsSync(recovery) ? readdirSync(recovery) : []);
    await expect.poll(() => kept().filter((name) => name.endsWith('.backup')).length).toBe(1);
    await program.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer(),
    );
    await expect.poll(messages).toEqual([ended.title]);
    await expect.poll(() => shown(program)).toContain('"Skerry sleeve" was not saved');
  });

  test('lets a page that hangs with unsaved work be closed', async ({ program, page }) => {
    const { hanging } = words.windowTrouble;
    await answerBoxes(program, hanging.close);
    await new Chart(page).click(1, 18);
    await expect(page.getByText('not saved')).toBeVisible();
    const closed = program.waitForEvent('close');
    await program.evaluate(({ BrowserWindow }) => {
      const window = BrowserWindow.getAllWindows()[0];
      void window?.webContents.executeJavaScript('for (;;) {}').catch(() => undefined);
      window?.close();
    });
    // The page cannot be asked; the box, once it is answered, ends the program.
    await closed;
  });
});
