/** Colourways: what the yarns of a project are in several versions, and what becomes of them as the palette changes. */
import { describe, expect, it } from 'vitest';
import {
  addColourway,
  applyChange,
  changeYarnIn,
  chooseColourway,
  colourwayNamed,
  emptyProject,
  inColourway,
  knittedColourway,
  MOST_COLOURWAYS,
  projectFromText,
  projectToText,
  removeColourway,
  renameColourway,
  sampleProject,
  setPalette,
  applyEdits,
  yarnsOf,
  type Project,
} from '@shared/project/index.ts';
import { outcome } from '@shared/problem/index.ts';

const sample = sampleProject();
const kelp = { ...(sample.yarns[0] as Project['yarns'][number]), name: 'kelp', colour: '#4a5a2a' };
const storm = applyChange(sample, addColourway(sample, 'colourway-1', 'storm', 'storm'));
const dark = applyChange(storm, changeYarnIn(storm, 'storm', 1, { name: 'soot', colour: '#222222' }));

const namesOf = (project: Project, id: string) => yarnsOf(project, id).map(({ name }) => name);

describe('a colourway', () => {
  it('that is added has the yarns of the one it is like, and nothing that is knitted changes', () => {
    expect(storm.colourways.map(({ name }) => name)).toEqual(['1', 'storm']);
    expect(yarnsOf(storm, 'storm')).toEqual(sample.yarns);
    expect(storm.yarns).toBe(sample.yarns);
    expect(knittedColourway(storm).name).toBe('1');
  });

  it('has yarns of its own: another colour there leaves the others as they are', () => {
    expect(namesOf(dark, 'storm')).toEqual(['slate', 'soot']);
    expect(namesOf(dark, 'colourway-1')).toEqual(['slate', 'chalk']);
  });

  it('that is chosen is the one that is knitted, and the one before keeps its yarns', () => {
    const chosen = applyChange(dark, chooseColourway(dark, 'storm') as never);
    expect(chosen.yarns.map(({ name }) => name)).toEqual(['slate', 'soot']);
    expect(namesOf(chosen, 'colourway-1')).toEqual(['slate', 'chalk']);
    expect(chosen).toEqual(inColourway(dark, 'storm'));
    expect(chooseColourway(chosen, 'storm')).toBeNull();
    expect(inColourway(inColourway(dark, 'storm'), 'colourway-1')).toEqual(dark);
  });

  it('opens from its file as it was saved', () => {
    for (const project of [dark, inColourway(dark, 'storm')]) {
      expect(projectFromText(projectToText(project))).toEqual(project);
    }
  });

  it('that is knitted and goes leaves the one beside it knitted', () => {
    const left = applyChange(dark, removeColourway(dark, 'colourway-1'));
    expect(left.colourways).toEqual([{ id: 'storm', name: 'storm', yarns: null }]);
    expect(left.yarns.map(({ name }) => name)).toEqual(['slate', 'soot']);
    const other = applyChange(dark, removeColourway(dark, 'storm'));
    expect(other).toEqual(sample);
  });

  it('is found by its name, large or small', () => {
    expect(colourwayNamed(dark, 'STORM ').id).toBe('storm');
    expect(outcome(() => colourwayNamed(dark, 'gale'))).toMatchObject({
      problem: { code: 'colourway-unknown', facts: { given: 'gale', known: ['1', 'storm'] } },
    });
  });

  it('is refused without a name, under that of another, beyond the most, and as the last to go', () => {
    const codeOf = (run: () => unknown): unknown => {
      const done = outcome(run);
      return done.ok ? null : done.problem.code;
    };
    expect(codeOf(() => renameColourway(dark, 'storm', '  '))).toBe('colourway-name-unusable');
    expect(codeOf(() => renameColourway(dark, 'storm', 'x'.repeat(81)))).toBe('colourway-name-unusable');
    expect(codeOf(() => renameColourway(dark, 'storm', '1'))).toBe('colourway-name-taken');
    expect(codeOf(() => renameColourway(dark, 'storm', 'storm'))).toBeNull();
    expect(codeOf(() => removeColourway(sample, 'colourway-1'))).toBe('colourway-last');
    const full = Array.from({ length: MOST_COLOURWAYS - 1 }, (_, at) => `c${at}`).reduce(
      (project, id) => applyChange(project, addColourway(project, 'colourway-1', id, id)),
      sample,
    );
    expect(codeOf(() => addColourway(full, 'colourway-1', 'more', 'more'))).toBe('colourways-too-many');
  });
});

