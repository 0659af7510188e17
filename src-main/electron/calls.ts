/** Answering the page's calls. */
import { ipcMain, type BrowserWindow } from 'electron';
import type { Services } from '@shared/host/index.ts';
import type { Outcome } from '@shared/problem/index.ts';
import { dispatch } from '../services/index.ts';
import { CALL_CHANNEL } from './channels.ts';
import { PAGE_ADDRESS } from './page-protocol.ts';

/** Answers the main frame of our own page in `window()` and nobody else. */
export function answerCalls(services: Services, window: () => BrowserWindow | null): void {
  ipcMain.handle(
    CALL_CHANNEL,
    (event, method: unknown, params: unknown): Promise<Outcome<unknown>> | Outcome<never> => {
      const frame = event.senderFrame;
      const isOurs = frame !== null && frame === window()?.webContents.mainFrame && frame.url.startsWith(PAGE_ADDRESS);
      if (!isOurs) return refused('it comes from another page');
      if (typeof method !== 'string') return refused('it has no name');
      return dispatch(services, method, params);
    },
  );
}

function refused(detail: string): Outcome<never> {
  return { ok: false, problem: { code: 'request-refused', where: null, facts: { detail } } };
}
