/** How much yarn a piece takes. Lengths in mm unless the name says otherwise. */
import type { Side } from '../bed/index.ts';
import type { Gauge } from '../piece/index.ts';
import type { StrandId } from '../strands/index.ts';

export interface YarnUse {
  /** Palette index. */
  readonly yarn: number;
  readonly role: 'main' | 'contrast';
  /** Strands wound off separately: one, or one a group with balls of their own. */
  readonly balls: number;
  readonly stitches: number;
  readonly stitchesMm: number;
  readonly floatsMm: number;
  readonly carriesMm: number;
  /** Ends to darn in; main's are counted with its cast-on, not here. */
  readonly tailsMm: number;
  /** All of the above. */
  readonly totalMm: number;
  /** Mass of the total, or null where the yarn's tex is not known. */
  readonly grams: number | null;
}

export interface YarnNeed {
  /** Length of yarn in one stitch at each gauge, in the order in which they come up the piece. */
  readonly loops: readonly { readonly gauge: Gauge; readonly mm: number }[];
  /** Main first, then each contrast by palette index. */
  readonly uses: readonly YarnUse[];
  /** Share to add when winding off, e.g. 0.1. Not in the totals. */
  readonly margin: number;
}

/** The strands of main to cut for wrapping one edge of one strand's figure. */
export interface WrapStrand {
  readonly strand: StrandId;
  /** `both`: the figure is narrow enough for one strand folded in two. */
  readonly edge: Side | 'both';
  readonly firstRow: number;
  readonly lastRow: number;
  readonly wraps: number;
  /** To cut, tails included. */
  readonly mm: number;
}
