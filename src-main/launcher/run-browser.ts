/** Running the browser host, with a window where there can be one. */
import { pathToFileURL } from 'node:url';
import { START_WINDOW } from '@shared/host/index.ts';
import { type BrowserReason } from '@shared/words/index.ts';
import { terminalWords } from '@shared/words/terminal.ts';
import {
  printAddresses,
  serveUntilStopped,
  startBrowserHost,
  type BrowserHost,
  type Terminal,
} from '../browser-host/index.ts';
import { findChromium, openAppWindow, openDefaultBrowser, sizeFlag } from './browser-window.ts';
import { hasDisplay, sandboxFlags } from './display.ts';
import { takeProfile, type Profile } from './profiles.ts';

export interface BrowserStart {
  readonly why: BrowserReason;
  readonly dataFolder: string;
  readonly openAtStart: string | null;
  readonly terminal: Terminal;
}

/** Serves until the window is closed or somebody ends it; the window then goes before the host. */
export async function runBrowser({ why, dataFolder, openAtStart, terminal }: BrowserStart): Promise<void> {
  const { env, platform } = process;
  const { say } = terminal;
  const chromium = hasDisplay(env, platform) ? findChromium(env, platform) : null;
  const profile = chromium === null ? null : await takeProfile(dataFolder);
  const host = await startBrowserHost({
    dataFolder,
    openAtStart,
    onWindowState: (window, state) => profile?.noteState(window, state),
  });
  await profile?.opens(host.origin);
  say(terminalWords.launcher.why(why));
  const end = new AbortController();
  const ownWindow = chromium !== null && profile !== null ? { chromium, profile } : null;
  let stopPrinting = (): void => undefined;
  // Whoever reads the address may end the program at once, so that is listened for before.
  const window = (async () => {
    stopPrinting = await printAddresses(host, terminal);
    return openWindow(host, ownWindow, say, end.signal);
  })();
  const close = async (): Promise<void> => {
    stopPrinting();
    end.abort();
    try {
      // While the host is there, for a window that outlives it may draw on and keep that in its profile.
      await window;
      await profile?.giveBack();
    } finally {
      await host.close();
    }
  };
  await serveUntilStopped(
    { close },
    window.then((isClosed) => (isClosed ? undefined : forEver())),
  );
}

/** True once the person has closed the window; false, at once, where there is none to wait for. */
async function openWindow(
  host: BrowserHost,
  ownWindow: { readonly chromium: string; readonly profile: Profile } | null,
  say: (line: string) => void,
  end: AbortSignal,
): Promise<boolean> {
  const { env, platform } = process;
  if (!hasDisplay(env, platform)) return false;
  const isClosed = ownWindow !== null && (await showInOwnWindow(host, ownWindow.chromium, ownWindow.profile, end));
  if (end.aborted) return false;
  if (isClosed) {
    say(terminalWords.launcher.windowClosed);
    return true;
  }
  ownWindow?.profile.failed();
  const isOpened = await openDefaultBrowser(platform, await entryAddress(host), end);
  if (!isOpened && !end.aborted) say(terminalWords.launcher.openThere);
  return false;
}

/** True once the person has closed the window, false if it could not stay open or was ended. */
async function showInOwnWindow(
  host: BrowserHost,
  chromium: string,
  profile: Profile,
  end: AbortSignal,
): Promise<boolean> {
  const { window: size } = await host.settings();
  const flags = [...sandboxFlags(process.platform, process.getuid?.() ?? null), sizeFlag(size ?? START_WINDOW)];
  return openAppWindow(chromium, await entryAddress(host), profile.folder, flags, end);
}

/** What a browser is told to open: a file, for a command line is no place for a key. */
async function entryAddress(host: BrowserHost): Promise<string> {
  return pathToFileURL(await host.newEntryPage()).href;
}

function forEver(): Promise<never> {
  return new Promise(() => undefined);
}
