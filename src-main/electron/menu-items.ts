/**
 * The platform's menu, as a list.
 *
 * A command is an action of the page, named by its id; the page runs it as if
 * its button had been pressed, so that menu, button and shortcut cannot
 * differ.
 */
import { words } from '@shared/words/index.ts';

export type MenuItem =
  | { readonly kind: 'command'; readonly id: string; readonly label: string; readonly keys?: string }
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
const command = (id: string, label: string, keys?: string): MenuItem => ({
  kind: 'command',
  id,
  label,
  ...(keys === undefined ? {} : { keys }),
});
const role = (name: Role, label: string): MenuItem => ({ kind: 'role', role: name, label });

/** macOS keeps Quit in the program's own column, which the platform makes. */
export function menuColumns(isMac: boolean, isPackaged: boolean): readonly MenuColumn[] {
  const { menu, shell } = words;
  const { commands, benches } = shell;
  return [
    {
      label: menu.file,
      items: [
        command('new', commands.new, 'CmdOrCtrl+Shift+N'),
        command('open', commands.open, 'CmdOrCtrl+O'),
        { kind: 'recent', label: menu.recent, clear: menu.clearRecent },
        command('read-photo', words.readingIn.chart.command, 'CmdOrCtrl+Shift+G'),
        command('open-sample', commands.openSample),
        LINE,
        command('save', commands.save, 'CmdOrCtrl+S'),
        command('save-as', commands.saveAs, 'CmdOrCtrl+Shift+S'),
        command('rename-project', commands.renameProject, 'F2'),
        LINE,
        command('print', commands.print, 'CmdOrCtrl+P'),
        ...(isMac ? [] : [LINE, role('quit', menu.quit)]),
      ],
    },
    {
      label: menu.edit,
      items: [
        // The platform's own undo acts on text fields alone.
        command('undo', menu.undo, 'CmdOrCtrl+Z'),
        command('redo', menu.redo, 'CmdOrCtrl+Shift+Z'),
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
        command('bench-motif', commands.goTo(benches.motif)),
        command('bench-piece', commands.goTo(benches.piece)),
        command('bench-sheet', commands.goTo(benches.sheet)),
        LINE,
        command('commands', commands.commands, 'CmdOrCtrl+K'),
        LINE,
        command('theme-light', commands.theme.light),
        command('theme-dark', commands.theme.dark),
        command('theme-system', commands.theme.system),
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
