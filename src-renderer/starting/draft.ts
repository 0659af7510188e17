/** What the dialog for a new project is filled in with, until it is created or left. */
import { START_PIECE, type MotifSize, type NewPieceKind } from '@shared/project/index.ts';
import type { Gauge } from '@shared/piece/index.ts';

export type Aim = 'motif' | 'piece';

interface Sizes {
  readonly widthMm: number;
  readonly topMm: number;
  readonly lengthMm: number;
}

export interface Draft extends Sizes {
  readonly aim: Aim;
  readonly kind: NewPieceKind;
  readonly gauge: Gauge;
  readonly hemMm: number;
  readonly seam: number;
  readonly isInfant: boolean;
  readonly hasMotif: boolean;
  readonly motif: MotifSize;
}

/**
 * Measurements to begin from, in mm, about those of a woman's medium in the
 * Craft Yarn Council's standard sizes (from memory): whoever measures types
 * over them.
 */
const BEGIN_FROM: { readonly [Kind in NewPieceKind]: Sizes } = {
  sleeve: { widthMm: 200, topMm: 320, lengthMm: 430 },
  body: { widthMm: 480, topMm: 480, lengthMm: 560 },
  round: { widthMm: 540, topMm: 540, lengthMm: 220 },
  square: { widthMm: 200, topMm: 200, lengthMm: 200 },
};

export function startDraft(aim: Aim): Draft {
  return {
    aim,
    kind: 'sleeve',
    ...BEGIN_FROM.sleeve,
    gauge: START_PIECE.gauge,
    hemMm: 0,
    seam: 1,
    isInfant: false,
    hasMotif: false,
    motif: { width: 24, height: 24 },
  };
}

/** Another kind has other measurements; its seam is that of what is sewn up. */
export function ofKind(draft: Draft, kind: NewPieceKind): Draft {
  return { ...draft, kind, ...BEGIN_FROM[kind], seam: kind === 'square' ? 0 : 1 };
}
