/** Pieces that are hardly any, through the command line: each works, or is refused with what to do. */
import { existsSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { sampleProject, type ProjectAt, projectAt } from '@shared/project/index.ts';
import type { PlanJson } from '../../../src-main/cli/json/plan.ts';
import { readPdf } from '../../pdf.ts';
import { call, callJson, Folder } from './calls.ts';
import { fileTextOf } from '../../written-projects.ts';

const folder = new Folder();
afterAll(() => folder.remove());

const sample = projectAt(sampleProject());
const write = (name: string, project: ProjectAt): string => folder.file(`${name}.walewright`, fileTextOf(project));

/** The text of a file of the sample with something of it written otherwise. */
const spoiled = (name: string, from: string, to: string): string => {
  const text = fileTextOf(sample);
  if (!text.includes(from)) throw new Error(`${from} is not in the file`);
  return folder.file(`${name}.walewright`, text.replace(from, to));
};

interface Files {
  readonly files: { readonly path: string }[];
}

describe('a piece beside the bed', () => {
  const { machine } = sample;
  const beside = write('beside', { ...sample, machine: { ...machine, bed: { ...machine.bed, needles: 60 } } });

  it('has a plan with what to do, no order, and steps nowhere', async () => {
    const plan = await callJson<PlanJson>('plan', beside);
    expect(plan.findings[0]).toMatchObject({ code: 'wider-than-bed', blocks: true });
    expect(plan.runningOrder).toBeNull();
    const planned = await call('plan', beside);
    expect([planned.status, planned.out.includes('This piece cannot be knitted as it is')]).toEqual([0, true]);
    const followed = await call('follow', beside);
    expect(followed.status).toBe(0);
    expect(followed.out).toContain('There are no steps until this is changed:');
    expect(followed.out).toContain('there are 60 needles, L30–R30');
    expect(followed.out).not.toContain('Cast on');
  });

  it('has a sheet that says so, charts, and a row list without acts', async () => {
    const { files } = await callJson<Files>('export', beside, '--to', join(folder.path, 'beside'));
    expect(files).toHaveLength(4);
    const pdf = files.find(({ path }) => path.endsWith('.pdf'))?.path ?? '';
    expect((await readPdf(readFileSync(pdf)))[0]?.squeezed).toContain('Thispiececannotbeknittedasitis');
    const csv = readFileSync(files.find(({ path }) => path.endsWith('.csv'))?.path ?? '', 'utf8');
    expect(csv).toContain('This piece cannot be knitted as it is.');
    expect(csv).not.toContain('Cast on');
  });
});

describe('a piece without rows or stitches', () => {
  it.each([
    ['no rows', '"rows": 140', '"rows": 0', 'pieces[1].perSize[1].shape.rows (must be at least 1)'],
    ['no stitches', '"stitches": 96', '"stitches": 0', 'pieces[1].perSize[1].shape.stitches (must be at least 1)'],
    ['half a row', '"rows": 140', '"rows": 139.5', 'pieces[1].perSize[1].shape.rows (must be a whole number'],
    ['rows in words', '"rows": 140', '"rows": "many"', 'pieces[1].perSize[1].shape.rows (must be a'],
    ['rows without number', '"rows": 140', '"rows": null', 'pieces[1].perSize[1].shape.rows (must be a'],
    ['more rows than any', '"rows": 140', '"rows": 100000', 'pieces[1].perSize[1].shape.rows (must be at most 4000)'],
  ])('%s is refused by name, and nothing is written', async (name, from, to, why) => {
    const file = spoiled(name, from, to);
    const into = join(folder.path, `none of ${name}`);
    for (const typed of [
      ['plan', file],
      ['follow', file],
      ['export', file, '--to', into],
    ]) {
      const { status, out, warned } = await call(...typed);
      expect([status, out]).toEqual([1, '']);
      expect(warned).toContain(why);
      expect(warned).toContain('Mend that field, or open an earlier copy.');
    }
    expect(existsSync(into)).toBe(false);
  });

  it.each([
    ['--rows', '0'],
    ['--stitches', '0'],
    ['--rows', 'many'],
  ])('%s %s is refused by its name', async (option, value) => {
    const motif = folder.motif('two.pbm', ['X.', '.X']);
    const { status, warned } = await call('plan', motif, '--stitches', '20', '--copies', '1', option, value);
    expect(status).toBe(1);
    expect(warned).toContain(option);
  });
});

describe('a project without any pattern', () => {
  const plain = write('plain', { ...sample, name: 'Plain', patterns: [] });

  it('is knitted plain: no set-up, no contrast', async () => {
    const plan = await callJson<PlanJson>('plan', plain);
    expect(plan).toMatchObject({ groups: [], setUpAt: null });
    expect(plan.findings.filter(({ blocks }) => blocks)).toEqual([]);
    const acts = plan.runningOrder?.flatMap((item) => (item.kind === 'stop' ? item.acts.map(({ act }) => act) : []));
    expect(acts).toEqual(expect.arrayContaining(['cast-on', 'increase', 'finish']));
    expect(acts?.filter((act) => /selecting|first-needles|wrap|lay|push/.test(act))).toEqual([]);
    const { status, out } = await call('follow', plain);
    expect(status).toBe(0);
    expect(out).not.toContain('pattern');
  });

  it('has a sheet and a row list, and a chart of what is drawn', async () => {
    const { files } = await callJson<Files>('export', plain, '--to', join(folder.path, 'plain'));
    expect(files.map(({ path }) => basename(path)).sort()).toEqual([
      'Plain - chart.png',
      'Plain - chart.svg',
      'Plain - placement.pdf',
      'Plain - rows.csv',
    ]);
    const pdf = files.find(({ path }) => path.endsWith('.pdf'))?.path ?? '';
    const said = (await readPdf(readFileSync(pdf))).map(({ squeezed }) => squeezed).join('');
    expect(said).toContain('Castoffall');
    expect(said).not.toMatch(/undefined|NaN/);
  });

  it('of one stitch and one row is knitted as well', async () => {
    const one = write('one', {
      ...sample,
      patterns: [],
      piece: { ...sample.piece, shape: { kind: 'rectangle', stitches: 1, rows: 1 } },
    });
    const plan = await callJson<PlanJson>('plan', one);
    expect(plan.runningOrder).toHaveLength(2);
    expect((await callJson<Files>('export', one, '--to', join(folder.path, 'one'))).files.length).toBeGreaterThan(1);
  });
});

describe('a project without any motif', () => {
  it('is refused where a pattern wants one, and by name', async () => {
    const file = spoiled('gone', `"motif": "${sample.motifs[0]?.id}"`, '"motif": "gone"');
    const { status, warned } = await call('plan', file);
    expect(status).toBe(1);
    expect(warned).toContain('no motif is called "gone"');
  });

  it('is refused: there is always one to draw', async () => {
    const text = JSON.parse(fileTextOf(sample)) as { motifs: unknown[]; bands: unknown[] };
    const file = folder.file('none.walewright', JSON.stringify({ ...text, motifs: [], bands: [] }));
    const { status, warned } = await call('plan', file);
    expect(status).toBe(1);
    expect(warned).toContain('motifs (must have at least 1 item)');
  });
});
