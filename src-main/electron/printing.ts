/** The platform's print dialog. */
import type { BrowserWindow, WebContentsPrintOptions } from 'electron';
import { problemError } from '@shared/problem/index.ts';
import type { Shell } from '../services/index.ts';

type PageSize = NonNullable<WebContentsPrintOptions['pageSize']>;

const PAGE_SIZE = { a4: 'A4', letter: 'Letter' } as const satisfies Record<string, PageSize>;

/** Electron's word for a dialog that the person closed. */
const CANCELLED = /cancel/i;

/**
 * Prints what the page in `window()` lays out for a printer. The paper is what
 * the dialog begins with; which way round a page goes, the page says.
 */
export function platformPrinting(window: () => BrowserWindow | null): NonNullable<Shell['print']> {
  return (paper) =>
    new Promise((resolve, reject) => {
      const owner = window();
      if (owner === null) return resolve(false);
      const options = { pageSize: PAGE_SIZE[paper], margins: { marginType: 'none' }, printBackground: true } as const;
      owner.webContents.print(options, (isPrinted, reason) => {
        if (isPrinted) resolve(true);
        else if (CANCELLED.test(reason)) resolve(false);
        else reject(problemError('not-printed', { detail: reason }));
      });
    });
}
