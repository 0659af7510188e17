/** The view model of the Knit bench: where the knitter is in the piece that is looked at, and what was counted. */
import { START_AIDS, type Aids, type CommandOf, type Host } from '@shared/host/index.ts';
import type { PieceKey } from '@shared/journal/index.ts';
import type { KnittingOrder } from '@shared/knitting/index.ts';
import { words } from '@shared/words/index.ts';
import type { Problem } from '@shared/problem/index.ts';
import { commandsOf, unless, type Commands } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import { liveFields, type LiveFields } from '../ui/live.ts';
import { countedLast, type CountedLast } from './counted-last.ts';
import type { Counted, Happened, PieceCounter } from './piece-counter.ts';

interface Shown {
  /** Null as long as it is not known, and where nothing is begun and nothing can be. */
  readonly counted: Counted | null;
  /** Which of those that are knitted of the piece, from 1. */
  readonly copy: number;
  readonly aids: Aids;
  /** The reading that is proposed where another one is asked for; null while none is. */
  readonly asked: number | null;
  /** Why the journal of the piece cannot be read; null: it can. */
  readonly unread: Problem | null;
  /** It is asked whether the piece is begun anew. */
  readonly isAnewAsked: boolean;
  /** The piece that was counted last, where it is another than the one that is looked at, until one is counted here. */
  readonly elsewhere: CountedLast | null;
  /** By piece, size and copy: the changed design, by its digest, that the knitter goes on without. */
  readonly passedOver: ReadonlyMap<string, string>;
}

export class KnitViewModel {
  readonly commands: Commands<CommandOf<'knitting'>>;
  readonly #shown: LiveFields<Shown>;
  /** `opened`: which of the projects that were opened it is a piece of. */
  #looked: { readonly opened: number; readonly of: PieceKey; readonly counter: PieceCounter } | null = null;
  /** The piece that was counted last, until one is counted here; null: none, or not known yet. */
  #last: CountedLast | null = null;
  /** It is still looked for, and wanted. */
  #isLastWanted = false;
  /** Journals on their way to another file or name of the project, one after the other. */
  #moved: Promise<unknown> = Promise.resolve();

