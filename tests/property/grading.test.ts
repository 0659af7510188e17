/** Sizes proposed from two others, whatever the two are. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST_STITCHES } from '@shared/bed/index.ts';
import {
  countsOf,
  graded,
  MOST_PIECE_ROWS,
  SHAPE_KINDS,
  type Grade,
  type Piece,
  type Shape,
} from '@shared/piece/index.ts';
import { addSize, START_PIECE } from '@shared/project/index.ts';
import { expectChangeLaws } from './change-laws.ts';
import { anyProject } from './projects.ts';

const RUNS = { numRuns: 300, seed: 1402 };
const count = (least: number, most: number) => fc.integer({ min: least, max: most });

/** Numbers of one size of a piece: stitches, parts up the piece, and rows above all of them. */
const numbers = fc.record({
  stitches: fc.tuple(count(1, 300), count(1, 300), count(1, 300)),
  up: fc.tuple(count(0, 60), count(0, 60)),
  hemRows: count(0, 40),
  sections: fc.tuple(count(1, 30), count(1, 30)),
  more: count(1, 200),
});
type Numbers = typeof numbers extends fc.Arbitrary<infer T> ? T : never;

function pieceOf(kind: Exclude<Shape['kind'], 'steps'>, { stitches, up, hemRows, sections, more }: Numbers): Piece {
  const [one, two, three] = stitches;
  const rows = Math.max(up[0] + up[1], hemRows + sections[0] + sections[1]) + more;
  const shape: Shape = {
    rectangle: { kind: 'rectangle', stitches: one, rows } as const,
    tapered: { kind: 'tapered', stitches: one, stitchesAtTop: two, rows, straightRows: up[0] } as const,
    body: {
      kind: 'body',
      stitches: one,
      stitchesAtWaist: two,
      stitchesAtChest: three,
      rowsToWaist: up[0],
      rowsToChest: up[1],
      rows,
    } as const,
  }[kind];
  const parts = sections.map((own, index) => ({
    name: `section ${index}`,
    rows: own,
    isLined: false,
    gauge: null,
    tension: '',
  }));
  return { ...START_PIECE, shape, hemRows, sections: parts };
}

const twoSizes = fc
  .tuple(fc.constantFrom('rectangle' as const, 'tapered' as const, 'body' as const), numbers, numbers)
  .map(([kind, one, other]) => [pieceOf(kind, one), pieceOf(kind, other)] as const);

/** Every count, by a name that both sizes have. */
function countsIn({ shape, hemRows, sections: parts }: Piece): Map<string, number> {
  return new Map([
    ['hem', hemRows],
    ...parts.map(({ name, rows }): [string, number] => [name, rows]),
    ...countsOf(shape).map(({ field, value }): [string, number] => [field, value]),
  ]);
}

/** True where the parts of a piece find room in its rows. */
function fits({ shape, hemRows, sections: parts }: Piece): boolean {
  const up = shape.kind === 'body' ? shape.rowsToWaist + shape.rowsToChest : 0;
  const straight = shape.kind === 'tapered' ? shape.straightRows : 0;
  const sections = parts.reduce((sum, { rows }) => sum + rows, hemRows);
  return Math.max(up, straight, sections) <= shape.rows;
}

describe('a size proposed between two', () => {
  it('has every number between theirs, and its parts find room in it', () => {
    fc.assert(
      fc.property(twoSizes, ([smaller, larger]) => {
        const between = graded(smaller, larger, 'between');
        const [low, high] = [countsIn(smaller), countsIn(larger)];
        for (const [name, value] of countsIn(between)) {
          const ends = [low.get(name) as number, high.get(name) as number];
          expect(value, name).toBeGreaterThanOrEqual(Math.min(...ends));
          expect(value, name).toBeLessThanOrEqual(Math.max(...ends));
        }
        expect(fits(between)).toBe(true);
      }),
      RUNS,
    );
  });
});

describe('a size proposed beyond two', () => {
  it('goes on by their difference, as far as a piece can go, and its parts find room in it', () => {
    fc.assert(
      fc.property(twoSizes, fc.boolean(), ([one, other], isAbove) => {
        // Once beyond the larger, once beyond the smaller: the two change places.
        const [back, last] = isAbove ? [one, other] : [other, one];
        const beyond = graded(one, other, isAbove ? 'above' : 'below');
        const [from, to] = [countsIn(back), countsIn(last)];
        expect(fits(beyond)).toBe(true);
        for (const [name, value] of countsIn(beyond)) {
          const line = 2 * (to.get(name) as number) - (from.get(name) as number);
          const isRows = name === 'rows';
          const least = name === 'straightRows' || isRows || !/^(hem|rowsTo)/.test(name) ? 1 : 0;
          const most = /^stitches/.test(name) ? MOST_STITCHES : MOST_PIECE_ROWS;
          const wanted = Math.min(most, Math.max(least, line));
          // A piece is as long as its parts at least.
          if (isRows) expect(value).toBeGreaterThanOrEqual(wanted);
          else expect(value, name).toBe(wanted);
        }
      }),
      RUNS,
    );
  });
});

/** Two sizes of which the other is as large or larger in everything. */
const growing = fc
  .tuple(fc.constantFrom('rectangle' as const, 'tapered' as const, 'body' as const), numbers, numbers)
  .map(([kind, one, by]) => {
    const [first, second, third] = one.stitches;
    const other: Numbers = {
      stitches: [first + by.stitches[0], second + by.stitches[1], third + by.stitches[2]],
      up: [one.up[0] + by.up[0], one.up[1] + by.up[1]],
      hemRows: one.hemRows + by.hemRows,
      sections: [one.sections[0] + by.sections[0], one.sections[1] + by.sections[1]],
      more: one.more + by.more,
    };
    return [pieceOf(kind, one), pieceOf(kind, other)] as const;
  });

describe('sizes that grow', () => {
  it('go on growing: below, smaller, between, larger, above', () => {
    fc.assert(
      fc.property(growing, ([one, other]) => {
        const [low, high] = [countsIn(one), countsIn(other)];
        const ordered = (['below', 'between', 'above'] as const satisfies Grade[]).map((at) =>
          countsIn(graded(one, other, at)),
        );
        const [below, between, above] = ordered as [typeof low, typeof low, typeof low];
        for (const name of low.keys()) {
          const values = [below, low, between, high, above].map((of) => of.get(name) as number);
          expect(values, name).toEqual(values.toSorted((a, b) => a - b));
        }
      }),
      RUNS,
    );
  });
});

describe('a size added to any project', () => {
  it('is one that a file can hold, of the kinds of shapes that there are, taken back by one step', () => {
    fc.assert(
      fc.property(anyProject, fc.nat(), (project, place) => {
        const at = place % (project.sizes.length + 1);
        const after = expectChangeLaws(project, addSize(project, at, 'one more', 'one-more'));
        expect(after.sizes.map(({ name }) => name)).toEqual(
          project.sizes.map(({ name }) => name).toSpliced(at, 0, 'one more'),
        );
        expect(SHAPE_KINDS).toContain(after.whole.pieces[0]?.perSize[at]?.shape.kind);
      }),
      RUNS,
    );
  });
});
