/** Laws of the purl side of any piece, worked from the cells and the plan's own counts. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { carriageSide } from '@shared/bed/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { floatLengthsOf, purlSideOf } from '@shared/plan/purl-side/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import { cellAt } from './needle-by-needle.ts';
import type { Float } from '@shared/strands/index.ts';
import { anyProject } from './projects.ts';

/** The most needles in a row of a float that do not hold it, counted one by one. */
function loose({ first, last, held }: Float): number {
  let [most, run] = [0, 0];
  for (let needle: number = first; needle <= last; needle++) {
    run = held.some((each) => each === needle) ? 0 : run + 1;
    most = Math.max(most, run);
  }
  return most;
}

describe('the purl side', () => {
  it('has every float and carry of the plan once, each between stitches of its yarn, and as many starts as ends', () => {
    let carried = 0;
    fc.assert(
      fc.property(anyProject, (project) => {
        const made = outcome(() => makePlan(pieceIn(project)));
        fc.pre(made.ok);
        const plan = made.value;
        const side = purlSideOf(plan, project.mainYarn);
        const tails = new Map<number, { start: number; end: number }>();
        let ways = 0;
        for (const { row, floats, wraps } of plan.rows) {
          const lying = side.row(row);
          expect(new Set(lying.floats)).toEqual(new Set(floats));
          expect(lying.floats).toHaveLength(floats.length);
          expect(lying.wraps.map(({ needle, edge }) => ({ needle, edge }))).toEqual(
            wraps.map(({ needle, edge }) => ({ needle, edge })),
          );
          // Of one strand the floats stand together, from left to right.
          const strands = lying.floats.map(({ strand }) => strand);
          expect(strands.filter((strand, at) => strand !== strands[at - 1])).toHaveLength(new Set(strands).size);
          for (const { yarn, from, to, turnsAt, entersAt } of lying.carries) {
            ways++;
            expect(to.row).toBe(row);
            expect(row - from.row).toBeLessThanOrEqual(side.reach);
            expect(entersAt).toBe(carriageSide(row, project.piece.startSide));
            expect(turnsAt).not.toBe(carriageSide(from.row, project.piece.startSide));
            // Main lies from edge to edge, whatever the edge needle knits.
            if (yarn !== project.mainYarn) {
              expect([cellAt(plan, from.row, from.needle), cellAt(plan, to.row, to.needle)]).toEqual([yarn, yarn]);
            }
            const planned = plan.rows[from.row - 1]?.carries.filter(
              ({ strand, toRow, stitches }) =>
                strand.yarn === yarn && toRow === row && stitches === Math.abs(to.needle - from.needle),
            );
            expect(planned?.length).toBeGreaterThan(0);
          }
          for (const { yarn, at } of lying.ends) {
            const of = tails.get(yarn) ?? { start: 0, end: 0 };
            of[at]++;
            tails.set(yarn, of);
          }
        }
        expect(ways).toBe(plan.rows.reduce((sum, { carries }) => sum + carries.length, 0));
        for (const { start, end } of tails.values()) expect(start).toBe(end);
        carried += ways;

        const lengths = floatLengthsOf(plan, project.piece.floatLimit);
        const all = plan.rows.flatMap(({ floats }) => floats);
        for (const { from, to, open, covered } of lengths.bars) {
          expect(open + covered).toBe(all.filter((float) => loose(float) >= from && loose(float) <= to).length);
        }
        expect(lengths.over.open + lengths.over.covered).toBe(all.filter(({ isOver }) => isOver).length);
        expect(lengths.held).toBe(all.filter(({ held }) => held.length > 0).length);
      }),
      { numRuns: 100, maxSkipsPerRun: 2000 },
    );
    expect(carried).toBeGreaterThan(100);
  });
});
