/** What no window of ours may ever do, after Electron's own security list. */
import { app, type Session } from 'electron';
import { isOwnCopy } from './own-copy.ts';
import { PAGE_ADDRESS } from './page-protocol.ts';
import { isPermitted } from './page-rights.ts';

/** Holds for every page there will be; call before the first window. */
export function lockDownPages(): void {
  app.on('web-contents-created', (_event, contents) => {
    contents.on('will-navigate', (event) => event.preventDefault());
    contents.on('will-frame-navigate', (event) => event.preventDefault());
    contents.on('will-redirect', (event) => event.preventDefault());
    contents.on('will-attach-webview', (event) => event.preventDefault());
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  });
}

/** Electron grants permissions unless told otherwise. */
export function lockDownSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, answer) => answer(isPermitted(permission)));
  session.setPermissionCheckHandler((_contents, permission) => isPermitted(permission));
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler((_request, answer) => answer({}));
  session.on('will-download', (event, item) => {
    if (!isOwnCopy(PAGE_ADDRESS, item.getURL(), item.getFilename())) event.preventDefault();
  });
}
