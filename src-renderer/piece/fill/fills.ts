/** Fills that come, go and change. */
import type { Plan } from '@shared/plan/index.ts';
import type { MotifId } from '@shared/motif/index.ts';
import type { Fill, PatternId } from '@shared/pattern/index.ts';
import {
  changeOf,
  insertFill,
  removeFill,
  setFill,
  startFill,
  type Change,
  type ChangeName,
  type ProjectAt,
} from '@shared/project/index.ts';

/** Before the second row there is none to set it up on. */
const FIRST_ROW = 2;

/**
 * A new fill where there is room: above all bands and fills to the top, else
 * below them. Where there is none it begins low, and the plan says what is in
 * its way.
 */
export function newFill(motif: MotifId, { bands, fills, outline }: Pick<Plan, 'bands' | 'fills' | 'outline'>): Fill {
  const patterns = [...bands, ...fills];
  if (patterns.length === 0) return startFill(motif, Math.min(FIRST_ROW, outline.rows));
  const above = Math.max(...patterns.map(({ lastRow }) => lastRow)) + 1;
  if (above <= outline.rows) return startFill(motif, above);
  const below = Math.min(...patterns.map(({ firstRow }) => firstRow)) - 1;
  const fill = startFill(motif, FIRST_ROW);
  return below >= FIRST_ROW ? { ...fill, lastRow: below } : fill;
}

/** The change of one fill of the piece. */
export function changeOfFill(project: ProjectAt, index: number, name: ChangeName, to: Partial<Fill>): Change {
  return changeOf(name, setFill(project, index, to));
}

export function addFill(project: ProjectAt, id: PatternId, fill: Fill): Change {
  return changeOf('add-fill', insertFill(project, id, fill));
}

export function takeFillAway(project: ProjectAt, index: number): Change {
  return changeOf('remove-fill', removeFill(project, index));
}
