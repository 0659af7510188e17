import { describe, expect, it } from 'vitest';
import { resolve } from 'node:path';
import { sourceTree } from '../architecture/imports.ts';

const sources = sourceTree(resolve(import.meta.dirname, '../..'));

/** What icons are given that the build does not write out (electron.vite.config.ts): all but their size, and that they are not read aloud. */
function givenTo(text: string): string[] {
  const names = [...text.matchAll(/import (\w+) from '@lucide\/svelte\/icons\//g)].map(([, name]) => name);
  if (names.length === 0) return [];
  return [...text.matchAll(new RegExp(`<(?:${names.join('|')}|Icon)\\b([^>]*)/>`, 'g'))]
    .map(([, given = '']) =>
      given
        .replace(/size=\{\w+\}/, '')
        .replace('aria-hidden="true"', '')
        .trim(),
    )
    .filter((given) => given !== '');
}

describe('an icon', () => {
  it('is given its size alone and hidden from reading aloud', () => {
    const given = sources.files.flatMap((file) => givenTo(sources.read(file)).map((what) => `${file}: ${what}`));
    expect(given).toEqual([]);
  });

  it('that is given more is seen', () => {
    const imported = "import Slash from '@lucide/svelte/icons/slash';";
    expect(givenTo(`${imported}<Slash size={20} aria-hidden="true" /><Slash size={16} />`)).toEqual([]);
    expect(givenTo(`${imported}<Slash color="red" size={20} />`)).toEqual(['color="red"']);
  });
});
