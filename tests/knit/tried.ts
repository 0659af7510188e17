/** Many random projects knitted in every size, and what became of them. */
import fc from 'fast-check';
import { inSize, sizesOf, type ProjectAt } from '@shared/project/index.ts';
import { ALL_KINDS, type Kind } from './kinds.ts';
import { knitPlan, type KnittedPlan } from './knit-plan.ts';
import { anyKnittable } from './projects.ts';

export interface Tried {
  /** Sizes that were knitted as designed. */
  readonly knitted: number;
  /** Sizes that are no plan at all: groups wider than the piece, and the like. */
  readonly unplanned: number;
  /** Sizes with a plan that were refused; by the code of each finding that blocks, how many had it. */
  readonly refused: number;
  readonly refusedFor: Readonly<Record<string, number>>;
  /** What went wrong, each with the number of its project in the order of the seed. */
  readonly wrong: readonly string[];
  /** More of the first of them; empty where there is none. */
  readonly firstWrong: string;
  /** Projects that were knitted as designed in a size at least, and how many of them are of a kind in such a size. */
  readonly projects: number;
  readonly ofKind: Readonly<Record<Kind, number>>;
}

/** As many are drawn at most for each one that is knitted: some are no plan, and some are refused. */
const DRAWN_FOR_ONE = 3;

/** Goes on until `count` projects have been knitted in one size at least; always the same for a seed. */
export function knitMany(count: number, seed: number): Tried {
  const refusedFor: Record<string, number> = {};
  const wrong: string[] = [];
  let firstWrong = '';
  const ofKind = Object.fromEntries(ALL_KINDS.map((kind) => [kind, 0])) as Record<Kind, number>;
  let [projects, knitted, unplanned, refused] = [0, 0, 0, 0];
  for (const [number, project] of projectsOf(count * DRAWN_FOR_ONE, seed).entries()) {
    if (projects === count) break;
    let isKnitted = false;
    const kinds = new Set<Kind>();
    for (const [index, { name }] of sizesOf(project).entries()) {
      const called = `project ${number}, ${name}`;
      let result: KnittedPlan;
      try {
        result = knitPlan(inSize(project, index));
      } catch (thrown) {
        // What cannot be told apart on the fabric is wrong too, and the others are knitted all the same.
        wrong.push(`${called}: ${String(thrown)}`);
        continue;
      }
      if (result.outcome === 'as-designed') {
        knitted++;
        isKnitted = true;
        for (const kind of result.kinds) kinds.add(kind);
      } else if (result.outcome === 'unplanned') unplanned++;
      else if (result.outcome === 'wrong') {
        if (wrong.length === 0) firstWrong = mismatchText(result, `${called} of seed ${seed}`);
        wrong.push(`${called}: ${result.why.slice(0, 3).join('; ')}`);
      } else {
        refused++;
        for (const code of new Set(result.codes)) refusedFor[code] = (refusedFor[code] ?? 0) + 1;
        if (result.codes.length === 0) wrong.push(`${called}: refused, and no finding blocks`);
      }
    }
    projects += Number(isKnitted);
    for (const kind of kinds) ofKind[kind]++;
  }
  return { knitted, unplanned, refused, refusedFor, wrong, firstWrong, projects, ofKind };
}

export function projectsOf(count: number, seed: number): ProjectAt[] {
  return fc.sample(anyKnittable, { seed, numRuns: count });
}

/** How many were refused of those that have a plan. */
export function refusedShare({ knitted, refused, wrong }: Tried): number {
  return refused / Math.max(1, knitted + refused + wrong.length);
}

export function triedText(tried: Tried): string {
  const { projects, knitted, unplanned, refused, refusedFor, wrong, firstWrong } = tried;
  const share = `${(100 * refusedShare(tried)).toFixed(1)} %`;
  const reasons = Object.entries(refusedFor).sort((a, b) => b[1] - a[1]);
  return [
    `${projects} projects, in ${knitted} sizes, knitted as designed, ${refused} refused (${share} of those with a plan), ${unplanned} without a plan`,
    ...reasons.map(([code, count]) => `  ${code}: ${count}`),
    `${wrong.length} wrong`,
    ...wrong.slice(0, MOST_TOLD).map((why) => `  ${why}`),
    ...(firstWrong === '' ? [] : [firstWrong]),
  ].join('\n');
}

/** Lines of what came out wrong. */
const MOST_TOLD = 30;

/** All that differs in the first that came out wrong, and what the plan says of the rows that are named. */
function mismatchText({ why, plan }: Extract<KnittedPlan, { outcome: 'wrong' }>, called: string): string {
  const rows = new Set(
    why.slice(0, 10).flatMap((line) => [...line.matchAll(/row (\d+)/g)].map(([, row]) => Number(row))),
  );
  const planned = [...rows].sort((a, b) => a - b).flatMap((row) => JSON.stringify(plan.rows[row - 1]) ?? []);
  const acts = (plan.runningOrder ?? []).flatMap((item) =>
    item.kind === 'stop' && (rows.has(item.counter) || rows.has(item.counter + 1))
      ? [`at ${item.counter}: ${item.acts.map((act) => JSON.stringify(act)).join(' ')}`]
      : [],
  );
  return [`The first, ${called}:`, ...why.slice(0, 20), 'Planned:', ...planned, 'Done:', ...acts].join('\n  ');
}

/** Of 100 projects, one at least is to be of each kind. */
const ONE_OF = 100;

/** The kinds that came less often than that: what holds of them has hardly been looked at. */
export function rareKinds({ projects, ofKind }: Pick<Tried, 'projects' | 'ofKind'>): Kind[] {
  return ALL_KINDS.filter((kind) => ofKind[kind] < Math.max(1, Math.floor(projects / ONE_OF)));
}

/** How many projects are of each kind. */
export function kindsText({ projects, ofKind }: Tried): string {
  const width = Math.max(...ALL_KINDS.map((kind) => kind.length));
  const lines = ALL_KINDS.map((kind) => `  ${kind.padEnd(width)} ${`${ofKind[kind]}`.padStart(6)}`);
  return [`Kinds among ${projects} projects:`, ...lines].join('\n');
}
