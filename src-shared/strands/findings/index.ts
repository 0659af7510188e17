/** Everything that will go wrong or must be known about a planned piece. */
import { WARNING_CODES, type Finding } from '../types.ts';
import { contrastToEdges, copiesLeftOut, cutCopies, figureInSeam, noSetUpRow } from './edges.ts';
import { fillsCut, fillsLeftOut, plainBesideFills } from './fills.ts';
import { hemLoops } from './hem.ts';
import { infantFloats } from './infant.ts';
import { longCarries, longFloats } from './long.ts';
import { mirroredLettering, mirroredLetteringInFills } from './lettering.ts';
import type { Inspected } from './question.ts';
import { widerThanBed } from './wide.ts';
import { faintContrast, manyYarns } from './yarns.ts';

export type { Inspected } from './question.ts';
export { gatherFindings, type GatheredFinding } from './gather.ts';
export { FAINT_CONTRAST } from './yarns.ts';

const INSPECTIONS: readonly ((inspected: Inspected) => Finding[])[] = [
  widerThanBed,
  infantFloats,
  noSetUpRow,
  hemLoops,
  contrastToEdges,
  plainBesideFills,
  manyYarns,
  cutCopies,
  copiesLeftOut,
  fillsCut,
  fillsLeftOut,
  figureInSeam,
  mirroredLettering,
  mirroredLetteringInFills,
  longFloats,
  longCarries,
  faintContrast,
];

/** All findings, warnings before notes, each from the bottom of the piece up. */
export function findingsOf(inspected: Inspected): Finding[] {
  const isNote = ({ code }: Finding): number => Number(!WARNING_CODES.has(code));
  return INSPECTIONS.flatMap((inspect) => inspect(inspected)).sort(
    (a, b) => isNote(a) - isNote(b) || a.rows[0] - b.rows[0],
  );
}
