/** The collection on a real disk: what is kept, listed, changed outside, and never reached. */
import { mkdir, mkdtemp, readdir, readFile, rename, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { motifAlone } from '@shared/collection/index.ts';
import { gridFromText } from '@shared/grid/index.ts';
import { MOST_COLLECTED, MOST_LOOKED_AT, type Services } from '@shared/host/index.ts';
import { problemOf, type Problem } from '@shared/problem/index.ts';
import {
  FILE_VERSION,
  projectAround,
  projectFromText,
  projectToText,
  sampleProject,
  START_YARNS,
  type Project,
} from '@shared/project/index.ts';
import {
  createServices,
  dispatch,
  nodeFiles,
  type FileOperations,
  type Shell,
} from '../../../src-main/services/index.ts';
import { TEXT_OF_VERSION_1 } from '../project/small-project.ts';
import { silentShell, testEnvironment } from './test-environment.ts';

let folder: string;
let services: Services;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-collection-'));
  services = createServices(testEnvironment(folder));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const own = (...names: string[]): string => join(folder, '.data', 'collection', ...names);
const star = (name = 'star', rows = ['X.X', '.X.']): string =>
  projectToText(projectAround(name, name, gridFromText(rows, '.X'), 0, 'worn', START_YARNS));
const keep = (text = star(), by = services) => by['collection.keep']({ text, there: { kind: 'ask' } });
const listed = async (by = services) => (await by['collection.list']({})).files;
const look = (...files: string[]) => services['collection.look']({ files });
const problemFrom = (answer: Promise<unknown>): Promise<Problem | null> => answer.then(() => null, problemOf);

/** A file that another hand put there. */
async function put(name: string, content: string): Promise<void> {
  await mkdir(own(), { recursive: true });
  await writeFile(own(name), content);
}

describe('the collection', () => {
  it('is empty at first, in a folder beside the settings that is made when something is kept', async () => {
    expect(await services['collection.list']({})).toEqual({ folder: own(), isOwn: true, files: [], left: 0 });
    await expect(stat(own())).rejects.toThrow('ENOENT');
    expect(await keep()).toEqual({ kind: 'kept', as: 'new', file: 'star.walewright' });
    expect(await readdir(own())).toEqual(['star.walewright']);
  });

  it('tells of a motif what it is found by, and gives it', async () => {
    await keep(star('star', ['X.X.', '.X.X']));
    const [entry] = await look('star.walewright');
    expect(entry).toMatchObject({
      kind: 'motif',
      file: 'star.walewright',
      name: 'star',
      width: 4,
      height: 2,
      repeat: { width: 2, height: 2 },
      yarns: START_YARNS.map(({ name, colour }) => ({ name, colour })),
    });
    const read = await services['collection.read']({ file: 'star.walewright' });
    expect(read.text).toBe(star('star', ['X.X.', '.X.X']));
    expect(entry).toMatchObject({ stamp: read.stamp });
  });

  it('holds files that open as the projects that they are, in a folder whose other files stay closed', async () => {
    await keep(projectToText(motifAlone(sampleProject(), 'lighthouse')));
    await services['settings.keep']({ singleKeys: false });
    await symlink(join(folder, '.data', 'settings.json'), own('link.walewright'));
    // As the platform gives a file that a person opens with the program.
    const named = createServices(testEnvironment(folder, { shell: { ...silentShell, isNamed: () => true } }));
    const { bytes } = await named['documents.read']({ path: own('lighthouse and gulls.walewright') });
    const project: Project = projectFromText(new TextDecoder().decode(bytes));
    expect(project.motifs.map(({ name }) => name)).toEqual(['lighthouse and gulls']);
    const closed = { code: 'path-closed', facts: { why: 'own-data' } };
    for (const path of [join(folder, '.data', 'settings.json'), own('link.walewright'), own('deep', 'a.walewright')]) {
      expect(await problemFrom(named['documents.read']({ path }))).toMatchObject(closed);
    }
  });

  it('takes files of earlier versions, which stay as they are', async () => {
    await put('old.walewright', TEXT_OF_VERSION_1);
    expect(await look('old.walewright')).toMatchObject([{ kind: 'motif', name: 'gull' }]);
    expect(await readFile(own('old.walewright'), 'utf8')).toBe(TEXT_OF_VERSION_1);
  });

  it('is listed by name as people sort, without what is hidden, in folders, or of another kind', async () => {
    for (const name of ['star 10', 'Star 9', 'star', 'anchor', '.hidden']) await put(`${name}.walewright`, star(name));
    await put('photo.png', 'abc');
    await mkdir(own('more'));
    await writeFile(own('more', 'deep.walewright'), star());
    expect(await listed()).toEqual(['anchor.walewright', 'star.walewright', 'Star 9.walewright', 'star 10.walewright']);
  });

  it('is listed up to a bound, and says how many more there are', async () => {
    const names = Array.from({ length: MOST_COLLECTED + 2 }, (_, at) => `${at}.walewright`);
    const files: FileOperations = { ...nodeFiles, names: async () => names };
    const many = await createServices(testEnvironment(folder, { files }))['collection.list']({});
    expect(many.files).toHaveLength(MOST_COLLECTED);
    expect(many.left).toBe(2);
  });

  it('sees what was changed, renamed, added and removed by another hand', async () => {
    await keep();
    expect(await look('star.walewright')).toMatchObject([{ width: 3 }]);
    await put('star.walewright', star('moon', ['XX']));
    expect(await look('star.walewright')).toMatchObject([{ name: 'moon', width: 2 }]);
    await rename(own('star.walewright'), own('moon.walewright'));
    await put('sun.walewright', star('sun'));
    expect(await listed()).toEqual(['moon.walewright', 'sun.walewright']);
    await rm(own('moon.walewright'));
    // Listed before it went.
    expect(await look('moon.walewright', 'sun.walewright')).toMatchObject([
      { kind: 'gone', file: 'moon.walewright' },
      { kind: 'motif' },
    ]);
    expect(await problemFrom(services['collection.read']({ file: 'moon.walewright' }))).toEqual({
      code: 'file-missing',
      where: 'moon.walewright',
      facts: {},
    });
  });
});

describe('a file that is no motif', () => {
  const newer = star().replace(`"version": ${FILE_VERSION}`, `"version": ${FILE_VERSION + 1}`);
  const several = (): string => {
    const sample = sampleProject();
    const second = { ...sample.motifs[0], id: 'second' } as Project['motifs'][number];
    return projectToText({ ...sample, motifs: [...sample.motifs, second] });
  };

  it.each([
    ['cut short', () => star().slice(0, 200), 'project-not-json'],
    ['of another program', () => '{"format":"other"}', 'project-not-ours'],
    ['of a newer version', () => newer, 'project-newer'],
    ['with a field that cannot be', () => star().replace('"worn"', '"inside out"'), 'project-invalid'],
    ['of several motifs', several, 'motifs-several'],
    ['empty', () => '', 'project-not-json'],
  ])('being %s, is listed with the reason, and left alone', async (_what, content, code) => {
    await put('odd.walewright', content());
    await keep();
    const [odd, good] = await look('odd.walewright', 'star.walewright');
    expect(odd).toMatchObject({ kind: 'unusable', problem: { code, where: 'odd.walewright' } });
    expect(good).toMatchObject({ kind: 'motif' });
    expect(await problemFrom(services['collection.read']({ file: 'odd.walewright' }))).toMatchObject({ code });
    expect(await readFile(own('odd.walewright'), 'utf8')).toBe(content());
  });

  it('is one of 9 MB, which is not read', async () => {
    await put('huge.walewright', star() + ' '.repeat(9_000_000));
    expect(await look('huge.walewright')).toMatchObject([{ kind: 'unusable', problem: { code: 'file-too-large' } }]);
  });

  it('is a folder that is called so', async () => {
    await mkdir(own('folder.walewright'), { recursive: true });
    expect(await look('folder.walewright')).toMatchObject([{ kind: 'unusable', problem: { code: 'file-is-folder' } }]);
  });

  it('is never replaced by one that is kept', async () => {
    await put('star.walewright', newer);
    expect(await keep()).toEqual({ kind: 'kept', as: 'new', file: 'star (2).walewright' });
    expect(await readFile(own('star.walewright'), 'utf8')).toBe(newer);
  });
});

describe('a motif whose name is kept already', () => {
  const other = star('Star ', ['XX.']);

  it('is asked about, and nothing is written', async () => {
    await keep();
    const asked = await keep(other);
    expect(asked).toMatchObject({
      kind: 'asks',
      there: [{ file: 'star.walewright', name: 'star', width: 3, height: 2 }],
    });
    expect(await readdir(own())).toEqual(['star.walewright']);
    expect(await readFile(own('star.walewright'), 'utf8')).toBe(star());
  });

  it('stands beside it where both are to be kept', async () => {
    await keep();
    const kept = await services['collection.keep']({ text: other, there: { kind: 'keep-both' } });
    expect(kept).toEqual({ kind: 'kept', as: 'new', file: 'Star (2).walewright' });
    // From now on both are asked about.
    const third = await keep(star('STAR', ['.X']));
    expect(third).toMatchObject({ there: [{ file: 'star.walewright' }, { file: 'Star (2).walewright' }] });
  });

  it('takes the place of the one that was seen', async () => {
    await keep();
    const asked = await keep(other);
    const [there] = asked.kind === 'asks' ? asked.there : [];
    const { file = '', stamp = '' } = there ?? {};
    const replace = () => services['collection.keep']({ text: other, there: { kind: 'replace', file, stamp } });
    expect(await replace()).toEqual({ kind: 'kept', as: 'replaced', file: 'star.walewright' });
    expect(await readFile(own('star.walewright'), 'utf8')).toBe(other);
    // It is another by now.
    expect(await problemFrom(replace())).toMatchObject({ code: 'file-changed-elsewhere' });
  });

  it('is not asked about where it is the same', async () => {
    await keep();
    expect(await keep()).toEqual({ kind: 'kept', as: 'same', file: 'star.walewright' });
    expect(await readdir(own())).toEqual(['star.walewright']);
  });

  it('is asked about where both come at once', async () => {
    const answers = await Promise.all([keep(), keep(other)]);
    expect(answers.map(({ kind }) => kind)).toEqual(['kept', 'asks']);
  });

  it('is not one that the file of another motif has', async () => {
    await put('star.walewright', star('moon'));
    expect(await keep()).toEqual({ kind: 'kept', as: 'new', file: 'star (2).walewright' });
  });
});

describe('what is kept', () => {
  it.each([
    ['../../etc/passwd', 'etc passwd.walewright'],
    ['CON', '_CON.walewright'],
    ['.hidden', 'hidden.walewright'],
    ['///', 'motif.walewright'],
    ['ÄÖ 24 × 20', 'ÄÖ 24 × 20.walewright'],
  ])('by the name of %j has a file name that every platform takes', async (name, file) => {
    expect(await keep(star(name))).toMatchObject({ kind: 'kept', file });
    expect(await readdir(own())).toEqual([file]);
    expect(await look(file)).toMatchObject([{ kind: 'motif', name }]);
  });

  it('must be one motif that can be read again', async () => {
    expect(await problemFrom(keep('{}'))).toMatchObject({ code: 'project-not-ours' });
    expect(await problemFrom(keep(star().replace('"worn"', '"inside out"')))).toMatchObject({
      code: 'project-invalid',
    });
    expect(await services['collection.list']({})).toMatchObject({ files: [] });
  });

  it('leaves nothing behind where the disk is full', async () => {
    await keep();
    const files: FileOperations = {
      ...nodeFiles,
      open: (path, how, mode) =>
        how === 'new'
          ? Promise.reject(Object.assign(new Error('ENOSPC'), { code: 'ENOSPC' }))
          : nodeFiles.open(path, how, mode),
    };
    const full = createServices(testEnvironment(folder, { files }));
    expect(await problemFrom(keep(star('moon'), full))).toMatchObject({ code: 'disk-full' });
    expect(await readdir(own())).toEqual(['star.walewright']);
  });
});

describe('a link in the folder', () => {
  it('that leads out of it is neither read nor written', async () => {
    await keep();
    await writeFile(join(folder, 'secret.walewright'), star('secret'));
    await symlink(join(folder, 'secret.walewright'), own('out.walewright'));
    await mkdir(join(folder, 'elsewhere'));
    await writeFile(join(folder, 'elsewhere', 'a.walewright'), star('a'));
    const closed = { code: 'path-closed', where: 'out.walewright', facts: { why: 'outside' } };
    const [entry] = await look('out.walewright');
    expect(entry).toEqual({ kind: 'unusable', file: 'out.walewright', problem: closed });
    expect(await problemFrom(services['collection.read']({ file: 'out.walewright' }))).toEqual(closed);
    const { stamp } = await services['collection.read']({ file: 'star.walewright' });
    const replace = { kind: 'replace' as const, file: 'out.walewright', stamp };
    const problem = await problemFrom(services['collection.keep']({ text: star('new'), there: replace }));
    expect(problem).toMatchObject({ code: 'path-closed' });
    expect(await readFile(join(folder, 'secret.walewright'), 'utf8')).toBe(star('secret'));
  });

  it('that leads nowhere is not written through', async () => {
    await mkdir(own(), { recursive: true });
    await symlink(join(folder, 'made.walewright'), own('star.walewright'));
    expect(await keep()).toMatchObject({ kind: 'kept', file: 'star (2).walewright' });
    expect(await readdir(folder)).toEqual(['.data']);
  });

  it('to another file in it is as good as the file', async () => {
    await keep();
    await symlink('star.walewright', own('alias.walewright'));
    expect(await look('alias.walewright')).toMatchObject([{ kind: 'motif', name: 'star' }]);
  });
});

describe('a request', () => {
  it.each([
    '../star.walewright',
    '/etc/a.walewright',
    'a/b.walewright',
    'a\\b.walewright',
    '.a.walewright',
    'a.png',
    '',
    'a\0.walewright',
  ])('for the file %j is refused before any service is asked', async (file) => {
    for (const [method, params] of [
      ['collection.read', { file }],
      ['collection.look', { files: [file] }],
      ['collection.keep', { text: star(), there: { kind: 'replace', file, stamp: '' } }],
    ] as const) {
      const answer = await dispatch({} as Services, method, params);
      expect(answer).toMatchObject({ ok: false, problem: { code: 'request-invalid' } });
    }
  });

  it.each([
    ['collection.list', { folder: '/' }],
    ['collection.look', { files: [] }],
    ['collection.look', { files: Array.from({ length: MOST_LOOKED_AT + 1 }, () => 'a.walewright') }],
    ['collection.keep', { text: 'x'.repeat(8_000_001), there: { kind: 'ask' } }],
    ['collection.keep', { text: '', there: { kind: 'overwrite' } }],
    ['collection.choose', {}],
  ])('%s with what it does not take is refused', async (method, params) => {
    expect(await dispatch({} as Services, method, params)).toMatchObject({
      ok: false,
      problem: { code: 'request-invalid', facts: { method } },
    });
  });

  it('is answered over the wire with what the contract says', async () => {
    await keep();
    await put('odd.walewright', '{');
    const answer = await dispatch(services, 'collection.look', {
      files: ['star.walewright', 'odd.walewright', 'gone.walewright'],
    });
    expect(answer).toMatchObject({ ok: true, value: [{ kind: 'motif' }, { kind: 'unusable' }, { kind: 'gone' }] });
    // Where the folder stands is told with the list alone.
    expect(JSON.stringify(answer)).not.toContain(folder);
  });
});

describe('the folder', () => {
  const choose = (where: string | null, by = services) => by['collection.choose']({ folder: where });

  it('may be another, from then on and in the next run, and the first again', async () => {
    await mkdir(join(folder, 'motifs'));
    await choose(join(folder, 'motifs'));
    await keep();
    expect(await readdir(join(folder, 'motifs'))).toEqual(['star.walewright']);
    const next = createServices(testEnvironment(folder));
    expect(await next['collection.list']({})).toEqual({
      folder: join(folder, 'motifs'),
      isOwn: false,
      files: ['star.walewright'],
      left: 0,
    });
    // Other settings stay, and do not touch it.
    await services['settings.keep']({ singleKeys: false });
    expect(await services['settings.read']({})).toMatchObject({
      singleKeys: false,
      collection: join(folder, 'motifs'),
    });
    await choose(null);
    expect(await services['collection.list']({})).toMatchObject({ folder: own(), isOwn: true, files: [] });
  });

  it('that was chosen and is gone is told of, and not made again', async () => {
    await mkdir(join(folder, 'stick'));
    await choose(join(folder, 'stick'));
    await rm(join(folder, 'stick'), { recursive: true });
    const missing = { code: 'file-missing', where: join(folder, 'stick') };
    expect(await problemFrom(listed())).toMatchObject(missing);
    expect(await problemFrom(keep())).toMatchObject(missing);
    expect(await readdir(folder)).toEqual(['.data']);
  });

  it.each([
    ['nowhere', { code: 'file-missing' }],
    ['plain', { code: 'folder-not-writable' }],
    ['.hidden', { code: 'path-closed', facts: { why: 'hidden' } }],
    ['.data', { code: 'path-closed' }],
  ])('cannot be %s', async (name, problem) => {
    await writeFile(join(folder, 'plain'), '');
    for (const hidden of ['.hidden', '.data']) await mkdir(join(folder, hidden), { recursive: true });
    expect(await problemFrom(choose(join(folder, name)))).toMatchObject(problem);
    expect((await services['settings.read']({})).collection).toBeNull();
  });

  it('is not set by a window in the settings', async () => {
    expect(await dispatch(services, 'settings.keep', { collection: '/etc' })).toMatchObject({
      ok: false,
      problem: { code: 'request-invalid' },
    });
  });

  it('is one that the platform’s dialog chose, where there is one', async () => {
    await mkdir(join(folder, 'motifs'));
    const shell: Shell = {
      ...silentShell,
      kind: 'electron',
      dialogs: {
        openFile: async () => null,
        saveFile: async () => null,
        chooseFolder: async () => join(folder, 'motifs'),
      },
    };
    const electron = createServices(testEnvironment(folder, { shell }));
    expect(await problemFrom(choose(join(folder, 'motifs'), electron))).toMatchObject({ facts: { why: 'not-chosen' } });
    const chosen = await electron['dialogs.chooseFolder']({});
    await choose(chosen, electron);
    // In the next run it is reached without being chosen anew.
    const next = createServices(testEnvironment(folder, { shell }));
    expect(await keep(star(), next)).toMatchObject({ kind: 'kept' });
    expect(await listed(next)).toEqual(['star.walewright']);
  });
});
