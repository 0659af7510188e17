/** Counts that were given as lengths, and what becomes of them when gauges change. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countsOf,
  sectionTaking,
  seamTaking,
  withLength,
  type Gauge,
  type Lengths,
  type Piece,
} from '@shared/piece/index.ts';
import {
  addSize,
  afterChange,
  carriedOut,
  changePiece,
  changeSize,
  sizesOf,
  type ProjectAt,
  inSize,
} from '@shared/project/index.ts';
import { expectChangeLaws } from './change-laws.ts';
import { anyProject } from './projects.ts';

const anyGauge: fc.Arbitrary<Gauge> = fc.record({
  stitches: fc.double({ min: 8, max: 60, noNaN: true }),
  rows: fc.double({ min: 8, max: 80, noNaN: true }),
});
const mm = fc.integer({ min: 1, max: 1500 });

const change = (project: ProjectAt, to: Partial<Piece>): ProjectAt =>
  afterChange(project, changePiece(project, 'piece-size', to));

/** What the lengths of a project are given for: so many are chosen by the bits of a number. */
interface Wanted {
  readonly bits: number;
  readonly lengths: readonly number[];
}
const wanted: fc.Arbitrary<Wanted> = fc.record({
  bits: fc.nat(0xffff),
  lengths: fc.array(mm, { minLength: 16, maxLength: 16 }),
});

/** The project with some of its numbers given as lengths, as a person gives them: one after the other. */
function given(project: ProjectAt, { bits, lengths }: Wanted): ProjectAt {
  const isGiven = (at: number): boolean => ((bits >> at) & 1) === 1;
  const length = (at: number): number => lengths[at] as number;
  const give = (made: ProjectAt, of: keyof Lengths, at: number): ProjectAt =>
    isGiven(at) ? change(made, { lengths: withLength(made.piece.lengths, of, length(at)) }) : made;
  let made = give(project, 'hemRows', 0);
  made.piece.parts.forEach((part, index) => {
    if (!isGiven(1 + index)) return;
    const parts = made.piece.parts.with(index, sectionTaking(part, part.rows, length(1 + index)));
    made = change(made, { parts });
  });
  if (isGiven(4))
    made = change(made, { seamAllowance: seamTaking(made.piece.seamAllowance, 'left', 0, length(4) / 100) });
  return countsOf(made.piece.shape).reduce((so, { field }, index) => give(so, field, 5 + index), made);
}

/** Every count of a piece. */
function counts({ shape, hemRows, parts, seamAllowance: { left, right } }: Piece): number[] {
  return [hemRows, left, right, ...parts.map(({ rows }) => rows), ...countsOf(shape).map(({ value }) => value)];
}

describe('counts given as lengths', () => {
  it('are the same when a gauge was changed and is changed back, of the piece or of one of its parts', () => {
    fc.assert(
      fc.property(anyProject, wanted, anyGauge, fc.nat(4), (project, lengths, gauge, where) => {
        const before = given(project, lengths);
        const { piece } = before;
        const [there, back] = ((): [Partial<Piece>, (now: Piece) => Partial<Piece>] => {
          if (where === 0) return [{ hem: { ...piece.hem, gauge } }, () => ({ hem: piece.hem })];
          const part = piece.parts[where - 1];
          if (!part) return [{ gauge }, () => ({ gauge: piece.gauge })];
          const set = (now: Piece, own: Gauge | null) => ({
            parts: now.parts.map((one, at) => (at === where - 1 ? { ...one, gauge: own } : one)),
          });
          return [set(piece, gauge), (now) => set(now, part.gauge)];
        })();
        const after = change(before, there);
        expect(change(after, back(after.piece))).toEqual(before);
      }),
      { numRuns: 300 },
    );
  });

  it('leave those alone that were given as counts', () => {
    fc.assert(
      fc.property(anyProject, anyGauge, (project, gauge) => {
        const after = change(project, { gauge });
        expect(counts(after.piece)).toEqual(counts(project.piece));
        expect(sizesOf(after)).toEqual(sizesOf(project));
      }),
      { numRuns: 200 },
    );
  });

  it('are the nearest to their lengths at the gauge, whichever came first', () => {
    fc.assert(
      fc.property(anyProject, wanted, anyGauge, (project, lengths, gauge) => {
        const lengthsFirst = change(given(project, lengths), { gauge });
        const gaugeFirst = given(change(project, { gauge }), lengths);
        expect(counts(lengthsFirst.piece)).toEqual(counts(gaugeFirst.piece));
      }),
      { numRuns: 300 },
    );
  });

  it('follow in every size by one change, which is taken back whole', () => {
    fc.assert(
      fc.property(anyProject, wanted, anyGauge, mm, (project, lengths, gauge, wide) => {
        const larger = afterChange(
          given(project, lengths),
          addSize(given(project, lengths), 'larger', 'one more', 'one-more'),
        );
        const index = sizesOf(larger).findIndex(({ name }) => name === 'one more');
        const sized = afterChange(larger, changeSize(larger, index, { lengths: { stitches: wide } }));
        const elsewhere = inSize(sized, index === 0 ? 1 : index - 1);
        const to = changePiece(elsewhere, 'gauge', { gauge });
        const after = expectChangeLaws(elsewhere, to);
        const there = inSize(after, index);
        const own = inSize(sized, index);
        const directly = afterChange(own, changePiece(own, 'gauge', { gauge }));
        expect(counts(there.piece)).toEqual(counts(directly.piece));
        expect(afterChange(after, carriedOut(elsewhere.whole, to).inverse)).toEqual(elsewhere);
      }),
      { numRuns: 100 },
    );
  });
});
