/**
 * What a knitter who ripped back is told to put back. Ticking acts off is left
 * to the knitter, so that one which is not ticked may be done all the same:
 * what only its having been done asks for is told with that condition. What is
 * told puts a setting where it belongs and does no harm where it is there.
 */
import type { KnittingOrder } from './model.ts';
import { puttingBack, type PutBack } from './putting-back.ts';
import { stopsOf } from './stops.ts';

/** `ifBegun`: only where acts at the reading that was left were done without being ticked off. */
export interface PutBackStep {
  readonly put: PutBack;
  readonly ifBegun: boolean;
}

/**
 * All that is put back, in the order of hands, where rows above reading `to`
 * are ripped out of a piece whose counter read `from`, the acts `ticked` (by
 * index) being done there for certain. Throws `RangeError` unless 0 ≤ `to` <
 * `from` ≤ the last reading.
 */
export function rippingSteps(
  knitting: KnittingOrder,
  from: number,
  to: number,
  ticked: readonly number[],
): readonly PutBackStep[] {
  const sure = puttingBack(knitting, from, to, ticked);
  const acts = stopsOf(knitting)[from]?.acts ?? [];
  const inCase = puttingBack(knitting, from, to, [...acts.keys()]);
  const textOf = (put: PutBack): string => JSON.stringify(put);
  const inSure = new Set(sure.map(textOf));
  const inBoth = new Set(inCase.map(textOf).filter((text) => inSure.has(text)));

  // Both lists go by the same order of hands. Between two things that are in both, what is
  // done already is taken back first: a yarn goes out before another is threaded there.
  const steps: PutBackStep[] = [];
  let next = 0;
  const takeInCase = (until: string | undefined): void => {
    for (; next < inCase.length; next++) {
      const put = inCase[next] as PutBack;
      if (textOf(put) === until) break;
      if (!inBoth.has(textOf(put))) steps.push({ put, ifBegun: true });
    }
  };
  sure.forEach((put, index) => {
    takeInCase(
      sure
        .slice(index)
        .map(textOf)
        .find((text) => inBoth.has(text)),
    );
    steps.push({ put, ifBegun: false });
  });
  takeInCase(undefined);
  return steps;
}
