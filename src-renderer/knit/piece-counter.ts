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
import { changedDigest, countOf, timesOf, UNREADABLE, type Damage } from './counted-journal.ts';

/** An event, but for the reading at which it happens. */
export type Happened = KnittingEvent extends infer Event
  ? Event extends KnittingEvent
    ? Omit<Event, 'reading'>
    : never
  : never;

export interface Counted extends Progress {
  /** How it would be knitted as it is designed now; null where it could not be. */
  readonly design: KnittingOrder | null;
  /** The digest of the design where it is another than the one that it was begun by; null where it is the same, or none. */
  readonly changed: string | null;
  /** All that is shown is on the disk. */
  readonly isKept: boolean;
  /** When each row was counted, in ms, as far as that is known. */
  readonly times: readonly number[];
  /** Another window counts, and this one follows it. */
  readonly isFollowing: boolean;
  /** What of the journal could not be read, until it is said what the counter reads. */
  readonly damage: Damage | null;
}

interface Listener {
  /** Null: nothing is begun, and nothing can be. */
  counted(counted: Counted | null): void;
  problem(problem: Problem): void;
  /** The journal cannot be read at all; null: it can again, or another was begun. */
  unread(problem: Problem | null): void;
}

export class PieceCounter {
  /** Null before the journal was read, and where there is neither a journal nor a design. */
  #counting: Counting | null = null;
  #isRead = false;
  #isBegun = false;
  /** Whoever comes back says first where the carriage stands; another window that counts is not asked for it. */
  #isBack = false;
  #isFollowing = false;
  #damage: Damage | null = null;
  /** The same problem of reading is told once, however often it is tried again. */
  #told: Problem['code'] | null = null;
  /** The id of the last entry that is known to be on the disk: it tells this journal from one that was begun anew. */
  #lastId: string | null = null;
  /** One thing after the other: what happens while another is written waits for it. */
  #work: Promise<void> = Promise.resolve();
  #times: readonly number[] = [];
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
      [this.#isBegun, this.#isBack, this.#times, this.#lastId] = [true, false, [], null];
      [this.#isFollowing, this.#lastAt, this.#damage] = [false, this.now(), null];
      [this.#isRead, this.#told] = [true, null];
      this.listener.unread(null);
      this.#tell();
    });
  }

  /** Takes over what another window wrote, writes what waits, and reads again what could not be read. */
  catchUp(): Promise<void> {
    return this.#inTurn(async () => {
      if (!this.#isRead || !this.#isBegun || !this.#counting) return this.#load();
      this.#noticeAway(this.#counting.progress.place);
      if (this.#counting.waiting.length > 0) {
        await this.#write();
        return this.#tell();
      }
      const entries = await this.#since(this.#counting.entries);
      if (entries === 'begun anew') return this.#load(true);
      if (!entries || entries.length === 0) return;
      this.#take(entries);
      this.#isFollowing = true;
      this.#lastAt = this.now();
      this.#tell();
    });
  }

  /** What stands behind the first `after` entries; null where that is not known now. */
  async #since(after: number): Promise<readonly Entry[] | 'begun anew' | null> {
    const since = await this.host.call('knitting.since', { of: this.of, after: Math.max(0, after - 1) });
    if (!since.ok) return null;
    const { entries } = since.value;
    if (after === 0) return entries;
    return entries[0]?.id === this.#lastId ? entries.slice(1) : 'begun anew';
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

  /**
   * Another window may have begun meanwhile what this one has not. `isAnew`: it
   * has put this count aside, and what waits here belongs to the piece as it was.
   */
  async #load(isAnew = false): Promise<void> {
    const wasRead = this.#isRead;
    if (!isAnew && this.#counting && this.#counting.waiting.length > 0) return;
    const read = await this.host.call('knitting.read', { of: this.of });
    const found = read.ok
      ? outcome(() => {
          const journal = read.value && journalFromText(read.value.text);
          return journal && countOf(journal);
        })
      : read;
    if (!found.ok) {
      if (this.#told !== found.problem.code) {
        if (UNREADABLE.has(found.problem.code)) this.listener.unread(found.problem);
        else this.listener.problem(found.problem);
      }
      this.#told = found.problem.code;
      return;
    }
    if (this.#told !== null) this.listener.unread(null);
    [this.#isRead, this.#told] = [true, null];
    if (found.value) {
      const { counting, times, lastId, damage } = found.value;
      this.#damage = damage;
      this.#isFollowing = wasRead;
      [this.#counting, this.#times, this.#lastId, this.#isBegun] = [counting, times, lastId, true];
      const { phase, reading } = counting.progress.place;
      this.#isBack = phase === 'knitting' && (damage !== null || (!wasRead && reading > 0));
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
    if (SAYS_READING.has(happened.kind)) this.#damage = null;
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
    if (written.value.isKept) return this.#take(written.value.entries);
    // Others stand there: what still can follow them is written behind them.
    const there = await this.#since(entries);
    if (there === 'begun anew') return this.#load(true);
    this.#take(there ?? []);
    if (there && there.length > 0) await this.#write();
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
    const found = countOf(there);
    [this.#times, this.#lastId] = [found.times, found.lastId];
    this.#counting = { ...found.counting, waiting: counting.waiting };
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
    this.#lastId = entries.at(-1)?.id ?? this.#lastId;
    this.#times = timesOf(entries, this.#times);
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
      changed: changedDigest(knitting, design),
      isKept: waiting.length === 0,
      times: this.#times,
      isFollowing: this.#isFollowing,
      damage: this.#damage,
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

const SAYS_READING: ReadonlySet<Happened['kind']> = new Set<Happened['kind']>(['go-to', 'ripped-back']);

/** So long without a row, in ms, that the knitter may have turned to something else in between. */
export const AWAY_MS = 20 * 60_000;

function atTheStart(knitting: KnittingOrder): Counting {
  const progress = { knitting, place: AT_THE_START };
  return { entries: 0, kept: progress, waiting: [], progress };
}
