/** What can be done about long floats and carries, each with its effect worked out before it is taken. */
import { applyChange, changeOf, type Change } from '../project/change.ts';
import { setBand, setPiece } from '../project/edit-makers.ts';
import type { Project } from '../project/project.ts';
import { outcome } from '../problem/index.ts';
import { makePlan } from './plan.ts';
import type { Plan } from './types.ts';

/** Floats and carries over the limit in the open, now and with the remedy. */
export interface LongStrands {
  readonly before: number;
  readonly after: number;
}

export type Remedy = { readonly change: Change; readonly long: LongStrands } & (
  | {
      /** A ball of contrast for each group of a band. */
      readonly code: 'own-balls';
      readonly band: number;
      /** Balls of contrast in use then. */
      readonly balls: number;
      readonly wrapsAdded: number;
    }
  | { readonly code: 'lining' }
  | { readonly code: 'end-needles-off'; readonly wrapsAdded: number }
);

/**
 * The remedies that would leave fewer long floats and carries, the most
 * effective first. Empty where there are none to mend. Each costs about as
 * much as a plan. `plan` is that of `project`.
 */
export function remediesFor(project: Project, plan: Plan): Remedy[] {
  const before = longInTheOpen(plan);
  if (before === 0) return [];
  const wraps = wrapCount(plan);
  const remedies: Remedy[] = [];
  const consider = (change: Change, make: (after: Plan, long: LongStrands) => Remedy): void => {
    const after = outcome(() => makePlan(applyChange(project, change)));
    if (!after.ok) return;
    const long = { before, after: longInTheOpen(after.value) };
    if (long.after < before) remedies.push(make(after.value, long));
  };

  if (project.piece.endNeedleSelection) {
    const change = changeOf('end-needles', setPiece({ endNeedleSelection: false }));
    consider(change, (after, long) => ({
      code: 'end-needles-off',
      change,
      long,
      wrapsAdded: wrapCount(after) - wraps,
    }));
  }
  project.bands.forEach(({ groups }, band) => {
    if (groups.length < 2 || groups.every(({ hasOwnBall }) => hasOwnBall)) return;
    const to = { groups: groups.map((group) => ({ ...group, hasOwnBall: true })) };
    const change = changeOf('own-balls', setBand(band, to));
    consider(change, (after, long) => ({
      code: 'own-balls',
      band,
      change,
      long,
      balls: contrastBalls(after),
      wrapsAdded: wrapCount(after) - wraps,
    }));
  });
  if (!project.piece.isLined) {
    const change = changeOf('piece-details', setPiece({ isLined: true }));
    consider(change, (_, long) => ({ code: 'lining', change, long }));
  }
  return remedies.sort((a, b) => a.long.after - b.long.after);
}

function longInTheOpen({ findings }: Plan): number {
  let count = 0;
  for (const finding of findings) {
    if (finding.code === 'long-floats' || finding.code === 'long-carry') count += finding.count;
  }
  return count;
}

function wrapCount({ rows }: Plan): number {
  return rows.reduce((count, { wraps }) => count + wraps.length, 0);
}

/** Each contrast strand comes from a ball of its own. */
function contrastBalls({ yarn }: Plan): number {
  return yarn.uses.reduce((count, use) => count + (use.role === 'contrast' ? use.balls : 0), 0);
}
