/** Reading and writing documents on a real disk. */
import {
  chmod,
  link,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  readlink,
  rm,
  stat,
  symlink,
  utimes,
  writeFile,
} from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Params, Services } from '@shared/host/index.ts';
import { ProblemError, type Problem } from '@shared/problem/index.ts';
import { projectToText, sampleProject } from '@shared/project/index.ts';
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
/** The text of a project of that name. */
const textOf = (name: string): string => projectToText({ ...sampleProject(), name });
const OLD = textOf('old');
const NEW = textOf('new');

type Expect = Params<'documents.write'>['expect'];
const NOTHING: Expect = { kind: 'nothing' };
const version = (stamp: string): Expect => ({ kind: 'version', stamp });
const write = (path: string, text: string, expect: Expect = NOTHING) =>
  services['documents.write']({ path, text, expect });
/** Writes over what is there now. */
const overwrite = async (path: string, text: string) => write(path, text, version((await read(path)).stamp));
const read = (path: string) => services['documents.read']({ path });

async function problemOf(answer: Promise<unknown>): Promise<Problem> {
  const thrown = await answer.then(
    () => new Error('It passed'),
    (error: unknown) => error,
  );
  return problemIn(thrown);
}

function problemIn(thrown: unknown): Problem {
  if (thrown instanceof ProblemError) return thrown.problem;
  throw thrown;
}

describe('a document', () => {
  it.each([
    ['a plain name', 'Skerry'],
    ['letters of many scripts', 'wełna, шерсть, 毛糸, 🧶'],
  ])('with %s comes back as it was written', async (_case, name) => {
    const written = await write(place('a.walewright'), textOf(name));
    const found = await read(place('a.walewright'));
    expect(Buffer.from(found.bytes).toString('utf8')).toBe(textOf(name));
    expect(found).toMatchObject({ name: 'a.walewright', path: place('a.walewright'), stamp: written.stamp });
  });

  it('named without its folder stands in the home folder', async () => {
    expect((await write('a.walewright', NEW)).path).toBe(place('a.walewright'));
  });

  it.each([0o600, 0o640, 0o664])('keeps its permissions (%o)', async (mode) => {
    await writeFile(place('a.walewright'), OLD);
    await chmod(place('a.walewright'), mode);
    await overwrite(place('a.walewright'), NEW);
    expect((await stat(place('a.walewright'))).mode & 0o777).toBe(mode);
  });

  it('behind a link is written where the link leads, and the link stays', async () => {
    await mkdir(place('studio'));
    await writeFile(place('studio/real.walewright'), OLD);
    await symlink('studio/real.walewright', place('link.walewright'));
    await symlink('link.walewright', place('link-to-link.walewright'));
    await overwrite(place('link-to-link.walewright'), NEW);
    expect(await readFile(place('studio/real.walewright'), 'utf8')).toBe(NEW);
    expect(await readlink(place('link.walewright'))).toBe('studio/real.walewright');
    expect(await readlink(place('link-to-link.walewright'))).toBe('link.walewright');
  });

  it('is made where a link leads that led nowhere yet', async () => {
    await symlink('real.walewright', place('link.walewright'));
    await write(place('link.walewright'), NEW);
    expect(await readFile(place('real.walewright'), 'utf8')).toBe(NEW);
  });

  it('is not written where links lead in a circle', async () => {
    await symlink('b.walewright', place('a.walewright'));
    await symlink('a.walewright', place('b.walewright'));
    const path = place('a.walewright');
    expect(await problemOf(write(path, NEW))).toMatchObject({ code: 'file-not-written', where: path });
  });

  it('saved several times at once over one version is the first, and the others are told', async () => {
    const path = place('a.walewright');
    const { stamp } = await write(path, OLD);
    const answers = await Promise.all(
      [1, 2, 3, 4].map((n) =>
        write(path, textOf(`text ${n}`), version(stamp)).then(
          () => 'saved',
          (error: unknown) => problemIn(error).code,
        ),
      ),
    );
    expect(answers).toEqual(['saved', ...Array.from({ length: 3 }, () => 'file-changed-elsewhere')]);
    expect(await readFile(path, 'utf8')).toBe(textOf('text 1'));
  });

  it('leaves a second name of the old file with the old bytes', async () => {
    await writeFile(place('a.walewright'), OLD);
    await link(place('a.walewright'), place('copy.walewright'));
    await overwrite(place('a.walewright'), NEW);
    expect(await readFile(place('copy.walewright'), 'utf8')).toBe(OLD);
  });
});

