/** What would make a fill meet in the seam is looked for when the hand rests: many widths are tried for it. */
import { seamFits, type Plan, type SeamFits } from '@shared/knitting/index.ts';
import type { Project } from '@shared/project/index.ts';

const REST_MS = 150;

/** Calls `done` with what was found when nothing else was asked for a while; returns a function that gives up. */
export function fitsAtRest(project: Project, plan: Plan, fill: number, done: (fits: SeamFits) => void): () => void {
  const timer = setTimeout(() => done(seamFits(project, plan, fill)), REST_MS);
  return () => clearTimeout(timer);
}
