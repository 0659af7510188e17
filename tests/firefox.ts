/** Finds the Firefox that the editor is walked through in, where one is there. */
import { existsSync } from 'node:fs';

const USUAL_PLACES = [
  '/usr/bin/firefox',
  '/usr/bin/firefox-esr',
  '/snap/bin/firefox',
  '/Applications/Firefox.app/Contents/MacOS/firefox',
  'C:\\Program Files\\Mozilla Firefox\\firefox.exe',
];

/** Path of a Firefox, or null. `WALEWRIGHT_FIREFOX` names one for good. */
export function findFirefox(): string | null {
  const named = process.env['WALEWRIGHT_FIREFOX'];
  return [...(named ? [named] : []), ...USUAL_PLACES].find((path) => existsSync(path)) ?? null;
}
