/** What the page may do in its window, after Electron's own security list. Free of Electron. */
export interface PageRights {
  readonly contextIsolation: true;
  readonly sandbox: true;
  readonly nodeIntegration: false;
  readonly webSecurity: true;
  readonly webviewTag: false;
  readonly spellcheck: false;
  readonly devTools: boolean;
}

/**
 * Of all that a page can ask the platform for, it may keep the screen awake:
 * beside the machine nobody touches the keyboard for minutes. Electron holds its
 * power saver off for as long as the page wants it.
 */
export function isPermitted(permission: string): boolean {
  return permission === 'screen-wake-lock';
}

/** Developer tools are for who works on the program: an installed one has none, by menu, key or otherwise. */
export function pageRights(isPackaged: boolean): PageRights {
  return {
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    webSecurity: true,
    webviewTag: false,
    spellcheck: false,
    devTools: !isPackaged,
  };
}
