/**
 * The platform's menu, as a list.
 *
 * A command is one of the page's, named by its id: what it is called and its
 * shortcut come from the same tables, and the page runs it as if its button had
 * been pressed, so that menu, button and shortcut cannot differ.
 */
import { isSingleKey, shortcutsOf, type Shortcut, type WindowCommand } from '@shared/host/index.ts';
import { words } from '@shared/words/index.ts';

export type MenuItem =
  | { readonly kind: 'command'; readonly id: WindowCommand; readonly label: string; readonly keys?: string }
  /** What the platform does by itself. */
  | {
      readonly kind: 'role';
      readonly role: Role;
      readonly label?: string;
      /** Other keys than the platform's own; an item that is not shown is there for its keys alone. */
      readonly keys?: string;
      readonly isShown?: false;
    }
  | { readonly kind: 'recent'; readonly label: string; readonly clear: string }
  | { readonly kind: 'line' };

export type Role =
  | 'cut'
  | 'copy'
  | 'paste'
  | 'selectAll'
  | 'zoomIn'
  | 'zoomOut'
  | 'resetZoom'
  | 'togglefullscreen'
  | 'toggleDevTools'
  | 'quit'
  | 'close';

export interface MenuColumn {
  readonly label: string;
  readonly items: readonly MenuItem[];
}

const LINE: MenuItem = { kind: 'line' };
/** What a command is called where its state is not known: the page alone knows which step undo takes back. */
function labelOf(id: WindowCommand): string {
  if (id === 'length-unit') return words.commands[id]('in');
  const label = words.commands[id];
  return typeof label === 'string' ? label : label(null);
}

/** A shortcut as Electron takes it: `CmdOrCtrl+Shift+N`. */
function acceleratorOf(keys: Shortcut): string {
  return keys.replace('Mod', 'CmdOrCtrl');
}

/** Shortcuts of a single key can be switched off, and are the drawing's: a menu shows none. */
const command = (id: WindowCommand): MenuItem => {
  const keys = shortcutsOf(id).find((each) => !isSingleKey(each));
  return { kind: 'command', id, label: labelOf(id), ...(keys === undefined ? {} : { keys: acceleratorOf(keys) }) };
};
const role = (name: Role, label: string): MenuItem => ({ kind: 'role', role: name, label });

/** macOS keeps Quit in the program's own column, which the platform makes. */
export function menuColumns(isMac: boolean, isPackaged: boolean): readonly MenuColumn[] {
  const { menu } = words;
  return [
    {
      label: menu.file,
      items: [
        command('new'),
        command('open'),
        { kind: 'recent', label: menu.recent, clear: menu.clearRecent },
        command('read-photo'),
        command('open-sample'),
        LINE,
        command('save'),
        command('save-as'),
        command('rename-project'),
        command('colourways'),
        LINE,
        command('print'),
        ...(isMac ? [] : [LINE, role('quit', menu.quit)]),
      ],
    },
    {
      label: menu.edit,
      items: [
        // The platform's own undo acts on text fields alone.
        command('undo'),
        command('redo'),
        LINE,
        role('cut', menu.cut),
        role('copy', menu.copy),
        role('paste', menu.paste),
        role('selectAll', menu.selectAll),
      ],
    },
    {
      label: menu.view,
      items: [
        command('bench-motif'),
        command('bench-piece'),
        command('bench-sheet'),
        command('bench-knit'),
        LINE,
        command('commands'),
        command('tour'),
        LINE,
        command('theme-light'),
        command('theme-dark'),
        command('theme-system'),
        LINE,
        // The whole window, letters and all; the chart's own size has other keys.
        role('zoomIn', menu.zoomIn),
        // Where + needs Shift, its key without Shift.
        { kind: 'role', role: 'zoomIn', keys: 'CmdOrCtrl+=', isShown: false },
        role('zoomOut', menu.zoomOut),
        role('resetZoom', menu.zoomReset),
        role('togglefullscreen', menu.fullScreen),
        ...(isPackaged ? [] : [role('toggleDevTools', menu.developer)]),
      ],
    },
  ];
}
