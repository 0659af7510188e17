/** The JSON of `plan --all-pieces`: what all pieces take together, and the plan of each. */
import type { GarmentNeed, RowOfPiece, YarnAmount, YarnOnHand } from '@shared/plan/index.ts';
import type { Yarn } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { PlanJson } from './plan.ts';
import { thousandths } from './thousandths.ts';

interface AmountJson {
  readonly metres: number;
  /** Null where the yarn's weight is not known. */
  readonly grams: number | null;
}

/** `number`: which one of the piece, from 1. */
interface RowJson {
  readonly piece: string;
  readonly number: number;
  readonly row: number;
}

export interface GarmentYarnJson {
  /** Name of the yarn; the main yarn is the first. */
  readonly yarn: string;
  readonly pieces: readonly (AmountJson & {
    readonly piece: string;
    /** So many are knitted; metres and grams are for all of them. */
    readonly knit: number;
    readonly metresForOne: number;
    /** Of one, what its sections take; empty where there is but one. */
    readonly sections: readonly (AmountJson & { readonly section: string })[];
  })[];
  /** Strands cut for wrapping; null where there are none. */
  readonly strands: AmountJson | null;
  /** Pieces and strands together, without a margin. */
  readonly total: AmountJson;
  /** What the total may come to, as surely as the length of a stitch is known. */
  readonly least: AmountJson;
  readonly most: AmountJson;
  readonly toBuy: AmountJson & {
    /** The share above the total that is in it. */
    readonly margin: number;
    /** Balls of so many grams, a ball that is begun being one; null where the yarn's weight is not known. */
    readonly balls: { readonly grams: number; readonly count: number } | null;
  };
  /** What is there of it; null where nobody said. */
  readonly onHand: {
    readonly grams: number;
    /** Null where the count of the yarn is not known. */
    readonly metres: number | null;
    /** The row in which it runs out; null where it is enough, or nothing can be said. */
    readonly runsOut: RowJson | null;
    /** As if every stitch took as much as it may. */
    readonly earliest: RowJson | null;
    readonly missing: AmountJson | null;
  } | null;
}

export interface GarmentJson {
  /** Name of the size, or null for a project of one size. */
  readonly size: string | null;
  readonly yarn: readonly GarmentYarnJson[];
  readonly pieces: readonly PlanJson[];
}

export function garmentYarnJson({ yarns, margin }: GarmentNeed, palette: readonly Yarn[]): GarmentYarnJson[] {
  return yarns.map(({ yarn, pieces, strands, total, least, most, ballGrams, onHand, toBuy: { balls, ...toBuy } }) => ({
    yarn: palette[yarn]?.name ?? '',
    pieces: pieces.map(({ name, knit, oneMm, sections, all }) => ({
      piece: name,
      knit,
      metresForOne: thousandths(oneMm / 1000),
      sections: sections.map(({ section, ...amount }) => ({
        section: words.sections.name(section),
        ...amountJson(amount),
      })),
      ...amountJson(all),
    })),
    strands: strands && amountJson(strands),
    total: amountJson(total),
    least: amountJson(least),
    most: amountJson(most),
    toBuy: {
      ...amountJson(toBuy),
      margin,
      balls: balls === null ? null : { grams: ballGrams, count: balls },
    },
    onHand: onHand && onHandJson(onHand),
  }));
}

function onHandJson({ grams, mm, runsOut, earliest }: YarnOnHand): NonNullable<GarmentYarnJson['onHand']> {
  const row = ({ name, number, row: at }: RowOfPiece): RowJson => ({ piece: name, number, row: at });
  return {
    grams: thousandths(grams),
    metres: mm === null ? null : thousandths(mm / 1000),
    runsOut: runsOut && row(runsOut.at),
    earliest: earliest && row(earliest),
    missing: runsOut && amountJson(runsOut.missing),
  };
}

function amountJson({ mm, grams }: YarnAmount): AmountJson {
  return { metres: thousandths(mm / 1000), grams: grams === null ? null : thousandths(grams) };
}
