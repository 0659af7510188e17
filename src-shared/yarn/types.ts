/** How much yarn a piece takes. Lengths in mm unless the name says otherwise. */
import type { Side } from '../bed/index.ts';
import type { Gauge } from '../piece/index.ts';
import type { StrandId } from '../strands/index.ts';

/** What is knitted with yarn, and how long the yarn for it is. */
interface Use {
  readonly stitches: number;
  readonly stitchesMm: number;
  readonly floatsMm: number;
  readonly carriesMm: number;
  /** Ends to darn in, also where a strand is cut and joined again; main's at the cast-on and the end are counted there. */
  readonly tailsMm: number;
  /** All of the above. */
  readonly totalMm: number;
}

/** A ball that is wound off by itself. */
export interface BallUse extends Use {
  /** Index of the group whose own ball it is, or null for a ball that serves all others. */
  readonly group: number | null;
}

/** All of a yarn, of one ball or of several. */
export interface YarnUse extends Use {
  /** Palette index. */
  readonly yarn: number;
  readonly role: 'main' | 'contrast';
  /** At least one, in the order in which they are first used. */
  readonly balls: readonly BallUse[];
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
