/** Keys that a knitter teaches: which can be, and which press is one. */
import { expect, it } from 'vitest';
import { isOwnKey, KeyContact, keyPressed } from '../../../src-renderer/knit/own-key.ts';

const press = (
  key: string,
  to: { ctrlKey?: boolean; altKey?: boolean; metaKey?: boolean; shiftKey?: boolean } = {},
) => ({
  ...{ key, ctrlKey: false, altKey: false, metaKey: false, shiftKey: false },
  ...to,
});

it.each(['b', 'F13', '.', 'ArrowRight', 'MediaPlayPause', 'F5'])('takes %s', (key) => {
  expect(keyPressed(press(key))).toEqual({ key });
});

it.each(['Tab', 'Enter', ' ', 'PageUp', 'PageDown', 'r', 'S', '2', 'F2'])('leaves %s to what it does', (key) => {
  expect(keyPressed(press(key, { shiftKey: key === 'S' }))).toBe('taken');
});

it.each(['ctrlKey', 'altKey', 'metaKey'] as const)('takes no key with %s', (held) => {
  expect(keyPressed(press('b', { [held]: true }))).toBe('taken');
});

it.each(['Shift', 'Control', 'CapsLock', 'Dead', 'Unidentified'])('waits for another after %s', (key) => {
  expect(keyPressed(press(key))).toBeNull();
});

it('is the same letter with Shift, and with no other key', () => {
  expect(isOwnKey(press('B', { shiftKey: true }), 'b')).toBe(true);
  expect(isOwnKey(press('b', { ctrlKey: true }), 'b')).toBe(false);
  expect(isOwnKey(press('c'), 'b')).toBe(false);
  expect(isOwnKey(press('b'), null)).toBe(false);
});

it('is one press though the contact of the pedal closes again at once, and two when a foot presses twice', () => {
  const contact = new KeyContact();
  expect(contact.bounces('PageDown', 100)).toBe(false);
  contact.release('PageDown', 140);
  expect(contact.bounces('PageDown', 152)).toBe(true);
  expect(contact.bounces('PageUp', 152)).toBe(false);
  expect(contact.bounces('PageDown', 240)).toBe(false);
});
