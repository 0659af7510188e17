/** What the edges leave of the copies of an all-over, each stitch of each copy looked at by itself. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { allOversOf } from '@shared/pattern/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { pieceIn, projectAt, sampleProject, startAllOver, START_PIECE, type ProjectAt } from '@shared/project/index.ts';
import { settled } from '../written-projects.ts';
import { count } from './projects.ts';

/** Several tiers, many of which lie between the same edges, and some that do not. */
const anyAllOver: fc.Arbitrary<ProjectAt> = fc
  .record({
    width: count(2, 7),
    height: count(2, 5),
    stitches: count(12, 24),
    rows: count(20, 40),
    narrowed: fc.constantFrom(0, 4, 8),
    straightRows: count(0, 12),
    step: fc.constantFrom(0, 0, 1, 3),
    border: count(0, 2),
    cells: fc.infiniteStream(fc.nat({ max: 2 })),
    cutCopies: fc.constantFrom('kept' as const, 'left-out' as const, 'kept-if-read' as const),
  })
  .map(({ width, height, stitches, rows, narrowed, straightRows, step, border, cells, cutCopies }) => {
    const sample = projectAt(sampleProject());
    const [motif] = sample.motifs;
    if (!motif) throw new Error('The sample has a motif');
    const drawn = Uint8Array.from({ length: width * height }, () => (cells.next().value === 0 ? 1 : 0));
    drawn[0] = 1;
    return settled(sample, {
      motifs: [{ ...motif, grid: { width, height, cells: drawn } }],
      piece: {
        ...START_PIECE,
        shape: { kind: 'tapered', stitches, stitchesAtTop: stitches - narrowed, straightRows, rows } as const,
      },
      patterns: [{ ...startAllOver(motif.id, 1), step, border: { left: border, right: border }, cutCopies }],
    });
  });

it('Copies are told as clipped by just the stitches of figure that no needle knits', () => {
  const seen = { alike: 0, clipped: 0, whole: 0 };
  fc.assert(
    fc.property(anyAllOver, (project) => {
      const plan = outcome(() => makePlan(pieceIn(project)));
      if (!plan.ok) return;
      const { outline, patterns } = plan.value;
      for (const { copy, ground, origin, step, border, firstRow, lastRow, ...found } of allOversOf({ patterns })) {
        const { width, height, cells } = copy;
        const figure = [...cells.keys()].filter((at) => cells[at] !== ground);
        const [leftmost, rightmost] = [Math.min(...outline.first), Math.max(...outline.last)];
        const expected = [];
        let whole = 0;
        for (let tier = 0; firstRow + tier * height <= lastRow; tier++) {
          // All that can have a needle on the piece, and one more at each side.
          const placeOf = (needle: number): number => Math.floor((needle - origin - tier * step) / width);
          for (let place = placeOf(leftmost) - 1; place <= placeOf(rightmost) + 1; place++) {
            const rows: number[] = [];
            for (const at of figure) {
              const row = firstRow + tier * height + Math.floor(at / width);
              const needle = origin + tier * step + place * width + (at % width);
              const isKnitted =
                row <= lastRow &&
                needle >= (outline.first[row - 1] as number) + border.left &&
                needle <= (outline.last[row - 1] as number) - border.right;
              if (!isKnitted) rows.push(Math.min(row, lastRow));
            }
            if (rows.length === 0) whole++;
            else if (rows.length < figure.length) {
              const ends = [Math.min(...rows), Math.max(...rows)];
              expected.push({ tier, place, lost: rows.length, figure: figure.length, rows: ends });
            }
          }
        }
        const told = [...found.clipped, ...found.leftOut].sort((a, b) => a.tier - b.tier || a.place - b.place);
        expect(told).toEqual(expected);
        expect(found.whole).toBe(whole);
        seen.clipped += told.length;
        seen.whole += whole;
        if (step === 0 && told.some(({ tier }) => tier > 1)) seen.alike++;
      }
    }),
    { numRuns: 600 },
  );
  expect(seen.alike).toBeGreaterThan(30);
  expect(Math.min(seen.clipped, seen.whole)).toBeGreaterThan(300);
});
