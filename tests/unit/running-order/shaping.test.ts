/** Running orders of shaped pieces, worked by hand. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { changeFor } from '@shared/check/index.ts';
import { gridFromText } from '@shared/grid/index.ts';
import type { Position } from '@shared/piece/index.ts';
import {
  afterChange,
  startBand,
  startAllOver,
  startGroup,
  type Change,
  type ProjectAt,
} from '@shared/project/index.ts';
import { findingWords } from '@shared/words/findings.ts';
import { settled } from '../../written-projects.ts';
import { checkedPlan } from '../check/found.ts';
import { projectWith } from '../fabric/pieces.ts';
import { actsAt, linesOf, obstacleCodes, orderOf, readingsOf } from './order-lines.ts';

const fromRow = (row: number): Position => ({ kind: 'from-row', row });

describe('a sleeve with 14 increases above its hem', () => {
  const project: ProjectAt = {
    ...projectWith({ motif: ['X'], copies: [1], stitches: 62, rows: 150, band: { position: fromRow(100) } }),
    patterns: [],
  };
  const sleeve: ProjectAt = {
    ...project,
    piece: {
      ...project.piece,
      hemRows: 20,
      shape: { kind: 'tapered', stitches: 62, stitchesAtTop: 90, rows: 150, straightRows: 10 },
    },
  };

  it('tells each of them at its reading, before its row', () => {
    // 120 rows from the hem to the straight ones: every 8th row 6 times, then every 9th row 8 times.
    const rows = [28, 36, 44, 52, 60, 68, 77, 86, 95, 104, 113, 122, 131, 140];
    expect(readingsOf(sleeve, 'increase')).toEqual(rows.flatMap((row) => [row - 1, row - 1]));
    expect(actsAt(sleeve, 27)).toEqual(['increase left L32', 'increase right R32']);
  });

  it('hangs as many loops as there are needles, and casts off 90', () => {
    expect(linesOf(sleeve, 'hang-hem')).toEqual(['20: hang 62 loops on L31–R31, half loop left']);
    expect(linesOf(sleeve, 'finish')[0]).toContain('finish cast-off L45–R45');
  });
});

describe('an armhole cast off on both sides', () => {
  const project = projectWith({ motif: ['X'], copies: [1], stitches: 40, rows: 60, band: { position: fromRow(10) } });
  const armhole: ProjectAt = {
    ...project,
    patterns: [{ ...startBand('motif', [1]), groups: [startGroup('motif', 1)], position: fromRow(10) }],
    piece: {
      ...project.piece,
      shape: { kind: 'steps', stitches: 40, rows: 60, steps: [{ row: 41, left: -5, right: -5 }] },
    },
  };

  it('is cast off where the carriage stands, the other edge one row later', () => {
    expect(linesOf(armhole, 'cast-off')).toEqual(['40: cast-off right R16–R20', '41: cast-off left L20–L16']);
    const rows = orderOf(armhole).filter((item) => item.kind === 'stop' && item.row !== null && item.row >= 41);
    expect(rows.map(({ needles }) => needles.last - needles.first + 1)).toEqual([35, 30, 30]);
  });

  it('on the last row has no row to follow at the other edge', () => {
    const late: ProjectAt = {
      ...armhole,
      piece: {
        ...armhole.piece,
        shape: { kind: 'steps', stitches: 40, rows: 60, steps: [{ row: 60, left: -5, right: -5 }] },
      },
    };
    expect(obstacleCodes(late)).toEqual(['shaping-away-from-carriage']);
  });
});

const plainBody: ProjectAt = {
  ...projectWith({ motif: ['X...', '.X..'], copies: [1], stitches: 16, rows: 20 }),
  patterns: [startAllOver('motif', 3)],
};
const body: ProjectAt = {
  ...plainBody,
  piece: {
    ...plainBody.piece,
    shape: {
      kind: 'steps',
      stitches: 16,
      rows: 20,
      steps: [
        { row: 7, left: 1, right: 1 },
        { row: 12, left: -1, right: -1 },
      ],
    },
  },
};

describe('an all-over body with end needles on, shaped', () => {
  it('has end needles on from its set-up row, and is not wrapped', () => {
    expect(actsAt(body, 1).slice(-2)).toEqual(['end-needles on', 'selecting on']);
    expect(readingsOf(body, 'wrap')).toEqual([]);
  });

  it('puts the old edge needle back after an increase unless it has figure, and the new one forward', () => {
    const [left, right, ...then] = actsAt(body, 6);
    expect([left, right]).toEqual(['increase left L9', 'increase right R9']);
    expect(then.filter((line) => line.startsWith('push-forward'))).toEqual(['push-forward L9 R9']);
    expect(then.filter((line) => line.startsWith('push-back'))).toHaveLength(1);
  });

  it('puts the new edge needle forward after a decrease unless the pattern has', () => {
    const lines = actsAt(body, 11);
    expect(lines.slice(0, 2)).toEqual(['decrease left L9', 'decrease right R9']);
    expect(lines.filter((line) => line.startsWith('push-back'))).toEqual([]);
    expect(lines.filter((line) => line.startsWith('push-forward'))).toHaveLength(1);
  });
});

describe('the same body on a machine whose forward needles cannot be seen', () => {
  const unseen: ProjectAt = { ...body, machine: { ...body.machine, chooses: 'ahead-unseen' } };

  it('has nothing pushed and nothing counted', () => {
    expect(linesOf(unseen, 'push-forward', 'push-back', 'check')).toEqual([]);
  });

  it('pays at the edges: the old edge needle knits contrast, the new one main, and a finding says so', () => {
    // Before row 7 L9 and R9 come into work; L8 and R8 were the outermost when the needles were chosen.
    const plan = checkedPlan(unseen);
    const { edges, contrast } = plan.rows[6] as (typeof plan.rows)[number];
    expect([edges.first, edges.last]).toEqual([-9, 8]);
    expect([contrast[0]?.first, contrast.at(-1)?.last]).toEqual([-8, 7]);
    expect(plan.findings.filter(({ code }) => code === 'edges-unseen')).toEqual([
      { code: 'edges-unseen', rows: [7, 12], count: 2, seam: { left: 2, right: 2 } },
    ]);
  });

  const missed = (project: ProjectAt) =>
    checkedPlan({ ...project, machine: unseen.machine }).findings.filter(({ code }) => code === 'edges-unseen');

  const full: ProjectAt = {
    ...body,
    patterns: [{ ...startAllOver('motif', 3), endNeedles: false }],
    motifs: body.motifs.map((motif) => ({ ...motif, grid: gridFromText(['X'], '.X') })),
  };

  it('pays nothing where a stitch is taken and no end needle is selected: the new edge needle was chosen as it is', () => {
    const seam = { left: 1, right: 1 };
    expect(missed(full)).toEqual([{ code: 'edges-unseen', rows: [7, 7], count: 1, seam }]);
  });

  it('pays nothing that is seen where the seam takes it, which taking the remedy sets', () => {
    const sewn = (of: ProjectAt, left: number, right: number) =>
      missed({ ...of, piece: { ...of.piece, seamAllowance: { left, right } } });
    expect(sewn(full, 1, 1)).toEqual([]);
    expect(sewn(full, 3, 0)).toMatchObject([{ count: 1, seam: { left: 3, right: 1 } }]);
    // New stitches go into a seam of one. The contrast beside that at the left does not; at the right it is figure.
    expect(sewn(body, 1, 1)).toMatchObject([{ rows: [7, 7], count: 1, seam: { left: 2, right: 1 } }]);
    const project = settled(body, { machine: unseen.machine });
    const after = afterChange(project, changeFor(project, { code: 'seam-takes', left: 2, right: 2 }) as Change);
    expect(after.piece.seamAllowance).toEqual({ left: 2, right: 2 });
    expect(missed(after)).toEqual([]);
  });

  it('offers no seam where several stitches are made at once, and says to shape elsewhere', () => {
    const shape = { kind: 'steps', stitches: 16, rows: 20, steps: [{ row: 7, left: 3, right: 0 }] } as const;
    const [wide] = missed({ ...full, piece: { ...full.piece, shape } });
    expect(wide).toEqual({ code: 'edges-unseen', rows: [8, 8], count: 1, seam: null });
    expect(findingWords.text(wide as NonNullable<typeof wide>, full)).toMatch(/shape on rows without pattern\.$/);
    expect(missed({ ...full, piece: { ...full.piece, shape, seamAllowance: { left: 3, right: 0 } } })).toEqual([]);
  });

  it('pays where a stitch is made under the figure of a group, not where it is made under its ground', () => {
    const group = (motif: readonly string[], first: number): ProjectAt => ({
      ...body,
      motifs: body.motifs.map((own) => ({ ...own, grid: gridFromText(motif, '.X') })),
      patterns: [
        {
          ...startBand('motif', [1]),
          rule: { kind: 'by-hand', first: [first] as never },
          position: fromRow(7),
          unit: 'whole',
        },
      ],
    });
    // L9 is new on row 7: the group stands on L9 to L7, or on L8 to L6.
    const seam = { left: 1, right: 0 };
    expect(missed(group(['X.X'], -9))).toEqual([{ code: 'edges-unseen', rows: [7, 7], count: 1, seam }]);
    expect(missed(group(['.XX'], -9))).toEqual([]);
    expect(missed(group(['X.X'], -8))).toEqual([]);
  });
});
