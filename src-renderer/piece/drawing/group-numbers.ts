/** Groups by their numbers on the drawing, and which of them is seen at the left when worn. */
import { isMirroredOnNeedles, type FinishedFace, type Side } from '@shared/bed/index.ts';
import type { PlacedGroup } from '@shared/fabric/index.ts';
import type { LaidView } from './laid-view.ts';
import type { Look } from './look.ts';

export interface GroupNames {
  readonly number: (index: number) => string;
  readonly worn: (index: number, side: Side) => string;
}

/** At which side a group, `at` from the left on the needles of `groups`, is seen when worn; null for one between others, and where it stands alone. */
export function wornSide(at: number, groups: number, face: FinishedFace): Side | null {
  if (groups < 2 || (at > 0 && at < groups - 1)) return null;
  return (at === 0) === isMirroredOnNeedles('worn', face) ? 'right' : 'left';
}

/** Writes the numbers above the groups of a band, of which the first is number `first` (from 0) on the piece. */
export function drawGroupNumbers(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  groups: readonly PlacedGroup[],
  first: number,
  face: FinishedFace,
  names: GroupNames,
  look: Look,
  font: string,
): void {
  context.font = `600 12px ${font}`;
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  groups.forEach(({ block, lastRow }, index) => {
    const view = laid.at(lastRow);
    const { left, right } = view.span(block.first, block.last);
    const side = wornSide(index, groups.length, face);
    const number = names.number(first + index);
    const full = side === null ? number : names.worn(first + index, side);
    const said = context.measureText(full).width <= right - left ? full : number;
    const y = Math.round(view.top(lastRow - 1)) - 9;
    context.globalAlpha = 0.85;
    context.fillStyle = look.main;
    context.fillRect(left, y - 8, context.measureText(said).width + 4, 15);
    context.globalAlpha = 1;
    context.fillStyle = look.onMain;
    context.fillText(said, left + 2, y);
  });
}
