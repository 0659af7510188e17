/** What holds of the anchors on the fabric of any piece: bands, all-overs, shaped, clipped, with balls of their own. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { chartCellAt } from '@shared/anchors/index.ts';
import { OUTSIDE, tierOf, type PlacedCopies } from '@shared/fabric/index.ts';
import { copiesIn, copiesOf, type AnchorWish } from '@shared/pattern/index.ts';
import { figureRuns, makePlan, type Plan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { pieceIn, projectAt, projectFromText, projectToText, type ProjectAt } from '@shared/project/index.ts';
import { anyAnchoredProject, wishing } from './anchored-projects.ts';

interface Anchored {
  readonly project: ProjectAt;
  readonly wish: AnchorWish;
  readonly plan: Plan;
  /** Without the wish. */
  readonly plain: Plan;
}

function always(law: (anchored: Anchored) => void, numRuns = 80): void {
  fc.assert(
    fc.property(anyAnchoredProject, ({ project, wish }) => {
      const plan = outcome(() => makePlan(pieceIn(project)));
      if (!plan.ok) {
        expect(plan.problem.code).not.toBe('unexpected');
        fc.pre(false);
        return;
      }
      law({ project, wish, plan: plan.value, plain: makePlan(pieceIn(wishing(project, null))) });
    }),
    { numRuns, maxSkipsPerRun: 2000 },
  );
}

function yarnAt({ fabric }: Plan, row: number, needle: number): number {
  const column = needle - fabric.first;
  if (row < 1 || row > fabric.rows || column < 0 || column >= fabric.width) return OUTSIDE;
  return fabric.cells[(row - 1) * fabric.width + column] as number;
}

/** Whether a needle is figure: contrast that does more than bind in. */
function isFigure(plain: Plan, row: number, needle: number): boolean {
  const line = plain.rows[row - 1];
  return line !== undefined && figureRuns(line).some(({ first, last }) => needle >= first && needle <= last);
}

function rowsOfPatterns(plan: Plan): Set<number> {
  const rows = new Set<number>();
  for (const { firstRow, lastRow } of plan.patterns) for (let row = firstRow; row <= lastRow; row++) rows.add(row);
  return rows;
}

function anchorsOf(plan: Plan): { row: number; needle: Slot }[] {
  return plan.rows.flatMap(({ row, anchors }) => anchors.map((needle) => ({ row, needle })));
}

