/** Where what is there of a yarn comes to its end. Lengths in mm. */
import { yarnByRow } from './yarn-by-row.ts';
import type { Plan } from './types.ts';

/** A piece of the garment, planned in the size that is knitted. */
export interface PieceToKnit {
  readonly name: string;
  /** So many of it are knitted. */
  readonly knit: number;
  readonly plan: Plan;
}

/** A row of one of the pieces, knitted one after the other in their order. */
export interface RowOfPiece {
  readonly name: string;
  /** Which one of it, from 1, and how many are knitted. */
  readonly number: number;
  readonly knit: number;
  readonly row: number;
}

export interface RunsOut {
  readonly at: RowOfPiece;
  /** So much is missing for all that is to be knitted. */
  readonly missingMm: number;
}

/**
 * The row within which `mm` of a yarn run out, null where they are enough.
 * Strands for wrapping are cut before the piece is begun. `stretched`: as if
 * every stitch took as much as it may.
 */
export function runsOut(
  pieces: readonly PieceToKnit[],
  yarn: number,
  mainYarn: number,
  mm: number,
  stretched: boolean,
): RunsOut | null {
  let left = mm;
  let at: RowOfPiece | null = null;
  for (const { name, knit, plan } of pieces) {
    const lengths = yarnByRow(plan, mainYarn, stretched ? 1 + plan.yarn.share : 1).get(yarn);
    const strandsMm = yarn === mainYarn ? plan.wrapStrands.reduce((sum, strand) => sum + strand.mm, 0) : 0;
    if (!lengths && strandsMm === 0) continue;
    for (let number = 1; number <= knit; number++) {
      left -= strandsMm;
      if (left < 0) at ??= { name, number, knit, row: 1 };
      lengths?.forEach((length, index) => {
        left -= length;
        if (left < 0) at ??= { name, number, knit, row: index + 1 };
      });
    }
  }
  return at && { at, missingMm: -left };
}
