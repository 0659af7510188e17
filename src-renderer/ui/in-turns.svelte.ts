/** Many things shown one by one, so that none of them holds up the hand. */
import { untrack } from 'svelte';

/**
 * How many of a list are to be shown: all that are there when the component
 * begins, and of those that come later one more in each task. Those that go
 * are gone at once. `count` is how many there are; it is followed.
 */
export function inTurns(count: () => number): { readonly now: number } {
  let shown = $state(untrack(count));
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
