/**
 * Everything the program can do, as values.
 *
 * One object feeds the toolbar, the list of commands, the platform's menu and
 * the shortcut alike, so a command cannot be enabled in one place and greyed
 * in another.
 */
import { isInDrawing } from '../ui/focus.ts';
import { singleKeys } from './single-keys.ts';

export interface Action {
  /** Stable and unique; the platform's menu sends it. */
  readonly id: string;
  /** As it is said now: `Undo draw`. */
  readonly label: () => string;
  /** Shortcuts such as `Mod+Z` (Mod: Ctrl, or ⌘ on a Mac) or `B`; the first one is shown. */
  readonly keys: readonly string[];
  readonly isEnabled: () => boolean;
  /** For switches: whether it is on. */
  readonly isOn?: () => boolean;
  /** `isHeld`: the key that ran it before is held down, and runs it again. */
  readonly run: (isHeld?: boolean) => void | Promise<void>;
}

const isMac = typeof navigator !== 'undefined' && /mac/i.test(navigator.platform);

const ARROWS = { Left: '←', Right: '→', Up: '↑', Down: '↓' };

/** True for a letter, digit or sign alone or with Shift: what the chart, the piece and the pages take, unless switched off. */
export function isSingleKey(keys: string): boolean {
  return !keys.includes('Mod') && (keys.split('+').at(-1) ?? '').length <= 1;
}

/** The shortcuts of an action that act now. */
export function liveKeys({ keys }: Pick<Action, 'keys'>): readonly string[] {
  return singleKeys.areOn ? keys : keys.filter((each) => !isSingleKey(each));
}

/** What an action is called, with its first shortcut; for tooltips. */
export function labelWithKeys(action: Action): string {
  const [keys] = liveKeys(action);
  return keys === undefined ? action.label() : `${action.label()} (${keysShown(keys)})`;
}

/** A shortcut as `aria-keyshortcuts` wants it. */
export function ariaOf(keys: string): string {
  return keys.replace('Mod', isMac ? 'Meta' : 'Control');
}

/** The first shortcut that acts now, as `aria-keyshortcuts` wants it. */
export function ariaKeys(action: Action): string | undefined {
  const [keys] = liveKeys(action);
  return keys && ariaOf(keys);
}

/** The shortcut as people write it on this platform: `Ctrl+Z`, `⌘Z`. */
export function keysShown(given: string): string {
  const keys = given.replace(/Arrow(Left|Right|Up|Down)$/, (_, way: keyof typeof ARROWS) => ARROWS[way]);
  if (!isMac) return keys.replace('Mod', 'Ctrl');
  return keys.replace('Mod+', '⌘').replace('Shift+', '⇧');
}

/** True if the key event is this shortcut. */
export function matches(event: KeyboardEvent, keys: string): boolean {
  const parts = keys.split('+');
  const key = (parts.at(-1) === '' ? '+' : parts.at(-1)) as string;
  const wantsMod = parts.includes('Mod');
  const wantsShift = parts.includes('Shift');
  const mod = isMac ? event.metaKey : event.ctrlKey;
  const otherMod = isMac ? event.ctrlKey : event.metaKey;
  // A sign such as "+" or "?" may itself need Shift; letters and named keys say so.
  const shiftMatters = key.length > 1 || /[a-z]/i.test(key);
  return (
    event.key.toLowerCase() === key.toLowerCase() &&
    mod === wantsMod &&
    !otherMod &&
    !event.altKey &&
    (!shiftMatters || event.shiftKey === wantsShift)
  );
}

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

/** Which action the key that is down asked for. */
let pressed: string | null = null;

/**
 * The action whose shortcut the event is, or null. Shortcuts without Ctrl are
 * the drawing's: they act where it has the keyboard, and nowhere else.
 * `isHeld`: the key that asked for it before is held down.
 */
export function actionForKey(
  event: KeyboardEvent,
  actions: readonly Action[],
): { readonly action: Action; readonly isHeld: boolean } | null {
  const inText = isTextField(event.target);
  const inDrawing = isInDrawing(event.target);
  const isHeard = (keys: string): boolean => {
    if (CLIPBOARD_KEYS.test(keys) || !matches(event, keys)) return false;
    if (!keys.includes('Mod')) return inDrawing;
    // Undo and redo belong to the text while one is edited.
    return !inText || !/^Mod\+(Shift\+)?[zya]$/i.test(keys);
  };
  const action = actions.find((candidate) => liveKeys(candidate).some(isHeard));
  if (!action) return null;
  const isHeld = event.repeat && pressed === action.id;
  pressed = action.id;
  return { action, isHeld };
}
