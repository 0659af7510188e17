/** Follows every strand along a row and notes where it floats. */
import { widthOf, type Run, type Slot } from '../bed/index.ts';
import { internSpans } from './interned.ts';
import type { Float, StrandId } from './types.ts';

/** A contrast strand in a row: the outermost needles it knits, as slots. */
export interface StrandRun {
  readonly first: Slot;
  readonly last: Slot;
  /** Index into the strands of the piece. */
  readonly strand: number;
}

/** Floats are laid first and held later, where they are. */
const NOT_HELD: readonly never[] = [];

/** Index of the main yarn among the strands. */
export const MAIN_STRAND = 0;

/** A row as it was laid. */
interface LaidOfRow {
  readonly contrast: readonly (Run & { readonly yarn: number })[];
  readonly floats: readonly Float[];
  readonly strands: readonly StrandRun[];
  readonly isMainKnitted: boolean;
}

export interface LayerSettings {
  /** Palette index of the main yarn. */
  readonly main: number;
  /** Slot of column 0. */
  readonly firstSlot: number;
}

/** What a float of so many stitches means on the rows of one gauge. */
export interface FloatScale {
  readonly stitchWidthMm: number;
  /** Floats of more stitches are over the limit. */
  readonly longest: number;
}

/** What one strand that knits in a row has of it. */
export interface RowShare {
  /** Index into the strands of the piece. */
  readonly strand: number;
  readonly stitches: number;
  readonly floated: number;
}

/** What the strands do on the rows of one scale, by strand. */
export interface ScaleTotals {
  readonly stitches: readonly number[];
  readonly floated: readonly number[];
}

/** The same, while it grows. */
interface Counted {
  readonly scale: FloatScale;
  readonly stitches: number[];
  readonly floated: number[];
  readonly floatOf: ((first: number, last: number) => Float)[];
}

/**
 * Fed with the runs of each row from left to right, in columns:
 * `startRow`, `knit` for each run, `endRow`. Rows of another scale begin with
 * `changeScale`; a piece of one gauge has one scale, and pays for no more.
 */
export class StrandLayer {
  /** Index 0 is main, the others stand in the order in which they first knit. */
  readonly strands: StrandId[] = [];
  /** The first and last row in which each strand knits; 0 where it does not. */
  readonly firstRow: number[] = [];
  readonly lastRow: number[] = [];

  private readonly settings: LayerSettings;
  private readonly indices = new Map<number, number>();
  private readonly runOf: ((first: number, last: number) => StrandRun)[] = [];
  private readonly firstAt: number[] = [];
  private readonly lastAt: number[] = [];

  private readonly byScale = new Map<FloatScale, Counted>();
  private counted: Counted;

  private row = 0;
  private inRow: number[] = [];
  /** Floats of the row so far; kept from row to row, since growing a new list each time costs more than all else. */
  private readonly floats: Float[] = [];
  private floatCount = 0;
  private isOver = false;

  /** `strands`: those that are known already, main first; more are added as they come. */
  constructor(settings: LayerSettings, scale: FloatScale, strands?: readonly StrandId[]) {
    this.settings = settings;
    this.counted = this.countedOn(scale);
    for (const strand of strands ?? [{ yarn: settings.main, role: 'main', group: null } as const]) {
      const index = this.add(strand);
      if (index !== MAIN_STRAND) this.indices.set(keyOf(strand.yarn, strand.group), index);
    }
  }

  /** The strand of `yarn` from the ball of `group`, or from the shared ball for null. */
  strandOf(yarn: number, group: number | null): number {
    const key = keyOf(yarn, group);
    let index = this.indices.get(key);
    if (index === undefined) {
      index = this.add({ yarn, role: 'contrast', group });
      this.indices.set(key, index);
    }
    return index;
  }

  /** The rows that follow are of this scale. */
  changeScale(scale: FloatScale): void {
    this.counted = this.countedOn(scale);
  }

  /** What was done on the rows of a scale; 0 for strands that are not on them. */
  totalsOn(scale: FloatScale): ScaleTotals {
    return this.countedOn(scale);
  }

  /** Begins a row whose leftmost needle is in `firstColumn`. */
  startRow(firstColumn: number): void {
    this.row++;
    this.inRow = [];
    this.floatCount = 0;
    this.isOver = false;
    this.lastAt[MAIN_STRAND] = firstColumn - 1;
  }

