/** A key, a pedal or a remote control that a knitter teaches to end a row: most of them send some key. */
import { commandGroups, type Shortcut } from '@shared/host/index.ts';
import { isDialogUp, isTextField } from '../commands/keyboard.ts';
import { matches, type KeyPress } from '../commands/shortcut.ts';

/** Keys that come with others, or that say nothing of which key it was. */
const NOT_ALONE = new Set([
  'Shift',
  'Control',
  'Alt',
  'AltGraph',
  'Meta',
  'CapsLock',
  'NumLock',
  'Fn',
  'Dead',
  'Process',
  'Unidentified',
]);
/** The page's own ways about, and what ends a row already. */
const TAKEN = new Set(['Tab', 'Escape', 'Enter', ' ']);
/** Commands that are heard beside the machine. */
const HEARD = ['files', 'steps', 'benches', 'window', 'themes', 'recovery', 'knitting'] as const;

/** A foot does not come down again within this time; the contact of a pedal does. */
const BOUNCE_MS = 25;

/** Tells presses of one key from those that its contact makes by itself on the way up. */
export class KeyContact {
  #released: { readonly key: string; readonly at: number } | null = null;

  /** `at` in ms, on the clock of the press. */
  release(key: string, at: number): void {
    this.#released = { key, at };
  }

  bounces(key: string, at: number): boolean {
    return this.#released?.key === key && at - this.#released.at < BOUNCE_MS;
  }
}

/** Null: wait for another. */
export type Pressed = { readonly key: string } | 'taken' | null;

/** What a key that was pressed to be taught is. With Shift it is the same key. */
export function keyPressed({ key, ctrlKey, metaKey, altKey }: KeyPress): Pressed {
  if (NOT_ALONE.has(key)) return null;
  if (ctrlKey || metaKey || altKey || TAKEN.has(key)) return 'taken';
  const alone = { key: key.toLowerCase(), ctrlKey, metaKey, altKey, shiftKey: false };
  const isHeard = HEARD.some((group) =>
    Object.values<readonly Shortcut[]>(commandGroups[group])
      .flat()
      .some((keys) => matches(alone, keys)),
  );
  return isHeard ? 'taken' : { key };
}

/** Whether a press is of the key that was taught; letters are the same with Shift and without. */
export function isOwnKey(event: KeyPress, key: string | null): boolean {
  if (key === null || event.ctrlKey || event.metaKey || event.altKey) return false;
  return event.key.toLowerCase() === key.toLowerCase();
}

/**
 * What a pedal, or the knitter's own key, asks for. It is heard wherever the
 * keyboard is, but where text is typed or something is asked; held it is one press.
 */
export function pedalPress(event: KeyboardEvent, key: string | null): 'row-done' | 'row-back' | null {
  const { target } = event;
  // A list of pieces or sizes that has the keyboard would take the page keys, and the row would not be counted.
  const isTyped = isTextField(target) && !(target instanceof HTMLSelectElement);
  if (event.defaultPrevented || event.repeat || isTyped || isDialogUp()) return null;
  if (event.key === 'PageDown' || isOwnKey(event, key)) return 'row-done';
  return event.key === 'PageUp' ? 'row-back' : null;
}
