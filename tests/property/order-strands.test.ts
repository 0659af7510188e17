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

/** Yarns that go through the feeders alone: what is laid by hand hangs at its ball, and a group's own ball is one of several of its yarn. */
function fedYarns({ plan, acts }: Ordered): number[] {
  const beside = new Set(acts.flatMap(({ act }) => (act.kind === 'lay' ? [act.yarn] : [])));
  for (const { group } of plan.ownBalls) {
    for (const { contrast } of plan.rows.slice(0, plan.groups[group]?.lastRow)) {
      for (const { yarn } of contrast) beside.add(yarn);
    }
  }
  const fed = acts.flatMap(({ act }) => (act.kind === 'thread' && !beside.has(act.yarn) ? [act.yarn] : []));
  return [...new Set(fed)];
}

/** Each time a yarn is cut, the row after which it is and the one on which it is joined again; not where that is to cast off. */
function cutsInOrder({ acts, plan }: Ordered, yarn: number): string[] {
  const itself = acts.filter(({ act }) => (act.kind === 'thread' || act.kind === 'unthread') && act.yarn === yarn);
  return itself.flatMap(({ reading, act }, at) => {
    const next = itself[at + 1];
    const isCut = act.kind === 'unthread' && act.waitsAt === 'cut';
    return isCut && next && next.reading < plan.rows.length
      ? [`after row ${reading}, joined on row ${next.reading + 1}`]
      : [];
  });
}

function cutsInPlan({ rows }: Plan, yarn: number): string[] {
  return rows.flatMap(({ row, cuts }) =>
    cuts.filter(({ strand }) => strand.yarn === yarn).map(({ toRow }) => `after row ${row}, joined on row ${toRow}`),
  );
}

const RUNS = { numRuns: 400, seed: 13 };

/** One ball for each contrast, and rows so low that little is near enough to be carried up. */
const fedAndLow = anyKnittable.map((project): ProjectAt => ({
  ...project,
  piece: { ...project.piece, gauge: { ...project.piece.gauge, rows: Math.min(project.piece.gauge.rows, 12) } },
  bands: project.bands.map((band) => ({
    ...band,
    groups: band.groups.map((group) => ({ ...group, hasOwnBall: false })),
  })),
}));

describe('the running order of any project', () => {
  it('cuts a yarn where the plan does, and nowhere else', () => {
    let cuts = 0;
    fc.assert(
      fc.property(fedAndLow, (project) => {
        const ordered = orderedOf(project);
        for (const yarn of ordered ? fedYarns(ordered) : []) {
          const asPlanned = cutsInPlan((ordered as Ordered).plan, yarn);
          expect(cutsInOrder(ordered as Ordered, yarn)).toEqual(asPlanned);
          cuts += asPlanned.length;
        }
      }),
      RUNS,
    );
    expect(cuts).toBeGreaterThan(40);
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
