/** The parts of the Electron shell that need no Electron. */
import { describe, expect, it } from 'vitest';
import { closeGuard } from '../../../src-main/electron/close-guard.ts';
import { menuColumns } from '../../../src-main/electron/menu-items.ts';
import { isOwnCopy } from '../../../src-main/electron/own-copy.ts';
import { namedFile } from '../../../src-main/electron/named-file.ts';
import { commandIds, shortcutsOf } from '@shared/host/index.ts';
import { words } from '@shared/words/index.ts';

describe('a download', () => {
  const page = 'walewright://page/';

  it('of a project that the page made is let through', () => {
    expect(isOwnCopy(page, 'blob:walewright://page/0b5e9b1c-7a55-4d5c-9c1e', 'Skerry sleeve.walewright')).toBe(true);
  });

  it.each([
    ['https://evil.example/sleeve.walewright', 'sleeve.walewright'],
    ['blob:https://evil.example/0b5e9b1c', 'sleeve.walewright'],
    ['blob:walewright://page.evil.example/0b5e9b1c', 'sleeve.walewright'],
    ['data:text/plain,x', 'sleeve.walewright'],
    ['blob:walewright://page/0b5e9b1c', 'sleeve.desktop'],
    ['blob:walewright://page/0b5e9b1c', ''],
  ])('from %s called %j is not', (address, fileName) => {
    expect(isOwnCopy(page, address, fileName)).toBe(false);
  });
});

describe("the platform's menu", () => {
  const commands = (isMac: boolean) =>
    menuColumns(isMac, true)
      .flatMap((column) => column.items)
      .filter((item) => item.kind === 'command');

  it.each(commands(false))('asks for an action that the page has: $label', (item) => {
    const { id, label, keys } = item;
    expect([words.commands[id], words.changes.undo(null), words.changes.redo(null)]).toContain(label);
    const heard = shortcutsOf(id).map((each) => each.replace('Mod', 'CmdOrCtrl'));
    if (keys === undefined) expect(heard).toSatisfy((all: string[]) => all.every((each) => each.length === 1));
    else expect(heard).toContain(keys);
  });

  it('writes shortcuts as the platform takes them, and none of a single key, which may be switched off', () => {
    const keys = new Map(commands(false).map((item) => [item.id, item.keys]));
    expect(keys.get('save-as')).toBe('CmdOrCtrl+Shift+S');
    expect(keys.get('theme-dark')).toBe('CmdOrCtrl+Shift+D');
    expect(keys.get('rename-project')).toBe('F2');
    expect(keys.has('bench-piece')).toBe(true);
    expect(keys.get('bench-piece')).toBeUndefined();
  });

  it('names nothing twice', () => {
    for (const { items } of menuColumns(false, false)) {
      const labels = items.flatMap((item) => ('label' in item && item.label !== undefined ? [item.label] : []));
      expect(new Set(labels).size).toBe(labels.length);
    }
  });

  it("zooms the whole window by the platform's own roles and keys", () => {
    const view = menuColumns(false, true).find(({ label }) => label === 'View')?.items ?? [];
    const roles = view.flatMap((item) => (item.kind === 'role' ? [item.role] : []));
    expect(roles).toEqual(expect.arrayContaining(['zoomIn', 'zoomOut', 'resetZoom']));
    // The page must not hear these keys as commands of its own.
    expect(commandIds.flatMap(shortcutsOf)).not.toEqual(
      expect.arrayContaining([expect.stringMatching(/^Mod\+[-+=0]$/)]),
    );
  });

  it('ends the program from the File column, but not on macOS, which has a place for it', () => {
    const roles = (isMac: boolean) =>
      menuColumns(isMac, true).flatMap(({ items }) =>
        items.flatMap((item) => (item.kind === 'role' ? [item.role] : [])),
      );
    expect(roles(false)).toContain('quit');
    expect(roles(true)).not.toContain('quit');
    expect(roles(false)).not.toContain('toggleDevTools');
  });
});

describe('a window that is to close', () => {
  it('closes when all is saved', () => {
    const guard = closeGuard(() => expect.unreachable());
    expect(guard.mayClose()).toBe(true);
  });

  it('asks the page while work is unsaved, each time, and closes once it is not', () => {
    let asked = 0;
    const guard = closeGuard(() => (asked += 1));
    guard.setUnsaved(true);
    expect([guard.mayClose(), guard.mayClose(), asked]).toEqual([false, false, 2]);
    guard.setUnsaved(false);
    expect([guard.mayClose(), asked]).toEqual([true, 2]);
  });

  it('closes when its page has ended and cannot be asked', () => {
    const guard = closeGuard(() => expect.unreachable());
    guard.setUnsaved(true);
    guard.pageEnded();
    expect(guard.mayClose()).toBe(true);
  });
});

describe('the file on a command line', () => {
  it.each([
    { given: ['electron', '.'], isPackaged: false, file: null },
    { given: ['electron', '/app', 'a.walewright'], isPackaged: false, file: '/here/a.walewright' },
    { given: ['electron', '--no-sandbox', '--inspect=0', '/app', '/b/a.png'], isPackaged: false, file: '/b/a.png' },
    { given: ['walewright'], isPackaged: true, file: null },
    { given: ['walewright', 'a.walewright'], isPackaged: true, file: '/here/a.walewright' },
    { given: ['walewright', '--enable-logging', 'a.walewright'], isPackaged: true, file: '/here/a.walewright' },
  ])('$given is $file', ({ given, isPackaged, file }) => {
    expect(namedFile(given, isPackaged, '/here')).toBe(file);
  });
});
