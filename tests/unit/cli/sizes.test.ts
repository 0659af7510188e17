import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import {
  addSize,
  afterChange,
  changeSize,
  renameSize,
  sampleProject,
  type ProjectAt,
  projectAt,
} from '@shared/project/index.ts';
import type { PlacementJson } from '../../../src-main/cli/json/placement.ts';
import type { PlanJson } from '../../../src-main/cli/json/plan.ts';
import type { ProblemJson } from '../../../src-main/cli/json/problem.ts';
import type { SizesJson } from '../../../src-main/cli/json/sizes.ts';
import { blankColumnMotif, call, callJson, Folder } from './calls.ts';
import { fileTextOf } from '../../written-projects.ts';

const folder = new Folder();
afterAll(() => folder.remove());

/** The sample sleeve from 96 stitches as M, and as L from 104; M at hand. */
function sleeves(): ProjectAt {
  return [
    (project: ProjectAt) => renameSize(project, 0, 'M'),
    (project: ProjectAt) => addSize(project, 1, 'L', 'large'),
    (project: ProjectAt) =>
      changeSize(project, 1, {
        shape: { kind: 'tapered', stitches: 104, stitchesAtTop: 132, rows: 150, straightRows: 24 },
      }),
  ].reduce((project, change) => afterChange(project, change(project)), projectAt(sampleProject()));
}

const file = folder.file('sleeves.walewright', fileTextOf(sleeves()));

describe('--size', () => {
  it('plans the size of that name, and the current one if left out', async () => {
    const stitches = async (...typed: string[]) => {
      const { size, piece } = await callJson<PlanJson>('plan', file, ...typed);
      return [size, piece.stitches, piece.rows];
    };
    expect(await stitches()).toEqual(['M', 96, 140]);
    expect(await stitches('--size', 'L')).toEqual(['L', 104, 150]);
    expect(await stitches('--size', 'l')).toEqual(['L', 104, 150]);
    // Options go before what the size says.
    expect(await stitches('--size', 'L', '--rows', '160')).toEqual(['L', 104, 160]);
    expect((await call('plan', file, '--size', 'L')).out).toContain('sleeve, size L: 104 to 132 stitches');
  });

  it('places the groups of a project on it, without a word on stitches and copies', async () => {
    const { choices } = await callJson<PlacementJson>('place', file, '--size', 'L');
    const { groups } = await callJson<PlanJson>('plan', file, '--size', 'L');
    expect(choices[0]?.groups.map(({ first }) => first)).toEqual(groups.map(({ first }) => first));
  });

  it('names those that there are', async () => {
    for (const command of [
      ['plan', file],
      ['place', file],
      ['export', file, '--to', folder.path],
    ]) {
      const { error } = await callJson<ProblemJson>(...command, '--size', 'XL');
      expect(error).toEqual({
        code: 'size-unknown',
        message: 'No size is called “XL”. There are M and L.',
        where: '--size',
      });
    }
  });

  it('is no option of a picture', async () => {
    const motif = folder.motif('motif.pbm', blankColumnMotif(4));
    const { error } = await callJson<ProblemJson>('plan', motif, '--stitches', '60', '--copies', '2', '--size', 'M');
    expect(error).toMatchObject({ code: 'option-unknown', where: '--size with a picture' });
  });

  it('stands in the names of the files that belong to it', async () => {
    const to = join(folder.path, 'large');
    await callJson('export', file, '--to', to, '--size', 'L');
    expect(readdirSync(to).sort()).toEqual([
      'Skerry sleeve, size L - chart.png',
      'Skerry sleeve, size L - chart.svg',
      'Skerry sleeve, size L - placement.pdf',
      'Skerry sleeve, size L - rows.csv',
    ]);
    const rows = readFileSync(join(to, 'Skerry sleeve, size L - rows.csv'), 'utf8');
    expect(rows).toContain('Cast on 104 stitches');
  });
});

describe('sizes', () => {
  it('stand side by side, each with where the groups go', async () => {
    const { sizes } = await callJson<SizesJson>('sizes', file);
    expect(sizes).toMatchObject([
      { name: 'M', shape: { stitches: 96 }, copies: [[2, 2]], bands: [{ firstRow: 25, setUpAt: 23 }] },
      { name: 'L', shape: { stitches: 104 }, copies: [[2, 2]], beyondBed: false },
    ]);
  });

  it('are a table for people', async () => {
    const { status, out } = await call('sizes', file);
    expect(status).toBe(0);
    expect(out).toMatch(/Size +Stitches +Rows/);
    expect(out).toMatch(/M +96 to 124 +140 +34\.3 to 44\.3 × 35/);
    expect(out).toMatch(/L +104 to 132 +150 +37\.1 to 47\.1 × 37\.5/);
    expect(out).not.toMatch(/[{}]|undefined|null|NaN/);
  });

  it('say what keeps one of them from being placed', async () => {
    const narrow = afterChange(
      sleeves(),
      changeSize(sleeves(), 0, { shape: { kind: 'rectangle', stitches: 40, rows: 140 } }),
    );
    const path = folder.file('narrow.walewright', fileTextOf(narrow));
    const { sizes } = await callJson<SizesJson>('sizes', path);
    expect(sizes[0]).toMatchObject({ name: 'M', error: { code: 'groups-wider-than-piece' } });
    expect((await call('sizes', path)).out).toMatch(/M +40 +140 +14\.3 × 35\n[^]*Size M: The groups take 56 stitches/);
  });
});
