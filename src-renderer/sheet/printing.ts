/**
 * Printing the placement sheet, from any bench.
 *
 * The command asks the platform's dialog where the shell has one, else the
 * browser's. A browser prints by commands of its own as well; it tells so
 * before it does, and is given the sheet then too. So what comes out of a
 * printer is always the sheet, and never the window.
 */
import { shortcutsOf, type Host } from '@shared/host/index.ts';
import { problemOf, type Problem } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';
import { keysShown } from '../commands/shortcut.ts';
import type { Session } from '../session/session.ts';
import { latePart } from '../ui/load-part.ts';
import { lineForPrinter } from './for-printer.ts';
import type * as Pages from './printed-pages.ts';
import type { Today } from './today.ts';

interface PrintingOptions {
  readonly session: Session;
  readonly host: Host;
  readonly today: Today;
  /** The shell can ask the platform's own dialog. */
  readonly hasPrintDialog: boolean;
}

type Parts = typeof Pages;

const printedPages = latePart(() => import('./printed-pages.ts'));

export class Printing {
  #parts: Parts | null = null;
  #isGoingOn = false;
  #isWithPlatform = false;
  #takeAway: (() => void) | null = null;

  constructor(private readonly options: PrintingOptions) {}

  /** What printing takes has been loaded with something else: commands of the browser find it from now on. */
  has(parts: Parts): void {
    this.#parts = parts;
  }

  /** Opens the dialog, or says what stands in the way of a sheet. */
  async print(): Promise<void> {
    if (this.#isGoingOn) return;
    this.#isGoingOn = true;
    const { session, today } = this.options;
    try {
      const parts = (this.#parts ??= await printedPages());
      const pages = parts.pagesNow(session, today.day);
      if (!pages.ok) return this.tell(pages.problem);
      await parts.lettersLoaded();
      await this.openDialog();
    } catch (thrown) {
      this.tell(problemOf(thrown));
    } finally {
      this.#isGoingOn = false;
    }
  }

  /** The browser is about to print, at whosever command: the sheet takes the place of the window. */
  before(): void {
    // What is laid for the platform's dialog stays until that has answered.
    if (this.#isWithPlatform) return;
    // Not every browser tells of the end of each print.
    this.#takeAway?.();
    this.#takeAway = this.lay();
  }

  private lay(): () => void {
    const { session, today } = this.options;
    // A browser that prints by itself waits for nothing, so for nothing to be loaded.
    if (this.#parts === null)
      return lineForPrinter(words.sheetBench.print.byCommand(keysShown(shortcutsOf('print')[0])));
    const pages = this.#parts.pagesNow(session, today.day);
    return pages.ok
      ? this.#parts.layPages(pages.value)
      : lineForPrinter(`${words.sheetBench.noSheet}. ${words.problems.sentence(pages.problem)}`);
  }

  /** It has printed, or given up. */
  after(): void {
    if (this.#isWithPlatform) return;
    this.#takeAway?.();
    this.#takeAway = null;
  }

  private async openDialog(): Promise<void> {
    const { host, session, hasPrintDialog } = this.options;
    if (!hasPrintDialog) return window.print();
    this.before();
    this.#isWithPlatform = true;
    try {
      const answer = await host.call('window.print', { paper: session.view.paper });
      if (!answer.ok) this.tell(answer.problem);
      else if (answer.value.isPrinted) session.announce(words.sheetBench.print.printed);
    } finally {
      this.#isWithPlatform = false;
      this.after();
    }
  }

  private tell(problem: Problem): void {
    this.options.session.notify({ kind: 'problem', problem });
  }
}
