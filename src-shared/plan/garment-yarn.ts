/** How much of each yarn a garment takes: all its pieces, each as often as it is knitted. Lengths in mm. */
import { ballGramsOf, gramsOf, gramsOnHand, mmOf, texOf } from '../yarn/index.ts';
import type { KnitPiece, Yarn } from '../project/index.ts';
import type { SectionName } from '../piece/index.ts';
import { runsOut, type PieceToKnit, type RowOfPiece } from './runs-out.ts';
import type { Plan } from './types.ts';
import { yarnBySection } from './yarn-by-row.ts';

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
  /** Of that, what its sections take, from the bottom up; empty where there is but one. */
  readonly sections: readonly ({ readonly section: SectionName } & YarnAmount)[];
  /** For all that are knitted. */
  readonly all: YarnAmount;
}

/** What is there of a yarn, beside what is needed. */
export interface YarnOnHand {
  readonly grams: number;
  /** Null where the yarn's tex is not known: then nothing can be said of how far it goes. */
  readonly mm: number | null;
  /** Where it runs out, and what is missing then; null where it is enough, or nothing can be said. */
  readonly runsOut: { readonly at: RowOfPiece; readonly missing: YarnAmount } | null;
  /** Where it runs out at the earliest, as surely as the length of a stitch is known; null where it is enough even so. */
  readonly earliest: RowOfPiece | null;
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
  /** What the total may come to, as surely as the length of a stitch is known. */
  readonly least: YarnAmount;
  readonly most: YarnAmount;
  /** With the margin, and the balls of `ballGrams` that hold it, the last in part; null where they are not known. */
  readonly toBuy: YarnAmount & { readonly balls: number | null };
  /** What a ball weighs. */
  readonly ballGrams: number;
  /** Null where nobody said what is there. */
  readonly onHand: YarnOnHand | null;
}

export interface GarmentNeed {
  /** Those that are knitted, main first, then each contrast by palette index. */
  readonly yarns: readonly GarmentYarn[];
  /** How many pieces there are, however often each is knitted. */
  readonly pieces: number;
  /** The weight of one of them at least is known. */
  readonly isWeighed: boolean;
  /** Share to buy above the totals. */
  readonly margin: number;
  /** By which share a length may be off: the largest of the pieces. */
  readonly share: number;
  /** The length of a stitch is measured, on every piece. */
  readonly isMeasured: boolean;
}

/** Takes the yarns and the margin of the project, which all its pieces have. */
export function garmentNeed(
  pieces: readonly PieceToKnit[],
  palette: Pick<KnitPiece, 'yarns' | 'mainYarn' | 'yarnMargin'>,
): GarmentNeed {
  const yarns = garmentYarns(pieces, palette);
  const needs = pieces.map(({ plan }) => plan.yarn);
  return {
    yarns,
    pieces: pieces.length,
    isWeighed: yarns.some(({ total }) => total.grams !== null),
    margin: palette.yarnMargin / 100,
    share: Math.max(0, ...needs.map(({ share }) => share)),
    isMeasured: needs.every(({ from }) => from === 'unravelled' || from === 'weighed'),
  };
}

function garmentYarns(
  pieces: readonly PieceToKnit[],
  { yarns, mainYarn, yarnMargin }: Pick<KnitPiece, 'yarns' | 'mainYarn' | 'yarnMargin'>,
): GarmentYarn[] {
  const used = new Set(pieces.flatMap(({ plan }) => plan.yarn.uses.map(({ yarn }) => yarn)));
  const sections = pieces.map(({ plan }) => yarnBySection(plan, mainYarn));
  return [...used]
    .sort((a, b) => Number(b === mainYarn) - Number(a === mainYarn) || a - b)
    .map((yarn) => {
      const { [yarn]: own } = yarns;
      const tex = texOf(own);
      const amount = (mm: number): YarnAmount => ({ mm, grams: gramsOf(mm, tex) });
      const usesOf = (plan: Plan) => plan.yarn.uses.filter((use) => use.yarn === yarn);
      const shares = pieces.flatMap(({ name, knit, plan }, index): PieceShare[] => {
        const oneMm = sum(usesOf(plan).map(({ totalMm }) => totalMm));
        if (oneMm === 0) return [];
        const inSections = (sections[index] ?? []).flatMap(({ section, yarns: taken }) =>
          taken.flatMap((one) => (one.yarn === yarn ? [{ section, ...amount(one.mm) }] : [])),
        );
        const isParted = (sections[index] ?? []).length > 1;
        return [{ name, knit, oneMm, sections: isParted ? inSections : [], all: amount(oneMm * knit) }];
      });
      const strandsMm =
        yarn === mainYarn ? sum(pieces.map(({ knit, plan }) => knit * sum(plan.wrapStrands.map(({ mm }) => mm)))) : 0;
      const inAll = (of: 'leastMm' | 'mostMm'): YarnAmount =>
        amount(strandsMm + sum(pieces.map(({ knit, plan }) => knit * sum(usesOf(plan).map((use) => use[of])))));
      const totalMm = sum(shares.map(({ all }) => all.mm)) + strandsMm;
      const toBuy = amount(totalMm * (1 + yarnMargin / 100));
      const ballGrams = ballGramsOf(own);
      return {
        yarn,
        pieces: shares,
        strands: strandsMm > 0 ? amount(strandsMm) : null,
        total: amount(totalMm),
        least: inAll('leastMm'),
        most: inAll('mostMm'),
        toBuy: { ...toBuy, balls: toBuy.grams === null ? null : ballsOf(toBuy.grams, ballGrams) },
        ballGrams,
        onHand: own ? onHandOf(pieces, own, yarn, mainYarn) : null,
      };
    });
}

function onHandOf(pieces: readonly PieceToKnit[], own: Yarn, yarn: number, mainYarn: number): YarnOnHand | null {
  const grams = gramsOnHand(own);
  if (grams === null) return null;
  const tex = texOf(own);
  const mm = mmOf(grams, tex);
  if (mm === null) return { grams, mm, runsOut: null, earliest: null };
  const likely = runsOut(pieces, yarn, mainYarn, mm, false);
  return {
    grams,
    mm,
    runsOut: likely && {
      at: likely.at,
      missing: { mm: likely.missingMm, grams: gramsOf(likely.missingMm, tex) },
    },
    earliest: runsOut(pieces, yarn, mainYarn, mm, true)?.at ?? null,
  };
}

/** Balls of `ballGrams` that hold so many grams: one that is begun is one. */
export function ballsOf(grams: number, ballGrams: number): number {
  return Math.ceil(grams / ballGrams);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
