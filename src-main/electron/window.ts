/** The one window. */
import { join } from 'node:path';
import { app, BrowserWindow, nativeTheme } from 'electron';
import { LEAST_WINDOW, type HostEvent, type Params } from '@shared/host/index.ts';
import { words } from '@shared/words/index.ts';
import { programFolder } from '../services/index.ts';
import { EVENT_CHANNEL } from './channels.ts';
import { closeGuard } from './close-guard.ts';
import { PAGE_ADDRESS } from './page-protocol.ts';
import { pageRights } from './page-rights.ts';
import { watchPage } from './page-watch.ts';
import { troubleBoxes } from './trouble-boxes.ts';

export interface MainWindow {
  readonly browser: BrowserWindow;
  tell(event: HostEvent): void;
  setState(state: Params<'window.setState'>): void;
  /** Brings it to the front, out of the dock or task bar if need be. */
  show(): void;
}

/** The page's paper, so that no white flashes before it is there. */
const PAPER = { light: '#f6f4ee', dark: '#14171d' };

/** How long the page may take to say that it is there. */
const PATIENCE_MS = 5000;

/** Opens it so large, its frame counted. */
export function openWindow({ width, height }: { readonly width: number; readonly height: number }): MainWindow {
  const browser = new BrowserWindow({
    width,
    height,
    minWidth: LEAST_WINDOW.width,
    minHeight: LEAST_WINDOW.height,
    show: false,
    title: words.shell.program,
    // The other platforms take it from the installed program.
    ...(process.platform === 'linux' ? { icon: join(programFolder(), 'resources/icons/png/256x256.png') } : {}),
    backgroundColor: nativeTheme.shouldUseDarkColors ? PAPER.dark : PAPER.light,
    webPreferences: {
      preload: join(programFolder(), 'out', 'preload', 'preload.cjs'),
      ...pageRights(app.isPackaged),
    },
  });
  const tell = (event: HostEvent): void => {
    if (!browser.isDestroyed()) browser.webContents.send(EVENT_CHANNEL, event);
  };
  const watch = watchPage({
    ...troubleBoxes(browser),
    isAnswering: () => answersSoon(browser),
    reload: () => void browser.loadURL(PAGE_ADDRESS),
    close: () => browser.destroy(),
  });
  const guard = closeGuard(() => {
    tell({ kind: 'closing' });
    void watch.wasAsked();
  });

  browser.once('ready-to-show', () => browser.show());
  browser.on('close', (event) => {
    if (!guard.mayClose()) event.preventDefault();
  });
  browser.on('page-title-updated', (event) => event.preventDefault());
  browser.webContents.on('render-process-gone', (_event, { reason }) => {
    guard.pageEnded();
    void watch.ended(reason);
  });
  browser.webContents.on('unresponsive', () => void watch.hangs());
  browser.webContents.on('responsive', () => watch.answersAgain());
  void browser.loadURL(PAGE_ADDRESS);

  return {
    browser,
    tell,
    setState({ title, isUnsaved, path }) {
      guard.setUnsaved(isUnsaved);
      if (browser.isDestroyed()) return;
      browser.setTitle(words.menu.windowTitle(title, isUnsaved, words.shell.program));
      // macOS shows these on the window itself; elsewhere they do nothing.
      browser.setDocumentEdited(isUnsaved);
      browser.setRepresentedFilename(path ?? '');
    },
    show() {
      if (browser.isMinimized()) browser.restore();
      browser.show();
      browser.focus();
    },
  };
}

/** True if the page answers before a person would call it stuck; one that is asked by a dialog still answers. */
async function answersSoon({ webContents }: BrowserWindow): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<boolean>((resolve) => {
    timer = setTimeout(() => resolve(false), PATIENCE_MS);
  });
  const answer = webContents.executeJavaScript('0').then(
    () => true,
    // It has ended, and that is said by itself.
    () => true,
  );
  return Promise.race([answer, late]).finally(() => clearTimeout(timer));
}
