/**
 * Findings that a person leaves as they are. Each is known by its code and its
 * place, so that it comes back by itself once it lies elsewhere.
 */
import { changeOf, type Change, type ChangeName } from '../project/change.ts';
import { setPiece } from '../project/edit-makers.ts';
import type { Plan } from '../plan/index.ts';
import type { ProjectAt } from '../project/project-at.ts';
import { severityOf, type Finding } from './finding.ts';
import { gathered, type Gathered } from './gathered.ts';

/** Those that are watched, and those that are left; what cannot be knitted is never left. */
export function partedByLeft(
  findings: readonly Gathered[],
  leftAsIs: readonly string[] = [],
): { readonly watched: readonly Gathered[]; readonly left: readonly Gathered[] } {
  const isLeft = ({ kind, finding }: Gathered): boolean => severityOf(finding) < 2 && leftAsIs.includes(kind);
  return { watched: findings.filter((each) => !isLeft(each)), left: findings.filter(isLeft) };
}

const NONE: ReadonlySet<Finding> = new Set();

/** Those of a piece's findings that are left as they are, where they are told one by one; `patterns` are those of the plan. */
export function leftAmong(
  findings: readonly Finding[],
  patterns: Plan['patterns'],
  leftAsIs: readonly string[] = [],
): ReadonlySet<Finding> {
  if (leftAsIs.length === 0) return NONE;
  return new Set(partedByLeft(gathered(findings, patterns), leftAsIs).left.flatMap(({ all }) => all));
}

/**
 * The change that leaves one of the findings as it is; it forgets what is no longer
 * found. `lay-by-hand`: since its rows are laid by hand, as the running order has
 * them. Null where it is left already.
 */
export function leaveFinding(
  project: ProjectAt,
  { kind }: Gathered,
  findings: readonly Gathered[],
  name: Extract<ChangeName, 'leave-finding' | 'lay-by-hand'> = 'leave-finding',
): Change | null {
  const { leftAsIs = [] } = project.piece;
  if (leftAsIs.includes(kind)) return null;
  const kept = leftAsIs.filter((each) => findings.some((found) => found.kind === each));
  return changeOf(name, ...setPiece(project, { leftAsIs: [...kept, kind] }));
}

/** The change that has it watched again; null where it is watched. */
export function watchFinding(project: ProjectAt, { kind }: Gathered): Change | null {
  const { leftAsIs = [] } = project.piece;
  if (!leftAsIs.includes(kind)) return null;
  const kept = leftAsIs.filter((each) => each !== kind);
  return changeOf('watch-finding', ...setPiece(project, { leftAsIs: kept.length > 0 ? kept : undefined }));
}
