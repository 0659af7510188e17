/** The view model of the Knit bench: where the knitter is in the piece that is looked at, and what was counted. */
import type { CommandOf, Host } from '@shared/host/index.ts';
import type { PieceKey } from '@shared/journal/index.ts';
import type { KnittingOrder } from '@shared/knitting/index.ts';
import { words } from '@shared/words/index.ts';
import { commandsOf, unless, type Commands } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import { liveFields, type LiveFields } from '../ui/live.ts';
import type { Counted, Happened, PieceCounter } from './piece-counter.ts';

interface Shown {
  /** Null as long as it is not known, and where nothing can be knitted. */
  readonly counted: Counted | null;
  /** Which of those that are knitted of the piece, from 1. */
  readonly copy: number;
  readonly speaks: boolean;
  /** A tone at a stop where there is something to do. */
  readonly sounds: boolean;
  /** How long it takes yet is told. */
  readonly tellsTime: boolean;
  /** The reading that is proposed where another one is asked for; null while none is. */
  readonly asked: number | null;
}

export class KnitViewModel {
  readonly commands: Commands<CommandOf<'knitting'>>;
  readonly #shown: LiveFields<Shown>;
  #counter: PieceCounter | null = null;

  constructor(
    readonly session: Session,
    readonly host: Host,
  ) {
    this.#shown = liveFields<Shown>(
      { counted: null, copy: 1, speaks: false, sounds: false, tellsTime: true, asked: null },
      session.live,
    );
    const whyNot = unless(() => this.counted !== null, words.whyNot.notKnitted);
    this.commands = commandsOf({
      // A key that is held counts one row: the next is knitted after it.
      'row-done': { whyNot, run: (isHeld) => void (isHeld !== true && this.happened({ kind: 'row-done' })) },
      'row-back': { whyNot, run: (isHeld) => void (isHeld !== true && this.happened({ kind: 'back' })) },
      'reading-other': { whyNot, run: () => this.ask() },
      'rows-spoken': { isOn: () => this.speaks, run: () => this.#shown.set({ speaks: !this.speaks }) },
    });
    this.#followSaving();
  }

  get counted(): Counted | null {
    return this.#shown.now.counted;
  }
  get copy(): number {
    return this.#shown.now.copy;
  }
  set copy(copy: number) {
    this.#shown.set({ copy });
  }
  get speaks(): boolean {
    return this.#shown.now.speaks;
  }
  get sounds(): boolean {
    return this.#shown.now.sounds;
  }
  set sounds(sounds: boolean) {
    this.#shown.set({ sounds });
  }
  get tellsTime(): boolean {
    return this.#shown.now.tellsTime;
  }
  set tellsTime(tellsTime: boolean) {
    this.#shown.set({ tellsTime });
  }
  get asked(): number | null {
    return this.#shown.now.asked;
  }

  /** Asks for another reading, and proposes one: the one that is, where none is given. */
  ask(reading = this.counted?.place.reading ?? 0): void {
    this.#shown.set({ asked: reading });
  }
  leaveAsked(): void {
    this.#shown.set({ asked: null });
  }

  /** The piece that is on the needles, and how it would be knitted as it is designed now; null where it cannot be. */
  look(of: PieceKey, design: KnittingOrder | null, counterOf: CounterOf): void {
    if (!design) {
      this.#counter = null;
      this.#shown.set({ counted: null });
      return;
    }
    if (this.#counter?.isOf(of) === true) {
      this.#counter.design = design;
      return;
    }
    this.#shown.set({ counted: null });
    const counter = counterOf(this.host, of, design, {
      counted: (counted) => void (this.#counter === counter && this.#shown.set({ counted })),
      problem: (problem) => void (this.#counter === counter && this.session.notify({ kind: 'problem', problem })),
    });
    this.#counter = counter;
    void counter.load();
  }

  /** Writes down what happened, and shows it then. */
  happened(event: Happened): Promise<void> {
    return this.#counter?.happened(event) ?? Promise.resolve();
  }

  /** Looks whether another window has counted. */
  lookAround(): void {
    void this.#counter?.catchUp();
  }

  /** Pieces on the needles go with their project when it gets another file or name. */
  #followSaving(): void {
    const { session } = this;
    const named = (): PieceKey['project'] => ({ name: session.projectName, path: session.file?.path ?? null });
    let { opened } = session;
    let before = named();
    session.subscribe(() => {
      const now = named();
      const isOther = now.path !== before.path || now.name !== before.name;
      if (isOther && session.opened === opened) void this.host.call('knitting.savedAs', { from: before, to: now });
      before = now;
      ({ opened } = session);
    });
  }
}

/** Makes what counts a piece: it comes with the bench. */
export type CounterOf = (...args: ConstructorParameters<typeof PieceCounter>) => PieceCounter;
