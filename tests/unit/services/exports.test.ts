/** Writing the files that are made from a project. */
import { appendFile, mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { exportKinds, type Params } from '@shared/host/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { TEST_DAY } from '../../day.ts';
import { garment } from '../../garment.ts';
import { createServices, nodeFiles, type FileOperations } from '../../../src-main/services/index.ts';
import { platformError } from '../../faults/failing-files.ts';
import { stampOf } from '../../../src-main/services/stamp.ts';
import { testEnvironment } from './test-environment.ts';

let folder: string;
beforeEach(async () => void (folder = await mkdtemp(join(tmpdir(), 'walewright-exports-'))));
afterEach(() => rm(folder, { recursive: true, force: true }));

function write(given: Partial<Params<'exports.write'>> = {}, files: FileOperations = nodeFiles) {
  const project = projectToText(sampleProject());
  const services = createServices(testEnvironment(folder, { files }));
  return services['exports.write']({
    project,
    folder,
    kinds: ['rows-csv'],
    paper: 'a4',
    date: TEST_DAY,
    there: { kind: 'ask' },
    ...given,
  });
}
const problem = (answer: Promise<unknown>) => answer.then(() => null, problemOf);

describe('exporting', () => {
  it('writes each kind into the folder and says which files, of which size', async () => {
    const answer = await write({ kinds: [...exportKinds] });
    if (answer.kind !== 'written') throw new Error('It asks');
    const endings = answer.files.map(({ path }) => path.split('.').at(-1));
    expect(endings).toEqual(exportKinds.map((kind) => kind.split('-').at(-1)));
    for (const { path, bytes } of answer.files) expect((await stat(path)).size).toBe(bytes);
    expect(await readdir(folder)).toHaveLength(answer.files.length);
  });

  describe('where files of these names are', () => {
    const kinds = ['chart-svg', 'rows-csv'] as const;
    const paths = (['chart.svg', 'rows.csv'] as const).map((name) => `Skerry sleeve - ${name}`);
    const [svg, csv] = paths as [string, string];

    it('asks about them and writes nothing, until it is told to replace what it asked about', async () => {
      await write({ kinds: ['rows-csv'] });
      const old = await readFile(join(folder, csv), 'utf8');
      await writeFile(join(folder, csv), `${old},,,,noted by hand\r\n`);
      const asked = await write({ kinds: [...kinds] });
      expect(asked).toMatchObject({ kind: 'asks', folder, there: [{ name: csv }] });
      expect(await readdir(folder)).toEqual([csv]);
      expect(await readFile(join(folder, csv), 'utf8')).not.toBe(old);
      const seen = asked.kind === 'asks' ? asked.there : [];
      expect(await write({ kinds: [...kinds], there: { kind: 'replace', seen } })).toMatchObject({ kind: 'written' });
      expect((await readdir(folder)).sort()).toEqual([svg, csv]);
      expect(await readFile(join(folder, csv), 'utf8')).toBe(old);
    });

    it('asks again about one that was changed since it was asked about', async () => {
      await write({ kinds: ['rows-csv'] });
      const asked = await write({ kinds: [...kinds] });
      await appendFile(join(folder, csv), 'noted by hand\r\n');
      const seen = asked.kind === 'asks' ? asked.there : [];
      expect(await write({ kinds: [...kinds], there: { kind: 'replace', seen } })).toMatchObject({ kind: 'asks' });
      expect(await readFile(join(folder, csv), 'utf8')).toContain('noted by hand');
    });

    it('keeps both when told to: the new ones have a number behind their names, all the same one', async () => {
      const [numbered, next] = ['rows (2).csv', 'rows (3).csv'].map((name) => `Skerry sleeve - ${name}`);
      await writeFile(join(folder, csv), 'mine,,,,\r\n');
      const first = await write({ kinds: [...kinds], there: { kind: 'number' } });
      expect(first).toMatchObject({ files: [{ path: join(folder, svg) }, { path: join(folder, numbered as string) }] });
      // Both names are taken now, and one of them with a number.
      await write({ kinds: [...kinds], there: { kind: 'number' } });
      const names = ['chart (3).svg', 'chart.svg'].map((name) => `Skerry sleeve - ${name}`);
      expect((await readdir(folder)).sort()).toEqual([...names, numbered, next, csv].sort());
      expect(await readFile(join(folder, csv), 'utf8')).toBe('mine,,,,\r\n');
    });

    it('keeps both beside what it would never replace', async () => {
      await writeFile(join(folder, csv), 'Dear diary');
      await mkdir(join(folder, 'Skerry sleeve - rows (2).csv'));
      const answer = await write({ there: { kind: 'number' } });
      expect(answer).toMatchObject({ files: [{ path: join(folder, 'Skerry sleeve - rows (3).csv') }] });
      expect(await readFile(join(folder, csv), 'utf8')).toBe('Dear diary');
    });

    it.each([
      [csv, 'rows-csv', 'Dear diary'],
      [svg, 'chart-svg', '<p>Dear diary</p>'],
      ['Skerry sleeve - chart.png', 'chart-png', 'Dear diary'],
      ['Skerry sleeve - placement.pdf', 'sheet-pdf', 'Dear diary'],
    ] as const)('never replaces %s that is no %s', async (name, kind, content) => {
      await writeFile(join(folder, name), content);
      const stamp = stampOf(Buffer.from(content));
      expect(
        await problem(write({ kinds: [kind], there: { kind: 'replace', seen: [{ name, stamp }] } })),
      ).toMatchObject({
        code: 'file-of-other-kind',
        where: join(folder, name),
      });
      expect(await readFile(join(folder, name), 'utf8')).toBe(content);
    });
  });

  describe('of all pieces in all sizes', () => {
    const ALL = { pieces: 'all', sizes: 'all' } as const;
    const project = projectToText(garment());
    const sheets = ['S', 'M'].map((size) => `Skerry, all pieces, size ${size} - placement.pdf`);
    const rows = ['S', 'M'].flatMap((size) =>
      ['front', 'sleeve'].map((piece) => `Skerry, ${piece}, size ${size} - rows.csv`),
    );

    it('writes the sheets of each size in one file, and all else of each piece in each size', async () => {
      await write({ project, scope: ALL, kinds: ['sheet-pdf', 'rows-csv'] });
      expect((await readdir(folder)).sort()).toEqual([...sheets, ...rows].sort());
      const lines = async (name: string): Promise<number> =>
        (await readFile(join(folder, name), 'utf8')).trimEnd().split('\r\n').length;
      // A heading, and 50 rows of the front, 40 of the sleeve.
      expect(await Promise.all(rows.map(lines))).toEqual([51, 41, 51, 41]);
    });

    it('asks about all that are there at once, and writes nothing before it is answered', async () => {
      await write({ project, scope: ALL });
      const asked = await write({ project, scope: ALL, kinds: ['rows-csv', 'chart-svg'] });
      expect(asked.kind === 'asks' && asked.there.map(({ name }) => name)).toEqual(rows);
      expect((await readdir(folder)).sort()).toEqual([...rows].sort());
    });

    it('writes none where one of them cannot be planned, and says which', async () => {
      const wrong = JSON.parse(project) as { pieces: { perSize: { shape: { stitches: number } }[] }[] };
      Object.assign(wrong.pieces[1]?.perSize[1]?.shape ?? {}, { stitches: 3 });
      const asked = { project: JSON.stringify(wrong), scope: ALL, kinds: [...exportKinds] };
      expect(await problem(write(asked))).toMatchObject({ code: 'groups-wider-than-piece', where: 'sleeve, size M' });
      expect(await readdir(folder)).toEqual([]);
    });

    /** A call whose files are made as far as `at`, which then waits to be let go. */
    function waitingAt(at: number) {
      const { makeExports, ...environment } = testEnvironment(folder);
      const run = 'run-of-a-test';
      let arrived: () => void = () => undefined;
      const there = new Promise<void>((resolve) => (arrived = resolve));
      let go: () => void = () => undefined;
      const held = new Promise<void>((resolve) => (go = resolve));
      const services = createServices({
        ...environment,
        makeExports: async (asked, waiting) => {
          waiting?.further?.(at);
          arrived();
          await held;
          return makeExports(asked, waiting);
        },
      });
      const given = { project, scope: ALL, run, folder, kinds: ['rows-csv'] } as const;
      const writing = services['exports.write']({ ...given, paper: 'a4', date: TEST_DAY, there: { kind: 'ask' } });
      return { services, run, writing, there, go: () => go() };
    }

    it('tells how far it is while it goes on, and nothing before or after', async () => {
      const { services, run, writing, there, go } = waitingAt(3);
      await there;
      expect(await services['exports.howFar']({ run })).toEqual({ made: 3, of: 4 });
      expect(await services['exports.howFar']({ run: 'another-run' })).toBeNull();
      go();
      await writing;
      expect(await services['exports.howFar']({ run })).toBeNull();
    });

    it('writes nothing where it is given up before all are made', async () => {
      const { services, run, writing, there, go } = waitingAt(3);
      await there;
      await services['exports.stop']({ run });
      go();
      expect(await writing).toEqual({ kind: 'stopped' });
      expect(await readdir(folder)).toEqual([]);
      // There is none of that name any more.
      expect(await services['exports.stop']({ run })).toEqual({});
    });
  });

  it.each([
    ['is not there', 'nowhere', 'file-missing'],
    ['is a file', 'plain', 'folder-not-writable'],
  ])('into a folder that %s is refused by name', async (_case, name, code) => {
    await writeFile(join(folder, 'plain'), '');
    expect(await problem(write({ folder: name }))).toMatchObject({ code, where: join(folder, name) });
  });

  it('of what is no project is refused, and nothing is written', async () => {
    expect(await problem(write({ project: '{}' }))).toMatchObject({ code: 'project-not-ours' });
    expect(await readdir(folder)).toEqual([]);
  });

  it.each([
    ['ENOSPC', 'disk-full'],
    ['EACCES', 'folder-not-writable'],
  ])('onto a disk that answers %s says so and leaves nothing half-written', async (failure, code) => {
    const failing: FileOperations = {
      ...nodeFiles,
      open: async (path, how, mode) => {
        if (how !== 'new') return nodeFiles.open(path, how, mode);
        if (failure === 'EACCES') throw platformError(failure, 'open');
        const file = await nodeFiles.open(path, how, mode);
        return { ...file, write: async () => Promise.reject(platformError(failure, 'write')) };
      },
    };
    const shown = await problem(write({}, failing));
    expect(shown).toMatchObject({ code });
    expect(shown?.where).toContain(folder);
    expect(await readdir(folder)).toEqual([]);
  });
});
