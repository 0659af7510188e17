/**
 * Shaping where the carriage stands.
 *
 * Stitches are cast on and off with the yarn, which is at the carriage, so
 * where more than one comes or goes at each edge before a row, the edge away
 * from the carriage follows one row later (common practice, no source). On a
 * machine that makes stitches only at the carriage's side, one is too.
 */
import { carriageSide, type Machine, type Side } from '../bed/index.ts';
import type { Outline } from './shape.ts';

/** What decides at which edge the carriage stands before a row, and what it is needed for. */
export interface CarriageRules {
  /** The carriage's side at row counter 0. */
  readonly startSide: Side;
  readonly machine: Pick<Machine, 'increases'>;
}

/** True where a change by `stitches` (negative: fewer) at an edge takes the carriage's yarn. */
export function needsCarriage(stitches: number, { machine }: Pick<CarriageRules, 'machine'>): boolean {
  return Math.abs(stitches) > 1 || (stitches === 1 && machine.increases === 'carriage-side');
}

/**
 * The outline as it can be knitted: what needs the carriage waits at the edge
 * away from it until the next row. On the last row, after which none follows,
 * it stays as it was asked for. The same value where nothing waits.
 */
export function atCarriage(outline: Outline, rules: CarriageRules): Outline {
  const { rows } = outline;
  let knitted: { first: Int32Array; last: Int32Array } | null = null;
  for (let at = 1; at < rows - 1; at++) {
    const from = carriageSide(at + 1, rules.startSide);
    const { first, last } = knitted ?? outline;
    const left = (first[at - 1] as number) - (outline.first[at] as number);
    const right = (outline.last[at] as number) - (last[at - 1] as number);
    const waitsAtLeft = from !== 'left' && needsCarriage(left, rules);
    const waitsAtRight = from !== 'right' && needsCarriage(right, rules);
    if (!waitsAtLeft && !waitsAtRight) continue;
    knitted ??= { first: outline.first.slice(), last: outline.last.slice() };
    if (waitsAtLeft) knitted.first[at] = knitted.first[at - 1] as number;
    if (waitsAtRight) knitted.last[at] = knitted.last[at - 1] as number;
  }
  return knitted ? { rows, ...knitted } : outline;
}
