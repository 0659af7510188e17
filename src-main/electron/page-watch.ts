/**
 * What is done when the page ends or does not answer. Free of Electron, which
 * gives the events and shows the boxes.
 *
 * The page keeps unsaved work aside while it is drawn, so a page that has ended
 * is loaded again and offers what was kept; one that hangs can be waited for,
 * or closed with the same work kept for the next start.
 */
export interface PageActs {
  /** Says that the page has ended; `isMemory`: it ran out of memory. */
  askEnded(isMemory: boolean): Promise<'reload' | 'close'>;
  /** Says that the page does not answer; the box goes away by `signal`, and its answer then counts for nothing. */
  askHanging(signal: AbortSignal): Promise<'wait' | 'close'>;
  /** True if the page answers within a few seconds. */
  isAnswering(): Promise<boolean>;
  reload(): void;
  /** Closes the window without asking the page. */
  close(): void;
}

export interface PageWatch {
  /** The page's process has ended, for one of Electron's reasons. */
  ended(reason: string): Promise<void>;
  /** The platform found that the page does not answer. */
  hangs(): Promise<void>;
  /** It answers again. */
  answersAgain(): void;
  /** The page was asked something that it should see to, such as whether the window may close. */
  wasAsked(): Promise<void>;
}

export function watchPage(acts: PageActs): PageWatch {
  let hanging: AbortController | null = null;
  let isAskingEnded = false;
  let isClosed = false;

  function close(): void {
    isClosed = true;
    acts.close();
  }

  async function hangs(): Promise<void> {
    if (isClosed || isAskingEnded || hanging) return;
    const box = new AbortController();
    hanging = box;
    const answer = await acts.askHanging(box.signal);
    if (hanging === box) hanging = null;
    if (answer === 'close' && !box.signal.aborted && !isClosed) close();
  }

  function answersAgain(): void {
    hanging?.abort();
    hanging = null;
  }

  return {
    hangs,
    answersAgain,

    async ended(reason) {
      // A process that ends by itself belongs to a window that closes.
      if (isClosed || isAskingEnded || reason === 'clean-exit') return;
      answersAgain();
      isAskingEnded = true;
      const answer = await acts.askEnded(reason === 'oom');
      isAskingEnded = false;
      if (isClosed) return;
      if (answer === 'reload') acts.reload();
      else close();
    },

    async wasAsked() {
      if (!(await acts.isAnswering())) await hangs();
    },
  };
}
