/** A part of the stage that comes when it is first wanted, and is asked for again when the program is there again. */
import { whenProgramIsBack } from '../../ui/load-part.ts';

export class Late<Part> {
  #part = $state.raw<Part | null>(null);

  /** Begun in a component. */
  constructor(load: () => Promise<Part>, isWanted: () => boolean) {
    const ask = (): void => {
      if (!isWanted() || this.#part) return;
      load().then(
        (part) => (this.#part = part),
        // The stage shows without it until it can be had.
        () => undefined,
      );
    };
    $effect(ask);
    $effect(() => whenProgramIsBack(ask));
  }

  /** Null until it is there. */
  get now(): Part | null {
    return this.#part;
  }
}
