/** The platform's boxes about a page that has ended or does not answer. */
import { dialog, type BrowserWindow, type MessageBoxOptions } from 'electron';
import { words } from '@shared/words/index.ts';
import type { PageActs } from './page-watch.ts';

/** Boxes over `browser`. Closed without an answer, they give the milder one, which stands first. */
export function troubleBoxes(browser: BrowserWindow): Pick<PageActs, 'askEnded' | 'askHanging'> {
  const text = words.windowTrouble;

  async function isFirst(options: MessageBoxOptions): Promise<boolean> {
    const box = { type: 'warning', defaultId: 0, cancelId: 0, noLink: true, ...options } as const;
    const { response } = await dialog.showMessageBox(browser, box);
    return response === 0;
  }

  return {
    async askEnded(isMemory) {
      const { title, reload, close } = text.ended;
      const detail = text.ended.detail(isMemory);
      return (await isFirst({ message: title, detail, buttons: [reload, close] })) ? 'reload' : 'close';
    },
    async askHanging(signal) {
      const { title, detail, wait, close } = text.hanging;
      return (await isFirst({ message: title, detail, buttons: [wait, close], signal })) ? 'wait' : 'close';
    },
  };
}
