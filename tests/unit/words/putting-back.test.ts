/** What is said of a machine that is set again in the middle of a piece. */
import { describe, expect, it } from 'vitest';
import { puttingBack, type KnittingOrder, type PutBack } from '@shared/knitting/index.ts';
import type { ActNames } from '@shared/words/index.ts';
import { puttingBackWords } from '@shared/words/putting-back.ts';
import { knittingOf, sample, trial } from '../knitting/knitting.ts';

const namesOf = ({ yarns, motifs }: KnittingOrder): ActNames => ({
  yarn: (index) => yarns[index]?.name ?? '',
  motif: (id) => motifs.find((motif) => motif.id === id)?.name ?? '',
  unit: 'cm',
});

const said = (knitting: KnittingOrder, from: number, to: number): string[] =>
  puttingBack(knitting, from, to).map((put) => puttingBackWords.sentence(put, namesOf(knitting)));

describe('what is put back', () => {
  it('is said needle by needle', () => {
    expect(said(knittingOf(sample()), 61, 40)).toEqual([
      'Hang the loops of row 40 on L52–R52, each on its own needle. Put L54–L53 and R53–R54 out of work.',
      'Take the carriage to the right (COR) without knitting or counting.',
      'Set the row counter to 40.',
      'Set the carriage to knit the pattern.',
      'Switch needle selection on.',
      'Join chalk again and thread it into feeder 2.',
      'Pull the end of strand 1 out again, and let it hang at R38.',
      'Pull the end of strand 2 out again, and let it hang at L35.',
      'Push 12 needles forward for row 41, and all others back: L33–L31, L19–L17, R17–R19, R31–R33.',
      'Set pattern band 1 so that the next pass chooses row 42.',
    ]);
  });

  it('is a pass of the machine where no needle can be pushed', () => {
    const project = trial();
    const unseen = knittingOf({ ...project, machine: { ...project.machine, chooses: 'ahead-unseen' } });
    expect(said(unseen, 7, 5)).toContain(
      'Let the machine choose the needles of row 6 again: set pattern band 1 to row 6, and end with a pass without knitting or counting. 1 needle is chosen: R1.',
    );
  });

  const knitting = knittingOf(trial());
  it.each<[PutBack, string]>([
    [
      { kind: 'stitches', row: 0, needles: { first: -2, last: 1 }, back: [{ first: 1, last: 1 }], out: [] } as never,
      'Hang the loops of the cast-on on L2–R2, each on its own needle. R2 comes into work again. Do not cast on again.',
    ],
    [{ kind: 'hem-off', hasWaste: true }, 'Take the loops of the hem off the needles: they hang on their waste yarn.'],
    [
      { kind: 'hem-off', hasWaste: false },
      'Take the loops of the hem off the needles, and catch them on a thread: nothing else holds them.',
    ],
    [{ kind: 'carriage-to', side: 'left', isThere: true }, 'The carriage stands at the left (COL).'],
    [{ kind: 'yarn-out', feeder: 1, yarn: 1, ball: 2 }, 'Take ball 2, chalk, out of feeder 1.'],
    [{ kind: 'yarn-in', feeder: 2, yarn: 1, ball: null, wasCut: false }, 'Thread chalk into feeder 2.'],
    [
      { kind: 'yarn-waits', yarn: 1, ball: 1, needle: 5, wasCut: true } as never,
      'Join ball 1, chalk, again and let it wait at R6.',
    ],
    [{ kind: 'yarn-waits', yarn: 1, ball: null, needle: -5, wasCut: false } as never, 'Let chalk wait at L5.'],
    [
      { kind: 'strand-waits', strand: 3, needle: null, wasEnded: false },
      'Leave strand 3 free: it has not wrapped yet.',
    ],
    [{ kind: 'strand-out', strand: 3 }, 'Take strand 3 off: a later row takes it up.'],
    [{ kind: 'tension', part: 'pattern', text: '6' }, 'Set the tension for the pattern to 6.'],
  ])('%j is “%s”', (put, sentence) => {
    expect(puttingBackWords.sentence(put, namesOf(knitting))).toBe(sentence);
  });
});
