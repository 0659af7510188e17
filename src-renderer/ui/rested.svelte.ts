/** What is said of something that changes with every move of a hand. */
import { untrack } from 'svelte';

/** So long it has to stay as it is. */
const REST_MS = 100;

/**
 * `latest` as it was when it last stayed the same for a tenth of a second: while
 * a hand draws, the frames are for what it draws on, and sentences that change
 * with every cell could not be read. Whatever `mayLag` is false for is shown at
 * once: another motif, whose name stands beside what is said.
 */
export function rested<T>(latest: () => T, mayLag: (latest: T, shown: T) => boolean): { readonly now: T } {
  let kept = $state.raw(untrack(latest));
  const now = $derived.by(() => {
    const next = latest();
    return mayLag(next, kept) ? kept : next;
  });
  $effect(() => {
    const next = latest();
    if (next === kept) return undefined;
    const rest = setTimeout(() => (kept = next), mayLag(next, kept) ? REST_MS : 0);
    return () => clearTimeout(rest);
  });
  return {
    get now() {
      return now;
    },
  };
}
