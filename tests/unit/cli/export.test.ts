import { appendFileSync, existsSync, mkdirSync, readdirSync, readFileSync, unlinkSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, it } from 'vitest';
import { projectAt, sampleProject } from '@shared/project/index.ts';
import type { PlanJson } from '../../../src-main/cli/json/plan.ts';
import { LIST_NAME } from '../../../src-main/cli/own-files.ts';
import { readPdf } from '../../pdf.ts';
import { knit } from '../../reference/bed-simulated.ts';
import { call, callJson, Folder } from './calls.ts';
import { fileTextOf } from '../../written-projects.ts';

const folder = new Folder();
afterAll(() => folder.remove());

const sample = folder.file('sample.walewright', fileTextOf(projectAt(sampleProject())));
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
    const write = async (...typed: string[]) => {
      const { files } = await callJson<Files>('export', sample, '--to', into, '--paper', 'letter', ...typed);
      return files.map(({ path }) => readFileSync(path));
    };
    expect(await write('--date', '2026-01-02')).toEqual(await write('--date', '2026-01-02', '--replace'));
    // Nothing is left beside them.
    expect(readdirSync(into).sort()).toEqual(FILES);
  });

  it('has on the sheet the charts that are asked for, both where nobody asks', async () => {
    const written = async (...typed: string[]): Promise<string[]> => {
      const into = join(folder.path, `charts-${typed.join('')}`);
      const { files } = await callJson<Files>('export', sample, '--to', into, ...typed);
      const pdf = files.find(({ path }) => path.endsWith('.pdf'))?.path ?? '';
      const pages = await readPdf(new Uint8Array(readFileSync(pdf)));
      const texts = pages.flatMap(({ texts }) => texts.map(({ text }) => text));
      return ['As you see it on the needles', 'As it is seen when worn'].filter((way) =>
        texts.some((text) => text.startsWith(way)),
      );
    };
    expect(await written()).toHaveLength(2);
    expect(await written('--charts', 'needles')).toEqual(['As you see it on the needles']);
    expect(await written('--charts', 'worn')).toEqual(['As it is seen when worn']);
    expect((await call('export', sample, '--to', folder.path, '--charts', 'front')).warned).toMatch(
      /--charts.*both or needles or worn/s,
    );
  });

  it('of several projects into one folder at once writes them all, and again over them', async () => {
    const into = join(folder.path, 'at-once');
    const projects = Array.from({ length: 4 }, (_, p) =>
      folder.file(`at-once-${p}.walewright`, fileTextOf({ ...projectAt(sampleProject()), name: `Sleeve ${p}` })),
    );
    const exportAll = (...typed: string[]) =>
      Promise.all(projects.map((project) => callJson<Files>('export', project, '--to', into, ...typed)));
    await exportAll();
    for (const { files } of await exportAll('--replace'))
      expect(files.map(({ replaced }) => replaced)).toEqual([true, true, true, true]);
  });

  describe('into a folder where files of these names are', () => {
    const rows = FILES[3] as string;
    const changed = fileTextOf({
      ...projectAt(sampleProject()),
      piece: { ...projectAt(sampleProject()).piece, shape: { kind: 'rectangle', stitches: 124, rows: 99 } },
    });
    /** A folder that a project was exported into, the project, and what is there. */
    async function exported(name: string) {
      const into = join(folder.path, name);
      mkdirSync(into);
      const project = folder.file(`${name}.walewright`, fileTextOf(projectAt(sampleProject())));
      await callJson('export', project, '--to', into);
      const all = () => new Map(readdirSync(into).map((file) => [file, readFileSync(join(into, file), 'utf8')]));
      return { into, project, all };
    }

    it('writes nothing, and lists them with what to do', async () => {
      const { into, project, all } = await exported('there');
      const before = all();
      writeFileSync(project, changed);
      expect(await callJson('export', project, '--to', into)).toMatchObject({
        error: { code: 'files-there', where: into, message: expect.stringContaining(rows) as string },
      });
      const { status, warned } = await call('export', project, '--to', into);
      expect(status).toBe(1);
      for (const said of [...FILES, '--replace']) expect(warned).toContain(said);
      expect(all()).toEqual(before);
    });

    it('lists those alone that are there', async () => {
      const { into, project } = await exported('some');
      for (const name of FILES.filter((name) => name !== rows)) unlinkSync(join(into, name));
      const { warned } = await call('export', project, '--to', into);
      expect(FILES.filter((name) => warned.includes(name))).toEqual([rows]);
      expect(readdirSync(into)).toEqual([rows]);
    });

    it('replaces them with --replace, and says which', async () => {
      const { into, project, all } = await exported('replaced');
      const before = all();
      appendFileSync(join(into, rows), 'noted by hand');
      unlinkSync(join(into, FILES[0] as string));
      writeFileSync(project, changed);
      const { files } = await callJson<Files>('export', project, '--to', into, '--replace');
      const replaced = new Map(files.map((file) => [basename(file.path), file.replaced]));
      expect(replaced).toEqual(new Map(FILES.map((name, index) => [name, index > 0])));
      expect(all().get(rows)).not.toContain('noted by hand');
      expect(all().get(rows)).not.toBe(before.get(rows));
      const { out } = await call('export', project, '--to', into, '--replace');
      for (const name of FILES) expect(out).toContain(`${name} (replaced)`);
    });

    it('replaces no file of another kind, and then none at all', async () => {
      const { into, project, all } = await exported('other-kind');
      writeFileSync(join(into, FILES[2] as string), 'Dear diary');
      const before = all();
      writeFileSync(project, changed);
      expect(await callJson('export', project, '--to', into, '--replace')).toMatchObject({
        error: { code: 'file-of-other-kind', where: join(into, FILES[2] as string) },
      });
      expect(all()).toEqual(before);
    });
  });

  it('says what was written to people', async () => {
    const { status, out } = await call('export', sample, '--to', join(folder.path, 'said'));
    expect(status).toBe(0);
    for (const name of FILES) expect(out).toContain(name);
  });

  it('writes nothing for a project that cannot be knitted', async () => {
    const project = projectAt(sampleProject());
    const narrow = {
      ...project,
      piece: { ...project.piece, shape: { kind: 'rectangle', stitches: 20, rows: 99 } as const },
    };
    const file = folder.file('narrow.walewright', fileTextOf(narrow));
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
    for (const line of ['Set pattern band 1 for row 25', 'Cast off all', ...FILES]) expect(out).toContain(line);
  });

  it('can be done again and again, over what it wrote itself, and no other file unless told to', async () => {
    const into = join(folder.path, 'demo-again');
    for (const replaced of [false, true, true]) {
      const { files } = await callJson<Files>('demo', '--to', into, '--paper', replaced ? 'letter' : 'a4');
      expect(files.map((file) => file.replaced)).toEqual(FILES.map(() => replaced));
    }
    const rows = join(into, FILES[3] as string);
    const before = readFileSync(rows, 'utf8');
    appendFileSync(rows, 'noted by hand');
    for (const damage of [null, '', '{"format":"walewright-written","files":[]}']) {
      if (damage !== null) writeFileSync(join(into, LIST_NAME), damage);
      const { status, warned } = await call('demo', '--to', into);
      expect(status, String(damage)).toBe(1);
      for (const said of ['Nothing was written', FILES[3] as string, '--replace']) expect(warned).toContain(said);
    }
    expect(readFileSync(rows, 'utf8')).toContain('noted by hand');
    await callJson<Files>('demo', '--to', into, '--replace');
    expect(readFileSync(rows, 'utf8')).toBe(before);
    // They are its own again.
    expect((await call('demo', '--to', into)).status).toBe(0);
  });

  it('gives files and plan in JSON', async () => {
    const demo = await callJson<Files & { plan: PlanJson }>('demo', '--to', join(folder.path, 'demo-json'));
    expect(demo.files).toHaveLength(4);
    expect(demo.plan).toEqual(await callJson<PlanJson>('plan', sample));
  });
});
