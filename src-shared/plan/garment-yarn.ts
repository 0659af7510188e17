/** How much of each yarn a garment takes: all its pieces, each as often as it is knitted. Lengths in mm. */
import { BALL_GRAMS, gramsOf, WINDING_MARGIN } from '../yarn/index.ts';
import type { KnitPiece } from '../project/index.ts';
import type { Plan } from './types.ts';

/** A piece of the garment, planned in the size that is knitted. */
export interface PieceToKnit {
  readonly name: string;
  /** So many of it are knitted. */
  readonly knit: number;
  readonly plan: Plan;
}

export interface YarnAmount {
  readonly mm: number;
  /** Null where the yarn's tex is not known. */
  readonly grams: number | null;
}

/** What a piece takes of a yarn. */
export interface PieceShare {
  readonly name: string;
  readonly knit: number;
  /** For one. */
  readonly oneMm: number;
  /** For all that are knitted. */
  readonly all: YarnAmount;
}

/** What a garment takes of a yarn. */
export interface GarmentYarn {
  /** Palette index. */
  readonly yarn: number;
  /** The pieces that take it, in their order. */
  readonly pieces: readonly PieceShare[];
  /** Strands that are cut of it for wrapping, of all pieces together: wound by nobody, but bought. Null where there are none. */
  readonly strands: YarnAmount | null;
  /** All of the above, without a margin. */
  readonly total: YarnAmount;
  /** With the margin, and the balls of {@link BALL_GRAMS} that hold it, the last in part; null where they are not known. */
  readonly toBuy: YarnAmount & { readonly balls: number | null };
}

export interface GarmentNeed {
  /** Those that are knitted, main first, then each contrast by palette index. */
  readonly yarns: readonly GarmentYarn[];
  /** The weight of one of them at least is known. */
  readonly isWeighed: boolean;
  /** Share to buy above the totals. */
  readonly margin: number;
}

/** Takes the yarns by the palette of the project, which all its pieces have. */
export function garmentNeed(
  pieces: readonly PieceToKnit[],
  palette: Pick<KnitPiece, 'yarns' | 'mainYarn'>,
): GarmentNeed {
  const yarns = garmentYarns(pieces, palette);
  return { yarns, isWeighed: yarns.some(({ total }) => total.grams !== null), margin: WINDING_MARGIN };
}

function garmentYarns(
  pieces: readonly PieceToKnit[],
  { yarns, mainYarn }: Pick<KnitPiece, 'yarns' | 'mainYarn'>,
): GarmentYarn[] {
  const used = new Set(pieces.flatMap(({ plan }) => plan.yarn.uses.map(({ yarn }) => yarn)));
  return [...used]
    .sort((a, b) => Number(b === mainYarn) - Number(a === mainYarn) || a - b)
    .map((yarn) => {
      const amount = (mm: number): YarnAmount => ({ mm, grams: gramsOf(mm, yarns[yarn]?.tex ?? null) });
      const shares = pieces.flatMap(({ name, knit, plan }): PieceShare[] => {
        const oneMm = sum(plan.yarn.uses.filter((use) => use.yarn === yarn).map(({ totalMm }) => totalMm));
        return oneMm === 0 ? [] : [{ name, knit, oneMm, all: amount(oneMm * knit) }];
      });
      const strandsMm =
        yarn === mainYarn ? sum(pieces.map(({ knit, plan }) => knit * sum(plan.wrapStrands.map(({ mm }) => mm)))) : 0;
      const totalMm = sum(shares.map(({ all }) => all.mm)) + strandsMm;
      const toBuy = amount(totalMm * (1 + WINDING_MARGIN));
      return {
        yarn,
        pieces: shares,
        strands: strandsMm > 0 ? amount(strandsMm) : null,
        total: amount(totalMm),
        toBuy: { ...toBuy, balls: toBuy.grams === null ? null : ballsOf(toBuy.grams) },
      };
    });
}

/** Balls that hold so many grams: one that is begun is one. */
export function ballsOf(grams: number): number {
  return Math.ceil(grams / BALL_GRAMS);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
