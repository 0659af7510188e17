/** What the README shows and names is there. */
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const readme = readFileSync(join(root, 'README.md'), 'utf8');
const found = (pattern: RegExp): string[] => [...readme.matchAll(pattern)].map(([, what = '']) => what);

describe('the README', () => {
  it('shows two benches in the smaller window', () => {
    const pictures = found(/!\[[^\]]+\]\(([^)]+)\)/g);
    expect(pictures).toHaveLength(2);
    for (const picture of pictures) {
      const { width, height } = PNG.sync.read(readFileSync(join(root, picture)));
      expect({ picture, width, height }).toEqual({ picture, width: 1280, height: 800 });
    }
  });

  it('names commands and files that there are', () => {
    const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { scripts: object };
    const commands = new Set(found(/npm run (?:-s )?([a-z]+)/g));
    expect(commands.size).toBeGreaterThan(8);
    expect([...commands].filter((name) => !(name in scripts))).toEqual([]);
    const folders = found(/`((?:resources|tests|src-\w+)\/[\w./-]+)`/g);
    expect(folders.filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });
});
