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
import { cutsAside, infantFloats, longCarries, longFloats, longWaysUp } from './floats.ts';
import { inspected, type Inspected } from './inspected.ts';
import { obstacles } from './obstacles.ts';
import { oddShaping } from './shaping.ts';
import { mirroredLettering } from './letters.ts';

const INSPECTIONS: readonly ((inspected: Inspected) => Finding[])[] = [
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
  longFloats,
  longCarries,
  longWaysUp,
  cutsAside,
  faintContrast,
];

/** All findings: those that block first, then warnings, then notes, each from the bottom of the piece up. `plan` is that of `piece`. */
export function findingsOf(piece: KnitPiece, plan: Plan): Finding[] {
  const all = inspected(piece, plan);
  const bySeverity: Finding[][] = [];
  for (const inspect of INSPECTIONS) {
    for (const finding of inspect(all)) (bySeverity[severityOf(finding)] ??= []).push(finding);
  }
  // Most come from the bottom up already, and sorting those takes hardly longer than reading them.
  return bySeverity.reverse().flatMap((found) => found.sort((a, b) => a.rows[0] - b.rows[0]));
}
