/** How much of each yarn a garment takes: all its pieces, each as often as it is knitted. Lengths in mm. */
import { gramsOf } from '../yarn/index.ts';
import type { Yarn } from '../project/index.ts';
import type { Plan } from './types.ts';

/** A piece of the garment, planned in the size that is knitted. */
export interface PieceToKnit {
  readonly name: string;
  /** So many of it are knitted. */
  readonly knit: number;
  readonly plan: Plan;
}

/** What a piece takes of a yarn. */
export interface PieceShare {
  readonly name: string;
  readonly knit: number;
  /** For one. */
  readonly mm: number;
  /** For all that are knitted. */
  readonly allMm: number;
}

/** What a garment takes of a yarn. */
export interface GarmentYarn {
  /** Palette index. */
  readonly yarn: number;
  /** The pieces that take it, in their order. */
  readonly pieces: readonly PieceShare[];
  /** Strands that are cut of it for wrapping, of all pieces together: wound by nobody, but bought. */
  readonly strandsMm: number;
  /** All of the above, without a margin. */
  readonly totalMm: number;
  /** Mass of the total; null where the yarn's tex is not known. */
  readonly grams: number | null;
}

/** The yarns that are knitted, main first, then each contrast by palette index. */
export function garmentYarn(pieces: readonly PieceToKnit[], yarns: readonly Yarn[], mainYarn: number): GarmentYarn[] {
  const used = new Set(pieces.flatMap(({ plan }) => plan.yarn.uses.map(({ yarn }) => yarn)));
  return [...used]
    .sort((a, b) => Number(b === mainYarn) - Number(a === mainYarn) || a - b)
    .map((yarn) => {
      const shares = pieces.flatMap(({ name, knit, plan }): PieceShare[] => {
        const mm = sum(plan.yarn.uses.filter((use) => use.yarn === yarn).map(({ totalMm }) => totalMm));
        return mm === 0 ? [] : [{ name, knit, mm, allMm: mm * knit }];
      });
      const strandsMm =
        yarn === mainYarn ? sum(pieces.map(({ knit, plan }) => knit * sum(plan.wrapStrands.map(({ mm }) => mm)))) : 0;
      const totalMm = sum(shares.map(({ allMm }) => allMm)) + strandsMm;
      return { yarn, pieces: shares, strandsMm, totalMm, grams: gramsOf(totalMm, yarns[yarn]?.tex ?? null) };
    });
}

/** Balls of so many grams that hold `grams`: the last of them in part. */
export function ballsOf(grams: number, gramsInBall: number): number {
  return Math.ceil(grams / gramsInBall);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
