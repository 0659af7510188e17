/** What ripping back asks of the hands, worked by hand. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import {
  lastReading,
  paritySide,
  puttingBack,
  rippingSteps,
  stopsOf,
  type KnittingOrder,
} from '@shared/knitting/index.ts';
import { gridFromText } from '@shared/grid/index.ts';
import { startAllOver, type ProjectAt } from '@shared/project/index.ts';
import { settled } from '../../written-projects.ts';
import { knittingOf, putBackLine, sample, trial } from './knitting.ts';

const lines = (knitting: KnittingOrder, from: number, to: number, ticked?: readonly number[]): string[] =>
  puttingBack(knitting, from, to, ticked).map((put) => putBackLine(put, knitting));

describe('ripping back', () => {
  const knitting = knittingOf(trial());

  it('over plain rows takes the loops, the carriage and the counter', () => {
    expect(lines(knitting, 10, 8)).toEqual(['stitches L5–R6', 'carriage to right, there', 'counter 8']);
    expect(lines(knitting, 10, 9)).toEqual(['stitches L5–R6', 'carriage to left', 'counter 9']);
  });

  it('into a pattern takes its yarn and strand in again, and its needles chosen once more', () => {
    expect(lines(knitting, 9, 5)).toEqual([
      'stitches L5–R6',
      'carriage to left, there',
      'counter 5',
      'carriage pattern',
      'selecting on',
      'into 2: chalk, was cut',
      'strand 1 at R3, was ended',
      'row 6: 1 by-hand, R1',
    ]);
  });

  it('to the reading where the pattern begins leaves to its acts what they do', () => {
    expect(lines(knitting, 6, 4)).toEqual([
      'stitches L5–R6',
      'carriage to right, there',
      'counter 4',
      'row 5: 3 by-hand, L1–R2',
      'next chooses row 6',
    ]);
  });

  it('below the set-up row switches off what was on, and takes the yarn out', () => {
    expect(lines(knitting, 5, 2)).toEqual([
      'stitches L5–R6',
      'carriage to right',
      'counter 2',
      'carriage plain',
      'selecting off',
      'out of 2: chalk',
      'strand 1 out',
    ]);
  });

  it('sets the tension of the swatch again that was loosened for the last row', () => {
    // The last row is knitted loosest, all others as the swatch was.
    expect(lines(knitting, lastReading(knitting), 8).filter((line) => line.startsWith('tension'))).toEqual([
      'tension main',
    ]);
    expect(lines(knitting, 10, 8).filter((line) => line.startsWith('tension'))).toEqual([]);
  });

  it('has done at the reading that is left what is ticked off there, and no more', () => {
    // At 6 the carriage is set to plain, selecting switched off, the yarn cut and the strand worked in.
    expect(lines(knitting, 6, 5, [0, 1, 2, 3])).toEqual(
      lines(knitting, 7, 5).map((line) => line.replace(', there', '')),
    );
    expect(lines(knitting, 6, 5)).not.toContain('carriage pattern');
  });

  describe('from a reading whose acts may be done without being ticked off', () => {
    const steps = (from: number, to: number, ticked: readonly number[]): string[] =>
      rippingSteps(knitting, from, to, ticked).map(
        ({ put, ifBegun }) => `${ifBegun ? 'if begun: ' : ''}${putBackLine(put, knitting)}`,
      );

    it('tells what only that asks for on that condition, before what is done in any case', () => {
      expect(steps(6, 5, [])).toEqual([
        'stitches L5–R6',
        'carriage to left',
        'counter 5',
        'if begun: carriage pattern',
        'if begun: selecting on',
        'if begun: into 2: chalk, was cut',
        'if begun: strand 1 at R3, was ended',
        'strand 1 at R3',
        'row 6: 1 by-hand, R1',
      ]);
    });

    it('tells all of it without a condition where all is ticked off, or nothing is asked there', () => {
      const all = stopsOf(knitting)[6]?.acts.map((_, index) => index) ?? [];
      expect(steps(6, 5, all)).toEqual(lines(knitting, 6, 5, all));
      expect(steps(10, 8, [])).toEqual(lines(knitting, 10, 8));
    });
  });

  it.each([
    [4, 4],
    [4, 5],
    [13, 4],
    [4, -1],
  ])('from %i to %i is none', (from, to) => {
    expect(() => puttingBack(knitting, from, to)).toThrow(RangeError);
  });
});

it('takes needles out of work that were increased since, and chooses before the edges are put right', () => {
  const knitting = knittingOf(sample());
  const told = lines(knitting, 61, 40);
  expect(told[0]).toBe('stitches L52–R52, out L54–L53, out R53–R54');
  expect(told).toContain('row 41: 12 by-hand, L33–L31 L19–L17 R17–R19 R31–R33');
  expect(told).toContain('next chooses row 42');
});

describe('in an all-over that is shaped', () => {
  /** Two stitches of contrast and two of main, on 20 stitches; a stitch comes or goes at each edge before row 6. */
  const shaped = (change: 1 | -1): KnittingOrder => {
    const rectangle = trial({ stitches: 20, rows: 12 });
    return knittingOf(
      settled(rectangle, {
        motifs: rectangle.motifs.map((motif) => ({ ...motif, grid: gridFromText(['XX..'], '.XO') })),
        piece: {
          ...rectangle.piece,
          shape: { kind: 'steps', stitches: 20, rows: 12, steps: [{ row: 6, left: change, right: change }] },
        },
        patterns: [{ ...startAllOver('motif', 3), endNeedles: true }],
      }),
    );
  };

  it.each([
    // The pass of row 5 brings R10 forward as its edge needle; after the increase it is put back.
    [1, 'row 6: 11 by-hand, L10–L9 L6–L5 L2–L1 R3–R4 R7–R8 R10'],
    // R9 is pushed forward once it is the edge; what goes out of work is chosen in vain.
    [-1, 'row 6: 9 by-hand, L9 L6–L5 L2–L1 R3–R4 R7–R8'],
  ] as const)('%i stitch at each edge: chooses what stood forward before the edges are put right', (change, wanted) => {
    const told = lines(shaped(change), 8, 5);
    expect(told.find((line) => line.startsWith('row 6'))).toBe(wanted);
  });
});