describe('anchors on the fabric', () => {
  it('are all that is knitted otherwise, each in the yarn of a float that it breaks', () => {
    always(({ plan, plain }) => {
      const anchors = new Set(anchorsOf(plan).map(({ row, needle }) => `${row} ${needle}`));
      const faults: string[] = [];
      for (const { row, edges, floats } of plain.rows) {
        for (let needle: number = edges.first; needle <= edges.last; needle++) {
          const yarn = yarnAt(plan, row, needle);
          const isOther = yarn !== yarnAt(plain, row, needle);
          const breaks = (): boolean =>
            floats.some(({ strand, first, last }) => strand.yarn === yarn && first <= needle && needle <= last);
          if (anchors.has(`${row} ${needle}`) ? !isOther || !breaks() : isOther) faults.push(`${row} ${needle}`);
        }
      }
      expect(faults).toEqual([]);
    }, 60);
  });

  it('are never stacked, nor on the outline of the figure or next to it', () => {
    always(({ project, plan, plain }) => {
      const anchors = anchorsOf(plan);
      const known = new Set(anchors.map(({ row, needle }) => `${row} ${needle}`));
      for (const { row, needle } of anchors) {
        expect(known.has(`${row + 1} ${needle}`)).toBe(false);
        const isOfMain = yarnAt(plan, row, needle) === project.mainYarn;
        const far = isOfMain ? 2 : 1;
        const around: number[] = [];
        for (let r = row - far; r <= row + far; r++) {
          for (let n = needle - far; n <= needle + far; n++) {
            if (yarnAt(plain, r, n) === OUTSIDE) continue;
            around.push(isOfMain ? yarnAt(plain, r, n) : Number(isFigure(plain, r, n)));
          }
        }
        expect(around).not.toContain(isOfMain ? project.mainYarn : 1);
      }
    });
  });

  it('leave no float over the limit but those that are said to be left', () => {
    always(({ project, wish, plan }) => {
      const rows = rowsOfPatterns(plan);
      const long = plan.rows.flatMap(({ row, floats }) =>
        floats.flatMap(({ strand, first, last, stitches }) => {
          const isAsked = strand.yarn !== project.mainYarn || wish.isBehindFigure;
          return rows.has(row) && isAsked && stitches > wish.longest ? [`${row} ${strand.yarn} ${first} ${last}`] : [];
        }),
      );
      const said = plan.looseFloats.flatMap((floats, at) =>
        (floats ?? []).map(({ yarn, first, last }) => `${at + 1} ${yarn} ${first} ${last}`),
      );
      expect(said.sort()).toEqual(long.sort());
    });
  });

  it('are alike in all copies that have a float whole inside', () => {
    always(({ wish, plan, plain }) => {
      const known = new Set(anchorsOf(plan).map(({ row, needle }) => `${row} ${needle}`));
      plan.patterns.forEach((pattern) => {
        /** By motif, row of the chart and float: the cells of the chart with an anchor. */
        const seen = new Map<string, string>();
        for (const place of copiesOf(pattern) as readonly PlacedCopies[]) {
          // Next to the edges of the copies other figure may stand in the way.
          for (let row = place.firstRow + 2; row <= place.lastRow - 2; row++) {
            for (const { strand, first, last, stitches } of plain.rows[row - 1]?.floats ?? []) {
              if (stitches <= wish.longest || strand.role === 'main' || place.copy.height === 1) continue;
              const { origin, copyRow } = tierOf(place, row);
              const at = Math.floor((first - 1 - origin) / place.copy.width);
              const isInside = at === Math.floor((last + 1 - origin) / place.copy.width);
              if (!isInside || !isFigure(plain, row, first - 1) || !isFigure(plain, row, last + 1)) continue;
              const [from, to] = [place.block?.first ?? -Infinity, place.block?.last ?? Infinity];
              if (first <= from || last >= to) continue;
              const cells: number[] = [];
              const columns: number[] = [];
              for (let needle = first - 1; needle <= last + 1; needle++) {
                const cell = chartCellAt(pattern, plan.outline, row, needle as Slot);
                columns.push(cell?.column ?? NaN);
                if (known.has(`${row} ${needle}`)) cells.push(cell?.column ?? NaN);
              }
              const key = `${place.motif} ${copyRow} ${strand.yarn} ${columns.sort((a, b) => a - b).join()}`;
              const before = seen.get(key);
              const now = cells.sort((a, b) => a - b).join();
              if (before === undefined) seen.set(key, now);
              else expect(now).toBe(before);
            }
          }
        }
      });
    });
  });

  it('are never more with a looser limit where nothing is left loose', () => {
    always(({ project, wish, plan }) => {
      if (plan.looseFloats.some((floats) => floats !== undefined) || wish.longest > 8) return;
      let before = anchorsOf(plan).length;
      for (const looser of [1, 2, 4]) {
        const next = wishing(project, { ...wish, longest: wish.longest + looser });
        const many = anchorsOf(makePlan(pieceIn(next))).length;
        expect(many).toBeLessThanOrEqual(before);
        before = many;
      }
    });
  });

  it('are none with a limit that no float reaches', () => {
    always(({ project, plain }) => {
      const plan = makePlan(pieceIn(wishing(project, { longest: 1000, isBehindFigure: true, byHand: [] })));
      expect(anchorsOf(plan)).toEqual([]);
      expect(plan.looseFloats.some((floats) => floats !== undefined)).toBe(false);
      expect(plan.fabric).toEqual(plain.fabric);
    }, 40);
  });

  it('are none on cells that a person forbids', () => {
    always(({ wish, plan }) => {
      for (const { row, needle } of anchorsOf(plan)) {
        const forbidden = plan.patterns.filter(({ firstRow, lastRow }) => row >= firstRow && row <= lastRow);
        const [only] = forbidden;
        if (forbidden.length !== 1 || !only) continue;
        const cell = chartCellAt(only, plan.outline, row, needle);
        const said = wish.byHand.filter(
          ({ motif, column, row: r }) => motif === cell?.motif && column === cell.column && r === cell.row,
        );
        // What is said first counts.
        expect(said[0]?.is).not.toBe('never');
      }
    });
  });

  it('come back from a file as they were wished for', () => {
    fc.assert(
      fc.property(anyAnchoredProject, ({ project }) => {
        const { whole, at } = project;
        expect(projectAt(projectFromText(projectToText(whole)), at).patterns).toEqual(project.patterns);
      }),
      { numRuns: 60 },
    );
  });

  it('are found in most projects at random', () => {
    let [many, some] = [0, 0];
    always(({ plan }) => {
      many++;
      if (anchorsOf(plan).length > 0) some++;
      expect(copiesIn(plan).length).toBeGreaterThan(0);
    });
    expect(some).toBeGreaterThan(many / 8);
  });
});
