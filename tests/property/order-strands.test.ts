/** The running order cuts what the plan cuts, and takes up and works in the wrapping strands that the plan counts. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planFor, runningOrderOf, type Act, type Plan, type RunningOrder } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { anyKnittable } from '../knit/projects.ts';

interface Done {
  readonly reading: number;
  readonly act: Act;
}

interface Ordered {
  readonly plan: Plan;
  readonly acts: readonly Done[];
}

/** Null for a piece that cannot be planned, or knitted as told. */
function orderedOf(project: ProjectAt): Ordered | null {
  const piece = pieceIn(project);
  const made = planFor(piece);
  if (!made.ok) return null;
  const outcome = runningOrderOf(piece, made.value);
  return outcome.isKnittable ? { plan: made.value, acts: actsOf(outcome.order) } : null;
}

function actsOf(order: RunningOrder): Done[] {
  return order.flatMap((item) =>
    item.kind === 'stop' ? item.acts.map((act) => ({ reading: item.counter, act })) : [],
  );
}

const cutAfter = (yarn: number, row: number): string => `yarn ${yarn} after row ${row}`;

/** Each time a yarn is cut, out of its feeder or at its ball. */
function cutsInOrder({ acts }: Ordered): string[] {
  return acts
    .flatMap(({ reading, act }) =>
      act.kind === 'cut' || (act.kind === 'unthread' && act.waitsAt === 'cut') ? [cutAfter(act.yarn, reading)] : [],
    )
    .sort();
}

/** Every strand is cut where its next row is too far up to be carried to, and after the last row that it knits, needle by needle. */
function cutsInPlan({ plan: { rows, ownBalls } }: Ordered, main: number): string[] {
  const lastRows = new Map<string, { readonly yarn: number; readonly row: number }>();
  for (const { row, contrast, isMainKnitted } of rows) {
    if (isMainKnitted) lastRows.set('main', { yarn: main, row });
    for (const { first, last, yarn } of contrast) {
      for (let needle: number = first; needle <= last; needle++) {
        const own = ownBalls.find(
          (ball) => ball.firstRow <= row && row <= ball.lastRow && ball.first <= needle && needle <= ball.last,
        );
        lastRows.set(`${yarn} of ${own?.group}`, { yarn, row });
      }
    }
  }
  const early = rows.flatMap(({ row, cuts }) => cuts.map(({ strand }) => cutAfter(strand.yarn, row)));
  return [...early, ...[...lastRows.values()].map(({ yarn, row }) => cutAfter(yarn, row))].sort();
}

const RUNS = { numRuns: 400, seed: 13 };

/** Rows so low that little is near enough to be carried up. */
const anyLow = anyKnittable.map((project): ProjectAt => ({
  ...project,
  piece: { ...project.piece, gauge: { ...project.piece.gauge, rows: Math.min(project.piece.gauge.rows, 12) } },
}));

describe('the running order of any project', () => {
  it('cuts each yarn where the plan does, be it fed or laid by hand, and nowhere else', () => {
    const seen = { fed: 0, laid: 0, joinedAgain: 0, fedAndLaid: 0 };
    fc.assert(
      fc.property(anyLow, (project) => {
        const ordered = orderedOf(project);
        if (!ordered) return;
        expect(cutsInOrder(ordered)).toEqual(cutsInPlan(ordered, pieceIn(project).mainYarn));
        for (const { act } of ordered.acts) {
          if (act.kind === 'cut') seen.laid++;
          if (act.kind === 'unthread') seen.fed++;
          if (act.kind === 'unthread' && act.ball !== null) seen.fedAndLaid++;
        }
        for (const { cuts } of ordered.plan.rows) seen.joinedAgain += cuts.length;
      }),
      RUNS,
    );
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(20);
  });

  it('takes up each wrapping strand before its first wrap, wraps with it as often as planned, and works it in', () => {
    let strands = 0;
    fc.assert(
      fc.property(anyKnittable, (project) => {
        const ordered = orderedOf(project);
        if (!ordered) return;
        const { plan, acts } = ordered;
        const inOrder = plan.wrapStrands.map((_, index) => {
          const of = acts.filter(
            ({ act }) => (act.kind === 'wrap' || act.kind === 'strand') && act.strand === index + 1,
          );
          const wraps = of.filter(({ act }) => act.kind === 'wrap');
          return {
            mm: of.flatMap(({ act }) => (act.kind === 'strand' ? [act.mm] : [])),
            kinds: [of[0], of.at(-1)].map((one) => one?.act.kind === 'strand' && one.act.at),
            readings: [of[0]?.reading, wraps[0]?.reading, wraps.at(-1)?.reading, of.at(-1)?.reading],
            wraps: wraps.length,
          };
        });
        expect(inOrder).toEqual(
          plan.wrapStrands.map(({ firstRow, lastRow, mm, wraps }) => ({
            mm: [mm, mm],
            kinds: ['start', 'end'],
            readings: [firstRow - 1, firstRow - 1, lastRow - 1, lastRow],
            wraps,
          })),
        );
        const numbers = new Set(acts.flatMap(({ act }) => (act.kind === 'strand' ? [act.strand] : [])));
        expect(numbers.size).toBe(plan.wrapStrands.length);
        strands += numbers.size;
      }),
      RUNS,
    );
    expect(strands).toBeGreaterThan(300);
  });
});
