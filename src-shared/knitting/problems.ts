/** What a knitter cannot have done, and what cannot be gone on with. */
import type { Side } from '../bed/index.ts';

export interface KnittingProblems {
  /** What was typed for a reading of the row counter; `last`: the highest there is. */
  'reading-unknown': { text: string; last: number };
  /** Somebody else has counted: the counter was thought to read `thought` and reads `reads`. */
  'counted-elsewhere': { thought: number; reads: number };
  /** Nothing is left to knit after `last`. */
  'rows-all-knitted': { last: number };
  /** There is no row below the first. */
  'no-row-knitted': Record<string, never>;
  'not-ripped-back': { to: number; reading: number };
  'not-at-end': { reading: number; last: number };
  'piece-finished': Record<string, never>;
  /** At that reading, acts are counted from 0. */
  'act-unknown': { reading: number; act: number };
  /** It has to be said first where the carriage stands. */
  'carriage-not-seen': { reading: number };
  /** At that reading the carriage stands at the other side. */
  'carriage-elsewhere': { reading: number; seen: Side; expected: Side };
  /** An order that ends below what is knitted. */
  'order-too-short': { reading: number; last: number };
  /** A text that holds no order, or one that contradicts itself. */
  'order-unreadable': Record<string, never>;
}
