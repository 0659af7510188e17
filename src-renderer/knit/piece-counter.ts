/**
 * Counts one piece on the needles. What happened is written to its journal
 * first and shown then, so that what was shown is never lost; where it cannot
 * be written the count goes on in the window, says so, and is written with the
 * next row that can be. Nothing is shown before it is known what the journal
 * holds: a count from nought over one of sixty rows would lose the row.
 */
import type { Host } from '@shared/host/index.ts';
import {
  journalFromText,
  type Beginning,
  type Entry,
  type KnittingEvent,
  type PieceKey,
} from '@shared/journal/index.ts';
import {
  AT_THE_START,
  countedOn,
  countingFrom,
  digestOf,
  orderToText,
  toldOf,
  type Counting,
  type KnittingOrder,
  type KnittingPlace,
  type Progress,
} from '@shared/knitting/index.ts';
import { outcome, problemError, type Problem } from '@shared/problem/index.ts';
import { newId } from '../session/new-id.ts';

/** An event, but for the reading at which it happens. */
export type Happened = KnittingEvent extends infer Event
  ? Event extends KnittingEvent
    ? Omit<Event, 'reading'>
    : never
  : never;

export interface Counted extends Progress {
  /** How it would be knitted as it is designed now; null where it could not be. */
  readonly design: KnittingOrder | null;
  /** The design is another than the one that it was begun by. */
  readonly isChanged: boolean;
  /** All that is shown is on the disk. */
  readonly isKept: boolean;
  /** When each row was counted, in ms, as far as that is known. */
  readonly times: readonly number[];
  /** Another window counts, and this one follows it. */
  readonly isFollowing: boolean;
}

interface Listener {
  /** Null: nothing is begun, and nothing can be. */
  counted(counted: Counted | null): void;
  problem(problem: Problem): void;
}

export class PieceCounter {
  /** Null before the journal was read, and where there is neither a journal nor a design. */
  #counting: Counting | null = null;
  #isRead = false;
  #isBegun = false;
  /** Whoever comes back says first where the carriage stands; another window that counts is not asked for it. */
  #isBack = false;
  #isFollowing = false;
  /** The same problem of reading is told once, however often it is tried again. */
  #told: Problem['code'] | null = null;
  /** One thing after the other: what happens while another is written waits for it. */
  #work: Promise<void> = Promise.resolve();
  #times: number[] = [];
  /** When something happened here last, in ms. */
  #lastAt: number;

  constructor(
    private readonly host: Host,
    private of: PieceKey,
    private design: KnittingOrder | null,
    private readonly listener: Listener,
    private readonly now: () => number = Date.now,
  ) {
    this.#lastAt = now();
  }

