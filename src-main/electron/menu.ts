/** The list of the menu, as the platform wants it. */
import { app, Menu, type MenuItemConstructorOptions } from 'electron';
import type { WindowCommand } from '@shared/host/index.ts';
import { menuColumns, type MenuItem } from './menu-items.ts';

/** Sets the platform's menu; `run` is given the id of the command that was chosen. */
export function setMenu(run: (command: WindowCommand) => void): void {
  const isMac = process.platform === 'darwin';
  const columns = menuColumns(isMac, app.isPackaged).map(({ label, items }): MenuItemConstructorOptions => ({
    label,
    submenu: items.map((item) => asElectron(item, run)),
  }));
  Menu.setApplicationMenu(Menu.buildFromTemplate([...(isMac ? [{ role: 'appMenu' as const }] : []), ...columns]));
}

function asElectron(item: MenuItem, run: (command: WindowCommand) => void): MenuItemConstructorOptions {
  switch (item.kind) {
    case 'line':
      return { type: 'separator' };
    case 'role':
      return {
        role: item.role,
        ...(item.label === undefined ? {} : { label: item.label }),
        ...(item.keys === undefined ? {} : { accelerator: item.keys }),
        ...(item.isShown === false ? { visible: false, acceleratorWorksWhenHidden: true } : {}),
      };
    case 'recent':
      return {
        role: 'recentDocuments',
        label: item.label,
        submenu: [{ role: 'clearRecentDocuments', label: item.clear }],
      };
    case 'command':
      return {
        label: item.label,
        click: () => run(item.id),
        // The page hears the keys itself and yields to text fields; here they are shown.
        ...(item.keys === undefined ? {} : { accelerator: item.keys, registerAccelerator: false }),
      };
  }
}
