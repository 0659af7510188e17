/** Shortcuts on each platform: how they are written, and which presses they are. */
import { describe, expect, it } from 'vitest';
import { commandIds, shortcutsOf, type Shortcut } from '@shared/host/index.ts';
import { ariaOf, keysShown, matches, type KeyPress, type Platform } from '../../../src-renderer/commands/shortcut.ts';

const press = (key: string, held: Partial<KeyPress> = {}): KeyPress => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...held,
});

describe('a shortcut', () => {
  // Apple Style Guide, "key, keys": Control, Option, Shift, Command in this order. The signs are those of macOS's menus.
  it.each<[Shortcut, string, string]>([
    ['Mod+Z', 'Ctrl+Z', '⌘Z'],
    ['Mod+Shift+Z', 'Ctrl+Shift+Z', '⇧⌘Z'],
    ['Shift+H', 'Shift+H', '⇧H'],
    ['B', 'B', 'B'],
    ['+', '+', '+'],
    ['Shift+ArrowLeft', 'Shift+←', '⇧←'],
    ['Shift+PageUp', 'Shift+PageUp', '⇧⇞'],
    ['Shift+Delete', 'Shift+Delete', '⇧⌦'],
    ['Shift+Backspace', 'Shift+Backspace', '⇧⌫'],
    ['Enter', 'Enter', '↩'],
    ['F2', 'F2', 'F2'],
  ])('%s is written %s, and on a Mac %s', (keys, other, mac) => {
    expect([keysShown(keys, 'other'), keysShown(keys, 'mac')]).toEqual([other, mac]);
  });

  // WAI-ARIA 1.2, aria-keyshortcuts: modifiers are named as key events name them, and come first.
  it('is named to assistive technology by the modifier that the platform has', () => {
    expect([ariaOf('Mod+Shift+Z', 'other'), ariaOf('Mod+Shift+Z', 'mac')]).toEqual(['Control+Shift+Z', 'Meta+Shift+Z']);
    expect([ariaOf('Shift+H', 'other'), ariaOf('Shift+H', 'mac')]).toEqual(['Shift+H', 'Shift+H']);
  });

  it('is written differently from every other, on each platform', () => {
    const all = [...new Set(commandIds.flatMap((id) => [...shortcutsOf(id)]))];
    for (const platform of ['mac', 'other'] as const) {
      expect(new Set(all.map((keys) => keysShown(keys, platform))).size).toBe(all.length);
    }
  });

  it('is heard with the modifier of its platform and with no other', () => {
    const withCtrl = press('z', { ctrlKey: true });
    const withCommand = press('z', { metaKey: true });
    const heard = (on: Platform): boolean[] => [withCtrl, withCommand].map((event) => matches(event, 'Mod+Z', on));
    expect(heard('other')).toEqual([true, false]);
    expect(heard('mac')).toEqual([false, true]);
    expect(matches(press('z', { ctrlKey: true, metaKey: true }), 'Mod+Z', 'other')).toBe(false);
    expect(matches(press('z', { ctrlKey: true, altKey: true }), 'Mod+Z', 'other')).toBe(false);
    expect(matches(press('Z', { ctrlKey: true, shiftKey: true }), 'Mod+Z', 'other')).toBe(false);
    expect(matches(press('Z', { ctrlKey: true, shiftKey: true }), 'Mod+Shift+Z', 'other')).toBe(true);
  });

  it('of a letter or a named key is heard with Shift or without, as it says', () => {
    expect(matches(press('h'), 'H', 'other')).toBe(true);
    expect(matches(press('H', { shiftKey: true }), 'H', 'other')).toBe(false);
    expect(matches(press('H', { shiftKey: true }), 'Shift+H', 'other')).toBe(true);
    expect(matches(press('ArrowLeft', { shiftKey: true }), 'Shift+ArrowLeft', 'other')).toBe(true);
    expect(matches(press('ArrowLeft'), 'Shift+ArrowLeft', 'other')).toBe(false);
  });

  // On a German keyboard `[` is Alt+5 on a Mac and AltGr+8 elsewhere, `+` has a key of its own, and `>` is typed with Shift; from memory.
  it.each<[string, KeyPress, Shortcut, Platform, boolean]>([
    ['Shift, as on a US keyboard', press('+', { shiftKey: true }), '+', 'other', true],
    ['no Shift, as on a German keyboard', press('+'), '+', 'other', true],
    ['Option on a Mac', press('[', { altKey: true }), '[', 'mac', true],
    ['AltGr that tells of nothing', press('['), '[', 'other', true],
    ['AltGr that tells of Ctrl and Alt', press('[', { ctrlKey: true, altKey: true }), '[', 'other', true],
    ['Alt alone, which is the browser’s', press('[', { altKey: true }), '[', 'other', false],
    ['Ctrl alone, which zooms the window', press('+', { ctrlKey: true }), '+', 'other', false],
    ['⌘ alone, which zooms the window', press('+', { metaKey: true }), '+', 'mac', false],
    ['Shift for a digit, as on a French keyboard', press('1', { shiftKey: true }), '1', 'other', true],
    ['Alt and a letter', press('b', { altKey: true }), 'B', 'mac', false],
  ])('is asked for by how its key is typed: %s', (_, event, keys, platform, isHeard) => {
    expect(matches(event, keys, platform)).toBe(isHeard);
  });
});
