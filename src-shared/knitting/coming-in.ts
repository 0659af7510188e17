/** Going on in the middle of a piece: what is set at the machine, for whoever finds it with nothing set. */
import type { KnittingOrder } from './model.ts';
import { paritySide, putRight, type PutBack } from './putting-back.ts';
import { AT_FIRST } from './settings.ts';

/**
 * What stands at the machine when the counter comes to `reading`, apart from
 * what is done there. Throws `RangeError` for a reading beyond the order.
 */
export function comingIn(knitting: KnittingOrder, reading: number): readonly PutBack[] {
  const side = paritySide(knitting, reading);
  const { machine, choices } = putRight(knitting, reading, AT_FIRST, []);
  return [{ kind: 'carriage-to', side, isThere: true }, { kind: 'counter', reading }, ...machine, ...choices];
}
