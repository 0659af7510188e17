/** Bands and all-overs: whichever lays copies, they are cut, knitted, set and named by one path. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import type { ClippedCopy, Clipping, PlacedAllOver, PlacedGroup } from '@shared/fabric/index.ts';
import { allOversOf, bandsOf, type AllOver, type Pattern } from '@shared/pattern/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import {
  afterChange,
  changeOf,
  pieceIn,
  removePattern,
  setPattern,
  startAllOver,
  startBand,
  type ProjectAt,
} from '@shared/project/index.ts';
import { onRows, fileTextOf, settled } from '../../written-projects.ts';
import { orderOf } from '../running-order/order-lines.ts';
import { projectWith } from './pieces.ts';

const planOf = (project: ProjectAt): Plan => makePlan(pieceIn(project));

/** A motif with some figure, copies of it from edge to edge of the first row, and edges that come inwards further up. */
const anyLaid = fc
  .record({
    width: fc.integer({ min: 2, max: 5 }),
    height: fc.integer({ min: 1, max: 4 }),
    cells: fc.array(fc.constantFrom('.', 'X'), { minLength: 20, maxLength: 20 }),
    across: fc.integer({ min: 2, max: 5 }),
    up: fc.integer({ min: 1, max: 4 }),
    inwards: fc.array(fc.constantFrom(0, 0, -1), { minLength: 8, maxLength: 8 }),
    cutCopies: fc.constantFrom('kept' as const, 'kept-if-read' as const, 'left-out' as const),
  })
  .map(({ width, height, cells, across, up, inwards, cutCopies }) => {
    const motif = Array.from({ length: height }, (_, row) => cells.slice(row * width, (row + 1) * width).join(''));
    motif[0] = `X${(motif[0] as string).slice(1)}`;
    const rows = height * up;
    const steps = Array.from({ length: rows - 1 }, (_, at) => ({
      row: at + 2,
      left: inwards[at % 4] as number,
      right: inwards[4 + (at % 4)] as number,
    })).filter(({ left, right }) => left !== 0 || right !== 0);
    const stitches = width * across;
    // Half of the stitches stay, so that the piece ends nowhere.
    const shape = { kind: 'steps', stitches, rows, steps: steps.slice(0, Math.floor(stitches / 4)) } as const;
    const band = projectWith({
      motif,
      copies: [across],
      stitches,
      rows,
      group: { up },
      piece: { shape },
      band: { unit: 'whole', position: { kind: 'from-row', row: 1 }, cutCopies, rule: { kind: 'even' } },
    });
    return { band, width, cutCopies };
  });

/** Copies all over that lie as those of the band do. */
function alike({ band, width, cutCopies }: { band: ProjectAt; width: number; cutCopies: AllOver['cutCopies'] }) {
  const allOver = { ...startAllOver('motif', 1), unit: 'whole' as const, endNeedles: false, cutCopies };
  const first = (bandsOf(planOf(band))[0]?.groups[0] as PlacedGroup).block.first;
  const origin = (allOversOf(planOf({ ...band, patterns: [allOver] }))[0] as PlacedAllOver).origin;
  const shift = (((first - origin) % width) + width) % width;
  return { ...band, patterns: [{ ...allOver, shift }] };
}

/** What is clipped, by the needle that a copy begins on; a copy of which nothing is left counts in a group alone. */
function clippingOf({ whole, clipped, leftOut }: Clipping, first: Slot, width: number): object {
  const told = (copies: readonly ClippedCopy[]): object[] =>
    copies
      .filter(({ lost, figure }) => lost < figure)
      .map(({ tier, place, lost, rows }) => ({ tier, needle: first + place * width, lost, rows }));
  return { whole, clipped: told(clipped), leftOut: told(leftOut) };
}

describe('copies of a band and of an all-over that lie alike', () => {
  it('are cut alike and knit the same fabric', () => {
    const seen = { clipped: 0, leftOut: 0 };
    fc.assert(
      fc.property(anyLaid, (laid) => {
        const [grouped, tiled] = [planOf(laid.band), planOf(alike(laid))];
        const group = grouped.groups[0] as PlacedGroup;
        const [allOver] = allOversOf(tiled) as [PlacedAllOver];
        expect(tiled.fabric).toEqual(grouped.fabric);
        expect(clippingOf(allOver, allOver.origin, laid.width)).toEqual(
          clippingOf(group, group.block.first, laid.width),
        );
        seen.clipped += group.clipped.length;
        seen.leftOut += group.leftOut.length;
      }),
    );
    expect(seen.clipped).toBeGreaterThan(20);
    expect(seen.leftOut).toBeGreaterThan(20);
  });
});

describe('an all-over that was laid before a band', () => {
  const band = { unit: 'whole', position: { kind: 'from-row', row: 8 } } as const;
  const plain = projectWith({ motif: ['X.', '.X'], copies: [2], stitches: 12, rows: 12, band });
  const below = { ...startAllOver('motif', 3), position: onRows(3, 6) };
  const project = settled(plain, { patterns: [below, ...plain.patterns] });

  it('stands first in the project, in its file, in what is knitted and on the piece', () => {
    const kinds = ['all-over', 'band'];
    const file = JSON.parse(fileTextOf(project)) as { pieces: { patterns: { kind: string }[] }[] };
    for (const patterns of [
      project.patterns,
      file.pieces[0]?.patterns ?? [],
      pieceIn(project).patterns,
      planOf(project).patterns,
    ]) {
      expect(patterns.map(({ kind }) => kind)).toEqual(kinds);
    }
  });

  it('is counted by itself, as bands are', () => {
    expect(planOf(project).patterns.map(({ kind, number }) => [kind, number])).toEqual([
      ['all-over', 0],
      ['band', 0],
    ]);
  });

  it('is set before the band, or together with it where they share rows', () => {
    const set = (patterns: readonly Pattern[]): object[] =>
      orderOf({ ...project, patterns }).flatMap((item) =>
        item.kind === 'stop' ? item.acts.flatMap((act) => (act.kind === 'first-needles' ? [act.patterns] : [])) : [],
      );
    const [allOver, first] = [
      { kind: 'all-over', number: 0 },
      { kind: 'band', number: 0 },
    ];
    expect(set(project.patterns)).toEqual([[allOver], [first]]);
    // Of 12 stitches the band has the 4 at the left, and the all-over the 4 at the right.
    const atLeft = { ...startBand('motif', [2]), ...band, rule: { kind: 'by-hand' as const, first: [-6 as Slot] } };
    expect(set([{ ...below, position: onRows(3, 9), border: { left: 8, right: 0 } }, atLeft])).toEqual([
      [allOver, first],
    ]);
  });

  it('is left alone by what changes the band, and goes by itself', () => {
    const moved = changeOf('judge', setPattern(project, 'band', 0, { judge: 'blocks' }));
    expect(afterChange(project, moved).patterns).toEqual([
      project.patterns[0],
      { ...project.patterns[1], judge: 'blocks' },
    ]);
    const gone = changeOf('remove-all-over', removePattern(project, 'all-over', 0));
    expect(afterChange(project, gone).patterns).toEqual([project.patterns[1]]);
    expect(() => setPattern(project, 'band', 1, { judge: 'blocks' })).toThrow(RangeError);
  });
});
