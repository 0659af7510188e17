/** Opening the program in a browser. */
import { spawn } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

type Variables = Readonly<Record<string, string | undefined>>;

/** Browsers that can show a page as a window of its own. */
const ON_PATH = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge', 'msedge'];
const ON_MAC = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];
const ON_WINDOWS = [
  'Chromium\\Application\\chrome.exe',
  'Google\\Chrome\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
];

/** A Chromium on this machine, or null. */
export function findChromium(
  variables: Variables,
  platform: NodeJS.Platform,
  isThere: (path: string) => boolean = canRun,
): string | null {
  return candidates(variables, platform).find(isThere) ?? null;
}

function candidates(variables: Variables, platform: NodeJS.Platform): string[] {
  if (platform === 'darwin') return ON_MAC;
  if (platform === 'win32') {
    const roots = ['LOCALAPPDATA', 'PROGRAMFILES', 'PROGRAMFILES(X86)'].map((name) => variables[name] ?? '');
    return roots.filter((root) => root !== '').flatMap((root) => ON_WINDOWS.map((path) => `${root}\\${path}`));
  }
  const folders = (variables['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  return ON_PATH.flatMap((name) => folders.map((folder) => join(folder, name)));
}

function canRun(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** What makes a Chromium open its window this large: its frame is counted, as the page tells it. */
export function sizeFlag({ width, height }: { readonly width: number; readonly height: number }): string {
  return `--window-size=${width},${height}`;
}

/**
 * Opens a window of its own; resolves with true when the person has closed it,
 * false if it could not stay open. `end` closes it, or keeps it from opening.
 */
export function openAppWindow(
  chromium: string,
  address: string,
  profileFolder: string,
  flags: readonly string[],
  end: AbortSignal,
): Promise<boolean> {
  if (end.aborted) return Promise.resolve(false);
  const window = spawn(
    chromium,
    [
      `--app=${address}`,
      // A profile of its own keeps the window apart from the person's browsing, and its process ours to wait for.
      `--user-data-dir=${profileFolder}`,
      '--no-first-run',
      '--no-default-browser-check',
      '--disable-background-networking',
      '--disable-sync',
      ...flags,
    ],
    { stdio: 'ignore' },
  );
  end.addEventListener('abort', () => window.kill());
  return new Promise((resolve) => {
    window.on('error', () => resolve(false));
    window.on('exit', (code) => resolve(code === 0));
  });
}

/** How the platform opens an address in the person's browser. */
export function defaultBrowserCommand(platform: NodeJS.Platform, address: string): readonly [string, ...string[]] {
  if (platform === 'darwin') return ['open', address];
  if (platform === 'win32') return ['rundll32', 'url.dll,FileProtocolHandler', address];
  return ['xdg-open', address];
}

/** Resolves with false if the platform could not, or when `end` aborts: some openers last as long as the browser. */
export function openDefaultBrowser(platform: NodeJS.Platform, address: string, end: AbortSignal): Promise<boolean> {
  if (end.aborted) return Promise.resolve(false);
  const [command, ...given] = defaultBrowserCommand(platform, address);
  return new Promise((resolve) => {
    const opener = spawn(command, given, { stdio: 'ignore' });
    opener.on('error', () => resolve(false));
    opener.on('exit', (code) => resolve(code === 0));
    end.addEventListener('abort', () => resolve(false));
  });
}
