/** `--all-pieces` and `--all-sizes`: files and plans of a whole garment at one go. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { projectToText } from '@shared/project/index.ts';
import type { GarmentJson } from '../../../src-main/cli/json/garment.ts';
import type { PlanJson } from '../../../src-main/cli/json/plan.ts';
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

describe('plan --all-pieces', () => {
  it('has the plan of each piece in the size, and the yarn that they take together, for as many as are knitted', async () => {
    const { size, yarn, pieces } = await callJson<GarmentJson>('plan', file, '--all-pieces', '--size', 'M');
    const each = (piece: string) => callJson<PlanJson>('plan', file, '--piece', piece, '--size', 'M');
    const [front, sleeve] = [await each('front'), await each('sleeve')];
    expect([size, pieces]).toEqual(['M', [front, sleeve]]);
    // One front, two sleeves. Slate weighs 1 g a metre, and what chalk weighs nobody knows.
    const [slate, chalk] = yarn;
    const knitted = front.yarn.main.metres + 2 * sleeve.yarn.main.metres;
    expect(slate?.pieces.map(({ piece, knit, metresForOne }) => [piece, knit, metresForOne])).toEqual([
      ['front', 1, front.yarn.main.metres],
      ['sleeve', 2, sleeve.yarn.main.metres],
    ]);
    const strands = slate?.strands?.metres ?? 0;
    expect(strands).toBeGreaterThan(0);
    expect(slate?.total.metres).toBeCloseTo(knitted + strands, 2);
    expect(slate?.total.grams).toBe(slate?.total.metres);
    expect(slate?.toBuy).toMatchObject({ margin: 0.1, balls: { grams: 50, count: 4 } });
    expect(slate?.toBuy.metres).toBeCloseTo(1.1 * (knitted + strands), 2);
    expect(chalk).toMatchObject({ yarn: 'chalk', pieces: [{ piece: 'sleeve', knit: 2 }], strands: null });
    expect([chalk?.total.metres, chalk?.total.grams, chalk?.toBuy.balls]).toEqual([
      2 * sleeve.yarn.contrast.metres,
      null,
      null,
    ]);
  });

  it('says it in a table as the sheet does, before the plan of each piece', async () => {
    const { out } = await call('plan', file, '--all-pieces', '--size', 'M');
    const [title, columns, ...lines] = out.split('\n');
    expect(title).toBe('Yarn for all pieces');
    expect(columns?.trim().split(/ {2,}/)).toEqual([
      'Yarn',
      'Piece',
      'Metres for one',
      'Knit',
      'Metres',
      'Grams',
      'Balls',
    ]);
    expect(lines.slice(0, 5).map((line) => line.trim().split(/ {2,}/))).toEqual([
      ['slate', 'front', '73.3', '1', '73.3', '73'],
      ['slate', 'sleeve', '34.4', '2', '68.8', '69'],
      ['slate', 'strands cut for wrapping', '0.6', '0.6'],
      ['slate', 'all pieces', '143', '143'],
      ['slate', 'to buy, 10 % more, in balls of 50 g', '157', '157', '4'],
    ]);
    const plans = await Promise.all(
      ['front', 'sleeve'].map((piece) => call('plan', file, '--piece', piece, '--size', 'M')),
    );
    // The yarn is told once, for all of them together; of one piece it stands behind its plan.
    const withoutYarn = plans.map((plan) => {
      expect(plan.out).toContain('\n\nYarn\n');
      return plan.out.slice(0, plan.out.lastIndexOf('\n\nYarn\n')).trimEnd();
    });
    expect(out.trimEnd().endsWith(withoutYarn.join('\n\n\n'))).toBe(true);
  });

  it('says it in yards and ounces to those who read inches', async () => {
    const { out } = await call('plan', file, '--all-pieces', '--size', 'M', '--unit', 'in');
    // 143 m are 156 yd, 143 g are 5.0 oz.
    expect(out).toMatch(/Yards for one +Knit +Yards +Ounces[^]*all pieces +156 +5\n/);
  });

  it('takes options for every piece, and says of which piece it is what cannot be', async () => {
    const { pieces } = await callJson<GarmentJson>('plan', file, '--all-pieces', '--gauge', '30x42');
    expect(pieces.map(({ piece }) => piece.sections[0]?.gauge)).toEqual(Array(2).fill({ stitches: 30, rows: 42 }));
    const wrong = await callJson<ProblemJson>('plan', file, '--all-pieces', '--copies', '40');
    expect(wrong.error).toMatchObject({ code: 'groups-wider-than-piece', where: '--copies' });
    const narrow = JSON.parse(projectToText(garment())) as { pieces: { perSize: { shape: { stitches: number } }[] }[] };
    Object.assign(narrow.pieces[1]?.perSize[0]?.shape ?? {}, { stitches: 3 });
    const path = folder.file('narrow.walewright', JSON.stringify(narrow));
    expect((await callJson<ProblemJson>('plan', path, '--all-pieces')).error).toMatchObject({
      code: 'groups-wider-than-piece',
      where: 'sleeve, size S',
    });
  });

  it('is not for a picture, nor for one piece', async () => {
    const picture = folder.motif('line.pbm', ['XX.']);
    expect((await callJson<ProblemJson>('plan', picture, '--all-pieces')).error.where).toBe(
      '--all-pieces with a picture',
    );
    expect((await callJson<ProblemJson>('plan', file, '--all-pieces', '--piece', 'front')).error.code).toBe(
      'options-exclude',
    );
  });
});
