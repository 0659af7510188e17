import { describe, expect, it } from 'vitest';
import { designOf, differences, finishedFace, knit, type FabricRow, type Knitted } from './index.ts';
import { swatch } from './examples/swatch.ts';

const ROW = {
  row: 1,
  section: 'body',
  from: 'left',
  edges: ['L2', 'R2'],
  runs: [
    { first: 'L2', last: 'L2', yarn: 'slate' },
    { first: 'L1', last: 'R1', yarn: 'chalk' },
    { first: 'R2', last: 'R2', yarn: 'slate' },
  ],
  contrast: [['L1', 'R1']],
  wraps: ['R2'],
};

describe('the design of a plan', () => {
  it('has the yarn of every needle of every row, and the wraps', () => {
    const { fabric, wraps } = designOf({ rows: [ROW], findings: [] });
    expect(fabric).toEqual([{ row: 1, from: 'left', edges: ['L2', 'R2'], runs: ROW.runs }]);
    expect(wraps).toEqual([{ row: 1, needle: 'R2' }]);
  });

  it('puts neighbouring runs of one yarn together', () => {
    const runs = [...ROW.runs.slice(0, 1), { first: 'L1', last: 'L1', yarn: 'chalk' }];
    runs.push({ first: 'R1', last: 'R1', yarn: 'chalk' }, { first: 'R2', last: 'R2', yarn: 'slate' });
    expect(designOf({ rows: [{ ...ROW, runs }] }).fabric[0]?.runs).toEqual(ROW.runs);
  });

  it.each([
    ['rows out of turn', { row: 2 }, 'Row 2 of the plan: stands in place 1'],
    ['a needle without yarn', { runs: ROW.runs.slice(1) }, 'Row 1 of the plan: L2 knit nothing'],
    ['a needle with two yarns', { runs: [...ROW.runs, ...ROW.runs.slice(2)] }, 'Row 1 of the plan: R2 knits twice'],
    ['needles beside the piece', { edges: ['L2', 'R1'] }, 'Row 1 of the plan: needles beside the piece knit'],
    ['contrast that is not told as such', { contrast: [] }, 'slate and chalk are knitted where no contrast is'],
    ['main that is told as contrast', { contrast: [['L1', 'R2']] }, 'Row 1 of the plan: R2 knit main as contrast'],
  ])('refuses %s', (_, change, why) => {
    expect(() => designOf({ rows: [{ ...ROW, ...change }] })).toThrow(why);
  });
});

describe('what was knitted', () => {
  const { fabric } = knit(swatch.order, swatch) as Knitted;
  const design = { fabric, wraps: [] };

  it('is compared needle by needle with what was designed', () => {
    const second = { ...(fabric[1] as FabricRow), runs: [{ first: 'L3', last: 'R2', yarn: 'slate' }] };
    expect(differences(design, design)).toEqual([]);
    expect(differences({ fabric: fabric.with(1, second), wraps: [{ row: 2, needle: 'L1' }] }, design)).toEqual([
      'row 2, R3: nothing, not slate',
      'row 2, L1: wrapped, but not designed so',
    ]);
    expect(differences({ fabric: fabric.slice(1), wraps: [] }, { fabric, wraps: [{ row: 1, needle: 'R1' }] })).toEqual([
      ...['right', 'left', 'right'].map(
        (from, at) => `row ${at + 2} is knitted from the ${from}, not the ${from === 'left' ? 'right' : 'left'}`,
      ),
      'row 4 is designed, but not knitted',
      'row 1, R1: not wrapped',
    ]);
  });

  it('is seen mirrored on the knit side', () => {
    const { fabric: rows } = designOf({
      rows: [
        {
          ...ROW,
          edges: ['L2', 'R2'],
          runs: [...ROW.runs.slice(0, 2), { first: 'R2', last: 'R2', yarn: 'chalk' }],
          contrast: [['L1', 'R2']],
        },
      ],
    });
    expect(finishedFace(rows, 'purl')).toEqual([['slate', 'chalk', 'chalk', 'chalk']]);
    expect(finishedFace(rows, 'knit')).toEqual([['chalk', 'chalk', 'chalk', 'slate']]);
  });
});
