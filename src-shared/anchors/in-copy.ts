/**
 * Anchors of one copy of a motif, alike in all copies that stand beside it and
 * above it.
 *
 * Row by row from the lowest up, each float by itself: what a row takes is not
 * there for the row above. A row that is worse off for it changes places with
 * the one below, which then takes what is left to it, if the two together are
 * better broken so. Each row is exact for what the rows beside it took; all
 * rows together are not always the best that can be: of stacks of two and three
 * rows one or two in a hundred could leave less loose or take fewer, which only a
 * search over all of their choices would find. A copy meets itself: on both sides where copies
 * stand side by side, above and below where there are several tiers. Floats
 * from one copy into the next are floats like those inside.
 */
import { modulo } from '../grid/index.ts';
import { spansOf, type CopyWithFloats, type Span } from './copy-spans.ts';
import { anchorsInFloat, CLOSED, looseStretches, neededInFloat, OPEN, WANTED, type LooseStretch } from './in-float.ts';

/** What is asked for one copy. */
export interface CopyQuestion extends CopyWithFloats {
  /** Other copies stand above and below it. */
  readonly isAboveItself: boolean;
  /** Columns to the right by which the copy above is moved. */
  readonly step: number;
  /** Cells (`row * width + column`) that a person forbids. */
  readonly never: ReadonlySet<number>;
  /** Cells that a person wants, as far as they may take an anchor and break a float. */
  readonly always: ReadonlySet<number>;
}

/** A float over the limit in a row of a copy. */
export interface CopyFloat {
  /** Palette index. */
  readonly yarn: number;
  /** Its first column, from 0 to the width less one, and how many it lies behind; from the last column it goes on at the first. */
  readonly first: number;
  readonly length: number;
  /** Needles of the float, from 0, that take an anchor of its yarn. */
  readonly anchors: readonly number[];
  /** What no anchor can break. */
  readonly loose: readonly LooseStretch[];
  /** How many anchors it would take if no other row had any. */
  readonly least: number;
}

/** The floats over the limit of each row of a copy, index 0 the lowest, and their anchors. */
export function anchorsInCopy(question: CopyQuestion): readonly (readonly CopyFloat[])[] {
  return new CopyAnchors(question).solve();
}

const NO_FLOATS: readonly CopyFloat[] = [];
const NO_COLUMNS: readonly number[] = [];

/** Bits of what is near a cell. */
const FIGURE = 1;
const GROUND = 2;

class CopyAnchors {
  readonly #question: CopyQuestion;
  /** Anchors so far: 0 for none, else the yarn and 1. */
  readonly #taken: Uint16Array;
  readonly #near: (Uint8Array | undefined)[] = [];
  readonly #farther: (Uint8Array | undefined)[] = [];
  readonly #floats: readonly (readonly Span[])[];
  readonly #needed: (readonly number[] | undefined)[] = [];

  constructor(question: CopyQuestion) {
    this.#question = question;
    const { copy } = question;
    this.#taken = new Uint16Array(copy.cells.length);
    this.#floats = Array.from({ length: copy.height }, (_, row) => spansOf(question, row));
  }

