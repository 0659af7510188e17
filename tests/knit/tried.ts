/** Many random projects knitted in every size, and what became of them. */
import fc from 'fast-check';
import { inSize, sizesOf, type ProjectAt } from '@shared/project/index.ts';
import { knitPlan } from './knit-plan.ts';
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
}

/** `count` projects, always the same for a seed. */
export function knitMany(count: number, seed: number): Tried {
  const refusedFor: Record<string, number> = {};
  const wrong: string[] = [];
  let [knitted, unplanned, refused] = [0, 0, 0];
  projectsOf(count, seed).forEach((project, number) => {
    for (const [index, { name }] of sizesOf(project).entries()) {
      const result = knitPlan(inSize(project, index));
      const called = `project ${number}, ${name}`;
      if (result.outcome === 'as-designed') knitted++;
      else if (result.outcome === 'unplanned') unplanned++;
      else if (result.outcome === 'wrong') wrong.push(`${called}: ${result.why.slice(0, 3).join('; ')}`);
      else {
        refused++;
        for (const code of new Set(result.codes)) refusedFor[code] = (refusedFor[code] ?? 0) + 1;
        if (result.codes.length === 0) wrong.push(`${called}: refused, and no finding blocks`);
      }
    }
  });
  return { knitted, unplanned, refused, refusedFor, wrong };
}

export function projectsOf(count: number, seed: number): ProjectAt[] {
  return fc.sample(anyKnittable, { seed, numRuns: count });
}

/** How many were refused of those that have a plan. */
export function refusedShare({ knitted, refused, wrong }: Tried): number {
  return refused / Math.max(1, knitted + refused + wrong.length);
}

export function triedText(tried: Tried): string {
  const { knitted, unplanned, refused, refusedFor, wrong } = tried;
  const share = `${(100 * refusedShare(tried)).toFixed(1)} %`;
  const reasons = Object.entries(refusedFor).sort((a, b) => b[1] - a[1]);
  return [
    `${knitted} knitted as designed, ${refused} refused (${share} of those with a plan), ${unplanned} without a plan`,
    ...reasons.map(([code, count]) => `  ${code}: ${count}`),
    `${wrong.length} wrong`,
    ...wrong.map((why) => `  ${why}`),
  ].join('\n');
}
