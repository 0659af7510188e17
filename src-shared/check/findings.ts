/** Everything that will go wrong or must be known about a planned piece. */
import type { Plan } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { widerThanBed } from './bed.ts';
import { faintContrast, manyYarns } from './colours.ts';
import { clippedCopies, copiesLeftOut, figureInSeam } from './edges.ts';
import { contrastLooseAcross, contrastNotBoundIn, contrastToEdges, endNeedlesOfMachine } from './end-needles.ts';
import { fillsClipped, fillsLeftOut } from './fills.ts';
import { edgesUnseen } from './unseen-edges.ts';
import { BLOCKING_CODES, WARNING_CODES, type Finding } from './finding.ts';
import { infantFloats, longCarries, longFloats, longWaysUp } from './floats.ts';
import { inspected, type Inspected } from './inspected.ts';
import { obstacles } from './obstacles.ts';
import { oddShaping } from './shaping.ts';
import { mirroredLettering, mirroredLetteringInFills } from './letters.ts';

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
  manyYarns,
  clippedCopies,
  copiesLeftOut,
  fillsClipped,
  fillsLeftOut,
  figureInSeam,
  mirroredLettering,
  mirroredLetteringInFills,
  longFloats,
  longCarries,
  longWaysUp,
  faintContrast,
];

/** All findings: those that block first, then warnings, then notes, each from the bottom of the piece up. `plan` is that of `piece`. */
export function findingsOf(piece: KnitPiece, plan: Plan): Finding[] {
  const all = inspected(piece, plan);
  return INSPECTIONS.flatMap((inspect) => inspect(all)).sort(
    (a, b) => weightOf(b) - weightOf(a) || a.rows[0] - b.rows[0],
  );
}

function weightOf({ code }: Finding): 0 | 1 | 2 {
  if (BLOCKING_CODES.has(code)) return 2;
  return WARNING_CODES.has(code) ? 1 : 0;
}
