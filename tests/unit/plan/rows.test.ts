import { describe, expect, it } from 'vitest';
import { bandsOf, type Band } from '@shared/pattern/index.ts';
import { label } from '@shared/bed/index.ts';
import { checkedPlan } from '../check/found.ts';
import { BLANK_FIRST_12_BY_31, projectWith } from '../fabric/pieces.ts';

const HEM = {
  motif: BLANK_FIRST_12_BY_31,
  copies: [3, 3],
  stitches: 120,
  rows: 100,
  piece: { hemRows: 100 },
};

describe('a motif of 31 rows in a hem of 100, folded in half', () => {
  // common practice, no source
  const plan = checkedPlan(projectWith(HEM));

  it('has the hidden half first', () => {
    expect(plan.sections.map(({ name, first, last }) => [name, first, last])).toEqual([
      ['hem-back', 1, 50],
      ['hem-front', 51, 100],
    ]);
  });

  it('lies on rows 61 to 91, ten plain rows below and nine above', () => {
    expect(bandsOf(plan)[0]).toMatchObject({ firstRow: 61, lastRow: 91 });
    const patterned = plan.rows.filter(({ contrast }) => contrast.length > 0).map(({ row }) => row);
    expect([patterned[0], patterned.at(-1), patterned.length]).toEqual([61, 91, 31]);
  });

  it('is set up with the row counter at 59', () => {
    expect(bandsOf(plan)[0]?.setUpAt).toBe(59);
  });

  it('takes the odd row above if told so', () => {
    const above = checkedPlan(
      projectWith({ ...HEM, band: { position: { kind: 'centred', section: 'shown', oddRow: 'above' } } }),
    );
    expect(bandsOf(above)[0]).toMatchObject({ firstRow: 60, lastRow: 90, setUpAt: 58 });
  });

  it('stands on L48–L13 and R12–R47 to the eye', () => {
    expect(plan.groups.map(({ block }) => [label(block.first), label(block.last)])).toEqual([
      ['L48', 'L13'],
      ['R12', 'R47'],
    ]);
    expect(plan.groups.map(({ figure }) => [label(figure.first), label(figure.last)])).toEqual([
      ['L47', 'L13'],
      ['R13', 'R47'],
    ]);
  });
});

describe('rows of a band', () => {
  const motif = ['X.X', '.X.'];

  it.each([
    { rows: 12, hemRows: 0, up: 1, first: 6, section: 'body', why: 'centred in a piece without a hem' },
    { rows: 13, hemRows: 0, up: 1, first: 7, section: 'body', why: 'the odd row below' },
    { rows: 30, hemRows: 11, up: 1, first: 8, section: 'hem-front', why: 'a hem of 11: back 5, front rows 6–11' },
    { rows: 12, hemRows: 0, up: 3, first: 4, section: 'body', why: 'three copies upwards' },
  ] as const)('$first: $why', ({ rows, hemRows, up, first, section }) => {
    const plan = checkedPlan(projectWith({ motif, copies: [1], group: { up }, stitches: 9, rows, piece: { hemRows } }));
    expect(bandsOf(plan)[0]?.firstRow).toBe(first);
    expect(plan.rows[first - 1]?.section).toBe(section);
  });

  it('are as many as its groups reach, each from a row of its own', () => {
    const project = projectWith({ motif, copies: [1, 1, 1], stitches: 20, rows: 20 });
    const [band] = bandsOf(project) as [Band];
    const rises = [7, 3, 5];
    const groups = band.groups.map((group, at) => ({ ...group, rise: rises[at] as number }));
    const plan = checkedPlan({ ...project, patterns: [{ ...band, groups }] });
    // The lowest group stands on the band's first row, the highest 7 - 3 = 4 rows above it: 6 rows of 20,
    // so 14 are left, 7 below.
    expect(bandsOf(plan)[0]).toMatchObject({ firstRow: 8, lastRow: 13, setUpAt: 6 });
    expect(plan.groups.map(({ firstRow, lastRow }) => [firstRow, lastRow])).toEqual([
      [12, 13],
      [8, 9],
      [10, 11],
    ]);
  });

  it('begin on the given row, whatever the sections', () => {
    const plan = checkedPlan(
      projectWith({
        motif,
        copies: [1],
        stitches: 9,
        rows: 20,
        piece: { hemRows: 10 },
        band: { position: { kind: 'from-row', row: 2 } },
      }),
    );
    expect(bandsOf(plan)[0]).toMatchObject({ firstRow: 2, lastRow: 3, setUpAt: 0 });
  });

  it('have no set-up row where their needles are chosen by hand', () => {
    const project = projectWith({ motif, copies: [1], stitches: 9, rows: 20 });
    const machine = { ...project.machine, chooses: 'by-hand' } as const;
    expect(bandsOf(checkedPlan(project))[0]?.setUpAt).not.toBeNull();
    expect(bandsOf(checkedPlan({ ...project, machine }))[0]?.setUpAt).toBeNull();
  });

  it('have no set-up row if they begin on row 1', () => {
    const position = { kind: 'from-row', row: 1 } as const;
    const plan = checkedPlan(projectWith({ motif, copies: [1], stitches: 9, rows: 20, band: { position } }));
    expect(bandsOf(plan)[0]?.setUpAt).toBeNull();
  });
});

describe('the carriage', () => {
  it.each(['left', 'right'] as const)('comes from the %s on odd rows if it starts there', (startSide) => {
    const plan = checkedPlan(projectWith({ motif: ['X'], copies: [1], stitches: 9, rows: 4, piece: { startSide } }));
    const other = startSide === 'left' ? 'right' : 'left';
    expect(plan.rows.map(({ from }) => from)).toEqual([startSide, other, startSide, other]);
  });
});
