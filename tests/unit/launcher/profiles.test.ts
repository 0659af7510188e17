/** Browser profiles: none is thrown away that may hold unsaved work, and none is left that holds nothing. */
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, readdir, readFile, rename, rm, stat, symlink, utimes, writeFile } from 'node:fs/promises';
import { hostname, tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { takeProfile, type Profile } from '../../../src-main/launcher/profiles.ts';

let data: string;
beforeEach(async () => void (data = await mkdtemp(join(tmpdir(), 'walewright-profiles-'))));
afterEach(() => rm(data, { recursive: true, force: true }));

const HERE = 'http://127.0.0.1:4000';
const SAVED = { isUnsaved: false };
const UNSAVED = { isUnsaved: true };

const profiles = (): Promise<string[]> => readdir(join(data, 'windows'));
const isThere = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  );

/** A process that has ended, so that nobody has its number. */
async function endedPid(): Promise<number> {
  const child = spawn(process.execPath, ['-e', '']);
  await once(child, 'exit');
  return child.pid ?? 0;
}

/** As if the run that has the profile had been killed. */
async function orphan(folder: string, name = 'left'): Promise<string> {
  const left = join(dirname(folder), `${await endedPid()}-${name}`);
  await rename(folder, left);
  return left;
}

/** Profiles with work in them, whose runs were killed, in this order. */
async function withWork(...texts: readonly string[]): Promise<string[]> {
  const taken = await Promise.all(texts.map(() => takeProfile(data)));
  const left: string[] = [];
  for (const [index, text] of texts.entries()) {
    const { folder, opens } = taken[index] as Profile;
    await writeFile(join(folder, 'storage'), text);
    await opens(HERE);
    await utimes(join(folder, 'holds-work'), index, index);
    left.push(await orphan(folder, text));
  }
  return left;
}

describe('a profile', () => {
  it('goes when its windows have closed with everything saved', async () => {
    const profile = await takeProfile(data);
    await profile.opens(HERE);
    profile.noteState('one', UNSAVED);
    profile.noteState('one', SAVED);
    await profile.giveBack();
    expect(await profiles()).toEqual([]);
  });

  it.each([
    ['a window has unsaved work', UNSAVED],
    ["a window says that the browser's storage holds work", { isUnsaved: false, holdsWork: true }],
  ])('stays while %s', async (_case, state) => {
    const profile = await takeProfile(data);
    profile.noteState('one', state);
    profile.noteState('two', SAVED);
    await profile.giveBack();
    expect(await profiles()).toEqual([basename(profile.folder)]);
  });

  it('that may hold work is taken again by the next start, the last one first', async () => {
    await withWork('older', 'younger');
    const next = await takeProfile(data);
    await next.opens(HERE);
    expect(await readFile(join(next.folder, 'storage'), 'utf8')).toBe('younger');
    const after = await takeProfile(data);
    await after.opens(HERE);
    expect(await readFile(join(after.folder, 'storage'), 'utf8')).toBe('older');
    // Until its windows say otherwise.
    await next.giveBack();
    after.noteState('one', SAVED);
    await after.giveBack();
    expect(await profiles()).toEqual([basename(next.folder)]);
  });

  it('is taken by one of two that start at once', async () => {
    await withWork('work');
    const both = await Promise.all([takeProfile(data), takeProfile(data)]);
    const storages = await Promise.all(both.map(({ folder }) => isThere(join(folder, 'storage'))));
    expect(storages.sort()).toEqual([false, true]);
  });

  it('stays when its host was killed, though all was saved by then: its window may have drawn on', async () => {
    const profile = await takeProfile(data);
    await profile.opens(HERE);
    profile.noteState('one', SAVED);
    await writeFile(join(profile.folder, 'storage'), 'drawn on');
    await orphan(profile.folder);
    const next = await takeProfile(data);
    expect(await readFile(join(next.folder, 'storage'), 'utf8')).toBe('drawn on');
  });

  it('stays for what lies at another address than the one it was opened on, until that was looked at', async () => {
    await withWork('at 4000');
    const elsewhere = await takeProfile(data);
    await elsewhere.opens('http://127.0.0.1:5000');
    elsewhere.noteState('one', SAVED);
    await elsewhere.giveBack();
    await orphan(elsewhere.folder);
    const here = await takeProfile(data);
    expect(await readFile(join(here.folder, 'storage'), 'utf8')).toBe('at 4000');
    await here.opens(HERE);
    here.noteState('one', SAVED);
    await here.giveBack();
    expect(await profiles()).toEqual([]);
  });

  it('stays with what it held where no window stayed open in it, whatever windows elsewhere say', async () => {
    await withWork('drawing');
    const next = await takeProfile(data);
    await next.opens(HERE);
    next.failed();
    next.noteState('of another browser', SAVED);
    await next.giveBack();
    expect(await readFile(join(next.folder, 'storage'), 'utf8')).toBe('drawing');
    expect(await readFile(join(next.folder, 'holds-work'), 'utf8')).toBe(HERE);
  });

  it('that a killed run left goes at the next start if no window was opened in it', async () => {
    await orphan((await takeProfile(data)).folder);
    const next = await takeProfile(data);
    expect(await profiles()).toEqual([basename(next.folder)]);
  });

  it('of a run that goes on is left alone', async () => {
    const profile = await takeProfile(data);
    await profile.opens(HERE);
    const other = await takeProfile(data);
    expect((await profiles()).sort()).toEqual([basename(profile.folder), basename(other.folder)].sort());
  });

  describe('with a window open in it whose run was killed', () => {
    let window: ChildProcess;
    beforeEach(() => void (window = spawn(process.execPath, ['-e', 'setInterval(() => undefined, 1e6)'])));
    afterEach(() => void window.kill('SIGKILL'));

    it.skipIf(process.platform === 'win32')('is left alone until the window is closed', async () => {
      const [left = ''] = await withWork('work');
      await symlink(`${hostname()}-${window.pid}`, join(left, 'SingletonLock'));
      await takeProfile(data);
      expect(await isThere(left)).toBe(true);
      window.kill('SIGKILL');
      await once(window, 'exit');
      expect(await isThere(join((await takeProfile(data)).folder, 'storage'))).toBe(true);
    });
  });

  it('comes without workers of whoever had the address in the meantime', async () => {
    const [left = ''] = await withWork('work');
    await mkdir(join(left, 'Default', 'Service Worker', 'Database'), { recursive: true });
    await mkdir(join(left, 'Default', 'IndexedDB'));
    const next = await takeProfile(data);
    expect(await readdir(join(next.folder, 'Default'))).toEqual(['IndexedDB']);
  });
});
