/** Running the browser host, with a window where there can be one. */
import { mkdir, rm } from 'node:fs/promises';
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { words, type BrowserReason } from '@shared/words/index.ts';
import { serveUntilStopped, startBrowserHost, type BrowserHost } from '../browser-host/index.ts';
import { findChromium, openAppWindow, openDefaultBrowser } from './browser-window.ts';
import { hasDisplay, sandboxFlags } from './display.ts';

export interface BrowserStart {
  readonly why: BrowserReason;
  readonly dataFolder: string;
  readonly openAtStart: string | null;
  readonly say: (line: string) => void;
}

/** Serves until the window is closed or somebody ends it; the window goes with the host. */
export async function runBrowser({ why, dataFolder, openAtStart, say }: BrowserStart): Promise<void> {
  const host = await startBrowserHost({ dataFolder, openAtStart });
  say(words.launcher.why(why));
  say(words.launcher.address(host.address));
  say(words.launcher.howToEnd);
  const end = new AbortController();
  const window = openWindow(host, dataFolder, say, end.signal);
  await serveUntilStopped(
    host,
    window.then((isClosed) => (isClosed ? undefined : forEver())),
  );
  end.abort();
  await window;
}

/** True once the person has closed the window; false, at once, where there is none to wait for. */
async function openWindow(
  host: BrowserHost,
  dataFolder: string,
  say: (line: string) => void,
  end: AbortSignal,
): Promise<boolean> {
  const { env, platform } = process;
  if (!hasDisplay(env, platform)) return false;
  const chromium = findChromium(env, platform);
  const isClosed = chromium !== null && (await showInOwnWindow(chromium, host, dataFolder, end));
  if (end.aborted) return false;
  if (isClosed) say(words.launcher.windowClosed);
  else if (!(await openDefaultBrowser(platform, host.addressForOnce()))) say(words.launcher.openThere);
  return isClosed;
}

/** True once the person has closed the window, false if it could not stay open or was ended. */
async function showInOwnWindow(
  chromium: string,
  host: BrowserHost,
  dataFolder: string,
  end: AbortSignal,
): Promise<boolean> {
  const profile = join(dataFolder, 'windows', randomUUID());
  await mkdir(profile, { recursive: true, mode: 0o700 });
  const flags = sandboxFlags(process.platform, process.getuid?.() ?? null);
  try {
    return await openAppWindow(chromium, host.addressForOnce(), profile, flags, end);
  } finally {
    // Chromium's helpers may write for a moment longer.
    await rm(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 }).catch(() => undefined);
  }
}

function forEver(): Promise<never> {
  return new Promise(() => undefined);
}
