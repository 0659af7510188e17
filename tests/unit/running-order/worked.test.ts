/** Running orders worked by hand. All of them are common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Position } from '@shared/piece/index.ts';
import { startBand, startFill, startGroup, type ProjectAt } from '@shared/project/index.ts';
import { checkedPlan } from '../check/found.ts';
import { BLANK_FIRST_12_BY_31, projectWith } from '../fabric/pieces.ts';
import { actsAt, linesOf, obstacleCodes, orderOf, readingsOf } from './order-lines.ts';

const fromRow = (row: number): Position => ({ kind: 'from-row', row });

describe('a hem of 100 rows with a motif of 31 on its outside', () => {
  const project = projectWith({
    motif: BLANK_FIRST_12_BY_31,
    copies: [3, 3],
    stitches: 120,
    rows: 160,
    piece: { hemRows: 100 },
  });

  it('begins on waste yarn, the carriage ending where it starts', () => {
    expect(actsAt(project, 0)).toEqual([
      'cast on L60–R60 slate open, 8 rows of waste',
      'counter 0',
      'tension facing',
      'weights hang',
      'thread 1 slate',
    ]);
  });

  it('has selecting switched on at 59, and the contrast comes in at 60', () => {
    expect(actsAt(project, 59)).toEqual(['row 61 from L48–L13, R12–R47', 'end-needles off', 'selecting on']);
    // The weights were hung 150 mm below.
    expect(actsAt(project, 60).slice(0, 3)).toEqual(['weights move', 'carriage pattern', 'thread 2 chalk']);
    expect(readingsOf(project, 'selecting')).toEqual([59, 91]);
  });

  it('ends its pattern at 91', () => {
    expect(actsAt(project, 91).slice(0, 3)).toEqual([
      'carriage plain',
      'selecting off',
      'unthread 2 chalk, cut to 150 mm',
    ]);
  });

  it('is hung at 100 with the weights off, and joined by a looser plain row, after which the waste comes out', () => {
    expect(actsAt(project, 100)).toEqual([
      'weights off',
      'hang 120 loops on L60–R60, half loop left',
      'weights hang',
      'tension joiningRow',
    ]);
    expect(actsAt(project, 101)).toEqual(['remove waste', 'tension main']);
  });

  it('is cast off from where the carriage stands, with four times the width of yarn', () => {
    // 120 stitches of 28 in 10 cm are 428.6 mm; four times that and a tail of 150 mm.
    expect(actsAt(project, 160)).toEqual([
      'unthread 1 slate, cut to 1870 mm',
      'weights off',
      'finish cast-off L60–R60 from the right, 1870 mm',
    ]);
    expect(readingsOf(project, 'tension').at(-1)).toBe(159);
  });
});

it('a turning row of 11 rows is the sixth: five, the turning row, five', () => {
  const project = projectWith({ motif: ['X'], copies: [1], stitches: 10, rows: 40, piece: { hemRows: 11 } });
  const turning = { ...project, piece: { ...project.piece, hem: { turning: 'eyelets' as const, gauge: null } } };
  expect(linesOf(turning, 'eyelets')).toEqual(['5: eyelets 4, from L4']);
  expect(linesOf(turning, 'hang-hem')).toEqual(['11: hang 10 loops on L5–R5, half loop left']);
});

describe('a sleeve with 14 increases above its hem', () => {
  const project: ProjectAt = {
    ...projectWith({ motif: ['X'], copies: [1], stitches: 62, rows: 150, band: { position: fromRow(100) } }),
    bands: [],
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

const plainBody: ProjectAt = {
  ...projectWith({ motif: ['X...', '.X..'], copies: [1], stitches: 16, rows: 20 }),
  bands: [],
  fills: [startFill('motif', 3)],
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
      { code: 'edges-unseen', rows: [7, 12], count: 2 },
    ]);
  });
});

describe('two patterns of two rows', () => {
  /** The second begins so many plain rows above the first, which is on rows 5 and 6. */
  const apart = (plain: number): ProjectAt => {
    const project = projectWith({ motif: ['.X.', 'XXX'], copies: [1], stitches: 11, rows: 20 });
    const band = startBand('motif', [1]);
    return {
      ...project,
      bands: [
        { ...band, position: fromRow(5) },
        { ...band, position: fromRow(7 + plain) },
      ],
    };
  };
  const choices = (plain: number): string[] => linesOf(apart(plain), 'selecting', 'first-needles', 'carriage');

  it('that touch have no plain set-up row: the second is set while the first is knitted', () => {
    expect(choices(0)).toEqual([
      '3: row 5 from L1–R2',
      '3: selecting on',
      '4: carriage pattern',
      '5: row 7 from L1–R2',
      '8: carriage plain',
      '8: selecting off',
    ]);
  });

  it('with one plain row between leave selecting on', () => {
    expect(choices(1)).toEqual([
      '3: row 5 from L1–R2',
      '3: selecting on',
      '4: carriage pattern',
      '6: carriage plain',
      '6: row 8 from L1–R2',
      '7: carriage pattern',
      '9: carriage plain',
      '9: selecting off',
    ]);
  });

  it.each([2, 3])('with %i plain rows between switch selecting off and on again', (plain) => {
    expect(choices(plain)).toEqual([
      '3: row 5 from L1–R2',
      '3: selecting on',
      '4: carriage pattern',
      '6: carriage plain',
      '6: selecting off',
      `${plain + 5}: row ${plain + 7} from L1–R2`,
      `${plain + 5}: selecting on`,
      `${plain + 6}: carriage pattern`,
      `${plain + 8}: carriage plain`,
      `${plain + 8}: selecting off`,
    ]);
  });

  it.each([
    // 40 rows in 10 cm: 8 rows are 20 mm, within 25.
    { plain: 7, rule: 'waits' },
    { plain: 8, rule: 'cut' },
  ])('carry the contrast over $plain plain rows: $rule', ({ plain, rule }) => {
    expect(linesOf(apart(plain), 'unthread')[0]).toContain(rule);
  });
});

