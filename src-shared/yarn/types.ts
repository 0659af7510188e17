/** How much yarn a piece takes. Lengths in mm unless the name says otherwise. */
import type { Side } from '../bed/index.ts';
import type { Gauge } from '../piece/index.ts';
import type { StrandId } from '../strands/index.ts';
import type { Finishing } from './finishing.ts';
import type { LoopsFrom } from './loops.ts';

/** What is knitted with yarn, and how long the yarn for it is. */
interface Use {
  readonly stitches: number;
  readonly stitchesMm: number;
  readonly floatsMm: number;
  readonly carriesMm: number;
  /** Ends to darn in: two of each strand, and two more where it is cut and joined again. */
  readonly tailsMm: number;
  /** For casting off and for sewing up, in the middle of what they take; 0 for a contrast. */
  readonly castOffMm: number;
  readonly sewingMm: number;
  /** All of the above. */
  readonly totalMm: number;
}

/** A ball that is wound off by itself. */
export interface BallUse extends Use {
  /** Index of the group whose own ball it is, or null for a ball that serves all others. */
  readonly group: number | null;
  /** The first and last row that it is knitted on; 0 for main of a piece that is all contrast. */
  readonly firstRow: number;
  readonly lastRow: number;
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
  /** What the total may come to, as surely as the length of a stitch is known. */
  readonly leastMm: number;
  readonly mostMm: number;
}

export interface YarnNeed {
  /** Length of yarn in one stitch at each gauge, in the order in which they come up the piece. */
  readonly loops: readonly { readonly gauge: Gauge; readonly mm: number }[];
  /** Where these lengths come from, and by which share they may be less or more. */
  readonly from: LoopsFrom;
  readonly share: number;
  readonly finishing: Finishing;
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
