/** The anchors that the patterns of a piece wish for, put on its fabric. */
import type { Machine, Run, Slot } from '../bed/index.ts';
import {
  outermostOn,
  runOn,
  type Fabric,
  type PlacedCopies,
  type PlacedPattern,
  type PlacedPatterns,
} from '../fabric/index.ts';
import { copiesOf, stripeAt, type AnchorWish } from '../pattern/index.ts';
import { edgesAt } from '../piece/index.ts';
import type { OwnBall } from '../strands/index.ts';
import { saidOfNeedles } from './by-hand.ts';
import { Cells } from './cells.ts';
import { brokenCopies, type BrokenCopies } from './copies.ts';
import type { CopyFloat } from './in-copy.ts';
import { anchorsInFloat, looseStretches, OPEN, WANTED } from './in-float.ts';
import { longFloats, longFloatsOfMain, type LongFloat } from './long-floats.ts';
import { periodOf, type Period } from './period.ts';
import type { Anchored, LooseFloat } from './types.ts';

/** What anchors are put on, and for whom. */
export interface Anchoring {
  readonly placed: Pick<PlacedPatterns, 'outline' | 'patterns'>;
  /** What each pattern wishes, in their order. */
  readonly wishes: readonly (AnchorWish | null)[];
  /** Palette index of the main yarn. */
  readonly main: number;
  readonly ownBalls: readonly OwnBall[];
  /** Rows (1-based) on which end-needle selection is on: it chooses their outermost needles, whatever the pattern has there. */
  readonly endNeedleRows: ReadonlySet<number>;
  readonly chooses: Machine['chooses'];
}

/**
 * The fabric with the anchors that its patterns wish for. First those that are
 * alike in all copies of a motif, then, row by row from below, those of the
 * floats that are left: between groups, and to the edges of the piece. Each of
 * these is broken exactly for what the rows below took, and not the rows together.
 *
 * `drawn` is the fabric without what only binds the contrast in: what it has in
 * contrast is figure. A float belongs to the patterns that its ends do; where
 * those wish for different lengths the shorter one counts.
 */
export function withAnchors(fabric: Fabric, drawn: Fabric, anchoring: Anchoring): Anchored {
  const wishing = anchoring.placed.patterns.flatMap((pattern, index) => {
    const wish = anchoring.wishes[index];
    return wish ? [{ index, pattern, wish }] : [];
  });
  if (wishing.length === 0) return { fabric, rows: [], loose: [] };
  return new Bench(fabric, drawn, anchoring, wishing).anchored();
}

interface Wishing {
  readonly index: number;
  readonly pattern: PlacedPattern;
  readonly wish: AnchorWish;
}

class Bench {
  readonly #cells: Cells;
  readonly #asked: Anchoring;
  readonly #wishing: readonly Wishing[];
  readonly #loose: (LooseFloat[] | undefined)[] = [];
  readonly #rows: (readonly Slot[] | undefined)[] = [];
  readonly #period: Period | null;

  constructor(fabric: Fabric, drawn: Fabric, asked: Anchoring, wishing: readonly Wishing[]) {
    this.#cells = new Cells(fabric, drawn, asked.main);
    this.#asked = asked;
    this.#wishing = wishing;
    this.#period = periodOf(fabric, drawn, asked.placed);
  }

