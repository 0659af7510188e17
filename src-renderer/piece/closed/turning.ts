/** How keys and the hand turn the closed piece. Degrees that the seam stands to the right of the middle. */
import { within180, type Tube } from '@shared/piece/index.ts';
import type { TubeView } from './tube-view.ts';

const STEP = 5;
const LARGE_STEP = 45;

/** The turn after a key; null for a key that does not turn it. */
export function turnAfterKey(turn: number, key: string): number | null {
  switch (key) {
    case 'ArrowLeft':
      return within180(turn - STEP);
    case 'ArrowRight':
      return within180(turn + STEP);
    case 'PageUp':
      return within180(turn - LARGE_STEP);
    case 'PageDown':
      return within180(turn + LARGE_STEP);
    case 'Home':
      return 0;
    case 'End':
      return within180(180);
    default:
      return null;
  }
}

/** The turn after the hand has moved `dx` pixels: what faces us goes with the hand. */
export function turnAfterDrag(turn: number, dx: number, tube: Tube, view: TubeView): number {
  return within180(turn + (dx / Math.max(1, tube.radiusMm * view.scale)) * (180 / Math.PI));
}
