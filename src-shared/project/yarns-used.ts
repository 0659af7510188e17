/** Which yarns of the palette a motif is drawn in. */
import { MOST_COLOURS, type Grid } from '../grid/index.ts';
import { problemError } from '../problem/index.ts';
import type { Project } from './model.ts';

/** More yarns than anyone keeps apart in one motif. The palette of a project may hold more. */
export const MOST_YARNS_IN_MOTIF = 16;

/** Palette indices of the ground and of every yarn with a cell in the drawing, in ascending order. */
export function yarnsUsed({ cells }: Grid, ground: number): number[] {
  const isUsed = new Uint8Array(MOST_COLOURS);
  isUsed[ground] = 1;
  for (let index = 0; index < cells.length; index++) isUsed[cells[index] as number] = 1;
  return Array.from(isUsed.keys()).filter((index) => isUsed[index] === 1);
}

/**
 * Throws `yarns-too-many-in-motif` if a motif of `after` has more yarns than it
 * may and more than it had in `before`: one that came with too many can still be worked on.
 */
export function assertYarnsFit(before: Project, after: Project): void {
  if (after.yarns.length <= MOST_YARNS_IN_MOTIF) return;
  for (const [at, motif] of after.motifs.entries()) {
    // Few changes change any but one, and that where it stands: of 200 the others are not looked for.
    if (before.motifs[at] === motif) continue;
    const was = before.motifs.find(({ id }) => id === motif.id);
    if (was?.grid === motif.grid) continue;
    const yarns = yarnsUsed(motif.grid, after.mainYarn).length;
    if (yarns > MOST_YARNS_IN_MOTIF && yarns > (was ? yarnsUsed(was.grid, before.mainYarn).length : 0)) {
      throw problemError('yarns-too-many-in-motif', { motif: motif.name, yarns, most: MOST_YARNS_IN_MOTIF });
    }
  }
}
