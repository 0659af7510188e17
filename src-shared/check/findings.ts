/** Everything that will go wrong or must be known about a planned piece. */
import type { Plan } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { floatsUnbroken } from './anchors.ts';
import { widerThanBed } from './bed.ts';
import { faintContrast, manyYarns } from './colours.ts';
import { clippedCopies, figureInSeam } from './edges.ts';
import {
  contrastLooseAcross,
  contrastNotBoundIn,
  contrastToEdges,
  endNeedlesOfMachine,
  endNeedlesSeen,
} from './end-needles.ts';
import { edgesUnseen } from './unseen-edges.ts';
import { severityOf, type Finding } from './finding.ts';
import { cutsAside, infantFloats, longCarries, longWaysUp } from './floats.ts';
import { toldFloats, type ToldFloats, type ToldStretch } from './long-floats.ts';
import { inspected, type Inspected } from './inspected.ts';
import { obstacles } from './obstacles.ts';
import { oddShaping } from './shaping.ts';
import { mirroredLettering } from './letters.ts';

type Inspection = (inspected: Inspected) => Finding[];

/** Of findings of one severity on one row those come first that stand first here. */
const BEFORE_LONG_FLOATS: readonly Inspection[] = [
  widerThanBed,
  infantFloats,
  obstacles,
  oddShaping,
  edgesUnseen,
  endNeedlesOfMachine,
  contrastToEdges,
  contrastLooseAcross,
  contrastNotBoundIn,
  endNeedlesSeen,
  manyYarns,
  clippedCopies,
  figureInSeam,
  mirroredLettering,
  floatsUnbroken,
];

const AFTER_LONG_FLOATS: readonly Inspection[] = [longCarries, longWaysUp, cutsAside, faintContrast];

/** What was told of the long floats of a plan: of thousands few change with a cell. */
const told = new WeakMap<Plan, ToldFloats>();

/**
 * All findings: those that block first, then warnings, then notes, each from the
 * bottom of the piece up. `plan` is that of `piece`. `before`: a plan whose
 * findings were asked for, best of the piece before it was painted; what is
 * still right of them is taken over.
 */
export function findingsOf(piece: KnitPiece, plan: Plan, before: Plan | null = null): Finding[] {
  const toldBefore = before && (told.get(before) ?? null);
  const all = inspected(piece, plan, toldBefore?.of);
  const floats = toldFloats(all, toldBefore);
  told.set(plan, floats);
  const [first, last] = [bySeverity(BEFORE_LONG_FLOATS, all), bySeverity(AFTER_LONG_FLOATS, all)] as const;
  const stretches = ([true, false] as const).map((lined) =>
    floats.stretches.filter(({ isLined }) => isLined === lined),
  );
  const [noted, warned] = stretches as [ToldStretch[], ToldStretch[]];
  return joined([
    ...inOrder(first[2], [], last[2]),
    ...inOrder(first[1], warned, last[1]),
    ...inOrder(first[0], noted, last[0]),
  ]);
}

/** What is found, each severity from the bottom up. */
function bySeverity(inspections: readonly Inspection[], all: Inspected): Record<0 | 1 | 2, Finding[]> {
  const found: Record<0 | 1 | 2, Finding[]> = { 0: [], 1: [], 2: [] };
  for (const inspect of inspections) for (const finding of inspect(all)) found[severityOf(finding)].push(finding);
  for (const list of Object.values(found)) fromBelow(list);
  return found;
}

/**
 * Three kinds of finding from the bottom up, as lists to be joined; of findings
 * on one row those of the first kind come first. Where nothing else is told of
 * the rows of a stretch it stays the list that it is.
 */
function inOrder(
  first: readonly Finding[],
  stretches: readonly ToldStretch[],
  last: readonly Finding[],
): (readonly Finding[])[] {
  const lists: (readonly Finding[])[] = [];
  const left = [first.toReversed(), last.toReversed()];
  const upTo = (row: number): Finding[][] =>
    left.map((findings) => {
      const taken: Finding[] = [];
      for (let next = findings.at(-1); next && next.rows[0] <= row; next = findings.at(-1)) {
        taken.push(next);
        findings.pop();
      }
      return taken;
    });
  const lowestOfThem = (): number => Math.min(...left.map((findings) => findings.at(-1)?.rows[0] ?? Infinity));
  let lowest = lowestOfThem();
  for (const stretch of stretches) {
    if (lowest > stretch.last) {
      lists.push(stretch.findings);
      continue;
    }
    const [one, other] = upTo(stretch.last) as [Finding[], Finding[]];
    lists.push(fromBelow([...one, ...stretch.findings, ...other]));
    lowest = lowestOfThem();
  }
  return [...lists, fromBelow(upTo(Infinity).flat())];
}

/** Findings that stand on one row stay in their order. */
function fromBelow(findings: Finding[]): Finding[] {
  return findings.sort((one, other) => one.rows[0] - other.rows[0]);
}

/** Lists one behind the other. */
function joined(lists: readonly (readonly Finding[])[]): Finding[] {
  const all = new Array<Finding>(lists.reduce((sum, list) => sum + list.length, 0));
  // Thousands of findings: copied in a plain loop into a list that need not grow, which takes the least.
  let end = 0;
  for (const list of lists) for (let at = 0; at < list.length; at++) all[end++] = list[at] as Finding;
  return all;
}
