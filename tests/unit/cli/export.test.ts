import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, it } from 'vitest';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import type { PlanJson } from '../../../src-main/cli/json/plan.ts';
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
  readonly files: { readonly path: string; readonly bytes: number }[];
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
    expect(readdirSync(into).sort()).toEqual(FILES);
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
    expect(readdirSync(into).sort()).toEqual(FILES);
    for (const said of ['Set up with the row counter at 23', 'Pattern begins', ...FILES]) expect(out).toContain(said);
  });

  it('gives files and plan in JSON', async () => {
    const demo = await callJson<Files & { plan: PlanJson }>('demo', '--to', join(folder.path, 'demo-json'));
    expect(demo.files).toHaveLength(4);
    expect(demo.plan).toEqual(await callJson<PlanJson>('plan', sample));
  });
});
