/**
 * Needle positions on the bed.
 *
 * The trade numbers needles outwards from the centre and has no needle 0,
 * which makes arithmetic on labels wrong at the centre. Inside the program a
 * position is a `Slot`: an integer without a gap (L1 = -1, R1 = 0).
 */
import { problemError } from '../problem/index.ts';

export type Slot = number & { readonly unit: 'slot' };

/** Left and right are the knitter's, facing the machine. */
export type Side = 'left' | 'right';

/** Neighbouring needles from `first` to `last`, both included, left to right. */
export interface Run {
  readonly first: Slot;
  readonly last: Slot;
}

/** The slot `value`; throws `RangeError` for what is no whole number. */
export function slot(value: number): Slot {
  if (!Number.isInteger(value)) throw new RangeError(`A slot is a whole number, not ${value}`);
  return value as Slot;
}

/** `L48`, `R12`. */
export function label(position: Slot): string {
  return position < 0 ? `L${-position}` : `R${position + 1}`;
}

/**
 * Inverse of {@link label}; small letters and blanks around are taken too.
 * Throws `needle-unknown` for text that names no needle, `L0` and `R0` included.
 */
export function parseNeedle(text: string): Slot {
  const match = /^([LR])([1-9]\d{0,5})$/.exec(text.trim().toUpperCase());
  if (!match) throw problemError('needle-unknown', { text: text.trim() });
  const n = Number(match[2]);
  return (match[1] === 'L' ? -n : n - 1) as Slot;
}

/** How many needles a run holds. */
export function widthOf(run: Run): number {
  return run.last - run.first + 1;
}

export function opposite(side: Side): Side {
  return side === 'left' ? 'right' : 'left';
}