describe('another palette', () => {
  const withOrder = (drawn: number, knitted: number): Project => {
    const [piece] = dark.pieces;
    const order = { stripes: [{ rows: 3, yarns: [{ drawn, knitted }] }], repeats: true };
    const patterns = piece?.patterns.map((pattern) => ({ ...pattern, colourOrder: order })) ?? [];
    const yarns = [...dark.yarns, kelp];
    const edited = applyEdits(dark, setPalette(dark, yarns, 0));
    return { ...edited, pieces: [{ ...edited.pieces[0], patterns }] as Project['pieces'] };
  };
  const orderOf = (project: Project) => project.pieces[0]?.patterns[0]?.colourOrder?.stripes[0]?.yarns;

  it('gives a yarn that comes to every colourway, and leaves what they had', () => {
    const more = applyEdits(dark, setPalette(dark, [...dark.yarns, kelp], 0));
    expect(namesOf(more, 'storm')).toEqual(['slate', 'soot', 'kelp']);
    expect(namesOf(more, 'colourway-1')).toEqual(['slate', 'chalk', 'kelp']);
  });

  it('has the yarns of each colourway at their new places', () => {
    const [slate, chalk] = dark.yarns as [typeof kelp, typeof kelp];
    const turned = applyEdits(dark, setPalette(dark, [chalk, slate], 1));
    expect(namesOf(turned, 'storm')).toEqual(['soot', 'slate']);
    const alone = applyEdits(dark, setPalette(dark, [kelp, chalk], 0));
    expect(namesOf(alone, 'storm')).toEqual(['kelp', 'soot']);
  });

  it('is followed by the orders of colours, and what names a yarn that goes, or is main now, goes', () => {
    const project = withOrder(1, 2);
    expect(projectFromText(projectToText(project))).toEqual(project);
    const [slate, chalk, last] = project.yarns as [typeof kelp, typeof kelp, typeof kelp];
    const after = (yarns: Project['yarns'], main: number) =>
      orderOf(applyEdits(project, setPalette(project, yarns, main)));
    expect(after([last, slate, chalk], 1)).toEqual([{ drawn: 2, knitted: 0 }]);
    expect(after([slate, chalk], 0)).toEqual([]);
    expect(after(project.yarns, 2)).toEqual([]);
    expect(after(project.yarns, 1)).toEqual([]);
    expect(after(project.yarns, 0)).toEqual([{ drawn: 1, knitted: 2 }]);
  });
});

describe('a file', () => {
  interface Written {
    yarns: unknown;
    colourways: [Record<string, unknown>, { yarns: unknown[] | null } & Record<string, unknown>] | [];
    pieces: [{ patterns: [Record<string, unknown>] }];
  }
  const other = ({ colourways }: Written) => colourways[1] as NonNullable<Written['colourways'][1]>;
  const refusedAt = (change: (file: Written) => void): unknown => {
    const data = JSON.parse(projectToText(dark)) as Written;
    change(data);
    const read = outcome(() => projectFromText(JSON.stringify(data)));
    if (read.ok) return null;
    const { path, fault } = read.problem.facts as { path: string; fault: { code: string } };
    return [path, fault.code];
  };
  const stripes =
    (...all: unknown[]) =>
    ({ pieces }: Written) => {
      pieces[0].patterns[0].colourOrder = { stripes: all, repeats: false };
    };

  it.each([
    ['no colourways', (data: Written) => (data.colourways = []), ['colourways', 'too-small']],
    [
      'none that is knitted',
      (data: Written) => Object.assign(data.colourways[0] ?? {}, { yarns: data.yarns }),
      ['colourways', 'not-one-knitted'],
    ],
    ['two that are knitted', (data: Written) => (other(data).yarns = null), ['colourways', 'not-one-knitted']],
    ['a yarn too few', (data: Written) => other(data).yarns?.pop(), ['colourways[2].yarns', 'not-each-yarn']],
    ['an id twice', (data: Written) => (other(data).id = 'colourway-1'), ['colourways[2].id', 'twice']],
    ['a name twice', (data: Written) => (other(data).name = '1'), ['colourways[2].name', 'twice']],
    [
      'a stripe of no rows',
      stripes({ rows: 0, yarns: [] }),
      ['pieces[1].patterns[1].colourOrder.stripes[1].rows', 'too-small'],
    ],
    [
      'a thousand stripes',
      stripes(...Array.from({ length: 1000 }, () => ({ rows: 1, yarns: [] }))),
      ['pieces[1].patterns[1].colourOrder.stripes', 'too-big'],
    ],
    [
      'a yarn that is not there',
      stripes({ rows: 1, yarns: [{ drawn: 1, knitted: 2 }] }),
      ['pieces[1].patterns[1].colourOrder.stripes[1].yarns[1].knitted', 'yarn-missing'],
    ],
    [
      'the main yarn',
      stripes({ rows: 1, yarns: [{ drawn: 0, knitted: 1 }] }),
      ['pieces[1].patterns[1].colourOrder.stripes[1].yarns[1].drawn', 'main-in-stripe'],
    ],
    [
      'a drawn yarn twice',
      stripes({ rows: 1, yarns: [1, 1].map((drawn) => ({ drawn, knitted: 1 })) }),
      ['pieces[1].patterns[1].colourOrder.stripes[1].yarns[2].drawn', 'yarn-twice'],
    ],
  ])('with %s is refused', (_, change, expected) => {
    expect(refusedAt(change)).toEqual(expected);
  });

  it('with stripes of more rows than the pattern has is taken: the pattern ends first', () => {
    expect(refusedAt(stripes({ rows: 2000, yarns: [] }))).toBeNull();
    expect(emptyProject('', '').colourways).toHaveLength(1);
  });
});
