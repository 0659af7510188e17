/** Recent projects, and what folders hold. */
import { machineAsSaid, machineFromSaid, parseNeedle } from '@shared/bed/index.ts';
import { START_MACHINE } from '@shared/project/index.ts';
import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, parse } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { contract, NO_LAST_FOLDERS, START_AIDS, type Services } from '@shared/host/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { createServices, nodeFiles, type FileOperations } from '../../../src-main/services/index.ts';
import { silentShell, testEnvironment } from './test-environment.ts';

let folder: string;
let services: Services;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-lists-'));
  services = createServices(testEnvironment(folder));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const TEXT = projectToText(sampleProject());
const save = (name: string, by = services) =>
  by['documents.write']({ path: name, text: TEXT, expect: { kind: 'nothing' } });
const recent = async (by = services) => (await by['documents.recent']({})).map((entry) => entry.name);

describe('recent projects', () => {
  it('are empty at first', async () => {
    expect(await recent()).toEqual([]);
  });

  it('stand newest first, each once, whether opened or saved', async () => {
    await save('a.walewright');
    await save('b.walewright');
    await services['documents.read']({ path: 'a.walewright' });
    expect(await services['documents.recent']({})).toEqual([
      { path: join(folder, 'a.walewright'), name: 'a.walewright', exists: true },
      { path: join(folder, 'b.walewright'), name: 'b.walewright', exists: true },
    ]);
  });

  it('are twelve at most', async () => {
    for (let n = 1; n <= 14; n += 1) await save(`${n}.walewright`);
    const names = await recent();
    expect(names).toHaveLength(12);
    expect([names[0], names.at(-1)]).toEqual(['14.walewright', '3.walewright']);
  });

  it('leave out pictures', async () => {
    await writeFile(join(folder, 'motif.pbm'), 'P1\n1 1\n1\n');
    await services['documents.read']({ path: 'motif.pbm' });
    expect(await recent()).toEqual([]);
  });

  it('say which is gone, and forget it when asked to', async () => {
    await save('a.walewright');
    await save('b.walewright');
    await rm(join(folder, 'a.walewright'));
    const listed = await services['documents.recent']({});
    expect(listed.map((entry) => entry.exists)).toEqual([true, false]);
    const left = await services['documents.forgetRecent']({ path: join(folder, 'a.walewright') });
    expect(left.map((entry) => entry.name)).toEqual(['b.walewright']);
  });

  it('are shared by two runs', async () => {
    const other = createServices(testEnvironment(folder));
    await save('a.walewright');
    await save('b.walewright', other);
    await save('c.walewright');
    expect(await recent(other)).toEqual(['c.walewright', 'b.walewright', 'a.walewright']);
  });

  it.each(['', '{', '[]', '{"format":"walewright-recent","paths":[1]}'])(
    'start anew from a damaged list (%j), and the document is saved',
    async (damaged) => {
      await mkdir(join(folder, '.data'));
      await writeFile(join(folder, '.data', 'recent.json'), damaged);
      await save('a.walewright');
      expect(await recent()).toEqual(['a.walewright']);
    },
  );

  it('that cannot be kept stop no saving', async () => {
    const noted: string[] = [];
    const files: FileOperations = {
      ...nodeFiles,
      makeFolder: async (path, mode) => {
        if (path === join(folder, '.data')) throw new Error('no such luck');
        await nodeFiles.makeFolder(path, mode);
      },
    };
    const shell = { ...silentShell, noteProblem: ({ code }: { code: string }) => void noted.push(code) };
    await save('a.walewright', createServices(testEnvironment(folder, { files, shell })));
    expect(await readFile(join(folder, 'a.walewright'), 'utf8')).toBe(TEXT);
    expect(noted).toEqual(['unexpected']);
  });
});

