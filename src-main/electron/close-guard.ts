/**
 * Whether a window may close.
 *
 * With unsaved work the page is asked; it saves or asks the person, says that
 * nothing is unsaved any more, and closes the window itself. A page that has
 * ended cannot be asked, and its work is kept aside; see page-watch.ts for one
 * that does not answer.
 */
export interface CloseGuard {
  setUnsaved(isUnsaved: boolean): void;
  pageEnded(): void;
  /** True if the window may close now; false if the page was asked. */
  mayClose(): boolean;
}

export function closeGuard(askPage: () => void): CloseGuard {
  let isUnsaved = false;
  return {
    setUnsaved: (now) => void (isUnsaved = now),
    pageEnded: () => void (isUnsaved = false),
    mayClose() {
      if (isUnsaved) askPage();
      return !isUnsaved;
    },
  };
}