  /** From now on it would be knitted by that design. */
  redesign(design: KnittingOrder | null): void {
    if (design === this.design) return;
    this.design = design;
    // Nothing is knitted yet that it could differ from.
    if (this.#isRead && !this.#isBegun) this.#counting = design && atTheStart(design);
    this.#tell();
  }

  /** Its project has another file or name, once its journal has `moved` there. */
  goOnAs(of: PieceKey, moved: Promise<unknown>): void {
    void this.#inTurn(async () => {
      await moved;
      this.of = of;
    });
  }

  /** Reads the journal, and goes on where it ends. */
  load(): Promise<void> {
    return this.#inTurn(() => this.#load());
  }

  happened(event: Happened): Promise<void> {
    return this.#inTurn(() => this.#one(event));
  }

  /** Puts what was counted aside, and begins with the design as it is now. */
  beginAnew(): Promise<void> {
    return this.#inTurn(async () => {
      if (!this.design) return;
      const begun = await this.host.call('knitting.begin', { begun: this.#beginning(this.design), isAnew: true });
      if (!begun.ok) return this.listener.problem(begun.problem);
      this.#counting = atTheStart(this.design);
      [this.#isBegun, this.#isBack, this.#times] = [true, false, []];
      this.#tell();
    });
  }

  /** Takes over what another window wrote, writes what waits, and reads again what could not be read. */
  catchUp(): Promise<void> {
    return this.#inTurn(async () => {
      const { of } = this;
      if (!this.#isRead || !this.#isBegun || !this.#counting) return this.#load();
      this.#noticeAway(this.#counting.progress.place);
      if (this.#counting.waiting.length > 0) {
        await this.#write();
        return this.#tell();
      }
      const since = await this.host.call('knitting.since', { of, after: this.#counting.entries });
      if (!since.ok || since.value.entries.length === 0) return;
      this.#take(since.value.entries);
      this.#isFollowing = true;
      this.#lastAt = this.now();
      this.#tell();
    });
  }

  /** Nothing happened for so long that the knitter may have been away. */
  #noticeAway({ phase, reading }: KnittingPlace): void {
    if (this.#isBack || phase !== 'knitting' || reading === 0 || this.now() - this.#lastAt < AWAY_MS) return;
    this.#isBack = true;
    this.#tell();
  }

  #inTurn(work: () => Promise<void> | void): Promise<void> {
    const done = this.#work.then(work);
    this.#work = done.catch(() => undefined);
    return done;
  }

  /** Another window may have begun meanwhile what this one has not. */
  async #load(): Promise<void> {
    const wasRead = this.#isRead;
    if (this.#counting && this.#counting.waiting.length > 0) return;
    const read = await this.host.call('knitting.read', { of: this.of });
    const counting = read.ok
      ? outcome(() => {
          const journal = read.value && journalFromText(read.value.text);
          return journal && { ...countingFrom(journal), times: timesOf(journal.entries) };
        })
      : read;
    if (!counting.ok) {
      if (this.#told !== counting.problem.code) this.listener.problem(counting.problem);
      this.#told = counting.problem.code;
      return;
    }
    this.#isRead = true;
    if (counting.value) {
      const { times, ...begun } = counting.value;
      [this.#counting, this.#times, this.#isBegun] = [begun, times, true];
      const { phase, reading } = begun.progress.place;
      this.#isBack = !wasRead && phase === 'knitting' && reading > 0;
    } else if (!wasRead) this.#counting = this.design && atTheStart(this.design);
    else return;
    this.#tell();
  }

  async #one(happened: Happened): Promise<void> {
    const counting = this.#counting;
    if (!counting) return;
    const { reading } = counting.progress.place;
    const event = { ...happened, reading } as KnittingEvent;
    const next = outcome(() => {
      if (this.#isBack && ENDS_ROW.has(happened.kind)) throw problemError('carriage-not-seen', { reading });
      return countedOn(counting, { id: newId(), event });
    });
    if (!next.ok) return this.listener.problem(next.problem);
    if (SAYS_WHERE.has(happened.kind)) this.#isBack = false;
    [this.#isFollowing, this.#lastAt] = [false, this.now()];
    this.#counting = next.value;
    await this.#write();
    this.#tell();
  }

  /** Writes all that waits; what cannot be written goes on waiting. */
  async #write(): Promise<void> {
    if (!this.#isBegun && !(await this.#begin())) return;
    const { entries, waiting } = this.#counting as Counting;
    if (waiting.length === 0) return;
    const written = await this.host.call('knitting.append', { of: this.of, after: entries, events: [...waiting] });
    if (!written.ok) return;
    this.#take(written.value.entries);
    // Others stood there: what still can follow them is written behind them.
    if (!written.value.isKept && written.value.entries.length > 0) await this.#write();
  }

  async #begin(): Promise<boolean> {
    const counting = this.#counting as Counting;
    const begun = this.#beginning(counting.progress.knitting);
    const answer = await this.host.call('knitting.begin', { begun, isAnew: false });
    if (!answer.ok) return false;
    const { text, isNew } = answer.value;
    // Another window has begun it: what waits here follows what was counted there, if it can.
    const there = isNew ? null : journalFromText(text);
    this.#isBegun = true;
    if (!there) return true;
    this.#counting = { ...countingFrom(there), waiting: counting.waiting };
    this.#times = timesOf(there.entries);
    this.#take([]);
    return true;
  }

  #beginning(knitting: KnittingOrder): Beginning {
    const order = orderToText(knitting);
    return { of: this.of, digest: digestOf(order), order };
  }

  #take(entries: readonly Entry[]): void {
    const told = outcome(() => toldOf(this.#counting as Counting, entries));
    if (!told.ok) return this.listener.problem(told.problem);
    this.#counting = told.value.counting;
    this.#times = [...this.#times, ...timesOf(entries)].slice(-MOST_TIMES);
    for (const { problem } of told.value.dropped) this.listener.problem(problem);
  }

  #tell(): void {
    const { design } = this;
    if (!this.#isRead) return;
    if (!this.#counting) return this.listener.counted(null);
    const { progress, waiting } = this.#counting;
    const { knitting, place } = progress;
    this.listener.counted({
      knitting,
      place: this.#isBack ? { ...place, phase: 'returning', ripped: null, taken: null } : place,
      design,
      isChanged: design !== null && knitting !== design && textOf(knitting) !== textOf(design),
      isKept: waiting.length === 0,
      times: this.#times,
      isFollowing: this.#isFollowing,
    });
  }
}

/** Not done before it is said where the carriage stands. */
const ENDS_ROW: ReadonlySet<Happened['kind']> = new Set<Happened['kind']>(['row-done', 'finished']);
/** The side is said, or is asked for by what the journal has of it. */
const SAYS_WHERE: ReadonlySet<Happened['kind']> = new Set<Happened['kind']>([
  'carriage-seen',
  'go-to',
  'ripped-back',
  'order-taken',
]);

/** So long without a row, in ms, that the knitter may have turned to something else in between. */
export const AWAY_MS = 20 * 60_000;

/** More than a pace is told from, and a rest is proposed by. */
const MOST_TIMES = 1000;

function timesOf(entries: readonly Entry[]): number[] {
  return entries
    .filter(({ event }) => event.kind === 'row-done')
    .map(({ at }) => Date.parse(at))
    .slice(-MOST_TIMES);
}

function atTheStart(knitting: KnittingOrder): Counting {
  const progress = { knitting, place: AT_THE_START };
  return { entries: 0, kept: progress, waiting: [], progress };
}

const texts = new WeakMap<KnittingOrder, string>();
function textOf(knitting: KnittingOrder): string {
  let text = texts.get(knitting);
  if (text === undefined) texts.set(knitting, (text = orderToText(knitting)));
  return text;
}
