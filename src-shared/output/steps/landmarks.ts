/** The acts that a knitter plans an evening around: casting on, setting a pattern, eyelets, hanging the hem, the finish. */
import type { Act, RunningOrder } from '../../plan/index.ts';

export interface Landmark {
  /** What the row counter reads. */
  readonly counter: number;
  readonly acts: readonly Act[];
}

const KINDS: ReadonlySet<Act['kind']> = new Set(['cast-on', 'first-needles', 'eyelets', 'hang-hem', 'finish']);

/** From the cast-on to the finish; a pattern that is set again and again is told where it is set first. */
export function landmarksOf(order: RunningOrder): Landmark[] {
  const told = new Set<string>();
  const isNew = (act: Act): boolean => {
    if (act.kind !== 'first-needles') return true;
    const key = JSON.stringify([act.patterns, act.groups]);
    if (told.has(key)) return false;
    told.add(key);
    return true;
  };
  return order.flatMap((item) => {
    if (item.kind !== 'stop') return [];
    const acts = item.acts.filter((act) => KINDS.has(act.kind) && isNew(act));
    return acts.length === 0 ? [] : [{ counter: item.counter, acts }];
  });
}
