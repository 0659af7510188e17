/**
 * The running order: what a knitter does from casting on to casting off.
 *
 * Stops and stretches, complete and in order. A stop is one reading of the row
 * counter with everything to do there, and the row that follows belongs to it;
 * a stretch is rows between two stops before which there is nothing to do.
 * Row n is knitted while the counter goes from n − 1 to n.
 */
import type { Run, Side, Slot } from '../../bed/index.ts';
import type { MotifId } from '../../motif/index.ts';
import type { PatternName } from '../../pattern/index.ts';
import type { Piece, Tension } from '../../piece/index.ts';

/** Palette index of a yarn. */
export type YarnIndex = number;

/** The first feeder knits the needles that stand back, the second those that stand forward. */
export type Feeder = 1 | 2;

/** What the machine is told of one group of a pattern: copies side by side. */
export interface FirstNeedles {
  /** Leftmost needle of its first copy. Of an all-over, of the first copy that is whole. */
  readonly needle: Slot;
  /** Rightmost needle of its last copy. */
  readonly last: Slot;
  readonly motif: MotifId;
  /** Side by side. */
  readonly copies: number;
  /** The chart as drawn lies the other way round on the needles. */
  readonly isMirrored: boolean;
}

/** The rows that a tension belongs to; those of a section with a tension of its own by its name. */
export type TensionPart = Exclude<keyof Tension, 'waste'> | { readonly section: string };

/** How the piece begins on the needles. */
export type CastOnHow = Exclude<Piece['begins'], 'usual'>;

