/**
 * The file of one journal. What is written behind it is on the disk before the
 * answer, and only what the knitter of the piece can have done is written.
 *
 * All that changes it is done under its lock, so that windows of several runs
 * of the program agree on the count. A line that broke off is taken away before
 * the next is written; where more than that is wrong, the file is put aside as
 * it is first.
 */
import { basename, dirname, join } from 'node:path';
import {
  beginningLine,
  entryLine,
  journalContinued,
  journalFromText,
  type Beginning,
  type Check,
  type Entry,
  type Journal,
  type PieceKey,
} from '@shared/journal/index.ts';
import {
  afterEvent,
  followFurther,
  followJournal,
  orderFromText,
  type Followed,
  type Progress,
} from '@shared/knitting/index.ts';
import type { Params, Result } from '@shared/host/index.ts';
import { problemError, ProblemError, problemOf } from '@shared/problem/index.ts';
import type { Environment } from '../environment.ts';
import {
  append,
  type FileOperations,
  processesHere,
  readWhole,
  underLock,
  writeWhole,
  writingProblem,
} from '../files/index.ts';
import { inTurn } from '../in-turn.ts';
import { asideFile } from './places.ts';

type Surroundings = Pick<Environment, 'files' | 'wait' | 'now'>;
type Sent = Params<'knitting.append'>['events'];

/** What a file held when it was read. */
export interface Held {
  readonly bytes: Uint8Array;
  readonly journal: Journal;
  readonly followed: Followed;
}

/** One value for each file, which reads again no line that it has read. */
export class JournalFile {
  private held: Held | null = null;
  private readonly turn = inTurn();

  constructor(
    private readonly surroundings: Surroundings,
    private readonly place: string,
  ) {}

  /**
   * What the file holds; null where there is none. It is written with its first
   * line at once, so that one without is damaged.
   * Throws what reading throws, and `journal-not-ours`, `journal-newer`,
   * `journal-damaged` or `order-unreadable` where it cannot be followed at all.
   */
  async read(): Promise<Held | null> {
    const bytes = await bytesAt(this.surroundings.files, this.place);
    if (bytes === null) return null;
    const before = this.held;
    if (before && startsWith(bytes, before.bytes.subarray(0, before.journal.length))) {
      const journal = journalContinued(before.journal, textOf(bytes.subarray(before.journal.length)));
      this.held = { bytes, journal, followed: followFurther(before.followed, journal.entries) };
    } else {
      this.held = null;
      const journal = journalFromText(textOf(bytes));
      if (journal === null) throw problemError('journal-damaged', { line: 1 });
      this.held = { bytes, journal, followed: followJournal(journal) };
    }
    return this.held;
  }

  /** Writes a new one, or gives the one that is there; with `isAnew` that one is put aside. Throws what reading and writing throw, and `order-unreadable`. */
  begin(begun: Beginning, isAnew: boolean): Promise<Result<'knitting.begin'>> {
    return this.alone(async () => {
      const there = isAnew ? null : await this.read();
      if (there) return { text: textOf(there.bytes), isNew: false };
      orderFromText(begun.order);
      if (isAnew) await this.putAside('ended');
      const text = beginningLine(begun).line;
      await this.write(text);
      return { text, isNew: true };
    });
  }

  /**
   * Writes events behind the first `after` entries, or says what stands there.
   * Throws `journal-missing` where none was begun, what the events are refused
   * with, and what reading and writing throw; then none of them counts.
   */
  append(after: number, events: Sent): Promise<Result<'knitting.append'>> {
    return this.alone(async () => {
      const held = await this.read();
      if (held === null) throw problemError('journal-missing', {});
      const entries = held.journal.entries.slice(0, held.followed.entries);
      const behind = entries.slice(after);
      // Events that were sent again may have been written the first time.
      const areOwn = behind.every(({ id }, index) => id === events[index]?.id);
      if (after > entries.length || !areOwn) return { isKept: false, entries: behind };
      const { added, lines } = this.linesOf(held, entries, events.slice(behind.length));
      if (added.length > 0) await this.writeBehind(held, entries.length, lines);
      return { isKept: true, entries: [...behind, ...added] };
    });
  }

