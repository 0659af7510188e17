/** Files of the built page, changed as by somebody who would like them to be run. */
import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Page } from '@playwright/test';
import type { Gives } from './strangers.ts';

/** All that the built page may ever load, by path; read when a test asks, for tests are listed before there is a build. */
export function assets(): ReadonlyMap<string, string> {
  return new Map(
    readdirSync(resolve(import.meta.dirname, '../../out/renderer/assets'))
      .filter((name) => /\.(?:css|js)$/.test(name))
      .map((name) => [`/assets/${name}`, resolve(import.meta.dirname, '../../out/renderer/assets', name)]),
  );
}

/** The script or style sheet that the build made, changed so that it is seen if it is taken. */
export const tampered: Gives = (path) => {
  const file = assets().get(path);
  if (file === undefined) return null;
  const [type, mark] = path.endsWith('.js')
    ? ['text/javascript', 'globalThis.strangerRan = true;']
    : ['text/css', 'html { --stranger: here; }'];
  return { type, body: mark + readFileSync(file, 'utf8') };
};

/** Whether anything of {@link tampered} was taken. */
export const strangerRan = (page: Page): Promise<boolean> =>
  page.evaluate(
    () =>
      'strangerRan' in globalThis || getComputedStyle(document.documentElement).getPropertyValue('--stranger') !== '',
  );
