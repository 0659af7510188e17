/**
 * An order of colours up the rows is nothing but another drawing: what is
 * knitted in it is what is knitted of motifs that are drawn again by hand, row
 * by row, in the colours of their stripes, without an order.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Grid } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { allOversOf, type ColourOrder, type Pattern } from '@shared/pattern/index.ts';
import { makePlan, runningOrderOf, type Plan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import {
  addColourway,
  applyChange,
  inColourway,
  motifOf,
  pieceIn,
  projectAt,
  type ProjectAt,
} from '@shared/project/index.ts';
import { anyFilledProject } from './filled-projects.ts';
import { anyProject } from './projects.ts';
import { settled } from '../written-projects.ts';

const RED = { name: 'red', colour: '#aa2222', count: null, onHand: null };
const BLUE = { name: 'blue', colour: '#2222aa', count: null, onHand: null };

/** Stripes of some rows, in which any contrast is knitted in any other. */
const anyStripes = fc.record({
  stripes: fc.array(
    fc.record({ rows: fc.integer({ min: 1, max: 9 }), knitted: fc.array(fc.nat(9), { minLength: 5, maxLength: 5 }) }),
    { minLength: 1, maxLength: 5 },
  ),
  repeats: fc.boolean(),
});
type Stripes = typeof anyStripes extends fc.Arbitrary<infer Of> ? Of : never;

function orderOf({ stripes, repeats }: Stripes, { yarns, mainYarn }: ProjectAt): ColourOrder {
  const contrasts = [...yarns.keys()].filter((yarn) => yarn !== mainYarn);
  return {
    stripes: stripes.map(({ rows, knitted }) => ({
      rows,
      yarns: contrasts.map((drawn, at) => ({
        drawn,
        knitted: contrasts[(knitted[at] as number) % contrasts.length] as number,
      })),
    })),
    repeats,
  };
}

/** The yarn of a drawn cell in a row of the pattern, from 0: its stripe found by writing all rows down. */
function yarnIn({ stripes, repeats }: ColourOrder, row: number, drawn: number): number {
  const written = stripes.flatMap((stripe) => new Array<ColourOrder['stripes'][number]>(stripe.rows).fill(stripe));
  const stripe = row < written.length ? written[row] : repeats ? written[row % written.length] : undefined;
  return stripe?.yarns.find((one) => one.drawn === drawn)?.knitted ?? drawn;
}

function drawn(width: number, height: number, cell: (row: number, column: number) => number): Grid {
  const cells = Uint8Array.from({ length: width * height }, (_, at) => cell(Math.floor(at / width), at % width));
  return { width, height, cells };
}

/** The columns of a copy: the fewest that repeat at least twice, or all. */
function widthOfCopy({ width, cells }: Grid, unit: Pattern['unit']): number {
  for (let p = 1; unit === 'repeat' && p * 2 <= width; p++) {
    if (cells.every((cell, at) => (at % width) + p >= width || cell === cells[at + p])) return p;
  }
  return width;
}

/** The project with its motifs drawn again as `plan` has them on the rows, in their colours, and no order. */
function drawnAgain(project: ProjectAt, plan: Plan): ProjectAt {
  const motifs: Motif[] = [...project.motifs];
  const add = (like: Motif, grid: Grid): string => {
    const id = `again-${motifs.length}`;
    motifs.push({ ...like, id, name: id, grid });
    return id;
  };
  let allOver = 0;
  const patterns = project.patterns.map((pattern): Pattern => {
    const order = pattern.colourOrder as ColourOrder;
    if (pattern.kind === 'all-over') {
      const placed = allOversOf(plan)[allOver++] as ReturnType<typeof allOversOf<Plan['patterns'][number]>>[number];
      const motif = motifOf(project, pattern.motif);
      const { width, height } = placed.copy;
      const isTurned = (motif.shows === 'worn' && project.piece.finishedFace === 'knit') !== pattern.isMirrored;
      // Whole copies, so that those without figure on the rows that are knitted have some above them.
      const tiers = Math.ceil((placed.lastRow - placed.firstRow + 1) / height);
      const grid = drawn(width, tiers * height, (row, column) => {
        // Columns count from the left as drawn; each tier is moved to the right on the needles.
        const moved = Math.floor(row / height) * pattern.step * (isTurned ? -1 : 1);
        const from = (((column - moved) % width) + width) % width;
        return yarnIn(order, row, motif.grid.cells[(row % height) * motif.grid.width + from] as number);
      });
      return { ...pattern, motif: add(motif, grid), unit: 'whole', step: 0, colourOrder: null };
    }
    const lowest = Math.min(...pattern.groups.map(({ rise }) => rise));
    const groups = pattern.groups.map((group) => {
      const motif = motifOf(project, group.motif);
      const { width, height, cells } = motif.grid;
      const grid = drawn(widthOfCopy(motif.grid, pattern.unit), height * group.up, (row, column) =>
        yarnIn(order, group.rise - lowest + row, cells[(row % height) * width + column] as number),
      );
      return { ...group, motif: add(motif, grid), up: 1 };
    });
    return { ...pattern, groups, unit: 'whole', colourOrder: null };
  });
  return settled(project, { motifs, patterns });
}

