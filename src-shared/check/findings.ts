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
  const found = INSPECTIONS.flatMap((inspect) => inspect(all)).map((finding) => ({
    finding,
    severity: severityOf(finding),
    row: finding.rows[0],
  }));
  return found.sort((a, b) => b.severity - a.severity || a.row - b.row).map(({ finding }) => finding);
}
