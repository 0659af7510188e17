/** Rows that are alike share their work; nobody can tell from what comes of it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { Stacks, type Strand, type StrandRows } from '@shared/check/stack.ts';
import { alikeRows } from '@shared/fabric/index.ts';
import type { Outline } from '@shared/piece/index.ts';
import { layStrands, type Laying } from '@shared/strands/index.ts';

/** Rows of three yarns, taken again and again from a few; some do not reach as far as others. */
const rowsArbitrary = fc.integer({ min: 1, max: 13 }).chain((width) =>
  fc
    .array(
      fc.record({
        cells: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: width, maxLength: width }),
        short: fc.nat({ max: 2 }),
      }),
      {
        minLength: 1,
        maxLength: 4,
      },
    )
    .chain((lines) =>
      fc
        .array(fc.nat({ max: lines.length - 1 }), { minLength: 1, maxLength: 30 })
        .map((order) => ({ width, rows: order.map((at) => lines[at] as (typeof lines)[number]) })),
    ),
);

function fabricOf({
  width,
  rows,
}: {
  readonly width: number;
  readonly rows: readonly { readonly cells: number[]; readonly short: number }[];
}) {
  const first = rows.map(({ short }) => Math.min(short, width - 1) - 5);
  const cells = rows.flatMap((row, at) =>
    row.cells.map((yarn, column) => (column < (first[at] as number) + 5 ? 255 : yarn)),
  );
  const outline: Outline = {
    rows: rows.length,
    first: Int32Array.from(first),
    last: Int32Array.from(rows, () => width - 6),
  };
  return { fabric: { first: -5, width, rows: rows.length, cells: Uint8Array.from(cells) }, outline };
}

describe('rows that are alike', () => {
  it('are those with the same cells, and the lowest of them is named', () => {
    fc.assert(
      fc.property(rowsArbitrary, (drawn) => {
        const { fabric } = fabricOf(drawn);
        const texts = drawn.rows.map((_, row) =>
          fabric.cells.subarray(row * fabric.width, (row + 1) * fabric.width).join(),
        );
        expect([...alikeRows(fabric)]).toEqual(texts.map((text) => texts.indexOf(text)));
      }),
    );
  });

  it('are laid as each would be alone, and counted each time', () => {
    fc.assert(
      fc.property(rowsArbitrary, fc.nat({ max: 30 }), fc.nat({ max: 30 }), (drawn, change, back) => {
        const { fabric, outline } = fabricOf(drawn);
        const [wide, narrow] = [
          { stitches: 20, rows: 28 },
          { stitches: 30, rows: 40 },
        ];
        const [lower, upper] = [Math.min(change, back), Math.max(change, back)];
        // Of one gauge, then of another, then of the first again.
        const gauges = [
          { first: 1, last: lower, gauge: wide },
          { first: lower + 1, last: upper, gauge: narrow },
          { first: upper + 1, last: Math.max(outline.rows, upper + 1), gauge: wide },
        ].filter(({ first, last }) => first <= last) as unknown as Laying['gauges'];
        const laying: Laying = {
          main: 0,
          outline,
          ownBalls: [],
          startSide: 'right',
          gauges,
          floatLimit: { stitches: 3, mm: 12 },
        };
        const laid = layStrands(fabric, laying);
        const sums = new Map<string, number>();
        const count = (key: string, many: number): void => void sums.set(key, (sums.get(key) ?? 0) + many);
        for (let at = 0; at < outline.rows; at++) {
          const gauge = (
            gauges.find(({ first, last }) => first <= at + 1 && at + 1 <= last) as Laying['gauges'][number]
          ).gauge;
          const alone = layStrands(
            { ...fabric, rows: 1, cells: fabric.cells.slice(at * fabric.width, (at + 1) * fabric.width) },
            {
              ...laying,
              startSide: at % 2 === 0 ? 'right' : 'left',
              gauges: [{ first: 1, last: 1, gauge }],
              outline: { rows: 1, first: outline.first.slice(at, at + 1), last: outline.last.slice(at, at + 1) },
            },
          );
          const { strands: runs, ...row } = laid.rows[at] as (typeof laid.rows)[number];
          const { strands: runsAlone, ...rowAlone } = alone.rows[0] as (typeof laid.rows)[number];
          expect(row).toEqual(rowAlone);
          expect(runs.map((run) => ({ ...run, strand: laid.strands[run.strand] }))).toEqual(
            runsAlone.map((run) => ({ ...run, strand: alone.strands[run.strand] })),
          );
          alone.strands.forEach(({ yarn }, index) => {
            const [totals] = alone.totals as [(typeof alone.totals)[number]];
            count(`${yarn} ${gauge.stitches} knits`, totals.stitches[index] as number);
            count(`${yarn} ${gauge.stitches} floats`, totals.floated[index] as number);
          });
          for (const { yarn } of laid.strands) {
            const index = laid.strands.findIndex((strand) => strand.yarn === yarn);
            const isKnitted = alone.strands.some(
              (strand, own) => strand.yarn === yarn && (alone.lastRow[own] as number) > 0,
            );
            if (isKnitted) {
              expect(laid.firstRow[index]).toBeLessThanOrEqual(at + 1);
              expect(laid.lastRow[index]).toBeGreaterThanOrEqual(at + 1);
            }
          }
        }
        for (const { gauge, stitches, floated } of laid.totals) {
          laid.strands.forEach(({ yarn }, index) => {
            expect(stitches[index]).toBe(sums.get(`${yarn} ${gauge.stitches} knits`) ?? 0);
            expect(floated[index]).toBe(sums.get(`${yarn} ${gauge.stitches} floats`) ?? 0);
          });
        }
      }),
    );
  });
});