  solve(): readonly (readonly CopyFloat[])[] {
    const solved: (readonly CopyFloat[])[] = [];
    for (let row = 0; row < this.#floats.length; row++) {
      solved.push(this.#row(row));
      // The row under these two may have given way to what is not there any more.
      if (this.#exchanged(solved, row)) this.#settle(solved, row - 2);
    }
    return solved;
  }

  #row(row: number): readonly CopyFloat[] {
    const spans = this.#floats[row] as readonly Span[];
    return spans.length === 0 ? NO_FLOATS : spans.map((span) => this.#broken(span, row));
  }

  /** Where a row is worse off for what the one below it took, that one comes second, if the two together are better for it. */
  #exchanged(solved: (readonly CopyFloat[])[], row: number): boolean {
    const [below, above] = [solved[row - 1], solved[row]];
    if (!below || !above || !isWorseOff(above, this.#question.longest)) return false;
    return this.#redone(solved, [row, row - 1]);
  }

  /** Breaks a row again, where it is better for it, and then those beside it: each time less is left loose, or as little with fewer. */
  #settle(solved: (readonly CopyFloat[])[], first: number): void {
    const waiting = [first];
    for (let row = waiting.pop(); row !== undefined; row = waiting.pop()) {
      const floats = solved[row];
      if (!floats || !isWorseOff(floats, this.#question.longest)) continue;
      if (this.#redone(solved, [row])) waiting.push(row - 1, row + 1);
    }
  }

  /** Breaks rows that lie together again, in this order, as if they had no anchors yet; they stay as they were where that is not better. */
  #redone(solved: (readonly CopyFloat[])[], rows: readonly number[]): boolean {
    const { longest, copy } = this.#question;
    const [start, end] = [Math.min(...rows) * copy.width, (Math.max(...rows) + 1) * copy.width];
    const taken = this.#taken.slice(start, end);
    this.#taken.fill(0, start, end);
    const again = rows.map((row) => this.#row(row));
    const before = rows.map((row) => solved[row] as readonly CopyFloat[]);
    if (!isBetter(again.flat(), before.flat(), longest)) {
      this.#taken.set(taken, start);
      return false;
    }
    rows.forEach((row, at) => (solved[row] = again[at] as readonly CopyFloat[]));
    return true;
  }

  /** A float broken, given what the other rows have taken. */
  #broken({ yarn, first, length }: Span, row: number): CopyFloat {
    const { copy, longest } = this.#question;
    const free = this.#needles(yarn, first, length, row);
    let needles = free;
    for (let at = 0; at < length; at++) {
      if (free[at] === CLOSED || !this.#isStacked(first + at, row)) continue;
      if (needles === free) needles = free.slice();
      needles[at] = CLOSED;
    }
    const anchors = anchorsInFloat(needles, longest, this.#inTheWay(first, length, row));
    for (const at of anchors) this.#taken[row * copy.width + ((first + at) % copy.width)] = yarn + 1;
    const least = needles === free ? anchors.length : anchorsInFloat(free, longest).length;
    return { yarn, first, length, anchors, loose: looseStretches(length, anchors, longest), least };
  }

  /** What may become of each needle of a float, as far as the drawing and the row itself say. */
  #needles(yarn: number, first: number, length: number, row: number): Uint8Array {
    const { copy, main, never, always } = this.#question;
    const { width } = copy;
    const start = row * width;
    const needles = new Uint8Array(length);
    const isOfMain = yarn === main;
    const near = isOfMain ? this.#nearFar(row) : this.#nearOf(row);
    for (let at = 0; at < length; at++) {
      const column = (first + at) % width;
      const cell = start + column;
      if (this.#taken[cell] !== 0 || never.has(cell)) continue;
      const isMain = copy.cells[cell] === main;
      const isFree = isOfMain
        ? !isMain && ((near[column] as number) & GROUND) === 0
        : isMain && ((near[column] as number) & FIGURE) === 0;
      if (isFree) needles[at] = always.has(cell) ? WANTED : OPEN;
    }
    return needles;
  }

  /** Whether the cell above or below has an anchor. A copy of one row stands on itself, so that each would. */
  #isStacked(column: number, row: number): boolean {
    if (this.#question.isAboveItself && this.#question.copy.height === 1) return true;
    return this.#isTaken(column, row - 1) || this.#isTaken(column, row + 1);
  }

  #isTaken(column: number, row: number): boolean {
    const cell = this.#cellAt(column, row);
    return cell !== -1 && this.#taken[cell] !== 0;
  }

  /** The needles of a float that the floats of the row above cannot do without; undefined where there are none. */
  #inTheWay(first: number, length: number, row: number): Uint8Array | undefined {
    const { width, height } = this.#question.copy;
    const needed = row + 1 < height ? (this.#needed[row + 1] ??= this.#neededIn(row + 1)) : NO_COLUMNS;
    let ways: Uint8Array | undefined;
    for (const column of needed) {
      const at = modulo(column - first, width);
      if (at < length) (ways ??= new Uint8Array(length))[at] = 1;
    }
    return ways;
  }

  /** The columns that the floats of a row cannot do without. */
  #neededIn(row: number): readonly number[] {
    const { copy, longest } = this.#question;
    return (this.#floats[row] as readonly Span[]).flatMap(({ yarn, first, length }) =>
      neededInFloat(this.#needles(yarn, first, length, row), longest).map((at) => (first + at) % copy.width),
    );
  }

  /** The place of a cell of this copy or of one that stands round it; −1 where none does. */
  #cellAt(column: number, row: number): number {
    const { copy, isBesideItself, isAboveItself, step } = this.#question;
    const { width, height } = copy;
    let [c, r] = [column, row];
    if (r < 0 || r >= height) {
      if (!isAboveItself) return -1;
      // Above, the copies are moved to the right by a step, so the same needle lies further to the left in them.
      c += r < 0 ? step : -step;
      r = modulo(r, height);
    }
    if (c < 0 || c >= width) {
      if (!isBesideItself) return -1;
      c = modulo(c, width);
    }
    return r * width + c;
  }

  /** What each cell of a row is, or has at its side or corner: figure, ground, or both. */
  #nearOf(row: number): Uint8Array {
    return (this.#near[row] ??= this.#spread((c, r) => this.#kindAt(c, r), row));
  }

  /** The same of what is at most two cells away. */
  #nearFar(row: number): Uint8Array {
    return (this.#farther[row] ??= this.#spread((c, r) => this.#nearAround(c, r), row));
  }

  #spread(at: (column: number, row: number) => number, row: number): Uint8Array {
    const { width } = this.#question.copy;
    const column = (c: number): number => at(c, row - 1) | at(c, row) | at(c, row + 1);
    const spread = new Uint8Array(width);
    let [left, own] = [column(-1), column(0)];
    for (let c = 0; c < width; c++) {
      const right = column(c + 1);
      spread[c] = left | own | right;
      left = own;
      own = right;
    }
    return spread;
  }

  /** Figure or ground; beside all copies is ground. */
  #kindAt(column: number, row: number): number {
    const { copy, main } = this.#question;
    const cell = this.#cellAt(column, row);
    return cell === -1 || copy.cells[cell] === main ? GROUND : FIGURE;
  }

  #nearAround(column: number, row: number): number {
    const { width } = this.#question.copy;
    const cell = this.#cellAt(column, row);
    if (cell === -1) return GROUND | this.#beside(column, row);
    return this.#nearOf(Math.floor(cell / width))[cell % width] as number;
  }

  /** What the neighbours are of a cell beside all copies. */
  #beside(column: number, row: number): number {
    let near = 0;
    for (let r = row - 1; r <= row + 1; r++) for (let c = column - 1; c <= column + 1; c++) near |= this.#kindAt(c, r);
    return near;
  }
}

/** Whether some of its floats would be broken better, or with fewer, if no other row had anchors. */
function isWorseOff(floats: readonly CopyFloat[], longest: number): boolean {
  return floats.some(({ anchors, least, loose }) => anchors.length > least || looseOver(loose, longest) > 0);
}

/** Less is left loose, or as little with fewer anchors. */
function isBetter(one: readonly CopyFloat[], other: readonly CopyFloat[], longest: number): boolean {
  const over = (floats: readonly CopyFloat[]): number =>
    floats.reduce((sum, { loose }) => sum + looseOver(loose, longest), 0);
  const count = (floats: readonly CopyFloat[]): number => floats.reduce((sum, { anchors }) => sum + anchors.length, 0);
  return over(one) < over(other) || (over(one) === over(other) && count(one) < count(other));
}

/** Stitches by which loose stretches are longer than they may be. */
function looseOver(loose: readonly LooseStretch[], longest: number): number {
  return loose.reduce((sum, { first, last }) => sum + last - first + 1 - longest, 0);
}
