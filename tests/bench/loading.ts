/** What the window loads before a person can draw. */
import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { gzipSync } from 'node:zlib';

/** The most that the first load may take, gzipped, in kB. */
export const MOST_KB = 250;

const page = resolve(import.meta.dirname, '../../out/renderer');

/** The built page with its scripts, styles and fonts as they go over the wire, gzipped, in kB. Run `npm run build` first. */
export function firstLoadKb(): number {
  const html = readFileSync(resolve(page, 'index.html'), 'utf8');
  const named = [...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+)"/g)].map((match) => match[1] as string);
  // Styles name the fonts; browsers that run the program take the woff2 of each.
  const fonts = readdirSync(resolve(page, 'assets')).filter((name) => name.endsWith('.woff2'));
  const files = ['index.html', ...named, ...fonts.map((name) => `assets/${name}`)];
  const bytes = files.reduce((sum, name) => sum + gzipSync(readFileSync(resolve(page, name))).length, 0);
  return bytes / 1000;
}
