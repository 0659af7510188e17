/** All that stands before the knitter: the bed, the carriage, the counter, the yarns; and the notes of what was done. */
import { Bed } from './bed.ts';
import { Choosing, type Choice } from './choosing.ts';
import type { FabricRow, WrapMade } from './fabric.ts';
import type { Machine, Patterns } from './machine.ts';
import type { Side } from './needles.ts';
import type { HungLoop, OpenStart } from './open-start.ts';
import type { ActOf } from './order.ts';
import { Strands } from './strands.ts';
import { Yarns } from './yarns.ts';

/** The tension that held at a row. */
export interface TensionOfRow {
  readonly row: number;
  readonly part: string;
  /** The section that has a tension of its own. */
  readonly section?: string | null | undefined;
  readonly text: string;
}

export interface Notes {
  readonly fabric: FabricRow[];
  /** Rows knitted before any tension was set have none. */
  readonly tensions: TensionOfRow[];
  readonly wraps: (WrapMade & { readonly yarn: string; readonly strand: string })[];
  readonly hooked: { readonly row: number; readonly needle: string; readonly yarn: string }[];
  readonly latched: {
    readonly rows: readonly [first: number, last: number];
    readonly needle: string;
    readonly yarn: string;
    /** Null where the yarn alone was told. */
    readonly ball: string | null;
  }[];
  readonly hem: { readonly reading: number; readonly loops: readonly HungLoop[] }[];
  /** Needles whose loop was moved to a neighbour before a row, so that it has a hole there. */
  readonly eyelets: { readonly row: number; readonly needles: readonly string[] }[];
  readonly finish: ActOf<'finish'>[];
  /** Needles that were pushed to where they stood already. */
  readonly needless: { readonly reading: number; readonly act: 'push-forward' | 'push-back' }[];
}

export interface RowLaid {
  readonly yarns: ReadonlyMap<number, string>;
  readonly inFeeders: ReadonlySet<string>;
  /** By the feeder or ball that each came from: the yarn, its ball where that was told, and the needles that knitted it. */
  readonly lengths: readonly {
    readonly yarn: string;
    readonly ball: string | null;
    readonly needles: ReadonlySet<number>;
  }[];
}

export class Workplace {
  readonly bed = new Bed();
  readonly yarns = new Yarns();
  readonly strands = new Strands();
  readonly choosing: Choosing;
  readonly notes: Notes = {
    fabric: [],
    tensions: [],
    wraps: [],
    hooked: [],
    latched: [],
    hem: [],
    eyelets: [],
    finish: [],
    needless: [],
  };

  /** Rows in which a setting made no difference, whatever it was. */
  readonly idle: { readonly endNeedles: number[]; readonly carriage: number[] } = { endNeedles: [], carriage: [] };

  counter = 0;
  carriage: 'plain' | 'pattern' = 'plain';
  tension: Omit<TensionOfRow, 'row'> | null = null;
  start: ActOf<'cast-on'>['how'] | null = null;
  open: OpenStart | null = null;
  hasWeights = false;
  isFinished = false;
  /** What is known of the needles of the coming row. */
  choice: Choice = 'none';
  /** The coming row joins a hem. */
  isJoining = false;
  /** Needles that came into work for the coming row. */
  readonly fresh = new Set<number>();
  /** Yarns of the row just knitted, and those that went over all needles to the edges. */
  lastRow: RowLaid | null = null;
  /** All rows, from the lowest up. */
  readonly rows: RowLaid[] = [];
  /** Needles on which a chain of floats hangs that the coming row knits in: in its own yarn. */
  readonly chained = new Map<number, string>();

  constructor(
    readonly machine: Machine,
    patterns: Patterns,
    /** Where the carriage stands. */
    public side: Side,
  ) {
    this.choosing = new Choosing(machine, patterns);
  }

  get hasNothingCastOn(): boolean {
    return this.start === null;
  }
}
