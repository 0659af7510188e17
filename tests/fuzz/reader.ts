/** A reader of what a stranger may have made, and how its inputs are spoiled. */
import { changedBytes } from './bytes.ts';
import { changedParts, PNG_LAYOUT, type Layout } from './parts.ts';
import type { Dice } from './random.ts';
import { changedText } from './texts.ts';

export interface Reader {
  readonly name: string;
  /** An input that was good once. */
  readonly spoiled: (dice: Dice) => Uint8Array;
  /** Reads it and holds what comes out to its promises. A `ProblemError`, or {@link REFUSED}, is as good. */
  readonly read: (input: Uint8Array) => unknown;
}

/** Given by a reader that has no problem to throw for what it does not take. */
export const REFUSED = Symbol('refused');

export const latin = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'utf8'));
const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** Of bytes; `layout`: how a file of its kind is made of parts, where it is. */
export function ofBytes(
  name: string,
  seeds: readonly Uint8Array[],
  layout: Layout | null,
  read: Reader['read'],
): Reader {
  return {
    name,
    spoiled(dice) {
      const seed = dice.pick(seeds);
      // In a PNG nearly every changed byte is found by its checksum, and nothing behind it is reached.
      if (layout === null || dice.once(layout === PNG_LAYOUT ? 4 : 2)) return changedBytes(seed, dice);
      const changed = changedParts(seed, layout, dice);
      return dice.once(4) ? changedBytes(changed, dice) : changed;
    },
    read,
  };
}

/** Of texts; `change` spoils three out of four, the others lose or win any letters. */
export function ofText(
  name: string,
  seeds: readonly string[],
  read: (text: string) => unknown,
  change = changedText,
): Reader {
  return {
    name,
    spoiled: (dice) => latin((dice.once(4) ? changedText : change)(dice.pick(seeds), dice)),
    read: (input) => read(textOf(input)),
  };
}
