/**
 * Counts one piece on the needles. What happened is written to its journal
 * first and shown then, so that what was shown is never lost; where it cannot
 * be written the count goes on in the window, says so, and is written with the
 * next row that can be.
 */
import type { Host } from '@shared/host/index.ts';
import { journalFromText, type Entry, type KnittingEvent, type PieceKey } from '@shared/journal/index.ts';
import {
  AT_THE_START,
  countedOn,
  countingFrom,
  digestOf,
  orderToText,
  toldOf,
  type Counting,
  type KnittingOrder,
  type Progress,
} from '@shared/knitting/index.ts';
import { outcome, type Problem } from '@shared/problem/index.ts';
import { newId } from '../session/new-id.ts';

/** An event, but for the reading at which it happens. */
export type Happened = KnittingEvent extends infer Event
  ? Event extends KnittingEvent
    ? Omit<Event, 'reading'>
    : never
  : never;

export interface Counted extends Progress {
  /** How it would be knitted as it is designed now. */
  readonly design: KnittingOrder;
  /** The design is another than the one that it was begun by. */
  readonly isChanged: boolean;
  /** All that is shown is on the disk. */
  readonly isKept: boolean;
  /** When each row was counted, in ms, as far as that is known. */
  readonly times: readonly number[];
}

interface Listener {
  counted(counted: Counted): void;
  problem(problem: Problem): void;
}

export class PieceCounter {
  #counting: Counting;
  #isBegun = false;
  /** One thing after the other: what happens while another is written waits for it. */
  #work: Promise<void> = Promise.resolve();
  #design: KnittingOrder;
  #times: number[] = [];

  constructor(
    private readonly host: Host,
    private readonly of: PieceKey,
    design: KnittingOrder,
    private readonly listener: Listener,
  ) {
    this.#design = design;
    this.#counting = atTheStart(design);
  }

  /** True for the same piece, size and copy of the same project. */
  isOf({ project, piece, size, copy }: PieceKey): boolean {
    const { of } = this;
    const isSamePiece = of.piece.id === piece.id && of.size.id === size.id && of.copy === copy;
    return isSamePiece && of.project.path === project.path && of.project.name === project.name;
  }

  set design(design: KnittingOrder) {
    if (design === this.#design) return;
    this.#design = design;
    // Nothing is knitted yet that it could differ from.
    if (!this.#isBegun) this.#counting = atTheStart(design);
    this.#tell();
  }

  /** Reads the journal, and goes on where it ends; whoever comes back is asked where the carriage stands. */
  load(): Promise<void> {
    return this.#inTurn(async () => {
      await this.#read();
      this.#tell();
      const { phase, reading } = this.#counting.progress.place;
      if (this.#isBegun && phase === 'knitting' && reading > 0) await this.#one({ kind: 'returned' });
    });
  }

  happened(event: Happened): Promise<void> {
    return this.#inTurn(() => this.#one(event));
  }

  /** Takes over what another window wrote, and writes what waits. */
  catchUp(): Promise<void> {
    return this.#inTurn(async () => {
      if (!this.#isBegun) return;
      if (this.#counting.waiting.length > 0) {
        await this.#write();
        this.#tell();
        return;
      }
      const since = await this.host.call('knitting.since', { of: this.of, after: this.#counting.entries });
      if (since.ok && since.value.entries.length > 0) {
        this.#take(since.value.entries);
        this.#tell();
      }
    });
  }

  #inTurn(work: () => Promise<void>): Promise<void> {
    const done = this.#work.then(work);
    this.#work = done.catch(() => undefined);
    return done;
  }

  async #read(): Promise<void> {
    const read = await this.host.call('knitting.read', { of: this.of });
    if (!read.ok) return this.listener.problem(read.problem);
    const journal = read.value && journalFromText(read.value.text);
    if (!journal) return;
    const counting = outcome(() => countingFrom(journal));
    if (!counting.ok) return this.listener.problem(counting.problem);
    this.#counting = counting.value;
    this.#isBegun = true;
    this.#times = timesOf(journal.entries);
  }

  async #one(happened: Happened): Promise<void> {
    const event = { ...happened, reading: this.#counting.progress.place.reading } as KnittingEvent;
    const next = outcome(() => countedOn(this.#counting, { id: newId(), event }));
    if (!next.ok) return this.listener.problem(next.problem);
    this.#counting = next.value;
    await this.#write();
    this.#tell();
  }

  /** Writes all that waits; what cannot be written goes on waiting. */
  async #write(): Promise<void> {
    if (!this.#isBegun && !(await this.#begin())) return;
    const { entries, waiting } = this.#counting;
    if (waiting.length === 0) return;
    const written = await this.host.call('knitting.append', { of: this.of, after: entries, events: [...waiting] });
    if (!written.ok) return;
    this.#take(written.value.entries);
    // Others stood there: what still can follow them is written behind them.
    if (!written.value.isKept && this.#counting.waiting.length > 0) await this.#write();
  }

  async #begin(): Promise<boolean> {
    const order = orderToText(this.#counting.progress.knitting);
    const begun = { of: this.of, digest: digestOf(order), order };
    const answer = await this.host.call('knitting.begin', { begun, isAnew: false });
    if (!answer.ok) return false;
    this.#isBegun = true;
    const journal = answer.value.isNew ? null : journalFromText(answer.value.text);
    // Another window has begun it: what waits here follows what was counted there, if it can.
    if (journal) {
      this.#counting = { ...countingFrom(journal), waiting: this.#counting.waiting };
      this.#times = timesOf(journal.entries);
      this.#take([]);
    }
    return true;
  }

  #take(entries: readonly Entry[]): void {
    const { counting, dropped } = toldOf(this.#counting, entries);
    this.#counting = counting;
    this.#times = [...this.#times, ...timesOf(entries)].slice(-MOST_TIMES);
    for (const { problem } of dropped) this.listener.problem(problem);
  }

  #tell(): void {
    const { progress, waiting } = this.#counting;
    const { knitting, place } = progress;
    this.listener.counted({
      knitting,
      place,
      design: this.#design,
      isChanged: knitting !== this.#design && textOf(knitting) !== textOf(this.#design),
      isKept: waiting.length === 0,
      times: this.#times,
    });
  }
}

/** More than a pace is told from. */
const MOST_TIMES = 200;

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
