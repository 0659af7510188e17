/**
 * Strands of a piece, from those that it had before a few cells were painted:
 * only rows that hold these are laid again, and all others stay the values
 * that they were.
 */
import type { Fabric } from '../fabric/index.ts';
import type { KnitPiece } from '../project/index.ts';
import {
  carriesAgain,
  carriesOf,
  layAgain,
  layStrands,
  wrapsAgain,
  wrapsOf,
  type LaidStrands,
  type Laying,
  type Ways,
  type Wrap,
  type WrapRules,
} from '../strands/index.ts';

/** The strands of a piece, before any float is mended. */
export interface StrandsOfPiece {
  readonly piece: KnitPiece;
  readonly fabric: Fabric;
  readonly laid: LaidStrands;
  /** Null where floats were mended: then they are worked out anew. */
  readonly onward: Onward | null;
}

/** What follows from strands as they lie. */
export interface Onward {
  readonly ways: Ways;
  readonly wraps: (Wrap[] | undefined)[];
}

/** `laid` as `layStrands` gives it. */
export function strandsAgain(
  piece: KnitPiece,
  fabric: Fabric,
  laying: Laying,
  before: StrandsOfPiece | null,
): { readonly laid: LaidStrands; readonly painted: readonly number[] | null } {
  if (before && isLikeButForCells(piece, before.piece)) {
    const again = layAgain(fabric, laying, before);
    if (again) return again;
  }
  return { laid: layStrands(fabric, laying), painted: null };
}

/** What follows from strands that were laid again on the rows of `painted`; null: on all rows. */
export function onwardAgain(
  fabric: Fabric,
  laid: LaidStrands,
  settings: Pick<Laying, 'gauges' | 'floatLimit'>,
  isCutAside: (from: number, to: number) => boolean,
  rules: WrapRules,
  painted: readonly number[] | null,
  before: StrandsOfPiece | null,
): Onward {
  if (painted && before?.onward) {
    const { ways, wraps } = before.onward;
    return {
      ways: carriesAgain(laid, settings, isCutAside, { laid: before.laid, ways, painted }),
      wraps: wrapsAgain(fabric, laid, rules, wraps, painted),
    };
  }
  return { ways: carriesOf(laid, settings, isCutAside), wraps: wrapsOf(fabric, laid, rules) };
}

/** Whether two pieces are the same in all but what the cells of their motifs are. */
export function isLikeButForCells(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  if (ArrayBuffer.isView(one)) return ArrayBuffer.isView(other) && one.byteLength === other.byteLength;
  const [keys, others] = [Object.keys(one), Object.keys(other)];
  return (
    Array.isArray(one) === Array.isArray(other) &&
    keys.length === others.length &&
    keys.every((key) => Object.hasOwn(other, key) && isLikeButForCells((one as Values)[key], (other as Values)[key]))
  );
}

interface Values {
  readonly [key: string]: unknown;
}
