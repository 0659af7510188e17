/**
 * Whether shortcuts of a single key act.
 *
 * Who speaks to the computer, or whose hand strikes keys unmeant, switches
 * them off (WCAG 2.2, 2.1.4). The setting is the person's, not the project's:
 * the host keeps it.
 */
import { createSubscriber } from 'svelte/reactivity';

class SingleKeys {
  #areOn = true;
  readonly #listeners = new Set<() => void>();
  readonly #follow = createSubscriber((update) => {
    this.#listeners.add(update);
    return () => this.#listeners.delete(update);
  });

  get areOn(): boolean {
    this.#follow();
    return this.#areOn;
  }

  set areOn(areOn: boolean) {
    this.#areOn = areOn;
    for (const listener of this.#listeners) listener();
  }
}

/** Of this window. */
export const singleKeys = new SingleKeys();
