/** Counts that were given as lengths, and what becomes of them when gauges change. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandsOf } from '@shared/pattern/index.ts';
import {
  countFor,
  countsOf,
  distanceBounds,
  heldLengths,
  keptAway,
  sectionTaking,
  seamTaking,
  withLength,
  type Gauge,
  type Lengths,
  type Piece,
} from '@shared/piece/index.ts';
import {
  addSize,
  currentSize,
  afterChange,
  carriedOut,
  changeOf,
  changePiece,
  changeSize,
  setPattern,
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
const count = fc.integer({ min: 0, max: 16 });

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
  made.piece.sections.forEach((part, index) => {
    if (!isGiven(1 + index)) return;
    const parts = made.piece.sections.with(index, sectionTaking(part, part.rows, length(1 + index)));
    made = change(made, { sections: parts });
  });
  if (isGiven(4))
    made = change(made, { seamAllowance: seamTaking(made.piece.seamAllowance, 'left', 0, length(4) / 100) });
  return countsOf(made.piece.shape).reduce((so, { field }, index) => give(so, field, 5 + index), made);
}

/** Any project in several sizes. */
const inSeveralSizes = anyProject.filter(({ sizes }) => sizes.length > 1);

/** The size that is looked at with some of its own numbers given as lengths, the sections in it alone. */
function givenInSize(project: ProjectAt, { bits, lengths }: Wanted): ProjectAt {
  const index = currentSize(project);
  const isGiven = (at: number): boolean => ((bits >> at) & 1) === 1;
  const fields = ['hemRows' as const, ...countsOf(project.piece.shape).map(({ field }) => field)];
  const own = Object.fromEntries(
    fields.flatMap((field, at) => (isGiven(at) ? [[field, lengths[at] as number]] : [])),
  ) as Lengths;
  const parts = project.piece.sections.map((part, at) =>
    isGiven(8 + at) ? sectionTaking(part, part.rows, lengths[8 + at] as number) : part,
  );
  return afterChange(project, changeSize(project, index, { lengths: own, sections: parts }));
}

/** Another gauge for the hem, for a section, or for the piece. */
function otherGauge(piece: Piece, gauge: Gauge, where: number): Partial<Piece> {
  if (where === 0) return { hem: { ...piece.hem, gauge } };
  const part = piece.sections[where - 1];
  return part ? { sections: piece.sections.with(where - 1, { ...part, gauge }) } : { gauge };
}

/** The counts of a size that were given as counts, by name. */
function countsWithoutLength(piece: Piece): [string, number][] {
  const { shape, hemRows, sections: parts, lengths } = piece;
  const all: [string, number, number | undefined][] = [
    ['hem', hemRows, lengths?.hemRows],
    ...parts.map(({ name, rows, lengthMm }): [string, number, number | undefined] => [name, rows, lengthMm]),
    ...countsOf(shape).map(({ field, value }): [string, number, number | undefined] => [
      field,
      value,
      lengths?.[field],
    ]),
  ];
  return all.flatMap(([name, count, mm]): [string, number][] => (mm === undefined ? [[name, count]] : []));
}

/** Every count of a piece. */
function counts({ shape, hemRows, sections: parts, seamAllowance: { left, right } }: Piece): number[] {
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
          const part = piece.sections[where - 1];
          if (!part) return [{ gauge }, () => ({ gauge: piece.gauge })];
          const set = (now: Piece, own: Gauge | null) => ({
            sections: now.sections.map((one, at) => (at === where - 1 ? { ...one, gauge: own } : one)),
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

  it('stay those lengths in every size, wherever one looks: hem and sections each at its own gauge', () => {
    fc.assert(
      fc.property(
        inSeveralSizes,
        fc.array(wanted, { minLength: 4, maxLength: 4 }),
        anyGauge,
        fc.nat(4),
        fc.nat(),
        (project, lengths, gauge, where, from) => {
          const before = project.sizes.reduce((made, _, index) => {
            const inOne = givenInSize(inSize(made, index), lengths[index] as Wanted);
            return inSize(inOne, currentSize(made));
          }, project);
          const looked = inSize(before, from % before.sizes.length);
          const to = changePiece(looked, 'gauge', otherGauge(looked.piece, gauge, where));
          const after = afterChange(looked, to);
          after.sizes.forEach((_, index) => {
            const [was, now] = [inSize(before, index).piece, inSize(after, index).piece];
            for (const of of ['shape', 'sections'] as const) {
              expect(heldLengths(now, of)).toEqual(heldLengths(was, of));
            }
            // What was given as a count is as it was.
            const kept = countsWithoutLength(was);
            expect(countsWithoutLength(now)).toEqual(kept);
          });
          expect(afterChange(after, carriedOut(looked.whole, to).inverse)).toEqual(looked);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('keep a band away from an edge in every size, by the rows that come nearest there', () => {
    fc.assert(
      fc.property(
        inSeveralSizes,
        fc.array(count, { minLength: 4, maxLength: 4 }),
        fc.record({ mm: fc.integer({ min: 1, max: 200 }), edge: fc.constantFrom('lower' as const, 'upper' as const) }),
        fc.tuple(anyGauge, fc.nat(4), fc.nat(), fc.nat()),
        (any, hems, { mm: lengthMm, edge }, [gauge, where, from, to]) => {
          fc.pre(bandsOf(any).length > 0);
          const project = any.sizes.reduce(
            (made, _, index) => afterChange(made, changeSize(made, index, { hemRows: hems[index] as number })),
            any,
          );
          const giving = inSize(project, from % project.sizes.length);
          const start = { kind: 'from-edge', edge, section: 'piece', rows: 0 } as const;
          const rows = countFor(lengthMm, distanceBounds(giving.piece, start));
          const position = keptAway(start, rows, lengthMm);
          const given = afterChange(giving, changeOf('first-row', setPattern(giving, 'band', 0, { position })));
          const looked = inSize(given, to % given.sizes.length);
          const after = expectChangeLaws(looked, changePiece(looked, 'gauge', otherGauge(looked.piece, gauge, where)));
          for (const project of [given, after]) {
            project.sizes.forEach((_, index) => {
              const there = inSize(project, index);
              const nearest = countFor(lengthMm, distanceBounds(there.piece, position));
              expect(bandsOf(there)[0]?.position).toEqual({ ...position, rows: nearest });
            });
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  it('follow in every size by one change, which is taken back whole', () => {
    fc.assert(
      fc.property(anyProject, wanted, anyGauge, mm, (project, lengths, gauge, wide) => {
        const larger = afterChange(
          given(project, lengths),
          addSize(given(project, lengths), currentSize(project) + 1, 'one more', 'one-more'),
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
