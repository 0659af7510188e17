/** The one window. */
import { join } from 'node:path';
import { BrowserWindow, nativeTheme } from 'electron';
import type { HostEvent, Params } from '@shared/host/index.ts';
import { words } from '@shared/words/index.ts';
import { programFolder } from '../services/index.ts';
import { EVENT_CHANNEL } from './channels.ts';
import { closeGuard } from './close-guard.ts';
import { PAGE_ADDRESS } from './page-protocol.ts';

export interface MainWindow {
  readonly browser: BrowserWindow;
  tell(event: HostEvent): void;
  setState(state: Params<'window.setState'>): void;
  /** Brings it to the front, out of the dock or task bar if need be. */
  show(): void;
}

/** The page's paper, so that no white flashes before it is there. */
const PAPER = { light: '#f6f4ee', dark: '#14171d' };

export function openWindow(): MainWindow {
  const browser = new BrowserWindow({
    width: 1280,
    height: 800,
    minWidth: 480,
    minHeight: 400,
    show: false,
    title: words.shell.program,
    // The other platforms take it from the installed program.
    ...(process.platform === 'linux' ? { icon: join(programFolder(), 'resources/icons/png/256x256.png') } : {}),
    backgroundColor: nativeTheme.shouldUseDarkColors ? PAPER.dark : PAPER.light,
    webPreferences: {
      preload: join(programFolder(), 'out', 'preload', 'preload.cjs'),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webSecurity: true,
      webviewTag: false,
      spellcheck: false,
    },
  });
  const tell = (event: HostEvent): void => {
    if (!browser.isDestroyed()) browser.webContents.send(EVENT_CHANNEL, event);
  };
  const guard = closeGuard(() => tell({ kind: 'closing' }));

  browser.once('ready-to-show', () => browser.show());
  browser.on('close', (event) => {
    if (!guard.mayClose()) event.preventDefault();
  });
  browser.on('page-title-updated', (event) => event.preventDefault());
  browser.webContents.on('render-process-gone', () => guard.pageEnded());
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
