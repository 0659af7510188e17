/** Lengths of one yarn that hang at the piece side by side, and how an order tells them apart. Worked by hand. */
import { describe, expect, it } from 'vitest';
import type { Group } from '@shared/pattern/index.ts';
import { ballsToWind, makePlan } from '@shared/plan/index.ts';
import { pieceIn, startBand, type ProjectAt } from '@shared/project/index.ts';
import { runningOrderWords } from '@shared/words/running-order.ts';
import { placementSheet, sheetFacts } from '@shared/output/index.ts';
import { atHand } from '@shared/output/steps/at-hand.ts';
import { TEST_DAY } from '../../day.ts';
import { knitPlan } from '../../knit/knit-plan.ts';
import { projectWith } from '../fabric/pieces.ts';
import { allWords } from '../output/items-of.ts';
import { linesOf, orderOf } from './order-lines.ts';

interface Given {
  readonly motif?: readonly string[];
  readonly first: readonly number[];
  /** One for each group, from left to right. */
  readonly groups: readonly Partial<Group>[];
  readonly piece?: Parameters<typeof projectWith>[0]['piece'];
  readonly longFloats?: 'left' | 'hooked-up' | 'latched-up';
}

/** Groups of one copy, the lowest of which stands on row 3, which is knitted from the right. */
function standing({ motif = ['X'], first, groups, piece, longFloats = 'left' }: Given): ProjectAt {
  const copies = groups.map(() => 1);
  const start = startBand('motif', copies);
  return projectWith({
    motif,
    copies,
    stitches: 24,
    rows: 20,
    ...(piece ? { piece } : {}),
    band: {
      groups: start.groups.map((group, index) => ({ ...group, ...groups[index] })),
      rule: { kind: 'by-hand', first: first as never },
      position: { kind: 'from-row', row: 3 },
      unit: 'whole',
      longFloats,
    },
  });
}

const chalk = (project: ProjectAt): string[] =>
  linesOf(project, 'thread', 'unthread').filter((line) => line.includes('chalk'));

/** What the sheet says of balls with a number. */
function noteOf(project: ProjectAt): string | undefined {
  const sheet = placementSheet(sheetFacts(project), makePlan(pieceIn(project)), { paper: 'a4', date: TEST_DAY });
  const said = allWords(sheet).replace(/\s+/g, ' ');
  return /Balls with a number [^.]+\./.exec(said)?.[0];
}

describe('an own ball that is fed', () => {
  /** A group from the shared ball, above it one from its own, and above that one from the shared ball. */
  const between = (last: number): ProjectAt =>
    standing({ first: [-5, -1, 3], groups: [{ rise: 0 }, { rise: 1, hasOwnBall: true }, { rise: last }] });

  it('has a number where the length of all else waits until it is knitted', () => {
    expect(chalk(between(2))).toEqual([
      '2: thread 2 chalk',
      '3: unthread 2 chalk, waits at L5',
      '3: thread 2 chalk of ball 1',
      '4: unthread 2 chalk of ball 1, cut to 150 mm',
      '4: thread 2 chalk',
      '5: unthread 2 chalk, cut to 150 mm',
    ]);
    expect(knitPlan(between(2))).toMatchObject({ outcome: 'as-designed' });
  });

  it('has none where that length was cut, since its next row is too far up to be carried to', () => {
    expect(chalk(between(10))).toEqual([
      '2: thread 2 chalk',
      '3: unthread 2 chalk, cut to 150 mm',
      '3: thread 2 chalk',
      '4: unthread 2 chalk, cut to 150 mm',
      '12: thread 2 chalk',
      '13: unthread 2 chalk, cut to 150 mm',
    ]);
    expect(knitPlan(between(10))).toMatchObject({ outcome: 'as-designed' });
  });

  it('has a number where that of another group waits, as the other has', () => {
    // Rows 3 and 5 of one, rows 4 and 6 of the other.
    const inTurn = standing({
      motif: ['X', '.', 'X'],
      first: [-4, 3],
      groups: [
        { rise: 0, hasOwnBall: true },
        { rise: 1, hasOwnBall: true },
      ],
    });
    expect(chalk(inTurn)).toEqual([
      '2: thread 2 chalk of ball 2',
      '3: unthread 2 chalk of ball 2, waits at L4',
      '3: thread 2 chalk of ball 1',
      '4: unthread 2 chalk of ball 1, waits at R4',
      '4: thread 2 chalk of ball 2',
      '5: unthread 2 chalk of ball 2, cut to 150 mm',
      '5: thread 2 chalk of ball 1',
      '6: unthread 2 chalk of ball 1, cut to 150 mm',
    ]);
    expect(knitPlan(inTurn)).toMatchObject({ outcome: 'as-designed' });
  });

  it('is wound and lies ready, though nothing is laid by hand', () => {
    const project = between(2);
    const plan = makePlan(pieceIn(project));
    expect(ballsToWind(pieceIn(project), plan).map(({ group, number, isLaid }) => [group, number, isLaid])).toEqual([
      [null, null, false],
      [null, null, false],
      [1, 1, false],
    ]);
    const said = atHand(plan, orderOf(project)).map((one) =>
      runningOrderWords.atHand(one, { yarn: String, motif: String, unit: 'cm' }),
    );
    expect(said).toContain('1 ball of contrast wound beforehand.');
    expect(noteOf(project)).toBe('Balls with a number are laid by hand or threaded, as the steps say.');
    const sideBySide = standing({ first: [-5, 3], groups: [{ hasOwnBall: true }, {}] });
    expect(noteOf(sideBySide)).toBe('Balls with a number are laid by hand, as the steps say.');
  });
});

describe('floats of two balls of one yarn behind one needle', () => {
  /** Two groups of the shared ball at the sides, whose floats go behind one with a ball of its own. */
  const nested = (longFloats: 'hooked-up' | 'latched-up'): ProjectAt =>
    standing({
      motif: ['XXXXXXXXX', 'X.......X', 'X.......X'],
      first: [-13, -4, 6],
      groups: [{}, { hasOwnBall: true }, {}],
      piece: { floatLimit: { stitches: 5, mm: null }, shape: { kind: 'rectangle', stitches: 40, rows: 20 } },
      longFloats,
    });

  it.each(['hooked-up', 'latched-up'] as const)('are each held as planned where they are %s', (longFloats) => {
    expect(knitPlan(nested(longFloats))).toMatchObject({ outcome: 'as-designed' });
  });

  it('are latched up by the number of the ball where the yarn does not say which is meant', () => {
    // At the sides the floats of the shared ball lie alone behind a needle; in the middle they pass behind those of ball 2.
    expect(linesOf(nested('latched-up'), 'latch-up')).toEqual([
      '4: latch up chalk of rows 3-4 on L9',
      '4: latch up chalk of ball 2 of rows 3-4 on R1',
      '4: latch up chalk of rows 3-4 on R11',
    ]);
  });
});
