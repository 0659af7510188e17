/**
 * What the person's machine can do: asked once, and the machine of every new
 * project from then on. The setting is the person's, not the project's: the
 * host keeps it.
 */
import { createSubscriber } from 'svelte/reactivity';
import type { Machine } from '@shared/bed/index.ts';
import type { Project } from '@shared/project/index.ts';

class OwnMachine {
  #machine: Machine | null = null;
  /** Keeps it for the next start; called after every change. */
  onChange: (machine: Machine) => void = () => undefined;
  readonly #listeners = new Set<() => void>();
  readonly #follow = createSubscriber((update) => {
    this.#listeners.add(update);
    return () => this.#listeners.delete(update);
  });

  /** Null until it was asked. */
  get machine(): Machine | null {
    this.#follow();
    return this.#machine;
  }

  /** As it was kept: nothing is to be kept again. */
  begin(machine: Machine | null): void {
    this.#machine = machine;
    for (const listener of this.#listeners) listener();
  }

  /** The person has said so. */
  say(machine: Machine): void {
    if (machine === this.#machine) return;
    this.begin(machine);
    this.onChange(machine);
  }

  /** A project that begins, for this machine. */
  given(project: Project): Project {
    return this.#machine === null ? project : { ...project, machine: this.#machine };
  }
}

/** Of this window. */
export const ownMachine = new OwnMachine();
