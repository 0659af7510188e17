/** Many things shown one by one, so that none of them holds up the hand. */
import { untrack } from 'svelte';

/**
 * How many of a list are to be shown: all that are there when the component
 * begins, or no more than `first` of them, and of those that come later one
 * more in each task. Those that go are gone at once. `count` is how many there
 * are; it is followed.
 */
export function inTurns(count: () => number, first = Infinity): { readonly now: number } {
  let shown = $state(Math.min(untrack(count), first));
  $effect.pre(() => {
    const wanted = count();
    if (shown >= wanted) {
      shown = wanted;
      return undefined;
    }
    const turn = setTimeout(() => shown++);
    return () => clearTimeout(turn);
  });
  return {
    get now() {
      return Math.min(shown, count());
    },
  };
}