describe('a name typed for a document', () => {
  const target = (name: string, inFolder = folder) => services['documents.target']({ folder: inFolder, name });

  it.each([
    ['sleeve', 'sleeve.walewright'],
    ['sleeve.walewright', 'sleeve.walewright'],
    ['sleeve.WALEWRIGHT', 'sleeve.WALEWRIGHT'],
    ['  sleeve  ', 'sleeve.walewright'],
    ['sleeve.png', 'sleeve.png.walewright'],
    ['studio/sleeve', 'studio/sleeve.walewright'],
    ['studio/../sleeve', 'sleeve.walewright'],
  ])('%j stands for %s, and says what is there', async (name, file) => {
    await mkdir(place('studio'));
    expect(await target(name)).toEqual({ path: place(file), name: basename(file), there: null, mustAsk: false });
    const { stamp } = await write(place(file), OLD);
    expect(await target(name)).toEqual({ path: place(file), name: basename(file), there: stamp, mustAsk: true });
  });

  it.each(['', '   ', 'studio/', 'a\0b'])('%j names no file', async (name) => {
    expect(await problemOf(target(name))).toMatchObject({ code: 'file-name-unusable' });
  });

  it.each(['.sleeve', '.studio/sleeve', '.'])('%j would be hidden', async (name) => {
    await mkdir(place('.studio'));
    expect(await problemOf(target(name))).toMatchObject({ code: 'path-closed', facts: { why: 'hidden' } });
  });

  it('that a folder has is refused', async () => {
    await mkdir(place('sleeve.walewright'));
    expect(await problemOf(target('sleeve'))).toMatchObject({ code: 'file-is-folder' });
  });

  it('that a file of another kind has is refused, and one that is empty is not', async () => {
    await writeFile(place('diary.walewright'), 'Dear diary');
    expect(await problemOf(target('diary'))).toMatchObject({
      code: 'file-of-other-kind',
      where: place('diary.walewright'),
    });
    await writeFile(place('empty.walewright'), '');
    const { path, there } = await target('empty');
    await write(path, NEW, version(there ?? ''));
    expect(await readFile(path, 'utf8')).toBe(NEW);
  });
});

describe('a project that could not be opened again', () => {
  it('is not saved, and what is said names the field', async () => {
    const path = place('a.walewright');
    const { stamp } = await write(path, OLD);
    const spoilt = NEW.replace(/"colour": "#[0-9a-f]{6}"/, '"colour": "#feffff01"');
    expect(await problemOf(write(path, spoilt, version(stamp)))).toMatchObject({
      code: 'project-not-savable',
      where: path,
      facts: { path: 'yarns[1].colour' },
    });
    expect(await readFile(path, 'utf8')).toBe(OLD);
  });

  it.each(['', 'rm -rf ~', '{}', '{"format":"other"}'])('because it is none (%j) is not written', async (text) => {
    expect((await problemOf(write(place('a.walewright'), text))).code).toMatch(/^project-not-(json|ours)$/);
    expect(await readdir(folder)).toEqual([]);
  });
});

describe('a document that somebody else may have changed', () => {
  const path = (): string => place('a.walewright');

  it('is written over what was read', async () => {
    await writeFile(path(), textOf('mine'));
    const { stamp } = await read(path());
    const written = await write(path(), textOf('mine, later'), version(stamp));
    await write(path(), textOf('mine, later still'), version(written.stamp));
    expect(await readFile(path(), 'utf8')).toBe(textOf('mine, later still'));
  });

  it('is left alone when it holds something else, even of the same length', async () => {
    await writeFile(path(), textOf('mine'));
    const { stamp } = await read(path());
    await writeFile(path(), textOf('hers'));
    expect(await problemOf(write(path(), textOf('mine, later'), version(stamp)))).toMatchObject({
      code: 'file-changed-elsewhere',
      where: path(),
    });
    expect(await readFile(path(), 'utf8')).toBe(textOf('hers'));
  });

  it('is left alone where nothing was expected', async () => {
    await writeFile(path(), textOf('hers'));
    expect(await problemOf(write(path(), textOf('mine')))).toMatchObject({ code: 'file-exists', where: path() });
    expect(await readFile(path(), 'utf8')).toBe(textOf('hers'));
  });

  it('is written over when it was only touched, or is gone', async () => {
    await writeFile(path(), textOf('mine'));
    const { stamp } = await read(path());
    await utimes(path(), new Date(0), new Date(0));
    await write(path(), textOf('mine'), version(stamp));
    await rm(path());
    await write(path(), textOf('mine again'), version(stamp));
    expect(await readFile(path(), 'utf8')).toBe(textOf('mine again'));
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