it('selecting and the carriage are set at one reading where the plain rows between leave no other', () => {
  const project = projectWith({ motif: ['X.X'], copies: [1], stitches: 9, rows: 6, band: { position: fromRow(2) } });
  expect(actsAt(project, 0).slice(-3)).toEqual(['end-needles off', 'selecting on', 'thread 1 slate']);
});

describe('rows of one yarn', () => {
  /** Across all eleven needles: figure, all contrast, blank, figure. */
  const striped = projectWith({
    motif: ['X.X.X.X.X.X', '...........', 'XXXXXXXXXXX', '.X.X.X.X.X.'],
    copies: [1],
    stitches: 11,
    rows: 12,
    band: { position: fromRow(4), unit: 'whole' },
  });

  it('all in contrast have it in the first feeder, and main waits', () => {
    expect(linesOf(striped, 'thread', 'unthread', 'carriage').slice(1, 8)).toEqual([
      '3: carriage pattern',
      '3: thread 2 chalk',
      '4: carriage plain',
      '4: unthread 2 chalk, waits at R5',
      '4: unthread 1 slate, waits at R6',
      '4: thread 1 chalk',
      '5: unthread 1 chalk, waits at L5',
    ]);
  });

  it('that are blank have main alone, and selecting on only for the next row', () => {
    expect(actsAt(striped, 5)).toContain('thread 1 slate');
    expect(linesOf(striped, 'selecting')).toEqual([
      '2: selecting on',
      '4: selecting off',
      '5: selecting on',
      '7: selecting off',
    ]);
  });
});

describe('an own ball for each of two groups', () => {
  const project = projectWith({
    motif: ['X'],
    copies: [1, 1],
    group: { hasOwnBall: true },
    stitches: 12,
    rows: 8,
    band: { rule: { kind: 'by-hand', first: [-4, 3] as never }, position: fromRow(3) },
  });

  it('is laid by hand from the side of the carriage away, and the second feeder is empty', () => {
    // Row 3 is knitted from the right.
    expect(actsAt(project, 2)).toEqual([
      'carriage pattern',
      'check 2, L4–R4',
      'strand 1 start',
      'wrap L3 with 1',
      'strand 2 start',
      'wrap R5 with 2',
      'lay chalk of ball 1 on R4',
      'lay chalk of ball 2 on L4',
    ]);
    expect(linesOf(project, 'thread')).toEqual(['0: thread 1 slate']);
  });

  it('cannot be laid where no needle stands forward to be seen', () => {
    const unseen: ProjectAt = { ...project, machine: { ...project.machine, chooses: 'ahead-unseen' } };
    expect(obstacleCodes(unseen)).toEqual(['balls-unseen']);
  });
});

