/** The collection from the command line: motifs kept, listed, found and used. */
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { gridFromText } from '@shared/grid/index.ts';
import { projectAround, projectToText, START_YARNS, sampleProject } from '@shared/project/index.ts';
import { call, callJson, Folder } from './calls.ts';

const folder = new Folder();
afterAll(() => {
  folder.remove();
  vi.unstubAllEnvs();
});

let own: string;
let data = 0;
beforeEach(() => {
  const dataFolder = join(folder.path, `data-${++data}`);
  vi.stubEnv('WALEWRIGHT_DATA', dataFolder);
  own = join(dataFolder, 'collection');
});

const star = (name = 'star', rows = ['X.X.', '.X.X']): string =>
  projectToText(projectAround(name, name, gridFromText(rows, '.X'), 0, 'worn', START_YARNS));
const put = (file: string, text = star()): void => {
  mkdirSync(own, { recursive: true });
  writeFileSync(join(own, file), text);
};
const error = async (...typed: string[]) => (await callJson<{ error?: object }>(...typed)).error;

describe('keep', () => {
  it('keeps the motif of a project, or a picture, and says where', async () => {
    const project = folder.file('work.walewright', projectToText(sampleProject()));
    const { status, out } = await call('keep', project);
    expect([status, out]).toEqual([0, '“lighthouse and gulls” is kept as lighthouse and gulls.walewright.']);
    const picture = folder.motif('dots.pbm', ['X.X.', '....']);
    expect(await callJson('keep', picture)).toEqual({ name: 'dots', as: 'new', file: 'dots.walewright' });
    expect(readdirSync(own)).toEqual(['dots.walewright', 'lighthouse and gulls.walewright']);
  });

  it('keeps the motif that is named', async () => {
    const sample = sampleProject();
    const [first] = sample.motifs;
    const motifs = [first, { ...first, id: 'second', name: 'Second' }] as typeof sample.motifs;
    const project = folder.file('two.walewright', projectToText({ ...sample, motifs }));
    expect(await callJson('keep', project, '--motif', 'second')).toMatchObject({ name: 'Second' });
    expect(await error('keep', project, '--motif', 'third')).toMatchObject({
      code: 'option-value',
      message: expect.stringContaining('lighthouse and gulls, Second') as string,
    });
  });

  it('writes over no motif of its name unless it is said', async () => {
    put('star.walewright');
    const other = folder.file('other.walewright', star('Star', ['XX']));
    expect(await error('keep', other)).toMatchObject({ code: 'files-there' });
    expect(readdirSync(own)).toEqual(['star.walewright']);
    expect(await callJson('keep', other, '--replace')).toMatchObject({ as: 'replaced', file: 'star.walewright' });
    expect(await callJson('keep', other)).toMatchObject({ as: 'same' });
    const third = folder.file('third.walewright', star('star', ['X.']));
    expect(await callJson('keep', third, '--keep-both')).toMatchObject({ as: 'new', file: 'star (2).walewright' });
    expect(await error('keep', other, '--replace')).toMatchObject({ code: 'collected-several', where: '--replace' });
    expect(await error('keep', other, '--replace', '--keep-both')).toMatchObject({ code: 'options-exclude' });
  });
});

describe('collection', () => {
  it('lists motifs with what they are found by, and what is none with the reason', async () => {
    put('star.walewright');
    put('torn.walewright', '{');
    const { status, out } = await call('collection');
    expect(status).toBe(0);
    expect(out.split('\n')).toEqual([
      `In ${own}:`,
      'motif   size  repeat  yarns         file',
      'star   4 × 2   2 × 2  slate, chalk  star.walewright',
      expect.stringMatching(/^torn\.walewright: The file is not a whole project/),
    ]);
    expect(await callJson('collection')).toMatchObject({
      folder: own,
      motifs: [
        { name: 'star', width: 4, height: 2, repeat: { width: 2, height: 2 }, file: join(own, 'star.walewright') },
      ],
      unusable: [{ file: join(own, 'torn.walewright'), error: { code: 'project-not-json' } }],
    });
  });

  it('finds by what the window finds by', async () => {
    put('star.walewright');
    put('bar.walewright', star('bar', ['X', '.']));
    const found = async (words: string) =>
      (await callJson<{ motifs: { name: string }[] }>('collection', '--find', words)).motifs.map(({ name }) => name);
    expect(await found('chalk')).toEqual(['bar', 'star']);
    expect(await found('4x2')).toEqual(['star']);
    expect(await found('repeat 1')).toEqual(['bar']);
    expect(await found('nothing of the kind')).toEqual([]);
    expect((await call('collection', '--find', 'nope')).out).toBe(`In ${own}:\nNo motif.`);
  });

  it('is empty before anything is kept, and another folder where one is named, which must be there', async () => {
    expect(await callJson('collection')).toEqual({ folder: own, motifs: [], unusable: [] });
    const other = join(folder.path, 'other-motifs');
    expect(await error('collection', '--collection', other)).toMatchObject({ code: 'file-missing', where: other });
    mkdirSync(other);
    await call('keep', folder.file('a.walewright', star()), '--collection', other);
    expect(await callJson('collection', '--collection', other)).toMatchObject({ motifs: [{ name: 'star' }] });
    expect(await callJson('collection')).toMatchObject({ motifs: [] });
    expect(await error('collection', '--collection', ' ')).toMatchObject({ code: 'option-empty' });
  });

  it('is the folder that was chosen in the window', async () => {
    put('star.walewright');
    const chosen = join(folder.path, 'chosen');
    mkdirSync(chosen);
    const settings = { singleKeys: true, machine: null, window: null, collection: chosen };
    writeFileSync(join(own, '..', 'settings.json'), JSON.stringify(settings));
    expect(await callJson('collection')).toEqual({ folder: chosen, motifs: [], unusable: [] });
  });
});

describe('a motif of the collection', () => {
  it('stands wherever a motif is named, by its name or its file', async () => {
    put('first.walewright');
    for (const name of ['star', 'STAR', 'first', 'first.walewright']) {
      expect(await callJson('measure', `collection:${name}`)).toMatchObject({ width: 4, height: 2 });
    }
    const placed = ['--stitches', '40', '--copies', '2,2'];
    const file = join(own, 'first.walewright');
    expect(await callJson('place', 'collection:star', ...placed)).toEqual(await callJson('place', file, ...placed));
    expect(await callJson('sizes', 'collection:star')).toEqual(await callJson('sizes', file));
  });

  it('is told of where there is none, or several', async () => {
    put('star.walewright');
    put('star (2).walewright', star('Star', ['X']));
    expect(await error('measure', 'collection:moon')).toMatchObject({ code: 'file-missing', where: 'collection:moon' });
    expect(await error('measure', 'collection:star')).toMatchObject({
      code: 'collected-several',
      where: 'collection:star',
      message: expect.stringContaining('star.walewright and star (2).walewright') as string,
    });
    expect(await callJson('measure', 'collection:star (2)')).toMatchObject({ width: 1 });
  });
});
