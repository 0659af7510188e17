/** The cells of a fabric while anchors are put on them. */
import type { Run, Slot } from '../bed/index.ts';
import { OUTSIDE, type Fabric } from '../fabric/index.ts';

/** Taken anew by each: only one fabric is worked on at a time. */
let marks = new Uint8Array(0);

/** Bits: a float may begin on an anchor of another yarn. */
const ANCHOR = 1;
const LEFT = 2;

/** Rows are counted from 1 and needles are slots, as everywhere. */
export class Cells {
  readonly #fabric: Fabric;
  readonly #drawn: Uint8Array;
  readonly #main: number;
  /** {@link ANCHOR} where one is, {@link LEFT} where a float begins that copies leave loose. */
  readonly #marks: Uint8Array;
  /** As knitted, with the anchors so far. */
  readonly cells: Uint8Array;

  constructor(fabric: Fabric, drawn: Fabric, main: number) {
    this.#fabric = fabric;
    this.#drawn = drawn.cells;
    this.#main = main;
    this.cells = fabric.cells.slice();
    if (marks.length < fabric.cells.length) marks = new Uint8Array(fabric.cells.length);
    this.#marks = marks.subarray(0, fabric.cells.length).fill(0);
  }

  index(row: number, needle: number): number {
    return (row - 1) * this.#fabric.width + needle - this.#fabric.first;
  }

  get main(): number {
    return this.#main;
  }

  anchor(row: number, needle: number, yarn: number): void {
    const at = this.index(row, needle);
    this.cells[at] = yarn;
    this.#marks[at] = (this.#marks[at] as number) | ANCHOR;
  }

  /** A float that begins here stays loose in all copies: nobody tries again in one alone. */
  leave(row: number, needle: number): void {
    const at = this.index(row, needle);
    this.#marks[at] = (this.#marks[at] as number) | LEFT;
  }

  isLeft(row: number, needle: number): boolean {
    return ((this.#marks[this.index(row, needle)] as number) & LEFT) !== 0;
  }

  /** The rows `first` … `last` become what the rows so many below them are. */
  copyRows(first: number, last: number, below: number): void {
    const { width } = this.#fabric;
    const [to, from, end] = [(first - 1) * width, (first - 1 - below) * width, (last - below) * width];
    this.cells.copyWithin(to, from, end);
    this.#marks.copyWithin(to, from, end);
  }

  /** The needles of a row with an anchor, from the left; undefined where there are none. */
  anchorsIn(row: number): readonly Slot[] | undefined {
    const { width, first } = this.#fabric;
    const start = (row - 1) * width;
    let needles: Slot[] | undefined;
    for (let column = 0; column < width; column++) {
      if (this.#isAnchor(start + column)) (needles ??= []).push((first + column) as Slot);
    }
    return needles;
  }

  /** Whether `yarn` floats behind just these needles: the fabric has no anchors of it there yet. */
  isFloat(row: number, first: number, length: number, yarn: number): boolean {
    const { cells } = this.#fabric;
    const start = this.index(row, first);
    const { width } = this.#fabric;
    const column = start - (row - 1) * width;
    if (column < 1 || column + length >= width) return false;
    if (cells[start - 1] !== yarn || cells[start + length] !== yarn) return false;
    // A copy may be left out, and another yarn be knitted as this one.
    for (let at = start; at < start + length; at++) if (cells[at] === yarn) return false;
    return true;
  }

  isStacked(row: number, needle: number): boolean {
    const at = this.index(row, needle);
    const { width } = this.#fabric;
    return this.#isAnchor(at - width) || this.#isAnchor(at + width);
  }

  /**
   * Whether a needle may take an anchor: for a contrast one of main that is
   * not next to the figure, for main one of figure that is neither on its
   * outline nor next to that.
   */
  isFree(row: number, needle: number, yarn: number): boolean {
    const at = this.index(row, needle);
    const isMain = this.cells[at] === this.#main;
    if (yarn === this.#main) return !isMain && !this.#isAnchor(at) && !this.#isNear(row, needle, 2, true);
    return isMain && this.#fabric.cells[at] === this.#main && !this.#isNear(row, needle, 1, false);
  }

  #isAnchor(at: number): boolean {
    return ((this.#marks[at] ?? 0) & ANCHOR) !== 0;
  }

  /**
   * Whether the yarn that knits a needle would float over more than `longest`
   * needles if it did not: what it knits next lies too far on either side.
   */
  isNeeded(row: number, needle: number, { first, last }: Run, longest: number): boolean {
    const start = this.index(row, 0);
    const yarn = this.cells[start + needle];
    let [left, right] = [needle - 1, needle + 1];
    while (left >= first && this.cells[start + left] !== yarn) left--;
    while (right <= last && this.cells[start + right] !== yarn) right++;
    return left >= first && right <= last && right - left - 1 > longest;
  }

  /** Whether some cell so far around is main, or is figure. */
  #isNear(row: number, needle: number, far: number, isMain: boolean): boolean {
    const { width, rows, first } = this.#fabric;
    const column = needle - first;
    const [left, right] = [Math.max(0, column - far), Math.min(width - 1, column + far)];
    for (let r = Math.max(1, row - far); r <= Math.min(rows, row + far); r++) {
      const start = (r - 1) * width;
      for (let at = start + left; at <= start + right; at++) {
        const yarn = this.#drawn[at];
        if (yarn !== OUTSIDE && (yarn === this.#main) === isMain) return true;
      }
    }
    return false;
  }

  /** The fabric with its anchors. */
  done(): Fabric {
    return { ...this.#fabric, cells: this.cells };
  }
}