  anchored(): Anchored {
    for (const { pattern, wish } of this.#wishing) {
      for (const copies of brokenCopies(pattern, wish, this.#asked.main)) this.#layCopies(copies);
    }
    const from = Math.min(...this.#wishing.map(({ pattern }) => pattern.firstRow));
    const to = Math.max(...this.#wishing.map(({ pattern }) => pattern.lastRow));
    const isOfTwoYarns = this.#contrasts() === 1;
    for (let row = from; row <= to;) row = this.#repeated(row) ?? this.#rest(row, isOfTwoYarns);
    return { fabric: this.#cells.done(), rows: this.#rows, loose: this.#loose };
  }

  /** Breaks what is left in a row; gives the next row. */
  #rest(row: number, isOfTwoYarns: boolean): number {
    this.#layRest(row, isOfTwoYarns);
    const anchors = this.#cells.anchorsIn(row);
    const before = this.#period ? this.#rows[row - 1 - this.#period.rows] : undefined;
    this.#rows[row - 1] = isSameRun(anchors, before) ? before : anchors;
    return row + 1;
  }

  /** Takes over rows that are as those a period below them, with the same anchors under them; gives the next row, or null. */
  #repeated(row: number): number | null {
    const period = this.#period;
    if (!period || !period.isRepeated(row) || this.#rows[row - 2] !== this.#rows[row - 2 - period.rows]) return null;
    let last = row;
    while (last + 1 < row + period.rows && period.isRepeated(last + 1)) last++;
    this.#cells.copyRows(row, last, period.rows);
    for (let at = row - 1; at < last; at++) {
      this.#rows[at] = this.#rows[at - period.rows];
      this.#loose[at] = this.#loose[at - period.rows];
    }
    return last + 1;
  }

  /** How many contrasts the copies that are placed may be knitted in. */
  #contrasts(): number {
    const yarns = new Set<number>();
    for (const { copy, colours } of this.#asked.placed.patterns.flatMap((pattern): readonly PlacedCopies[] =>
      copiesOf(pattern),
    )) {
      for (const stripe of colours?.order.stripes ?? []) for (const { knitted } of stripe.yarns) yarns.add(knitted);
      for (const cell of copy.cells) if (cell !== this.#asked.main) yarns.add(cell);
    }
    return yarns.size;
  }

  #layCopies({ place, period, step, rows }: BrokenCopies): void {
    const { firstRow, lastRow, origin } = place;
    for (let row = firstRow; row <= lastRow; row++) {
      const again = this.#period;
      if (again?.isRepeated(row)) {
        let last = row;
        while (last + 1 < row + again.rows && again.isRepeated(last + 1)) last++;
        this.#cells.copyRows(row, last, again.rows);
        row = last;
        continue;
      }
      const floats = rows[(row - firstRow) % period];
      if (!floats || floats.length === 0) continue;
      const run = runOn(place, this.#asked.placed.outline, row);
      if (!run) continue;
      const from = origin + Math.floor((row - firstRow) / period) * step;
      // Above and below there may be other figure than the copies know of.
      const isAtEdge = row === firstRow || row === lastRow;
      const stripe = place.colours && stripeAt(place.colours.order, row - place.colours.from);
      for (const float of floats) {
        const yarn = stripe?.yarns.find(({ drawn }) => drawn === float.yarn)?.knitted ?? float.yarn;
        this.#layInRow({ ...float, yarn }, row, run, from, place.copy.width, isAtEdge);
      }
    }
  }

  /** Lays a float of a copy in all copies of a row that have it whole. */
  #layInRow(float: CopyFloat, row: number, run: Run, origin: number, width: number, isAtEdge: boolean): void {
    const cells = this.#cells;
    const { yarn, first, length, anchors, loose } = float;
    const isOfMain = yarn === this.#asked.main;
    // Main goes on beside the copies, a contrast does not.
    const beside = isOfMain ? 0 : 1;
    const begin = origin + first;
    let at = begin + Math.ceil((run.first + beside - begin) / width) * width;
    for (; at + length - 1 + beside <= run.last; at += width) {
      if (!cells.isFloat(row, at, length, yarn)) continue;
      const isChecked = isAtEdge || isOfMain;
      if (
        isChecked &&
        anchors.some((offset) => !this.#isFree(row, at + offset, yarn) || cells.isStacked(row, at + offset))
      )
        continue;
      for (const offset of anchors) cells.anchor(row, at + offset, yarn);
      for (const stretch of loose) cells.leave(row, at + stretch.first);
    }
  }

  /** Breaks what is left in a row, a float at a time. */
  #layRest(row: number, isOfTwoYarns: boolean): void {
    const here = this.#wishing.filter(({ pattern }) => row >= pattern.firstRow && row <= pattern.lastRow);
    if (here.length === 0) return;
    const { ownBalls, placed } = this.#asked;
    const edges = edgesAt(placed.outline, row);
    const longest = Math.min(...here.map(({ wish }) => wish.longest));
    const balls = ownBalls.filter(({ firstRow, lastRow }) => row >= firstRow && row <= lastRow);
    for (const float of longFloats(this.#cells, row, edges, longest, balls, isOfTwoYarns))
      this.#breakAlone(float, row, here, balls);
    const behind = here.filter(({ wish }) => wish.isBehindFigure);
    if (behind.length === 0) return;
    const least = Math.min(...behind.map(({ wish }) => wish.longest));
    let isAnchored = false;
    for (const float of longFloatsOfMain(this.#cells, row, edges, least)) {
      isAnchored = this.#breakAlone(float, row, behind, balls) || isAnchored;
    }
    if (!isAnchored) return;
    // Anchors of main took stitches from contrasts: what floats is not what it was.
    this.#loose[row - 1] = undefined;
    const still = (floats: readonly LongFloat[], of: readonly Wishing[]): void => {
      for (const { yarn, first, last } of floats) {
        const { index: pattern, wish } = this.#ownerOf(first, last, row, of);
        if (last - first >= wish.longest) this.#leave(row, { yarn, pattern, first: first as Slot, last: last as Slot });
      }
    };
    still(longFloats(this.#cells, row, edges, longest, balls, isOfTwoYarns), here);
    still(longFloatsOfMain(this.#cells, row, edges, least), behind);
  }

  /** Breaks a float of a row; false where it took no anchor. */
  #breakAlone(
    { first, last, yarn, ball }: LongFloat,
    row: number,
    here: readonly Wishing[],
    balls: readonly OwnBall[],
  ): boolean {
    const cells = this.#cells;
    const length = last - first + 1;
    const owner = this.#ownerOf(first, last, row, here);
    const { index: pattern, wish } = owner;
    if (length <= wish.longest) return false;
    if (cells.isLeft(row, first)) {
      this.#leave(row, { yarn, pattern, first: first as Slot, last: last as Slot });
      return false;
    }
    const said = saidOfNeedles(wish, owner.pattern, this.#asked.placed.outline, row, first, last);
    const needles = new Uint8Array(length);
    for (let at = 0; at < length; at++) {
      const needle = first + at;
      if (!this.#isFree(row, needle, yarn) || cells.isStacked(row, needle)) continue;
      if (balls.length > 0 && yarn !== this.#asked.main && ballAt(balls, needle) !== ball) continue;
      const is = said.get(needle);
      if (is !== 'never') needles[at] = is === 'always' ? WANTED : OPEN;
    }
    const anchors = anchorsInFloat(needles, wish.longest).filter((at) => {
      // Another of them may have made the stitch of a contrast needed that was not before.
      const isFree = yarn !== this.#asked.main || this.#isFree(row, first + at, yarn);
      if (isFree) cells.anchor(row, first + at, yarn);
      return isFree;
    });
    for (const stretch of looseStretches(length, anchors, wish.longest)) {
      this.#leave(row, {
        yarn,
        pattern,
        first: (first + stretch.first) as Slot,
        last: (first + stretch.last) as Slot,
      });
    }
    return anchors.length > 0;
  }

  /**
   * Whether a needle may take an anchor. One of main takes a stitch from a
   * contrast, whose float is not to become too long by it; and what end-needle
   * selection chooses knits contrast.
   */
  #isFree(row: number, needle: number, yarn: number): boolean {
    const { main, endNeedleRows, chooses, placed } = this.#asked;
    if (!this.#cells.isFree(row, needle, yarn)) return false;
    if (yarn !== main) return true;
    if (this.#cells.isNeeded(row, needle, edgesAt(placed.outline, row), this.#longestOn(row))) return false;
    if (!endNeedleRows.has(row)) return true;
    const { first, last } = outermostOn(placed.outline, row, chooses);
    return needle !== first && needle !== last;
  }

  /** The shortest that is wished for on a row. */
  #longestOn(row: number): number {
    const here = this.#wishing.filter(({ pattern }) => row >= pattern.firstRow && row <= pattern.lastRow);
    return Math.min(...here.map(({ wish }) => wish.longest));
  }

  #leave(row: number, float: LooseFloat): void {
    (this.#loose[row - 1] ??= []).push(float);
  }

  /** The pattern that wishes for the shortest floats of those in which one ends, or where none does of all on the row. */
  #ownerOf(first: number, last: number, row: number, here: readonly Wishing[]): Wishing {
    const [only] = here;
    if (here.length === 1) return only as Wishing;
    const { outline } = this.#asked.placed;
    const ends = here.filter(({ pattern }) =>
      copiesOf(pattern).some((place) => {
        const run = row < place.firstRow || row > place.lastRow ? null : runOn(place, outline, row);
        const has = (needle: number): boolean => run !== null && needle >= run.first && needle <= run.last;
        return has(first - 1) || has(last + 1) || has(first) || has(last);
      }),
    );
    return (ends.length > 0 ? ends : here).reduce((shortest, one) =>
      one.wish.longest < shortest.wish.longest ? one : shortest,
    );
  }
}

/** The group whose own ball knits a needle, or null. */
export function ballAt(balls: readonly OwnBall[], needle: number): number | null {
  return balls.find(({ first, last }) => needle >= first && needle <= last)?.group ?? null;
}

function isSameRun(one: readonly Slot[] | undefined, other: readonly Slot[] | undefined): boolean {
  if (!one || !other) return one === other;
  return one.length === other.length && one.every((needle, at) => needle === other[at]);
}
