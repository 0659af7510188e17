/** When the machine is set for its patterns, worked by hand. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Position } from '@shared/piece/index.ts';
import { startBand, type ProjectAt } from '@shared/project/index.ts';
import { projectWith } from '../fabric/pieces.ts';
import { actsAt, linesOf, obstacleCodes } from './order-lines.ts';

const fromRow = (row: number): Position => ({ kind: 'from-row', row });

describe('two patterns of two rows', () => {
  /** The second begins so many plain rows above the first, which is on rows 5 and 6. */
  const apart = (plain: number): ProjectAt => {
    const project = projectWith({ motif: ['.X.', 'XXX'], copies: [1], stitches: 11, rows: 20 });
    const band = startBand('motif', [1]);
    return {
      ...project,
      patterns: [
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
      'tension main',
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
