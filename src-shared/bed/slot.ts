/**
 * Needle positions on the bed.
 *
 * The trade numbers needles outwards from the centre and has no needle 0,
 * which makes arithmetic on labels wrong at the centre. Inside the program a
 * position is a `Slot`: an integer without a gap (L1 = -1, R1 = 0).
 */
import { problemError } from '../problem/index.ts';

/**
 * A position on the bed. Declared by hand, on purpose: it is a brand, which no
 * value bears, so that no other number is taken for one; what a file has, a
 * label, is read by `slotSchema` (model.ts).
 */
export type Slot = number & { readonly unit: 'slot' };

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

/** Inverse of {@link label}, for text that is known to be a label. */
export function slotLabelled(text: string): Slot {
  const n = Number(text.slice(1));
  return (text.startsWith('L') ? -n : n - 1) as Slot;
}

/**
 * {@link slotLabelled} for what a person typed; small letters and blanks around
 * are taken too. Throws `needle-unknown` for text that names no needle, `L0`
 * and `R0` included.
 */
export function parseNeedle(text: string): Slot {
  const typed = text.trim().toUpperCase();
  if (!/^[LR][1-9]\d{0,5}$/.test(typed)) throw problemError('needle-unknown', { text: text.trim() });
  return slotLabelled(typed);
}

/** How many needles a run holds. */
export function widthOf(run: Run): number {
  return run.last - run.first + 1;
}

/** The needles of a bed of `needles`: half on each side of the centre, the odd one on the right. */
export function needlesOf(needles: number): Run {
  const left = Math.floor(needles / 2);
  return { first: -left as Slot, last: (needles - left - 1) as Slot };
}