describe('own balls that come to lie right beside each other', () => {
  const touching = (motif: readonly string[], first: readonly number[]): ProjectAt =>
    projectWith({
      motif,
      copies: [1, 1],
      group: { hasOwnBall: true },
      stitches: 12,
      rows: 8,
      band: { rule: { kind: 'by-hand', first: first as never }, position: fromRow(3), unit: 'whole' },
    });

  it('are crossed, the one laid later with the one before it', () => {
    // Row 3 comes from the right, row 4 from the left.
    expect(linesOf(touching(['XX', 'XX'], [-2, 0]), 'lay')).toEqual([
      '2: lay chalk of ball 1 on R1–R2',
      '2: lay chalk of ball 2 on L2–L1, crossed with 1',
      '3: lay chalk of ball 2 on L2–L1',
      '3: lay chalk of ball 1 on R1–R2, crossed with 2',
    ]);
  });

  it('are not crossed on a row on which a stitch of main is between them', () => {
    expect(linesOf(touching(['.X', 'XX'], [-2, 0]), 'lay')).toEqual([
      '2: lay chalk of ball 1 on R1–R2',
      '2: lay chalk of ball 2 on L2–L1, crossed with 1',
      '3: lay chalk of ball 2 on L1',
      '3: lay chalk of ball 1 on R2',
    ]);
  });

  it('are not crossed where one floats behind the other', () => {
    const third = projectWith({
      motif: ['XOX'],
      copies: [1],
      stitches: 9,
      rows: 6,
      band: { position: fromRow(3) },
    });
    expect(linesOf(third, 'lay').filter((line) => line.includes('crossed'))).toEqual([]);
    expect(linesOf(third, 'lay')).toHaveLength(2);
  });
});

describe('an armhole cast off on both sides', () => {
  const project = projectWith({ motif: ['X'], copies: [1], stitches: 40, rows: 60, band: { position: fromRow(10) } });
  const armhole: ProjectAt = {
    ...project,
    bands: [{ ...startBand('motif', [1]), groups: [startGroup('motif', 1)], position: fromRow(10) }],
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

describe('a pattern from row 1 on', () => {
  const given = { motif: ['X.X', '.X.'], copies: [1], stitches: 9, rows: 6, band: { position: fromRow(1) } };
  const project = projectWith(given);
  const on = (machine: Partial<ProjectAt['machine']>): ProjectAt => ({
    ...project,
    machine: { ...project.machine, ...machine },
  });

  it('has its needles pushed forward by hand above a closed cast-on, and the pass of row 1 chooses row 2', () => {
    expect(actsAt(project, 0)).toEqual([
      'cast on L4–R5 slate closed',
      'counter 0',
      'weights hang',
      'push-forward R1',
      'row 2 from L1–R2',
      'end-needles off',
      'selecting on',
      'carriage pattern',
      'thread 1 slate',
      'thread 2 chalk',
      'check 1, R1',
      'strand 1 start',
      'wrap R2 with 1',
    ]);
  });

  it('is chosen by the last pass of the waste yarn above an open one', () => {
    const open = projectWith({ ...given, piece: { begins: 'open' } });
    expect(linesOf(open, 'push-forward', 'first-needles')).toEqual(['0: row 1 from L1–R2']);
  });

  it('is pushed as every row is where all needles are chosen by hand', () => {
    expect(linesOf(on({ chooses: 'by-hand' }), 'push-forward', 'selecting')).toEqual([
      '0: push-forward R1',
      '1: push-forward L1 R2',
    ]);
  });

  it('cannot be where no needle can be pushed', () => {
    expect(obstacleCodes(on({ chooses: 'ahead-unseen' }))).toEqual(['pattern-on-first-row']);
  });
});