  constructor(
    readonly session: Session,
    readonly host: Host,
    aids: Aids = START_AIDS,
  ) {
    this.#shown = liveFields<Shown>(
      { counted: null, copy: 1, aids, ...NOTHING_ASKED, elsewhere: null, passedOver: new Map() },
      session.live,
    );
    const whyNot = unless(() => this.counted !== null, words.whyNot.notKnitted);
    const whyNotBack = unless(() => !this.counted?.damage, words.whyNot.readingOpen);
    this.commands = commandsOf({
      // A key that is held counts one row: the next is knitted after it.
      'row-done': { whyNot, run: (isHeld) => void (isHeld !== true && this.happened({ kind: 'row-done' })) },
      'row-back': {
        whyNot: () => whyNot() ?? whyNotBack(),
        run: (isHeld) => void (isHeld !== true && this.happened({ kind: 'back' })),
      },
      'reading-other': { whyNot, run: () => this.ask() },
      'rows-spoken': {
        isOn: () => this.aids.speaks !== 'no',
        run: () => this.setAids({ speaks: this.aids.speaks === 'no' ? 'long' : 'no' }),
      },
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
  get aids(): Aids {
    return this.#shown.now.aids;
  }
  get asked(): number | null {
    return this.#shown.now.asked;
  }

  /** Sets what helps at the machine, for this and later runs; what is left out stays. */
  setAids(set: Partial<Aids>): void {
    const aids = { ...this.aids, ...set };
    this.#shown.set({ aids });
    void this.host.call('settings.keep', { aids }).then((kept) => {
      if (!kept.ok) this.session.notify({ kind: 'problem', problem: kept.problem });
    });
  }

  /** Asks for another reading, and proposes one: the one that is, where none is given. */
  ask(reading = this.counted?.place.reading ?? 0): void {
    this.#shown.set({ asked: reading });
  }
  leaveAsked(): void {
    this.#shown.set({ asked: null });
  }

  get unread(): Problem | null {
    return this.#shown.now.unread;
  }
  get isAnewAsked(): boolean {
    return this.#shown.now.isAnewAsked;
  }

  /** The design is another, and it is not decided yet to go on as the piece was begun. */
  get isChangeOpen(): boolean {
    const changed = this.counted?.changed ?? null;
    return changed !== null && !!this.#looked && this.#shown.now.passedOver.get(pieceText(this.#looked)) !== changed;
  }
  /** Goes on as the piece was begun, until the design is changed again. */
  passOver(): void {
    const changed = this.counted?.changed ?? null;
    if (changed === null || !this.#looked) return;
    this.#shown.set({ passedOver: new Map(this.#shown.now.passedOver).set(pieceText(this.#looked), changed) });
  }

  /**
   * The piece that is looked at, and how it would be knitted as it is designed
   * now; null where it could not be: one that is on the needles goes on all the same.
   */
  look(of: PieceKey, design: KnittingOrder | null, counterOf: CounterOf): void {
    const { opened } = this.session;
    if (this.#looked && this.#looked.opened === opened && isSamePiece(this.#looked.of, of)) {
      const { counter } = this.#looked;
      if (!isSameProject(this.#looked.of, of)) counter.goOnAs(of, this.#moved);
      this.#looked = { opened, of, counter };
      counter.redesign(design);
      return;
    }
    this.#shown.set({ counted: null, ...NOTHING_ASKED });
    const counter = counterOf(this.host, of, design, {
      counted: (counted) => {
        if (this.#looked?.counter !== counter) return;
        const isNews = counted !== null && counted.damage !== null && this.counted?.damage !== counted.damage;
        this.#shown.set(isNews ? { counted, asked: counted.place.reading } : { counted });
      },
      unread: (unread) => void (this.#looked?.counter === counter && this.#shown.set({ unread })),
      problem: (problem) =>
        void (this.#looked?.counter === counter && this.session.notify({ kind: 'problem', problem })),
    });
    if (this.#looked?.opened !== opened) this.#findLast(opened, of.project);
    this.#looked = { opened, of, counter };
    this.#tellElsewhere();
    void counter.load();
  }

  get countedElsewhere(): CountedLast | null {
    return this.#shown.now.elsewhere;
  }

  #findLast(opened: number, project: PieceKey['project']): void {
    [this.#last, this.#isLastWanted] = [null, true];
    void countedLast(this.host, this.session.project, project).then((last) => {
      if (this.#looked?.opened !== opened || !this.#isLastWanted) return;
      this.#last = last;
      this.#tellElsewhere();
    });
  }

  #tellElsewhere(): void {
    const isHere = this.#last !== null && this.#looked !== null && isSamePiece(this.#last.of, this.#looked.of);
    this.#shown.set({ elsewhere: isHere ? null : this.#last });
  }

  /** Looks at the piece that was counted last. */
  goToLast(): void {
    if (!this.#last) return;
    const { piece, size, copy } = this.#last.of;
    this.#shown.set({ copy });
    this.session.look({ piece: piece.id, size: size.id });
  }

  /** Writes down what happened, and shows it then. */
  happened(event: Happened): Promise<void> {
    [this.#last, this.#isLastWanted] = [null, false];
    this.#tellElsewhere();
    return this.#looked?.counter.happened(event) ?? Promise.resolve();
  }

  /** Asks whether the piece is begun anew; where nothing is counted it is begun at once. */
  askAnew(): void {
    if ((this.counted?.place.reading ?? 0) > 0) this.#shown.set({ isAnewAsked: true });
    else this.beginAnew();
  }
  leaveAnew(): void {
    this.#shown.set({ isAnewAsked: false });
  }

  /**
   * Puts what was counted of it aside, and begins again with casting on. What
   * the counter reads is asked then where the journal could not tell it.
   */
  beginAnew(): void {
    const wasUnread = this.unread !== null;
    const counter = this.#looked?.counter;
    void counter?.beginAnew().then(() => {
      if (wasUnread && this.unread === null && this.#looked?.counter === counter) this.ask(0);
    });
  }

  /** Looks whether another window has counted. */
  lookAround(): void {
    void this.#looked?.counter.catchUp();
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
      if (isOther && session.opened === opened) {
        const from = before;
        this.#moved = this.#moved.then(() => this.host.call('knitting.savedAs', { from, to: now }));
      }
      before = now;
      ({ opened } = session);
    });
  }
}

const NOTHING_ASKED = { asked: null, unread: null, isAnewAsked: false } as const;

/** Among those of all projects that were opened. */
function pieceText({ opened, of }: { readonly opened: number; readonly of: PieceKey }): string {
  return JSON.stringify([opened, of.piece.id, of.size.id, of.copy]);
}

function isSamePiece(one: PieceKey, other: PieceKey): boolean {
  return one.piece.id === other.piece.id && one.size.id === other.size.id && one.copy === other.copy;
}

function isSameProject({ project: one }: PieceKey, { project: other }: PieceKey): boolean {
  return one.path === other.path && one.name === other.name;
}

/** Makes what counts a piece: it comes with the bench. */
export type CounterOf = (...args: ConstructorParameters<typeof PieceCounter>) => PieceCounter;
