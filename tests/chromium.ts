/** Finds the Chromium that the end-to-end tests, the bench and the screens drive. */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from 'playwright';

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** Launch flags: no sandbox as root (Chromium refuses otherwise), and no traffic of its own. */
export const CHROMIUM_FLAGS = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

/** Path of a Chromium, or null. `WALEWRIGHT_CHROMIUM` names one for good. */
export function findChromium(): string | null {
  const named = process.env['WALEWRIGHT_CHROMIUM'];
  const candidates = [...(named ? [named] : []), ...USUAL_PLACES, chromium.executablePath()];
  return candidates.find((path) => path !== '' && existsSync(path)) ?? null;
}

/** {@link findChromium}; throws with what to install where there is none. */
export function chromiumPath(): string {
  const found = findChromium();
  if (found === null) throw new Error(HOW_TO_GET_CHROMIUM);
  return found;
}

const HEADLESS = '/usr/bin/chromium-headless-shell';

/**
 * The Chromium of tests that need no more than a page: Debian's headless one
 * where it is there. It is built of the same source without what only a desktop
 * has, and takes two thirds of the time. Otherwise as {@link chromiumPath}.
 */
export function headlessPath(): string {
  return !process.env['WALEWRIGHT_CHROMIUM'] && existsSync(HEADLESS) ? HEADLESS : chromiumPath();
}

export const HOW_TO_GET_CHROMIUM = [
  'No Chromium was found. Install one and run the tests again:',
  '  Debian, Ubuntu:  sudo apt-get install chromium',
  '  Fedora:          sudo dnf install chromium',
  '  macOS:           brew install --cask chromium',
  '  any platform:    npx playwright install chromium',
  'or set WALEWRIGHT_CHROMIUM to the path of a Chromium or Chrome.',
].join('\n');

/** Installs Chromium with apt when root on Debian and there is none; otherwise does nothing. */
export function installChromium(): void {
  if (findChromium() !== null || process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return;
  console.log('No Chromium found; installing it with apt-get.');
  execFileSync('apt-get', ['update', '-qq'], { stdio: 'inherit' });
  install('chromium');
  try {
    install('chromium-headless-shell');
  } catch {
    console.log('There is no headless one; the end-to-end tests take longer without.');
  }
}

function install(what: string): void {
  execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', what], {
    stdio: 'inherit',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
}