/** One thing to do. */
export type Act =
  /** All needles of row 1. `wasteRows` are knitted below an open start, 0 elsewhere; `wasteTension` as the knitter wrote it. */
  | {
      readonly kind: 'cast-on';
      readonly needles: Run;
      readonly yarn: YarnIndex;
      /** Of a closed start whose yarn goes into the feeder with a number: it is one length with what is fed. */
      readonly ball: number | null;
      readonly how: CastOnHow;
      readonly wasteRows: number;
      readonly wasteTension: string;
    }
  /** The row counter is set to `reading`. */
  | { readonly kind: 'counter'; readonly reading: number }
  /** From the next row on. `text` as the knitter wrote it; empty where the part alone says enough. */
  | { readonly kind: 'tension'; readonly part: TensionPart; readonly text: string }
  /**
   * `ball`: the number of a yarn that is laid by hand on other rows, or of a group's own
   * ball that another length of its yarn waits beside; null for one that its yarn alone tells.
   */
  | { readonly kind: 'thread'; readonly feeder: Feeder; readonly yarn: YarnIndex; readonly ball: number | null }
  /** Out of its feeder: it waits at a needle for a later row, or is cut with a tail. */
  | {
      readonly kind: 'unthread';
      readonly feeder: Feeder;
      readonly yarn: YarnIndex;
      readonly ball: number | null;
      readonly waitsAt: Slot | 'cut';
      /** What is left of it where it is cut: the last of a piece is long enough to cast off with. Null where it waits. */
      readonly tailMm: number | null;
    }
  | { readonly kind: 'carriage'; readonly set: 'plain' | 'pattern' }
  /** Whether the passes from the next one on choose the needles of the rows after them. */
  | { readonly kind: 'selecting'; readonly isOn: boolean }
  /** Whether they bring the edge needles forward too. */
  | { readonly kind: 'end-needles'; readonly isOn: boolean }
  /** The pattern is set so that the next pass chooses the needles of `row`. */
  | {
      readonly kind: 'first-needles';
      /** The pattern whose rows the machine is set for, or several that share rows. */
      readonly patterns: readonly PatternName[];
      readonly row: number;
      readonly groups: readonly FirstNeedles[];
    }
  /** Needles that come into work, and those whose loops move inwards before they go: from left to right. */
  | { readonly kind: 'increase' | 'decrease'; readonly edge: Side; readonly needles: readonly Slot[] }
  /** More than one stitch, with the yarn where the carriage stands. */
  | { readonly kind: 'cast-off' | 'cast-on-more'; readonly edge: Side; readonly needles: Run }
  /** A row of eyelets: the loop of each needle moves to its neighbour on the left, and the needle stays in work. */
  | { readonly kind: 'eyelets'; readonly needles: readonly Slot[] }
  | { readonly kind: 'push-forward' | 'push-back'; readonly needles: readonly Slot[] }
  /** `strand` is the number of the strand, from 1. */
  | {
      readonly kind: 'wrap';
      readonly needle: Slot;
      readonly edge: Side;
      readonly yarn: YarnIndex;
      readonly strand: number;
    }
  /** A wrapping strand is taken up, or worked in. `mm`: its whole length, as it was cut. */
  | { readonly kind: 'strand'; readonly strand: number; readonly at: 'start' | 'end'; readonly mm: number }
  /**
   * Yarn of a ball laid by hand into the hooks of needles that stand forward.
   * Balls are counted from 1. It is crossed with the yarns of the balls
   * `crosses`, laid before it for this row right beside it.
   */
  | {
      readonly kind: 'lay';
      readonly ball: number;
      readonly yarn: YarnIndex;
      readonly needles: readonly Run[];
      readonly crosses: readonly number[];
    }
  /**
   * A ball that was laid by hand on the row before ends there, or is joined
   * again further up. No ball: the yarn that was cast on with, and that no row knits.
   */
  | { readonly kind: 'cut'; readonly ball: number | null; readonly yarn: YarnIndex; readonly tailMm: number }
  /** The open loops of the cast-on are hung, one to a needle: whole ones and, at `edgeLoop`, one half loop. */
  | { readonly kind: 'hang-hem'; readonly needles: Run; readonly loops: number; readonly edgeLoop: Side }
  | { readonly kind: 'remove-waste' }
  /** A float of the row just knitted is hung on a needle above it. */
  | { readonly kind: 'hook-up'; readonly needle: Slot; readonly yarn: YarnIndex; readonly float: Run }
  /**
   * The floats behind a needle on the rows `first` … `last`, the last the one
   * just knitted, latched up into a chain whose last loop is hung on it.
   * `ball`: of which ball they are, where another of the yarn floats there too.
   */
  | {
      readonly kind: 'latch-up';
      readonly needle: Slot;
      readonly yarn: YarnIndex;
      readonly ball?: number;
      readonly first: number;
      readonly last: number;
    }
  | { readonly kind: 'weights'; readonly do: 'hang' | 'move' | 'off' }
  /** So many needles stand forward for the next row, the outermost of them `first` and `last`. */
  | { readonly kind: 'check'; readonly forward: number; readonly first: Slot; readonly last: Slot }
  /** `mm` of yarn is left at the edge for it; null where it takes none. */
  | {
      readonly kind: 'finish';
      readonly how: Piece['ends'];
      readonly needles: Run;
      readonly startsAt: Side;
      readonly mm: number | null;
    };

export type ActKind = Act['kind'];
export type ActOf<Kind extends ActKind> = Extract<Act, { readonly kind: Kind }>;

/** What holds while a row is knitted, once everything before it is done. */
export interface Holding {
  /** The needles in work. */
  readonly needles: Run;
  /** In `pattern` the needles that stand forward take the second yarn, in `plain` all take the first. */
  readonly carriage: 'plain' | 'pattern';
  /** The pass chooses the needles of the row after it. */
  readonly isSelecting: boolean;
  readonly feeders: { readonly [Place in Feeder]: YarnIndex | null };
}

/** A reading of the row counter, what is done there, and the row that follows. */
export interface Stop extends Holding {
  readonly kind: 'stop';
  /** The same in the order of the next plan where the stop is at the same reading. */
  readonly id: string;
  readonly counter: number;
  /** The row that follows, `counter` + 1; null at the end. */
  readonly row: number | null;
  readonly carriageAt: Side;
  /** As hands do them. */
  readonly acts: readonly Act[];
}

/** The rows `first` … `last`, before which there is nothing to do; `carriageAt`: before the first. */
export interface Stretch extends Holding {
  readonly kind: 'stretch';
  readonly first: number;
  readonly last: number;
  readonly carriageAt: Side;
}

/** From the cast-on, always the first stop, to the finish, always the last. */
export type RunningOrder = readonly (Stop | Stretch)[];
