/** Yarns in the feeders and balls laid by hand, worked by hand. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Piece, Position } from '@shared/piece/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import { knitPlan } from '../../knit/knit-plan.ts';
import { checkedPlan } from '../check/found.ts';
import { projectWith } from '../fabric/pieces.ts';
import { actsAt, linesOf, obstacleCodes } from './order-lines.ts';

const fromRow = (row: number): Position => ({ kind: 'from-row', row });

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

  it('is cut after its last row', () => {
    expect(actsAt(project, 3).slice(0, 4)).toEqual([
      'carriage plain',
      'selecting off',
      'cut ball 1 chalk to 150 mm',
      'cut ball 2 chalk to 150 mm',
    ]);
  });

  it('is cut too where its next row is too far up, and joined again there', () => {
    // Rows 3 and 12 have figure: 9 rows up, more than 8.
    const motif = ['X', ...Array<string>(8).fill('.'), 'X'];
    const far = projectWith({
      motif,
      copies: [1, 1],
      group: { hasOwnBall: true },
      stitches: 12,
      rows: 16,
      band: { rule: { kind: 'by-hand', first: [-4, 3] as never }, position: fromRow(3), unit: 'whole' },
    });
    expect(linesOf(far, 'cut')).toEqual([
      '3: cut ball 1 chalk to 150 mm',
      '3: cut ball 2 chalk to 150 mm',
      '12: cut ball 2 chalk to 150 mm',
      '12: cut ball 1 chalk to 150 mm',
    ]);
    expect(checkedPlan(far).findings.filter(({ code }) => code === 'long-way-up')).toMatchObject([
      { rows: [3, 12], count: 2 },
    ]);
  });

  it('cannot be laid where no needle stands forward to be seen', () => {
    const unseen: ProjectAt = { ...project, machine: { ...project.machine, chooses: 'ahead-unseen' } };
    expect(obstacleCodes(unseen)).toEqual(['balls-unseen']);
  });
});

describe('a contrast that is fed on some rows and laid by hand on others', () => {
  /** Chalk alone on the lowest row, then chalk and a third yarn on so many, then chalk alone again. */
  const mixed = (laid: number): ProjectAt =>
    projectWith({
      motif: ['X..', ...Array<string>(laid).fill('X.O'), 'X..'],
      copies: [1],
      stitches: 9,
      rows: laid + 6,
      band: { position: fromRow(3), unit: 'whole' },
    });

  it('waits for the rows on which it is laid, and is one ball for all of them', () => {
    // Fed on row 3, laid on rows 4 to 13, fed on row 14: never further than a row up, though its feeder is empty for 11.
    expect(linesOf(mixed(10), 'thread', 'unthread', 'cut').filter((line) => line.includes('chalk'))).toEqual([
      '2: thread 2 chalk of ball 1',
      '3: unthread 2 chalk of ball 1, waits at L1',
      '13: thread 2 chalk of ball 1',
      '14: unthread 2 chalk of ball 1, cut to 150 mm',
    ]);
  });

  it('is the ball that is cast on with, where row 1 is knitted in it', () => {
    const piece = projectWith({
      motif: ['X.O', 'XXX'],
      copies: [2],
      stitches: 6,
      rows: 6,
      band: { position: fromRow(1), unit: 'whole' },
    });
    expect(linesOf(piece, 'cast-on', 'thread', 'lay')).toEqual([
      '0: cast on L3–R3 chalk of ball 1 closed',
      '0: thread 1 chalk of ball 1',
      '1: thread 1 slate',
      '1: lay chalk of ball 1 on L3 R1',
      '1: lay kelp of ball 2 on L1 R3',
    ]);
    expect(knitPlan(piece)).toMatchObject({ outcome: 'as-designed' });
  });

  it('is cut at its ball after the last row on which it is laid', () => {
    expect(linesOf(mixed(10), 'cut')).toEqual(['13: cut ball 2 kelp to 150 mm']);
  });
});

describe('the yarn that was cast on with', () => {
  /** Three stitches of two yarns on each row, from row 1 up. */
  const byHand = (rows: readonly string[], piece: Partial<Piece> = {}): ProjectAt =>
    projectWith({
      piece,
      motif: rows,
      copies: [1],
      stitches: 3,
      rows: rows.length,
      band: { position: fromRow(1), unit: 'whole' },
    });

  it('is cut at once where every row is laid by hand in other yarns', () => {
    expect(actsAt(byHand(['XXO', 'XXO', 'XXO', 'XXO']), 0)).toContain('cut slate to 150 mm');
  });

  it.each(['picked-up', 'open'] as const)('is not there to be cut where the start is %s', (begins) => {
    const project = byHand(['XXO', 'XXO', 'XXO', 'XXO'], { begins });
    expect(linesOf(project, 'cut').filter((line) => line.includes('slate'))).toEqual([]);
    expect(knitPlan(project)).toMatchObject({ outcome: 'as-designed' });
  });

  it('hangs where a row knits it further up', () => {
    expect(linesOf(byHand(['XXO', 'XXO', '...', 'XXO']), 'cut').filter((line) => line.includes('slate'))).toEqual([]);
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
