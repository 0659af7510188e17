/** What the keyboard asks for: which command a key is, and where it is not ours. */
import { isFunctionKey, type Shortcut } from '@shared/host/index.ts';
import { isInDrawing } from '../ui/focus.ts';
import { liveKeys, type Command } from './command.ts';
import { matches } from './shortcut.ts';

/**
 * Marks for the steps of undo of a command that moves something bit by bit: each
 * press is a step of its own, and all that a key does while it is held is one.
 */
export function gestureOfPress(name: string): (isHeld: boolean) => string {
  let mark = '';
  return (isHeld) => {
    if (!isHeld || mark === '') mark = `${name}-${presses++}`;
    return mark;
  };
}
let presses = 0;

/** True where keys belong to a text field and shortcuts that text uses must yield. */
export function isTextField(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target.isContentEditable || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement)
    return true;
  return target instanceof HTMLInputElement && !['checkbox', 'radio', 'range', 'button', 'color'].includes(target.type);
}

/** True while a dialog is up: it has the keyboard, and commands wait until it is answered. */
export function isDialogUp(): boolean {
  return document.querySelector('dialog[open]') !== null;
}

/** The browser tells of these by events that carry the clipboard; see clipboard.ts. */
const CLIPBOARD_KEYS = /^Mod\+[CXV]$/;

/** Which command the key that is down asked for. */
let pressed: string | null = null;

/**
 * The command whose shortcut the event is, or null. Shortcuts without Ctrl are
 * the drawing's: they act where it has the keyboard, and nowhere else; but for
 * function keys.
 * `isHeld`: the key that asked for it before is held down.
 */
export function commandForKey(
  event: KeyboardEvent,
  commands: readonly Command[],
): { readonly command: Command; readonly isHeld: boolean } | null {
  const inText = isTextField(event.target);
  const inDrawing = isInDrawing(event.target);
  const isHeard = (keys: Shortcut): boolean => {
    if (CLIPBOARD_KEYS.test(keys) || !matches(event, keys)) return false;
    if (!keys.includes('Mod') && !isFunctionKey(keys)) return inDrawing;
    // Undo and redo belong to the text while one is edited.
    return !inText || !/^Mod\+(Shift\+)?[ZYA]$/.test(keys);
  };
  const command = commands.find((candidate) => liveKeys(candidate.id).some(isHeard));
  if (!command) return null;
  const isHeld = event.repeat && pressed === command.id;
  pressed = command.id;
  return { command, isHeld };
}