  /**
   * The journal under another project. Another count that is there is put
   * aside; one that went on from this one is left as it is. Gives whether what
   * is counted here stands there now. Throws what reading and writing throw.
   */
  copyTo(to: JournalFile, project: PieceKey['project']): Promise<boolean> {
    return to.alone(async () => {
      const held = await this.read();
      if (held === null) return false;
      const { begun, rest } = held.journal;
      const entries = held.journal.entries.slice(0, held.followed.entries);
      // What cannot be followed does not go along.
      if (rest.kind === 'damaged' || entries.length < held.journal.entries.length) await this.putAside('unread');
      const there = await to.read().catch((error: unknown) => {
        if (error instanceof ProblemError && UNREADABLE.has(error.problem.code)) return 'unreadable' as const;
        throw error;
      });
      if (there !== null && there !== 'unreadable' && hasGoneOn(there, entries)) return true;
      await to.putAside(there === 'unreadable' ? 'unread' : 'ended');
      const first = beginningLine({ ...begun, of: { ...begun.of, project } });
      await to.write(first.line + chained(entries, first.check));
      return true;
    });
  }

  /** One job on the file at a time, in all processes. What the job itself refuses is told as it is. */
  private alone<T>(job: () => Promise<T>): Promise<T> {
    const { files, wait } = this.surroundings;
    return this.turn(this.place, async () => {
      try {
        await files.makeFolder(dirname(this.place));
        return await underLock({ files, wait, processes: processesHere }, this.place, job);
      } catch (error) {
        throw error instanceof ProblemError ? error : writingProblem(error, this.place);
      }
    });
  }

  private linesOf(
    { followed, journal }: Held,
    entries: readonly Entry[],
    events: Sent,
  ): { readonly added: readonly Entry[]; readonly lines: string } {
    const at = this.surroundings.now().toISOString();
    let progress: Progress = followed;
    const added = events.map(({ id, event }, index): Entry => {
      progress = afterEvent(progress, event);
      return { number: entries.length + index + 1, id, at, event };
    });
    const isAllBelieved = entries.length === journal.entries.length;
    const check = isAllBelieved ? journal.check : checkAfter(journal, entries.length);
    return { added, lines: chained(added, check) };
  }

  /** Behind the first `believed` entries; what stands there besides is taken away, and put aside unless it is a line that broke off. */
  private async writeBehind({ bytes, journal }: Held, believed: number, lines: string): Promise<void> {
    const { files } = this.surroundings;
    const isAllBelieved = believed === journal.entries.length;
    if (isAllBelieved && journal.rest.kind === 'none') {
      return append(files, this.place, new TextEncoder().encode(lines));
    }
    if (!isAllBelieved || journal.rest.kind === 'damaged') await this.putAside('unread');
    const kept = textOf(bytes)
      .split('\n')
      .slice(0, believed + 1);
    await this.write(`${kept.join('\n')}\n${lines}`);
  }

  private write(text: string): Promise<void> {
    const { files, wait } = this.surroundings;
    return writeWhole(files, wait, this.place, new TextEncoder().encode(text));
  }

  /** Leaves a copy of the file as it is beside it. */
  private async putAside(why: 'ended' | 'unread'): Promise<void> {
    const { files, wait } = this.surroundings;
    const bytes = await bytesAt(files, this.place);
    if (bytes === null) return;
    await writeWhole(files, wait, join(dirname(this.place), asideFile(basename(this.place), bytes, why)), bytes);
  }
}

/** What is wrong with a file itself, and not with how it was read. */
const UNREADABLE: ReadonlySet<ProblemError['problem']['code']> = new Set<ProblemError['problem']['code']>([
  'journal-not-ours',
  'journal-newer',
  'journal-damaged',
  'order-unreadable',
]);

/** It begins with the same entries, at least one, which their ids tell. */
function hasGoneOn({ journal, followed }: Held, entries: readonly Entry[]): boolean {
  return (
    entries.length > 0 &&
    entries.length <= followed.entries &&
    entries.every(({ id }, index) => id === journal.entries[index]?.id)
  );
}

/** The check of the line of the `count`-th entry, or of the beginning. */
function checkAfter({ begun, entries }: Journal, count: number): Check {
  let { check } = beginningLine(begun);
  for (const entry of entries.slice(0, count)) ({ check } = entryLine(entry, check));
  return check;
}

function chained(entries: readonly Entry[], after: Check): string {
  let check = after;
  return entries
    .map((entry) => {
      const next = entryLine(entry, check);
      check = next.check;
      return next.line;
    })
    .join('');
}

function textOf(bytes: Uint8Array): string {
  return new TextDecoder().decode(bytes);
}

function startsWith(bytes: Uint8Array, start: Uint8Array): boolean {
  return Buffer.compare(bytes.subarray(0, start.length), start) === 0;
}

/** Null where there is no file. */
async function bytesAt(files: FileOperations, place: string): Promise<Uint8Array | null> {
  try {
    return await readWhole(files, place);
  } catch (error) {
    if (problemOf(error).code === 'file-missing') return null;
    throw error;
  }
}