  /** The strand knits the columns `first` … `last`, right of all it has knitted in this row. */
  knit(strand: number, first: number, last: number): void {
    if (this.lastRow[strand] !== this.row) {
      this.firstRow[strand] ||= this.row;
      this.lastRow[strand] = this.row;
      if (strand !== MAIN_STRAND) {
        this.inRow.push(strand);
        this.firstAt[strand] = first;
        this.lastAt[strand] = first - 1;
      }
    }
    this.floatBefore(strand, first);
    this.lastAt[strand] = last;
    const { stitches } = this.counted;
    stitches[strand] = (stitches[strand] as number) + last - first + 1;
  }

  /**
   * Ends the row at `lastColumn`; gives its floats, in the order of their last
   * needles, whether any of them is over the limit, its contrast strands, and
   * whether main knits in it. Where it does not, main waits and lies nowhere.
   */
  endRow(lastColumn: number): {
    floats: readonly Float[];
    isOver: boolean;
    strands: readonly StrandRun[];
    isMainKnitted: boolean;
  } {
    const strands = this.inRow.map((strand) =>
      (this.runOf[strand] as (first: number, last: number) => StrandRun)(
        this.firstAt[strand] as number,
        this.lastAt[strand] as number,
      ),
    );
    const isMainKnitted = this.lastRow[MAIN_STRAND] === this.row;
    if (isMainKnitted) this.floatBefore(MAIN_STRAND, lastColumn + 1);
    return { floats: this.floats.slice(0, this.floatCount), isOver: this.isOver, strands, isMainKnitted };
  }

  /**
   * What each strand has of a row of `width` needles that was laid without balls
   * of groups: contrast comes from the shared ball of its yarn.
   */
  sharesOf(row: LaidOfRow, width: number): RowShare[] {
    const ofContrast = row.strands.map(({ strand }) => {
      const { yarn } = this.strands[strand] as StrandId;
      return { strand, stitches: stitchesIn(row.contrast.filter((run) => run.yarn === yarn)) };
    });
    const main = { strand: MAIN_STRAND, stitches: width - stitchesIn(row.contrast) };
    return (row.isMainKnitted ? [main, ...ofContrast] : ofContrast).map((share) => {
      const own = row.floats.filter(({ strand }) => strand === this.strands[share.strand]);
      return { ...share, floated: stitchesIn(own) };
    });
  }

  /** The next row is one again that was laid before, on the same scale. */
  repeatRow(shares: readonly RowShare[]): void {
    this.row++;
    const { stitches, floated } = this.counted;
    for (const share of shares) {
      const { strand } = share;
      this.lastRow[strand] = this.row;
      stitches[strand] = (stitches[strand] as number) + share.stitches;
      floated[strand] = (floated[strand] as number) + share.floated;
    }
  }

  private floatBefore(strand: number, column: number): void {
    const first = (this.lastAt[strand] as number) + 1;
    if (column <= first) return;
    const { floatOf, floated, scale } = this.counted;
    this.floats[this.floatCount++] = (floatOf[strand] as (first: number, last: number) => Float)(first, column - 1);
    floated[strand] = (floated[strand] as number) + column - first;
    if (column - first > scale.longest) this.isOver = true;
  }

  private countedOn(scale: FloatScale): Counted {
    let counted = this.byScale.get(scale);
    if (!counted) {
      counted = { scale, stitches: [], floated: [], floatOf: [] };
      this.byScale.set(scale, counted);
      for (const strand of this.strands) this.count(counted, strand);
    }
    return counted;
  }

  /** One float for each span of a strand, as long as the scale makes it. */
  private count({ scale, stitches, floated, floatOf }: Counted, strand: StrandId): void {
    const { firstSlot } = this.settings;
    stitches.push(0);
    floated.push(0);
    floatOf.push(
      internSpans((first, last) => {
        const length = last - first + 1;
        return {
          strand,
          first: (firstSlot + first) as Slot,
          last: (firstSlot + last) as Slot,
          stitches: length,
          mm: length * scale.stitchWidthMm,
          isOver: length > scale.longest,
          held: NOT_HELD,
        };
      }),
    );
  }

  private add(strand: StrandId): number {
    const { firstSlot } = this.settings;
    const index = this.strands.push(strand) - 1;
    this.firstRow.push(0);
    this.lastRow.push(0);
    for (const counted of this.byScale.values()) this.count(counted, strand);
    this.runOf.push(
      internSpans((first, last) => ({
        first: (firstSlot + first) as Slot,
        last: (firstSlot + last) as Slot,
        strand: index,
      })),
    );
    return index;
  }
}

/** Palette indices are below 256, so yarn and group make one number. */
function keyOf(yarn: number, group: number | null): number {
  return (group === null ? 0 : group + 1) * 256 + yarn;
}

function stitchesIn(runs: readonly Run[]): number {
  return runs.reduce((sum, run) => sum + widthOf(run), 0);
}
