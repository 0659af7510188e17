/** Kept work that is not on the table, and opening it. */
import type { Host } from '@shared/host/index.ts';
import type { Problem } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';
import { unless, type Action } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import type { Keeper } from './keeper.ts';
import { layKept, recoveredNotice, takeKeptWork, type Offer } from './kept-work.ts';
import type { WindowIdentity } from './window-identity.ts';

export interface OffersOptions {
  readonly host: Host;
  readonly session: Session;
  readonly identity: WindowIdentity;
  readonly keeper: Keeper;
  /** Asks about unsaved work; true if the table may be cleared. */
  readonly mayLeave: () => Promise<boolean>;
}

export class Offers {
  list = $state.raw<readonly Offer[]>([]);
  /** What was kept and cannot be read. */
  problems = $state.raw<readonly Problem[]>([]);
  isShown = $state(true);
  readonly action: Action<'kept-work'>;
  #isOpening = false;

  constructor(
    private readonly options: OffersOptions,
    { offers, problems }: { readonly offers: readonly Offer[]; readonly problems: readonly Problem[] },
  ) {
    this.list = offers;
    this.problems = problems;
    this.action = {
      whyNot: unless(() => this.#isAny, words.whyNot.keptWork),
      run: () => void (this.isShown = true),
    };
  }

  /** True while there is something to show, and the person has not put it off. */
  get areUp(): boolean {
    return this.isShown && this.#isAny;
  }

  get #isAny(): boolean {
    return this.list.length > 0 || this.problems.length > 0;
  }

  async open(offer: Offer): Promise<void> {
    // A second press would find the work taken, as if by another window.
    if (this.#isOpening) return;
    this.#isOpening = true;
    await this.#open(offer);
    this.#isOpening = false;
  }

  async #open(offer: Offer): Promise<void> {
    const { host, session, identity, keeper, mayLeave } = this.options;
    if (!(await mayLeave())) return;
    const answer = await takeKeptWork(host, identity, offer);
    if (!answer.ok) {
      session.notify({ kind: 'problem', problem: answer.problem });
      return;
    }
    this.list = this.list.filter((other) => other !== offer);
    if (answer.value === null) {
      session.notify({ kind: 'done', text: words.shell.kept.taken });
      return;
    }
    const { project, file, taken, laying } = answer.value;
    session.replace(project, file, false);
    keeper.adopt(taken);
    layKept(session, laying);
    session.notify(recoveredNotice(answer.value));
  }
}
