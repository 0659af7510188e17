/** Reading and writing documents on a real disk. */
import {
  chmod,
  link,
  mkdir,
  mkdtemp,
  readFile,
  readlink,
  rm,
  stat,
  symlink,
  utimes,
  writeFile,
} from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Services } from '@shared/host/index.ts';
import { ProblemError, type Problem } from '@shared/problem/index.ts';
import { createServices, nodeFiles } from '../../../src-main/services/index.ts';
import { MOST_BYTES_READ } from '../../../src-main/services/files/index.ts';
import { testEnvironment } from './test-environment.ts';

let folder: string;
let services: Services;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-documents-'));
  services = createServices(testEnvironment(folder));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const place = (name: string): string => join(folder, name);
const write = (path: string, text: string, over: string | null = null) =>
  services['documents.write']({ path, text, over });
const read = (path: string) => services['documents.read']({ path });

async function problemOf(answer: Promise<unknown>): Promise<Problem> {
  const thrown = await answer.then(
    () => new Error('It passed'),
    (error: unknown) => error,
  );
  if (thrown instanceof ProblemError) return thrown.problem;
  throw thrown;
}

describe('a document', () => {
  it.each([
    ['plain text', '{}\n'],
    ['nothing', ''],
    ['letters of many scripts', 'wełna, шерсть, 毛糸, 🧶\n'],
    ['four million characters', 'slate and chalk\n'.repeat(250_000)],
  ])('of %s comes back as it was written', async (_case, text) => {
    const written = await write(place('a.walewright'), text);
    const found = await read(place('a.walewright'));
    expect(Buffer.from(found.bytes, 'base64').toString('utf8')).toBe(text);
    expect(found).toMatchObject({ name: 'a.walewright', path: place('a.walewright'), stamp: written.stamp });
  });

  it('named without its folder stands in the home folder', async () => {
    expect((await write('a.walewright', '{}')).path).toBe(place('a.walewright'));
  });

  it.each([0o600, 0o640, 0o664])('keeps its permissions (%o)', async (mode) => {
    await writeFile(place('a.walewright'), 'old');
    await chmod(place('a.walewright'), mode);
    await write(place('a.walewright'), 'new');
    expect((await stat(place('a.walewright'))).mode & 0o777).toBe(mode);
  });

  it('behind a link is written where the link leads, and the link stays', async () => {
    await mkdir(place('studio'));
    await writeFile(place('studio/real.walewright'), 'old');
    await symlink('studio/real.walewright', place('link.walewright'));
    await symlink('link.walewright', place('link-to-link.walewright'));
    await write(place('link-to-link.walewright'), 'new');
    expect(await readFile(place('studio/real.walewright'), 'utf8')).toBe('new');
    expect(await readlink(place('link.walewright'))).toBe('studio/real.walewright');
    expect(await readlink(place('link-to-link.walewright'))).toBe('link.walewright');
  });

  it('is made where a link leads that led nowhere yet', async () => {
    await symlink('real.walewright', place('link.walewright'));
    await write(place('link.walewright'), 'new');
    expect(await readFile(place('real.walewright'), 'utf8')).toBe('new');
  });

  it('is not written where links lead in a circle', async () => {
    await symlink('b', place('a'));
    await symlink('a', place('b'));
    expect(await problemOf(write(place('a'), 'new'))).toMatchObject({ code: 'file-not-written', where: place('a') });
  });

  it('saved twice at once is the later of the two', async () => {
    await Promise.all([1, 2, 3, 4].map((n) => write(place('a.walewright'), `text ${n}`.repeat(10_000))));
    expect(await readFile(place('a.walewright'), 'utf8')).toBe('text 4'.repeat(10_000));
  });

  it('leaves a second name of the old file with the old bytes', async () => {
    await writeFile(place('a.walewright'), 'old');
    await link(place('a.walewright'), place('copy.walewright'));
    await write(place('a.walewright'), 'new');
    expect(await readFile(place('copy.walewright'), 'utf8')).toBe('old');
  });
});

describe('a document that somebody else may have changed', () => {
  const path = (): string => place('a.walewright');

  it('is written over what was read', async () => {
    await writeFile(path(), 'mine');
    const { stamp } = await read(path());
    const written = await write(path(), 'mine, later', stamp);
    await write(path(), 'mine, later still', written.stamp);
    expect(await readFile(path(), 'utf8')).toBe('mine, later still');
  });

  it('is left alone when it holds something else, even of the same length', async () => {
    await writeFile(path(), 'mine');
    const { stamp } = await read(path());
    await writeFile(path(), 'hers');
    expect(await problemOf(write(path(), 'mine, later', stamp))).toMatchObject({
      code: 'file-changed-elsewhere',
      where: path(),
    });
    expect(await readFile(path(), 'utf8')).toBe('hers');
  });

  it('is written over when it was only touched, or is gone', async () => {
    await writeFile(path(), 'mine');
    const { stamp } = await read(path());
    await utimes(path(), new Date(0), new Date(0));
    await write(path(), 'mine', stamp);
    await rm(path());
    await write(path(), 'mine again', stamp);
    expect(await readFile(path(), 'utf8')).toBe('mine again');
  });
});

describe('a file that cannot be read', () => {
  it.each([
    ['is not there', 'nowhere', 'file-missing'],
    ['lies in a folder that is not there', 'nowhere/a', 'file-missing'],
    ['lies in a file', 'plain/a', 'file-missing'],
    ['is a folder', '.', 'file-is-folder'],
    ['is a device that never ends', '/dev/zero', 'file-not-readable'],
  ])('because it %s is refused by name', async (_case, name, code) => {
    await writeFile(place('plain'), '');
    const problem = await problemOf(read(name));
    expect(problem).toMatchObject({ code, where: name.startsWith('/') ? name : join(folder, name) });
  });

  it('because it is too large is refused before it is read', async () => {
    const files = {
      ...nodeFiles,
      state: async () => ({ kind: 'file' as const, bytes: MOST_BYTES_READ + 1, mode: 0o644 }),
      open: async () => Promise.reject(new Error('It was opened')),
    };
    services = createServices(testEnvironment(folder, { files }));
    expect(await problemOf(read('/a.png'))).toEqual({
      code: 'file-too-large',
      where: '/a.png',
      facts: { bytes: MOST_BYTES_READ + 1, most: MOST_BYTES_READ },
    });
  });

  it('because it grows without end is refused when the bound is reached', async () => {
    const endless = {
      ...nodeFiles,
      state: async () => ({ kind: 'file' as const, bytes: 10, mode: 0o644 }),
      open: async (path: string, how: 'read' | 'change' | 'new') => {
        const file = await nodeFiles.open(path, how);
        return { ...file, read: async (into: Uint8Array) => into.length };
      },
    };
    await writeFile(place('a.png'), 'x');
    services = createServices(testEnvironment(folder, { files: endless }));
    expect(await problemOf(read(place('a.png')))).toMatchObject({ code: 'file-too-large' });
  });

  it('because the platform refuses it says what the platform said', async () => {
    const files = {
      ...nodeFiles,
      state: async () =>
        Promise.reject(Object.assign(new Error("EACCES: permission denied, stat '/a'"), { code: 'EACCES' })),
    };
    services = createServices(testEnvironment(folder, { files }));
    expect(await problemOf(read('/a'))).toEqual({
      code: 'file-not-readable',
      where: '/a',
      facts: { detail: 'permission denied' },
    });
  });
});