it('goes on with the pattern’s rows to the last, whose pass chooses none', () => {
  const tall = knittingOf(trial({ motif: ['X', 'X', '.', 'X'], copies: [1] }));
  const next = (to: number): string | undefined => lines(tall, 12, to).find((line) => line.startsWith('next'));
  // Rows 5 to 8, of which row 6 is main alone.
  expect([4, 5, 6, 7].map(next)).toEqual(['next chooses row 6', 'next chooses row 7', 'next chooses row 8', undefined]);
});

it('lets the machine choose again what nobody can push', () => {
  const project = trial();
  const machine: ProjectAt['machine'] = { ...project.machine, chooses: 'ahead-unseen' };
  expect(lines(knittingOf({ ...project, machine }), 7, 5)).toContain('row 6: 1 by-pass, R1');
});

it('pushes nothing twice where all needles are chosen by hand', () => {
  const project = trial();
  const machine: ProjectAt['machine'] = { ...project.machine, chooses: 'by-hand' };
  expect(lines(knittingOf({ ...project, machine }), 7, 5).filter((line) => line.startsWith('row'))).toEqual([]);
});

describe('ripping out a hem', () => {
  const hemmed = knittingOf(
    trial({ rows: 30, piece: { hemRows: 10, ends: 'cast-off' }, band: { position: { kind: 'from-row', row: 20 } } }),
  );

  it('takes its loops off the needles, which waste yarn holds until it is pulled out', () => {
    expect(lines(hemmed, 11, 8)).toContain('hem off, on waste');
    expect(lines(hemmed, 14, 8)).toContain('hem off');
    expect(lines(hemmed, 14, 12)).not.toContain('hem off');
  });

  it('to the reading at which it is hung takes it off too: it is hung there again', () => {
    expect(lines(hemmed, 11, 10)).toContain('hem off, on waste');
  });

  it('sets the tension of the hem again', () => {
    expect(lines(hemmed, 14, 3)).toContain('tension facing');
  });

  it.each([0, 5, 10])('leaves the tension to the acts at %i, which set it', (to) => {
    expect(lines(hemmed, 14, to).filter((line) => line.startsWith('tension'))).toEqual([]);
  });
});

it('says where each strand waits', () => {
  const knitting = knittingOf(
    trial({
      motif: ['X', '.', '.', 'X'],
      copies: [1, 1],
      stitches: 21,
      rows: 16,
      group: { hasOwnBall: true },
    }),
  );
  // Rows 5 and 8 are laid by hand; on rows 6 and 7 the balls wait where row 5 ended.
  expect(lines(knitting, 9, 6).filter((line) => line.includes('waits'))).toEqual([
    'ball 1 chalk waits at R6, was cut',
    'ball 2 chalk waits at L5, was cut',
  ]);
});

it('has a ball wait at the end of what was laid of it, away from where the carriage stood', () => {
  const knitting = knittingOf(
    trial({
      motif: ['XXX', '...', '...', 'XXX'],
      copies: [1, 1],
      stitches: 21,
      rows: 16,
      group: { hasOwnBall: true },
      band: { position: { kind: 'from-row', row: 5 }, unit: 'whole' },
    }),
  );
  const waits = lines(knitting, 9, 6).filter((line) => line.includes('waits'));
  // Three stitches each, L6–L4 and R5–R7; row 5 begins at the right, so both are laid towards the left.
  expect(waits).toEqual(['ball 1 chalk waits at R5, was cut', 'ball 2 chalk waits at L6, was cut']);
});

it('knows the carriage’s side by the reading', () => {
  const knitting = knittingOf(trial());
  expect([0, 1, 11, 12].map((reading) => paritySide(knitting, reading))).toEqual(['right', 'left', 'left', 'right']);
  expect(() => paritySide(knitting, 13)).toThrow(RangeError);
});
