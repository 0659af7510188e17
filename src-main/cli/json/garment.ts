/** The JSON of `plan --all-pieces`: what all pieces take together, and the plan of each. */
import type { GarmentNeed, YarnAmount } from '@shared/plan/index.ts';
import type { Yarn } from '@shared/project/index.ts';
import { BALL_GRAMS } from '@shared/yarn/index.ts';
import { thousandths, type PlanJson } from './plan.ts';

interface AmountJson {
  readonly metres: number;
  /** Null where the yarn's weight is not known. */
  readonly grams: number | null;
}

export interface GarmentYarnJson {
  /** Name of the yarn; the main yarn is the first. */
  readonly yarn: string;
  readonly pieces: readonly (AmountJson & {
    readonly piece: string;
    /** So many are knitted; metres and grams are for all of them. */
    readonly knit: number;
    readonly metresForOne: number;
  })[];
  /** Strands cut for wrapping; null where there are none. */
  readonly strands: AmountJson | null;
  /** Pieces and strands together, without a margin. */
  readonly total: AmountJson;
  readonly toBuy: AmountJson & {
    /** The share above the total that is in it. */
    readonly margin: number;
    /** Balls of so many grams, a ball that is begun being one; null where the yarn's weight is not known. */
    readonly balls: { readonly grams: number; readonly count: number } | null;
  };
}

export interface GarmentJson {
  /** Name of the size, or null for a project of one size. */
  readonly size: string | null;
  readonly yarn: readonly GarmentYarnJson[];
  readonly pieces: readonly PlanJson[];
}

export function garmentYarnJson({ yarns, margin }: GarmentNeed, palette: readonly Yarn[]): GarmentYarnJson[] {
  return yarns.map(({ yarn, pieces, strands, total, toBuy: { balls, ...toBuy } }) => ({
    yarn: palette[yarn]?.name ?? '',
    pieces: pieces.map(({ name, knit, oneMm, all }) => ({
      piece: name,
      knit,
      metresForOne: thousandths(oneMm / 1000),
      ...amountJson(all),
    })),
    strands: strands && amountJson(strands),
    total: amountJson(total),
    toBuy: {
      ...amountJson(toBuy),
      margin,
      balls: balls === null ? null : { grams: BALL_GRAMS, count: balls },
    },
  }));
}

function amountJson({ mm, grams }: YarnAmount): AmountJson {
  return { metres: thousandths(mm / 1000), grams: grams === null ? null : thousandths(grams) };
}
