import { appendFileSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, it } from 'vitest';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import type { PlanJson } from '../../../src-main/cli/json/plan.ts';
import { LIST_NAME } from '../../../src-main/cli/own-files.ts';
import { knit } from '../../reference/bed-simulated.ts';
import { call, callJson, Folder } from './calls.ts';

const folder = new Folder();
afterAll(() => folder.remove());

const sample = folder.file('sample.walewright', projectToText(sampleProject()));
const FILES = [
  'Skerry sleeve - chart.png',
  'Skerry sleeve - chart.svg',
  'Skerry sleeve - placement.pdf',
  'Skerry sleeve - rows.csv',
];

interface Files {
  readonly files: { readonly path: string; readonly bytes: number; readonly replaced: boolean }[];
}

describe('export', () => {
  it('writes chart, sheet and row list into a folder that it makes', async () => {
    const into = join(folder.path, 'new', 'deeper');
    const { files } = await callJson<Files>('export', sample, '--to', into);
    expect(files.map(({ path }) => path).sort()).toEqual(FILES.map((name) => join(into, name)));
    for (const { path, bytes } of files) expect(readFileSync(path)).toHaveLength(bytes);
    expect(PNG.sync.read(readFileSync(join(into, FILES[0] as string))).width).toBeGreaterThan(14);
    expect(
      readFileSync(join(into, FILES[2] as string))
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
    const { picture } = knit(readFileSync(join(into, FILES[3] as string), 'utf8'), 'knit');
    expect(picture).toHaveLength(140);
  });

  it('writes the same bytes again, over the old files', async () => {
    const into = join(folder.path, 'twice');
    const write = async () => {
      const { files } = await callJson<Files>('export', sample, '--to', into, '--paper', 'letter');
      return files.map(({ path }) => readFileSync(path));
    };
    expect(await write()).toEqual(await write());
    expect(readdirSync(into).sort()).toEqual([LIST_NAME, ...FILES]);
  });

  it('of several projects into one folder at once leaves each file known as its own', async () => {
    const into = join(folder.path, 'at-once');
    const projects = Array.from({ length: 4 }, (_, p) =>
      folder.file(`at-once-${p}.walewright`, projectToText({ ...sampleProject(), name: `Sleeve ${p}` })),
    );
    const exportAll = () => Promise.all(projects.map((project) => callJson<Files>('export', project, '--to', into)));
    await exportAll();
    for (const { files } of await exportAll())
      expect(files.map(({ replaced }) => replaced)).toEqual([true, true, true, true]);
  });

  describe('into a folder where files of these names are', () => {
    const rows = FILES[3] as string;
    const changed = projectToText({
      ...sampleProject(),
      piece: { ...sampleProject().piece, shape: { kind: 'rectangle', stitches: 124, rows: 99 } },
    });
    /** A folder that a project was exported into, and the project. */
    async function exported(name: string): Promise<{ into: string; project: string; read: () => string }> {
      const into = join(folder.path, name);
      mkdirSync(into);
      const project = folder.file(`${name}.walewright`, projectToText(sampleProject()));
      await callJson('export', project, '--to', into);
      return { into, project, read: () => readFileSync(join(into, rows), 'utf8') };
    }
    const refused = (into: string, names: readonly string[], code = 'files-not-from-here') => ({
      error: { code, where: into, message: expect.stringContaining(names[0] as string) as string },
    });

    it('replaces what it wrote for the same project, and says so', async () => {
      const { into, project, read } = await exported('same');
      const before = read();
      writeFileSync(project, changed);
      const { files } = await callJson<Files>('export', project, '--to', into);
      expect(files.map(({ replaced }) => replaced)).toEqual([true, true, true, true]);
      expect(read()).not.toBe(before);
      const { out } = await call('export', project, '--to', into);
      for (const name of FILES) expect(out).toContain(`${name} (replaced)`);
    });

    it('replaces it after both were moved', async () => {
      const { into, project, read } = await exported('moved');
      const [there, moved] = [join(folder.path, 'elsewhere'), join(folder.path, 'elsewhere', 'moved')];
      mkdirSync(there);
      renameSync(into, moved);
      renameSync(project, join(there, 'moved.walewright'));
      writeFileSync(join(there, 'moved.walewright'), changed);
      const answer = await callJson<Files>('export', join(there, 'moved.walewright'), '--to', moved);
      expect(answer.files).toHaveLength(4);
      expect(read).toThrow('ENOENT');
    });

    it('writes nothing over a file that somebody has changed since', async () => {
      const { into, project, read } = await exported('noted');
      appendFileSync(join(into, rows), 'noted by hand');
      const before = new Map(readdirSync(into).map((name) => [name, readFileSync(join(into, name), 'utf8')]));
      writeFileSync(project, changed);
      expect(await callJson('export', project, '--to', into)).toMatchObject(refused(into, [rows]));
      expect(read()).toContain('noted by hand');
      for (const [name, text] of before) expect(readFileSync(join(into, name), 'utf8'), name).toBe(text);
    });

    it('writes nothing over what another project was turned into', async () => {
      const { into, read } = await exported('mine');
      const before = read();
      const hers = folder.file('hers.walewright', changed);
      expect(await callJson('export', hers, '--to', into)).toMatchObject(refused(into, [rows]));
      expect(read()).toBe(before);
    });

    it('writes nothing over files whose list is gone or damaged', async () => {
      const { into, project, read } = await exported('damaged');
      const before = read();
      writeFileSync(project, changed);
      for (const damage of ['', '{"format":"walewright-written","files":[]}']) {
        writeFileSync(join(into, LIST_NAME), damage);
        expect(await callJson('export', project, '--to', into), damage).toMatchObject(refused(into, [rows]));
      }
      expect(read()).toBe(before);
    });

    it('writes nothing over any with --keep', async () => {
      const { into, project, read } = await exported('kept');
      const before = read();
      const answer = await callJson('export', project, '--to', into, '--keep');
      expect(answer).toMatchObject(refused(into, FILES, 'files-kept'));
      expect(read()).toBe(before);
      const fresh = await callJson<Files>('export', project, '--to', join(folder.path, 'fresh'), '--keep');
      expect(fresh.files).toHaveLength(4);
    });
  });

  it('says what was written to people', async () => {
    const { status, out } = await call('export', sample, '--to', join(folder.path, 'said'));
    expect(status).toBe(0);
    for (const name of FILES) expect(out).toContain(name);
  });

  it('writes nothing for a project that cannot be knitted', async () => {
    const project = sampleProject();
    const narrow = {
      ...project,
      piece: { ...project.piece, shape: { kind: 'rectangle', stitches: 20, rows: 99 } as const },
    };
    const file = folder.file('narrow.walewright', projectToText(narrow));
    const into = join(folder.path, 'nothing');
    const answer = await callJson('export', file, '--to', into);
    expect(answer).toMatchObject({ error: { code: 'groups-wider-than-piece', where: file } });
    expect(existsSync(into)).toBe(false);
  });

  it('into a folder that cannot be is refused by name', async () => {
    const into = join(sample, 'drawer');
    expect(await callJson('export', sample, '--to', into)).toMatchObject({
      error: { code: 'folder-not-writable', where: into },
    });
  });

  it('over a folder of a file’s name is refused by name', async () => {
    const into = join(folder.path, 'taken');
    mkdirSync(join(into, FILES[3] as string), { recursive: true });
    expect(await callJson('export', sample, '--to', into)).toMatchObject({
      error: { code: 'file-is-folder', where: join(into, FILES[3] as string) },
    });
  });
});

describe('demo', () => {
  it('writes the files of the sample project and prints its plan', async () => {
    const into = join(folder.path, 'demo');
    const { status, out } = await call('demo', '--to', into);
    expect(status).toBe(0);
    expect(readdirSync(into).sort()).toEqual([LIST_NAME, ...FILES]);
    for (const line of ['Set up with the row counter at 23', 'Pattern begins', ...FILES]) expect(out).toContain(line);
  });

  it('can be done again and again, and refuses with --keep', async () => {
    const into = join(folder.path, 'demo-again');
    for (const replaced of [false, true, true]) {
      const { files } = await callJson<Files>('demo', '--to', into, '--paper', replaced ? 'letter' : 'a4');
      expect(files.map((file) => file.replaced)).toEqual(FILES.map(() => replaced));
    }
    const { status, warned } = await call('demo', '--to', into, '--keep');
    expect(status).toBe(1);
    expect(warned).toContain('Nothing was written');
  });

  it('gives files and plan in JSON', async () => {
    const demo = await callJson<Files & { plan: PlanJson }>('demo', '--to', join(folder.path, 'demo-json'));
    expect(demo.files).toHaveLength(4);
    expect(demo.plan).toEqual(await callJson<PlanJson>('plan', sample));
  });
});
