/** Where the piece and its patterns can stand on the bed and its machine. */
import type { Obstacle } from './obstacles.ts';
import { clashOnPlaces } from './programs.ts';
import type { Work } from './work.ts';

export function placeObstacles({ plan, piece, programs }: Work): Obstacle[] {
  const obstacles: Obstacle[] = [];
  if (plan.beyondBed) {
    const { spans, bed } = plan.beyondBed;
    obstacles.push({ code: 'off-the-bed', first: spans[0]?.[0] ?? 1, last: spans.at(-1)?.[1] ?? 1, bed });
  }
  const { chooses, places } = piece.machine;
  if (places === 'any-needle' || chooses === 'by-hand') return obstacles;
  for (const program of programs) {
    const clash = clashOnPlaces(plan, program, places.repeat);
    if (clash) obstacles.push({ code: 'off-fixed-places', ...clash, repeat: places.repeat });
  }
  return obstacles;
}
