/** `--all-pieces` and `--all-sizes`: files of a whole garment at one go. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { projectToText } from '@shared/project/index.ts';
import type { ProblemJson } from '../../../src-main/cli/json/problem.ts';
import { run } from '../../../src-main/cli/run.ts';
import { garment } from '../../garment.ts';
import { call, callJson, Folder } from './calls.ts';

const folder = new Folder();
afterAll(() => folder.remove());
const file = folder.file('garment.walewright', projectToText(garment()));
const EACH = ['chart.png', 'chart.svg', 'rows.csv'];

/** What is in the folder that a call exports to. */
async function exported(into: string, ...typed: string[]): Promise<string[]> {
  const to = join(folder.path, into);
  const { status, warned } = await call('export', file, '--to', to, '--date', '2026-11-26', ...typed);
  expect([status, warned]).toEqual([0, '']);
  return readdirSync(to).sort();
}

describe('export', () => {
  it('--all-pieces writes the sheets of the size into one file, and all else of each piece', async () => {
    expect(await exported('pieces', '--all-pieces', '--size', 'M')).toEqual(
      [
        'Skerry, all pieces, size M - placement.pdf',
        ...['front', 'sleeve'].flatMap((piece) => EACH.map((kind) => `Skerry, ${piece}, size M - ${kind}`)),
      ].sort(),
    );
  });

  it('--all-sizes writes the files of the piece in each size', async () => {
    expect(await exported('sizes', '--all-sizes', '--piece', 'sleeve')).toEqual(
      ['S', 'M']
        .flatMap((size) => [...EACH, 'placement.pdf'].map((kind) => `Skerry, sleeve, size ${size} - ${kind}`))
        .sort(),
    );
  });

  it('says how far it is while it makes them', async () => {
    const passing: string[] = [];
    const status = await run(['export', file, '--to', join(folder.path, 'far'), '--all-pieces', '--all-sizes'], {
      out: () => undefined,
      warn: () => undefined,
      passing: (text) => passing.push(text),
    });
    expect(status).toBe(0);
    // Of two sizes: a sheet of all pieces, and of two pieces two charts and a row list each.
    const told = Array.from({ length: 14 }, (_, made) => `${made + 1} of 14 files made`);
    expect(passing).toEqual([...told, '']);
  });

  it.each([
    ['piece', 'front', 'all-pieces'],
    ['size', 'S', 'all-sizes'],
  ])('--%s %s and --%s are refused together', async (one, name, all) => {
    const { error } = await callJson<ProblemJson>('export', file, '--to', folder.path, `--${one}`, name, `--${all}`);
    expect(error).toEqual({
      code: 'options-exclude',
      message: `--${one} and --${all} cannot go together. Leave one of them out.`,
      where: `--${all}`,
    });
  });

  it('writes nothing where one piece cannot be planned, and says which', async () => {
    const wrong = JSON.parse(projectToText(garment())) as { pieces: { perSize: { shape: { stitches: number } }[] }[] };
    Object.assign(wrong.pieces[1]?.perSize[1]?.shape ?? {}, { stitches: 3 });
    const path = folder.file('wrong.walewright', JSON.stringify(wrong));
    const to = join(folder.path, 'none');
    const { error } = await callJson<ProblemJson>('export', path, '--to', to, '--all-pieces', '--all-sizes');
    expect(error).toMatchObject({ code: 'groups-wider-than-piece', where: 'sleeve, size M' });
    expect(existsSync(to)).toBe(false);
  });
});