describe('what a folder holds', () => {
  it('is listed folders first, each as people sort, without what is hidden or never opened here', async () => {
    for (const name of ['10', '9', 'Zigzag', 'anchor']) await writeFile(join(folder, `${name}.png`), 'abc');
    for (const name of ['yarn', 'Bands', '.hidden']) await mkdir(join(folder, name));
    await writeFile(join(folder, '.hidden.png'), '');
    await symlink('nowhere', join(folder, 'dangling'));
    await symlink('yarn', join(folder, 'link to yarn'));
    // Names alone can tell what is nobody's business.
    for (const name of ['passwords.txt', 'id_rsa', 'letter to the bank.docx']) await writeFile(join(folder, name), '');
    const listed = await services['folders.list']({ folder: null });
    expect(listed.folder).toBe(folder);
    expect(listed.parent).toBe(tmpdir());
    expect(listed.entries.map(({ name, kind }) => (kind === 'folder' ? `${name}/` : name))).toEqual([
      'Bands/',
      'link to yarn/',
      'yarn/',
      '9.png',
      '10.png',
      'anchor.png',
      'Zigzag.png',
    ]);
  });

  it('is told apart by what can be opened: projects, pictures, and what is only written here', async () => {
    const names = ['a.walewright', 'b.PNG', 'c.svg', 'd.jpeg', 'e.pdf', 'f.csv', 'g.json'];
    for (const name of names) await writeFile(join(folder, name), '');
    const { entries } = await services['folders.list']({ folder: null });
    expect(entries.map(({ name, kind }) => `${name}: ${kind}`)).toEqual([
      'a.walewright: project',
      'b.PNG: picture',
      'c.svg: picture',
      'd.jpeg: picture',
      'e.pdf: other',
      'f.csv: other',
    ]);
  });

  it('has nothing above the root', async () => {
    expect((await services['folders.list']({ folder: parse(folder).root })).parent).toBeNull();
  });

  it.each([
    ['is not there', 'nowhere', 'file-missing'],
    ['is a file', 'plain', 'file-missing'],
  ])('that %s cannot be listed', async (_case, name, code) => {
    await writeFile(join(folder, 'plain'), '');
    const thrown = await services['folders.list']({ folder: name }).catch((error: unknown) => error);
    expect(problemOf(thrown)).toMatchObject({ code, where: join(folder, name) });
  });
});

describe('settings', () => {
  const START = {
    singleKeys: true,
    machine: null,
    collection: null,
    window: null,
    lastFolders: NO_LAST_FOLDERS,
    aids: START_AIDS,
  };
  const file = (): string => join(folder, '.data', 'settings.json');

  it('are those of the start until something is set, and then are kept for the next run', async () => {
    expect(await services['settings.read']({})).toEqual(START);
    await services['settings.keep']({ singleKeys: false });
    expect(await createServices(testEnvironment(folder))['settings.read']({})).toEqual({
      ...START,
      singleKeys: false,
    });
  });

  it('have the machine that a person has, as they said it', async () => {
    const machine = machineAsSaid({ ...START_MACHINE, places: { repeat: 24, from: parseNeedle('L12') } });
    expect(machine.places).toEqual({ repeat: 24, from: 'L12' });
    await services['settings.keep']({ machine });
    const read = await createServices(testEnvironment(folder))['settings.read']({});
    expect(read).toEqual({ ...START, machine });
    expect(read.machine && machineFromSaid(read.machine).places).toEqual({ repeat: 24, from: parseNeedle('L12') });
  });

  it('that one window has set stay when another, opened before, sets something else', async () => {
    const machine = machineAsSaid({ ...START_MACHINE, chooses: 'by-hand' });
    await Promise.all([services['settings.keep']({ machine }), services['settings.keep']({ singleKeys: false })]);
    expect(await services['settings.read']({})).toEqual({
      ...START,
      singleKeys: false,
      machine,
    });
  });

  it('have the folders in which files were chosen last', async () => {
    const lastFolders = { projects: folder, pictures: null, exports: join(folder, 'out') };
    await services['settings.keep']({ lastFolders });
    expect((await createServices(testEnvironment(folder))['settings.read']({})).lastFolders).toEqual(lastFolders);
  });

  it('have the size in which the window was left', async () => {
    const window = { width: 1600, height: 950 };
    await services['settings.keep']({ window });
    expect(await services['settings.read']({})).toEqual({
      ...START,
      window,
    });
  });

  it('have what helps at the machine, and refuse a key that is none', async () => {
    const aids = { speaks: 'short', sounds: true, tellsTime: false, sees: 'knit', key: 'F13' } as const;
    await services['settings.keep']({ aids });
    expect(await createServices(testEnvironment(folder))['settings.read']({})).toEqual({ ...START, aids });
    const { params } = contract['settings.keep'];
    for (const key of ['', 'x'.repeat(33), 7]) {
      expect(params.safeParse({ aids: { ...aids, key } }).success, String(key)).toBe(false);
    }
  });

  it('of an earlier program have none yet', async () => {
    await services['settings.keep']({ singleKeys: false });
    await writeFile(file(), '{"singleKeys": false}');
    expect(await services['settings.read']({})).toEqual({
      ...START,
      singleKeys: false,
    });
  });

  it.each(['', '{', '{"singleKeys": "no"}', '[]', '\u0000'])(
    'that cannot be read stand in nobody’s way: %j',
    async (text) => {
      await services['settings.keep']({ singleKeys: false });
      await writeFile(file(), text);
      expect(await services['settings.read']({})).toEqual(START);
    },
  );

  it('are whole after being set many times at once', async () => {
    await Promise.all(Array.from({ length: 20 }, (_, n) => services['settings.keep']({ singleKeys: n % 2 === 0 })));
    expect(await services['settings.read']({})).toEqual({
      ...START,
      singleKeys: false,
    });
  });
});
