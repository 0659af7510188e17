/** Shortcuts on each platform: how they are written, and which key events they are. */
import type { Shortcut } from '@shared/host/index.ts';

/** Who writes ⌘ where the others write Ctrl. */
export type Platform = 'mac' | 'other';

const platform: Platform = typeof navigator !== 'undefined' && /mac/i.test(navigator.platform) ? 'mac' : 'other';

const ARROWS = { ArrowLeft: '←', ArrowRight: '→', ArrowUp: '↑', ArrowDown: '↓' };

/** As macOS writes keys that are no characters in its menus. */
const MAC_KEYS = {
  ...ARROWS,
  Enter: '↩',
  Escape: '⎋',
  Backspace: '⌫',
  Delete: '⌦',
  PageUp: '⇞',
  PageDown: '⇟',
};

/** `Mod+Shift+Z` in its parts. */
function partsOf(keys: Shortcut): { readonly mod: boolean; readonly shift: boolean; readonly key: string } {
  const [, mod, shift, key = ''] = /^(Mod\+)?(Shift\+)?(.+)$/.exec(keys) ?? [];
  return { mod: mod !== undefined, shift: shift !== undefined, key };
}

/**
 * The shortcut as people write it: `Ctrl+Shift+Z`, on a Mac `⇧⌘Z`. Apple's
 * order is Control, Option, Shift, Command (Apple Style Guide, "key, keys").
 */
export function keysShown(keys: Shortcut, on: Platform = platform): string {
  const { mod, shift, key } = partsOf(keys);
  if (on === 'mac') return `${shift ? '⇧' : ''}${mod ? '⌘' : ''}${named(MAC_KEYS, key)}`;
  return `${mod ? 'Ctrl+' : ''}${shift ? 'Shift+' : ''}${named(ARROWS, key)}`;
}

function named(names: Readonly<Record<string, string>>, key: string): string {
  return names[key] ?? key;
}

/** A shortcut as `aria-keyshortcuts` wants it (WAI-ARIA 1.2): modifiers first, named as key events name them. */
export function ariaOf(keys: Shortcut, on: Platform = platform): string {
  return keys.replace('Mod', on === 'mac' ? 'Meta' : 'Control');
}

/** What is looked at of a key event. */
export type KeyPress = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>;

/**
 * True if the key event is this shortcut. A letter and a named key say whether
 * Shift belongs to them. A digit and a sign are taken as they come: keyboards
 * differ in whether they are typed with Shift, and signs with Alt on a Mac or
 * AltGr elsewhere, which is told as nothing or as Ctrl and Alt together.
 */
export function matches(event: KeyPress, keys: Shortcut, on: Platform = platform): boolean {
  const { mod, shift, key } = partsOf(keys);
  if (event.key.toLowerCase() !== key.toLowerCase()) return false;
  const isDigit = /^\d$/.test(key);
  const isSign = key.length === 1 && !isDigit && !/[a-z]/i.test(key);
  const isTypedWithAlt = isSign && event.altKey && event.ctrlKey === (on === 'other');
  if (isTypedWithAlt) return !event.metaKey;
  const [isMod, isOtherMod] = on === 'mac' ? [event.metaKey, event.ctrlKey] : [event.ctrlKey, event.metaKey];
  return isMod === mod && !isOtherMod && !event.altKey && (isSign || isDigit || event.shiftKey === shift);
}
