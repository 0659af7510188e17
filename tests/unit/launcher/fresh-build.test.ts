/** Building what is missing or older than its sources before the program is run. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ensureBuilt, stateOfBuild } from '../../../src-main/launcher/fresh-build.mjs';

let root: string;
const source = (...names: string[]): string => join(root, 'src-main', ...names);

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'walewright-build-'));
  for (const folder of ['src-shared', 'src-main/deep', 'src-renderer'])
    mkdirSync(join(root, folder), { recursive: true });
  writeFileSync(source('main.ts'), 'one');
  writeFileSync(source('deep', 'part.ts'), 'two');
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

/** Stands for the builder: leaves what the launcher looks for. */
const make = (): boolean => {
  mkdirSync(join(root, 'out', 'main'), { recursive: true });
  writeFileSync(join(root, 'out', 'main', 'launcher.cjs'), '');
  return true;
};

/** What was said, and whether the program can be run. */
function ensure(by: () => boolean = make): { lines: string[]; canRun: boolean } {
  const lines: string[] = [];
  return { lines, canRun: ensureBuilt(root, (line: string) => lines.push(line), by) };
}

describe('a build', () => {
  it('is made where there is none, and said in one line', () => {
    expect(stateOfBuild(root)).toBe('missing');
    const { lines, canRun } = ensure();
    expect([canRun, lines]).toEqual([true, [expect.stringContaining('has not been built yet')]]);
    expect(ensure()).toEqual({ lines: [], canRun: true });
  });

  it.each([
    ['a file is changed', () => writeFileSync(source('main.ts'), 'other')],
    ['a file comes', () => writeFileSync(source('deep', 'new.ts'), '')],
    ['a file goes', () => rmSync(source('deep', 'part.ts'))],
    ['a file is renamed', () => renameSync(source('main.ts'), source('other.ts'))],
    // As a copy that keeps times, or an archive, brings it.
    ['a file of the same size comes that is older than the build', () => utimesSync(source('main.ts'), 1, 1)],
    ['the settings change', () => writeFileSync(join(root, 'package.json'), '{}')],
  ])('is made again when %s', (_case, change) => {
    ensure();
    change();
    expect(stateOfBuild(root)).toBe('older');
    const { lines, canRun } = ensure();
    expect([canRun, lines]).toEqual([true, [expect.stringContaining('sources have changed')]]);
    expect(stateOfBuild(root)).toBe('current');
  });

  it('that fails says what to do, runs nothing, and is tried again', () => {
    const { lines, canRun } = ensure(() => false);
    expect(canRun).toBe(false);
    expect(lines.at(-1)).toContain('Mend the file that is named there');
    expect(ensure().canRun).toBe(true);
  });

  it('that fails after a good one does not leave the old one to be run', () => {
    ensure();
    writeFileSync(source('main.ts'), 'broken');
    expect(ensure(() => false).canRun).toBe(false);
    expect(stateOfBuild(root)).toBe('missing');
  });

  it('is made again if a source changed while it was made', () => {
    ensure(() => {
      writeFileSync(source('main.ts'), 'changed meanwhile');
      return make();
    });
    expect(stateOfBuild(root)).toBe('older');
  });

  it('is run as it is where no sources are', () => {
    ensure();
    for (const folder of ['src-shared', 'src-main', 'src-renderer']) rmSync(join(root, folder), { recursive: true });
    expect(ensure()).toEqual({ lines: [], canRun: true });
  });

  it('is made once by starts that come at once, one building and the others waiting', async () => {
    const script = `
      import { existsSync, mkdirSync, rmSync, appendFileSync, writeFileSync } from 'node:fs';
      import { ensureBuilt } from ${JSON.stringify(new URL('../../../src-main/launcher/fresh-build.mjs', import.meta.url).href)};
      const root = ${JSON.stringify(root)};
      process.stdin.once('data', () => {
        const canRun = ensureBuilt(root, () => undefined, () => {
          if (existsSync(root + '/building')) appendFileSync(root + '/log', 'beside another ');
          writeFileSync(root + '/building', '');
          Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 300);
          mkdirSync(root + '/out/main', { recursive: true });
          writeFileSync(root + '/out/main/launcher.cjs', '');
          appendFileSync(root + '/log', 'built ');
          rmSync(root + '/building');
          return true;
        });
        process.exit(canRun ? 0 : 1);
      });
      console.log('ready');`;
    const starts = Array.from({ length: 4 }, () => spawn(process.execPath, ['--input-type=module', '--eval', script]));
    const ends = starts.map((start) => once(start, 'exit'));
    await Promise.all(starts.map((start) => once(start.stdout, 'data')));
    for (const start of starts) start.stdin.write('go');
    expect((await Promise.all(ends)).map(([status]) => status)).toEqual([0, 0, 0, 0]);
    expect(readFileSync(join(root, 'log'), 'utf8')).toBe('built ');
    expect(readdirSync(join(root, 'out')).sort()).toEqual(['built-from', 'main']);
  });

  it('is not kept waiting by one whose process was ended in the middle', () => {
    const { pid } = spawnSync(process.execPath, ['--eval', '']);
    mkdirSync(join(root, 'out'));
    writeFileSync(join(root, 'out', 'being-built'), String(pid));
    expect(ensure()).toEqual({ lines: [expect.stringContaining('has not been built yet')], canRun: true });
    expect(readdirSync(join(root, 'out')).sort()).toEqual(['built-from', 'main']);
  });

  it('cannot be made where the builder is not installed, which is said', () => {
    const lines: string[] = [];
    expect(ensureBuilt(root, (line: string) => lines.push(line))).toBe(false);
    expect(lines).toEqual([expect.stringContaining('Run: npm ci')]);
  });
});