describe('long strands one above the other', () => {
  it('are gathered as if each were held against every other', () => {
    const strand = fc.record({
      row: fc.integer({ min: 1, max: 8 }),
      up: fc.integer({ min: 1, max: 3 }),
      first: fc.nat({ max: 30 }),
      stitches: fc.integer({ min: 1, max: 9 }),
    });
    fc.assert(
      fc.property(fc.array(strand, { maxLength: 30 }), fc.boolean(), (drawn, isFromTheLeft) => {
        const items = drawn
          .map(({ row, up, first, stitches }): StrandRows & Strand => {
            const [next, last] = [row + up, first + stitches - 1];
            return { row, next, lastRow: row, first: first as Slot, last: last as Slot, stitches, mm: 5 * stitches };
          })
          .sort((a, b) => a.row - b.row || (isFromTheLeft ? a.first - b.first || a.last - b.last : 0));
        const stacks = new Stacks();
        for (const item of items) stacks.add(item, item, false);
        // Each goes by the number of the lowest it hangs together with, however far round.
        const group = items.map((_, at) => at);
        for (const [at, one] of items.entries()) {
          for (const [below, other] of items.slice(0, at).entries()) {
            if (other.next !== one.row || other.first > one.last || one.first > other.last) continue;
            const [kept, gone] = [
              Math.min(group[at] as number, group[below] as number),
              Math.max(group[at] as number, group[below] as number),
            ];
            group.forEach((of, index) => {
              if (of === gone) group[index] = kept;
            });
          }
        }
        const expected = [...new Set(group)].map((of) => {
          const all = items.filter((_, at) => group[at] === of);
          return [
            all.length,
            Math.min(...all.map(({ first }) => first)),
            Math.max(...all.map(({ last }) => last)),
            Math.min(...all.map(({ row }) => row)),
            Math.max(...all.map(({ lastRow }) => lastRow)),
            Math.max(...all.map(({ stitches }) => stitches)),
          ].join(' ');
        });
        const gathered = stacks
          .gathered()
          .map(({ count, needles, rows, longest }) => [count, needles.first, needles.last, ...rows, longest].join(' '));
        expect(gathered.sort()).toEqual(expected.sort());
      }),
    );
  });
});
