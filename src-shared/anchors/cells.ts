/** The cells of a fabric while anchors are put on them. */
import type { Slot } from '../bed/index.ts';
import { OUTSIDE, type Fabric } from '../fabric/index.ts';

/** Rows are counted from 1 and needles are slots, as everywhere. */
export class Cells {
  readonly #fabric: Fabric;
  readonly #drawn: Uint8Array;
  readonly #main: number;
  /** 1 where an anchor is. */
  readonly #isAnchor: Uint8Array;
  readonly #rows: (Slot[] | undefined)[] = [];
  /** As knitted, with the anchors so far. */
  readonly cells: Uint8Array;

  constructor(fabric: Fabric, drawn: Fabric, main: number) {
    this.#fabric = fabric;
    this.#drawn = drawn.cells;
    this.#main = main;
    this.cells = fabric.cells.slice();
    this.#isAnchor = new Uint8Array(fabric.cells.length);
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
    this.#isAnchor[at] = 1;
    (this.#rows[row - 1] ??= []).push(needle as Slot);
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
    return this.#isAnchor[at - width] === 1 || this.#isAnchor[at + width] === 1;
  }

  /**
   * Whether a needle may take an anchor: for a contrast one of main that is
   * not next to the figure, for main one of figure that is neither on its
   * outline nor next to that.
   */
  isFree(row: number, needle: number, yarn: number): boolean {
    const at = this.index(row, needle);
    const isMain = this.cells[at] === this.#main;
    if (yarn === this.#main) return !isMain && this.#isAnchor[at] === 0 && !this.#isNear(row, needle, 2, true);
    return isMain && this.#fabric.cells[at] === this.#main && !this.#isNear(row, needle, 1, false);
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

  done(): { readonly fabric: Fabric; readonly rows: readonly (readonly Slot[] | undefined)[] } {
    for (const row of this.#rows) row?.sort((a, b) => a - b);
    return { fabric: { ...this.#fabric, cells: this.cells }, rows: this.#rows };
  }
}
