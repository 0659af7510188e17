/** `--piece`: which of several pieces a command is about. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import {
  addSize,
  afterChange,
  applyChange,
  changeOf,
  insertInto,
  projectAt,
  projectToText,
  sampleProject,
  setPieceInSizes,
  type PieceInSizes,
} from '@shared/project/index.ts';
import type { PlanJson } from '../../../src-main/cli/json/plan.ts';
import type { ProblemJson } from '../../../src-main/cli/json/problem.ts';
import type { SizesJson } from '../../../src-main/cli/json/sizes.ts';
import { call, callJson, Folder } from './calls.ts';

const folder = new Folder();
afterAll(() => folder.remove());

/** The sample's sleeve in sizes 1 and L, and a front of 60 rows without patterns. */
function garment(): string {
  const sized = afterChange(projectAt(sampleProject()), addSize(projectAt(sampleProject()), 1, 'L', 'large')).whole;
  const [sleeve] = sized.pieces as [PieceInSizes];
  const perSize = sleeve.perSize.map((numbers, at) => ({
    ...numbers,
    shape: { kind: 'rectangle', stitches: 90 + 10 * at, rows: 60 } as const,
  }));
  const front = { ...sleeve, id: 'front', name: 'Front', perSize, patterns: [] };
  const two = applyChange(sized, changeOf('add-piece', insertInto('pieces', 1, front)));
  return projectToText(applyChange(two, changeOf('knit-times', setPieceInSizes('piece-1', { knit: 2 }))));
}
const file = folder.file('garment.walewright', garment());

describe('--piece', () => {
  it('plans the piece of that name, in large letters or small, and the first if left out', async () => {
    const planned = async (...typed: string[]) => {
      const { piece, size } = await callJson<PlanJson>('plan', file, ...typed);
      return [piece.stitches, piece.rows, size];
    };
    expect(await planned()).toEqual([96, 140, '1']);
    expect(await planned('--piece', 'sleeve')).toEqual([96, 140, '1']);
    expect(await planned('--piece', 'front')).toEqual([90, 60, '1']);
    expect(await planned('--piece', 'Front', '--size', 'L')).toEqual([100, 60, 'L']);
  });

  it('is said by the plan, so that nobody knits another one', async () => {
    expect((await call('plan', file)).out).toMatch(/^sleeve, size 1: /);
    expect((await call('follow', file, '--piece', 'front')).out).toContain('Front, size 1');
  });

  it('of no piece names those there are', async () => {
    const { error } = await callJson<ProblemJson>('plan', file, '--piece', 'back');
    expect(error).toMatchObject({ code: 'piece-unknown', where: '--piece' });
    expect(error.message).toMatch(/back.*sleeve.*Front/s);
  });

  it('is of no use with a picture', async () => {
    const path = folder.motif('square.pbm', ['XX', 'XX']);
    const { error } = await callJson<ProblemJson>('plan', path, '--stitches', '20', '--copies', '1', '--piece', 'x');
    expect(error.code).toBe('option-unknown');
  });

  it('puts the sizes of that piece side by side', async () => {
    const { sizes } = await callJson<SizesJson>('sizes', file, '--piece', 'Front');
    expect(sizes.map(({ name, shape }) => [name, shape.stitches])).toEqual([
      ['1', 90],
      ['L', 100],
    ]);
  });

  it('names what is exported, so that all pieces and sizes go into one folder and none writes over another', async () => {
    const to = join(folder.path, 'out');
    for (const [piece, size] of [
      ['sleeve', '1'],
      ['Front', '1'],
      ['Front', 'L'],
    ] as const) {
      const { files } = await callJson<{ files: { replaced: boolean }[] }>(
        ...['export', file, '--to', to, '--piece', piece, '--size', size],
      );
      expect(files.map(({ replaced }) => replaced)).toEqual([false, false, false, false]);
    }
    const kinds = ['chart.png', 'chart.svg', 'placement.pdf', 'rows.csv'];
    expect(readdirSync(to).sort()).toEqual(
      ['Front, size 1', 'Front, size L', 'sleeve, size 1'].flatMap((of) =>
        kinds.map((kind) => `Skerry sleeve, ${of} - ${kind}`),
      ),
    );
    const rows = readFileSync(join(to, 'Skerry sleeve, Front, size L - rows.csv'), 'utf8');
    expect(rows).toContain('Cast on 100 stitches');
  });

  it('is refused where two pieces are called so, with which they are', async () => {
    const { pieces, ...others } = JSON.parse(garment()) as { pieces: object[] };
    const twice = { ...others, pieces: [...pieces, { ...pieces[1], id: 'back' }] };
    const path = folder.file('twice.walewright', JSON.stringify(twice));
    for (const command of [
      ['plan', path],
      ['follow', path],
      ['sizes', path],
      ['export', path, '--to', folder.path],
    ]) {
      const { error } = await callJson<ProblemJson>(...command, '--piece', 'Front');
      expect(error).toEqual({
        code: 'piece-name-shared',
        message:
          'Pieces 2 and 3 are both called “Front”. Write “Front (1)” for piece 2 and “Front (2)” for piece 3, or give each a name of its own on the Piece bench.',
        where: '--piece',
      });
    }
    expect((await callJson<PlanJson>('plan', path, '--piece', 'sleeve')).piece.rows).toBe(140);
  });

  it('reaches each of two that are called so by their order, unless another has that very name', async () => {
    const { pieces, ...others } = JSON.parse(garment()) as { pieces: { perSize: { shape: object }[] }[] };
    const back = structuredClone(pieces[1] as (typeof pieces)[number]);
    for (const { shape } of back.perSize) Object.assign(shape, { rows: 70 });
    const rowsOf = async (called: string, ...more: object[]) => {
      const all = [...pieces, { ...back, id: 'back' }, ...more];
      const path = folder.file('numbered.walewright', JSON.stringify({ ...others, pieces: all }));
      return (await callJson<PlanJson>('plan', path, '--piece', called)).piece.rows;
    };
    expect([await rowsOf('Front (1)'), await rowsOf('Front (2)')]).toEqual([60, 70]);
    expect(await rowsOf('Front (1)', { ...back, id: 'own', name: 'Front (1)' })).toBe(70);
  });

  it('is said by --json, with how many are knitted', async () => {
    for (const command of ['plan', 'follow']) {
      expect(await callJson(command, file)).toMatchObject({ size: '1', piece: { name: 'sleeve' }, knit: 2 });
      const front = await callJson(command, file, '--piece', 'Front', '--size', 'L');
      expect(front).toMatchObject({ size: 'L', piece: { name: 'Front', stitches: 100 }, knit: 1 });
    }
  });
});
