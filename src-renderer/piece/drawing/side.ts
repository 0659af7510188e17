/** From which side the piece is looked at. */
import { drawnFrom, isMirroredOnNeedles } from '@shared/bed/index.ts';
import type { PieceScene } from './scene.ts';

/** The side of the fabric that is seen. */
export function sideOf({ project, shows }: Pick<PieceScene, 'project' | 'shows'>): 'knit' | 'purl' {
  return drawnFrom(shows, project.piece.finishedFace);
}

/** True if the needles run from right to left: the fabric is seen from the side that does not face the knitter. */
export function isTurnedIn({ project, shows }: Pick<PieceScene, 'project' | 'shows'>): boolean {
  return isMirroredOnNeedles(shows, project.piece.finishedFace);
}
