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

/** Serves until the window is closed or somebody ends it. */
export async function runBrowser({ why, dataFolder, openAtStart, say }: BrowserStart): Promise<void> {
  const host = await startBrowserHost({ dataFolder, openAtStart });
  say(words.launcher.why(why));
  say(words.launcher.address(host.address));
  say(words.launcher.howToEnd);
  await serveUntilStopped(host, openWindow(host, dataFolder, say));
}

/** Resolves when the person has closed the window; never where none can tell. */
async function openWindow(host: BrowserHost, dataFolder: string, say: (line: string) => void): Promise<void> {
  const { env, platform } = process;
  if (!hasDisplay(env, platform)) return forEver();
  const chromium = findChromium(env, platform);
  if (chromium !== null && (await showInOwnWindow(chromium, host, dataFolder))) {
    say(words.launcher.windowClosed);
    return;
  }
  if (!(await openDefaultBrowser(platform, host.addressForOnce()))) say(words.launcher.openThere);
  return forEver();
}

/** True once the person has closed the window, false if it could not stay open. */
async function showInOwnWindow(chromium: string, host: BrowserHost, dataFolder: string): Promise<boolean> {
  const profile = join(dataFolder, 'windows', randomUUID());
  await mkdir(profile, { recursive: true, mode: 0o700 });
  const flags = sandboxFlags(process.platform, process.getuid?.() ?? null);
  try {
    return await openAppWindow(chromium, host.addressForOnce(), profile, flags);
  } finally {
    // Chromium's helpers may write for a moment longer.
    await rm(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 }).catch(() => undefined);
  }
}

function forEver(): Promise<never> {
  return new Promise(() => undefined);
}
