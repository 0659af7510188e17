/**
 * The window comes up a part at a time, each in a task of its own: made in one
 * go, all that it first shows takes longer than a person on a slow machine
 * would wait for the answer to a click. Once it is up, nothing takes turns.
 */
import { tick, untrack } from 'svelte';

const waiting: (() => void)[] = [];
let isUp = $state(false);

/** All that the window first shows is there. */
export function isWindowUp(): boolean {
  return isUp;
}

/** A part's turn: due once those before it are there, in the order in which they asked; at once when the window is up. */
export function takeTurn(): { readonly isDue: boolean } {
  const isLater = untrack(() => isUp);
  let isDue = $state(isLater);
  if (!isLater) waiting.push(() => (isDue = true));
  return {
    get isDue() {
      return isDue;
    },
  };
}

/** Has one part after the other come, those too that are asked for by one that came. */
export async function comeUp(): Promise<void> {
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    await new Promise((resolve) => setTimeout(resolve));
    next();
    await tick();
  }
  isUp = true;
}
