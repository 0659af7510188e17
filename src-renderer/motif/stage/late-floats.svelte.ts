/** What draws the floats of the purl side: it comes when that is first looked at. */
import { whenProgramIsBack } from '../../ui/load-part.ts';
import type { DrawnFloats } from '../drawing/motif-drawing.ts';
import type { FloatsOn } from '../drawing/fabric-floats.ts';
import { floatsPart } from '../parts.ts';

export class LateFloats {
  #drawn = $state.raw<((on: FloatsOn) => DrawnFloats) | null>(null);

  /** Asks for it while `isWanted`, and again when the program is there again. Begun in a component. */
  constructor(isWanted: () => boolean) {
    const ask = (): void => {
      if (!isWanted() || this.#drawn) return;
      floatsPart().then(
        ({ fabricFloats }) => (this.#drawn = fabricFloats),
        // The fabric shows without them until it can be had.
        () => undefined,
      );
    };
    $effect(ask);
    $effect(() => whenProgramIsBack(ask));
  }

  /** Null until it is there. */
  of(on: FloatsOn): DrawnFloats | null {
    return this.#drawn && this.#drawn(on);
  }
}
