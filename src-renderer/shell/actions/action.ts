/**
 * Everything the program can do, as values.
 *
 * One object feeds the toolbar, the list of commands, the platform's menu and
 * the shortcut alike, so a command cannot be enabled in one place and greyed
 * in another.
 */
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

/** True where keys belong to a text field and shortcuts must yield (except those with Mod that text does not use). */
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

/** The browser tells of these by events that carry the clipboard; see ../clipboard.ts. */
const CLIPBOARD_KEYS = /^Mod\+[CXV]$/;

/** Which action the key that is down has run. */
let pressed: string | null = null;

/** Runs the action whose shortcut the event is; true if there was one. */
export function runByKey(event: KeyboardEvent, actions: readonly Action[]): boolean {
  if (!event.repeat) pressed = null;
  const inText = isTextField(event.target);
  for (const action of actions) {
    for (const keys of action.keys) {
      if (CLIPBOARD_KEYS.test(keys) || !matches(event, keys)) continue;
      // Undo, redo and plain letters belong to the text while one is edited.
      if (inText && (!keys.includes('Mod') || /^Mod\+(Shift\+)?[zya]$/i.test(keys))) continue;
      if (!action.isEnabled()) return true;
      const isHeld = pressed === action.id;
      pressed = action.id;
      void action.run(isHeld);
      return true;
    }
  }
  return false;
}
