/** What is done to a single needle before one of its rows. */
import type { Slot } from '../../bed/index.ts';
import type { Act, RunningOrder } from './types.ts';

/** Acts that are done needle by needle, with the needle still at work after them. */
const KINDS = ['increase', 'cast-on-more', 'eyelets', 'push-forward', 'push-back', 'wrap', 'lay'] as const;

export type NeedleActKind = (typeof KINDS)[number];

/** The kinds of what is done to `needle` before `row` (1-based), in the order in which hands do it. */
export function actsOnNeedle(order: RunningOrder, row: number, needle: Slot): NeedleActKind[] {
  const stop = order.find((item) => item.kind === 'stop' && item.row === row);
  const acts = stop?.kind === 'stop' ? stop.acts : [];
  return KINDS.filter((kind) => acts.some((act) => act.kind === kind && isOn(act, needle)));
}

function isOn(act: Act, needle: Slot): boolean {
  switch (act.kind) {
    case 'increase':
    case 'eyelets':
    case 'push-forward':
    case 'push-back':
      return act.needles.includes(needle);
    case 'cast-on-more':
      return act.needles.first <= needle && needle <= act.needles.last;
    case 'lay':
      return act.needles.some(({ first, last }) => first <= needle && needle <= last);
    case 'wrap':
      return act.needle === needle;
    default:
      return false;
  }
}
