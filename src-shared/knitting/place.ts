/**
 * Where a knitter is in a piece, as one immutable value.
 *
 * Nothing but an event changes it (`progress.ts`). It names no needle and no
 * yarn: those are the order's.
 */
import type { KnittingOrder } from './model.ts';

/** What is ticked off at one reading: acts by their index, from 0, in order. */
export interface Ticks {
  readonly reading: number;
  readonly acts: readonly number[];
}

/** Rows that were ravelled: from which reading, and what was ticked off there. */
export interface Ripped {
  readonly from: number;
  readonly acts: readonly number[];
}

/** A changed order was taken: the one before it, and the reading at which. */
export interface Taken {
  readonly before: KnittingOrder;
  readonly reading: number;
}

interface Counted {
  /** What the row counter reads: so many rows are knitted. */
  readonly reading: number;
  /** By reading, none of them empty. */
  readonly ticks: readonly Ticks[];
}

export type KnittingPlace =
  | (Counted & { readonly phase: 'knitting' })
  /** Until it is said where the carriage stands no row is counted. `taken` is put right before, then `ripped` put back. */
  | (Counted & { readonly phase: 'returning'; readonly ripped: Ripped | null; readonly taken: Taken | null })
  | (Counted & { readonly phase: 'finished' });

export const AT_THE_START: KnittingPlace = { phase: 'knitting', reading: 0, ticks: [] };

/** The acts that are ticked off at the place's reading. */
export function tickedAt({ reading, ticks }: KnittingPlace): readonly number[] {
  return ticks.find((one) => one.reading === reading)?.acts ?? [];
}

/** With an act at its reading ticked off, or not any more. */
export function withTick(place: KnittingPlace, act: number, isTicked: boolean): KnittingPlace {
  const others = tickedAt(place).filter((one) => one !== act);
  const acts = isTicked ? [...others, act].sort((one, other) => one - other) : others;
  const below = ticksBelow(place, place.reading);
  return { ...place, ticks: acts.length === 0 ? below : [...below, { reading: place.reading, acts }] };
}

/** The ticks of lower readings. */
export function ticksBelow({ ticks }: KnittingPlace, reading: number): readonly Ticks[] {
  return ticks.filter((one) => one.reading < reading);
}