/** What the hands do, without the names of the motifs, which are others. */
function handsOf(project: ProjectAt, plan: Plan): unknown {
  const order = runningOrderOf(pieceIn(project), plan);
  if (!order.isKnittable) return order;
  return order.order.map((step) => {
    if (step.kind === 'stretch') return step;
    const { id: _, acts, ...stop } = step;
    return { ...stop, acts: acts.filter(({ kind }) => kind !== 'first-needles') };
  });
}

function laid(project: ProjectAt, plan: Plan): unknown {
  const { fabric, rows, wrapStrands, yarn, ownBalls } = plan;
  return { cells: [...fabric.cells], rows, wrapStrands, yarn, ownBalls, hands: handsOf(project, plan) };
}

describe('an order of colours', () => {
  it.each([
    ['of bands', anyProject],
    ['of all-overs', anyFilledProject],
  ])('%s knits what motifs drawn again by hand do', (_, projects) => {
    let changed = 0;
    fc.assert(
      fc.property(projects, anyStripes, (given, stripes) => {
        // Which copies are left out is judged of one copy, and those drawn again are as high as all;
        // anchors are alike in all copies.
        const coloured = settled(given, { yarns: [...given.yarns, RED, BLUE] });
        const plain = settled(coloured, {
          patterns: coloured.patterns.map((pattern) => ({ ...pattern, cutCopies: 'kept' as const, anchors: null })),
        });
        const project = settled(plain, {
          patterns: plain.patterns.map((pattern) => ({ ...pattern, colourOrder: orderOf(stripes, plain) })),
        });
        const plan = outcome(() => makePlan(pieceIn(project)));
        fc.pre(plan.ok);
        if (!plan.ok) return;
        const again = drawnAgain(project, plan.value);
        expect(laid(project, plan.value)).toEqual(laid(again, makePlan(pieceIn(again))));
        const asDrawn = makePlan(pieceIn(plain)).fabric.cells;
        if (plan.value.fabric.cells.some((cell, at) => cell !== asDrawn[at])) changed++;
      }),
      { numRuns: 20, maxSkipsPerRun: 2000, seed: 3 },
    );
    expect(changed).toBeGreaterThan(6);
  });
});

describe('a colourway', () => {
  it('like the one that is knitted is knitted the same, and cells, strands and rows are the same in any', () => {
    fc.assert(
      fc.property(anyFilledProject, (project) => {
        const plan = outcome(() => makePlan(pieceIn(project)));
        fc.pre(plan.ok);
        if (!plan.ok) return;
        const { id } = project.whole.colourways[0] as { id: string };
        const more = applyChange(project.whole, addColourway(project.whole, id, 'storm', 'storm'));
        const planIn = (whole: ProjectAt['whole']): Plan => makePlan(pieceIn(projectAt(whole, project.at)));
        expect(planIn(inColourway(more, 'storm'))).toEqual(plan.value);
        const yarns = more.yarns.map((yarn) => ({
          ...yarn,
          colour: '#123456',
          count: { system: 'tex' as const, value: 100, plies: 1 },
        }));
        const other = planIn({ ...more, yarns });
        expect({ ...other, yarn: null }).toEqual({ ...plan.value, yarn: null });
      }),
      { numRuns: 12, maxSkipsPerRun: 2000, seed: 5 },
    );
  });
});
