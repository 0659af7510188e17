/**
 * Keeps unsaved work aside while it is made, and drops it once there is none.
 *
 * What was drawn is on the disk at most a second later, however long the hand
 * goes on, in the middle of a stroke too: a pass begins a moment after the
 * first change and takes all up to then; what changes meanwhile begins the
 * next. Cells in hand are kept beside the project that they are not laid in yet:
 * neither they nor what lies under them can be lost. One pass at a time, so that nothing is kept after it was dropped.
 *
 * A pass gives the edits since the one before, so that it costs what was drawn
 * and not what there is. After one that failed, and where it is not known what
 * is kept, the next gives the work whole.
 */
import type { Outcome, Problem } from '@shared/problem/index.ts';
import {
  editsApart,
  editsToText,
  mergeEdits,
  picturesApart,
  picturesOf,
  picturesOfEdits,
  projectToText,
  type Edit,
  type Laying,
  type Project,
} from '@shared/project/index.ts';
import type { Session } from '../session/session.ts';
import type { KeepingPlace } from './keeping-place.ts';
import { PictureNames } from './picture-names.ts';
import type { WorkToKeep } from './stored-work.ts';
import type { WindowIdentity } from './window-identity.ts';

/** Between a change and the pass that takes it, at least. */
const WAIT_MS = 200;
/** From the beginning of one pass to that of the next, while a hand goes on: each costs as much as a stroke of the pen. */
const PACE_MS = 600;
/** Before what could not be kept is tried again. */
const RETRY_MS = 1000;

/** Work that was taken from where it was kept. */
export interface TakenWork {
  readonly work: string;
  readonly edition: number;
}

/** One project from the moment it is put on the table. */
interface Work {
  readonly id: string;
  edition: number;
  /** Something of it may be kept somewhere. */
  isKept: boolean;
  /** Its last edition is kept, and what was changed since can follow that. */
  isFollowed: boolean;
}

/** What decides whether there is something to keep, and as what. */
type Looked = Readonly<Pick<Session, 'project' | 'isUnsaved' | 'file' | 'inHand'>>;

export interface KeeperOptions {
  readonly session: Session;
  readonly place: KeepingPlace;
  readonly identity: Pick<WindowIdentity, 'window' | 'browser'>;
  /** What is on the table from the start, if it was taken from where it was kept. */
  readonly taken: TakenWork | null;
  readonly newId?: () => string;
  readonly now?: () => Date;
}

export class Keeper {
  #work: Work;
  /** Works that are saved or let go, and may still be kept. */
  #over: Work[] = [];
  #opened: number;
  /** What was last taken in hand to be kept or dropped. */
  #looked: Looked;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #passing: Promise<void> | null = null;
  /** When the last one began, ms. */
  #began = -Infinity;
  #hasFailed = false;
  /** The failure has been notified: once is enough. */
  #isNotified = false;
  #isToKeep = false;
  /** What was changed since the last pass that kept something. */
  #since: Edit[] = [];
  readonly #names = new PictureNames();
  readonly #newId: () => string;
  readonly #now: () => Date;

  constructor(private readonly options: KeeperOptions) {
    const { session, taken, newId = () => crypto.randomUUID(), now = () => new Date() } = options;
    this.#newId = newId;
    this.#now = now;
    this.#work = taken ? keptAs(taken) : this.#newWork();
    this.#opened = session.opened;
    this.#looked = { ...look(session), isUnsaved: taken !== null };
    session.onEdits((edits) => this.#since.push(...edits));
    session.subscribe(() => this.#follow());
    this.#follow();
  }

  /** The project on the table is this work, put there just now. */
  adopt(taken: TakenWork): void {
    this.#work = keptAs(taken);
  }

  /** The person has let the work on the table go; resolves when nothing of it is kept, or cannot be reached. */
  async letGo(): Promise<void> {
    this.#turnOver();
    this.#looked = look(this.options.session);
    await this.keepNow();
  }

  /** Where work is kept has changed: what there is is kept there, though nothing of it changed. */
  async keepAgain(): Promise<void> {
    this.#isToKeep = true;
    await this.keepNow();
  }

  /** Keeps what there is without waiting for the next pass. */
  async keepNow(): Promise<void> {
    while (this.#passing !== null) await this.#passing;
    this.#stopWaiting();
    await this.#pass();
  }

  #follow(): void {
    const { session } = this.options;
    if (session.opened !== this.#opened) {
      this.#opened = session.opened;
      this.#turnOver();
    } else if (isSame(look(session), this.#looked)) return;
    this.#waitAtPace();
  }

  /** What is on the table now is another work. */
  #turnOver(): void {
    if (this.#work.isKept) this.#over.push(this.#work);
    this.#work = this.#newWork();
  }

  #newWork(): Work {
    return { id: this.#newId(), edition: 0, isKept: false, isFollowed: false };
  }

  #waitAtPace(): void {
    this.#wait(Math.max(WAIT_MS, this.#began + PACE_MS - performance.now()));
  }

  #wait(ms: number): void {
    if (this.#timer !== null || this.#passing !== null) return;
    this.#timer = setTimeout(() => {
      this.#timer = null;
      void this.#pass();
    }, ms);
  }

  #stopWaiting(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
  }

  async #pass(): Promise<void> {
    this.#began = performance.now();
    this.#passing = this.#keepAndDrop();
    await this.#passing;
    this.#passing = null;
    if (this.#hasFailed) this.#wait(RETRY_MS);
    else if (this.#over.length > 0 || !isSame(look(this.options.session), this.#looked)) this.#waitAtPace();
  }

  async #keepAndDrop(): Promise<void> {
    const { session } = this.options;
    const work = this.#work;
    const now = look(session);
    const isDone = isSame(now, this.#looked) && !this.#hasFailed && !this.#isToKeep;
    this.#looked = now;
    this.#isToKeep = false;
    this.#hasFailed = false;
    let toSay = null as Problem | null;
    const fails = (done: Outcome<unknown>, isAtStake = false): boolean => {
      if (done.ok) return false;
      this.#hasFailed = true;
      // That the host is away is said elsewhere; what it is to forget can wait for it.
      if (isAtStake || done.problem.code !== 'host-unreachable') toSay ??= done.problem;
      return true;
    };
    const laying = now.inHand?.laying() ?? null;
    const isToBeKept = now.isUnsaved || laying !== null;
    if (isToBeKept && !isDone) {
      // It may be kept even where no answer says so.
      work.isKept = true;
      fails(await this.#keep(work, now, laying), true);
    } else if (!isToBeKept && work.isKept) {
      // Saved, or undone back to what stands in the file: a later start must not offer it.
      work.isFollowed = false;
      work.isKept = fails(await this.#drop(work));
    }
    for (const one of this.#over.splice(0)) if (fails(await this.#drop(one))) this.#over.push(one);
    if (toSay && !this.#isNotified) session.notify({ kind: 'problem', problem: toSay });
    this.#isNotified = toSay !== null;
  }

  async #keep(work: Work, { project, file }: Looked, laying: Laying | null): Promise<Outcome<unknown>> {
    const { place, identity } = this.options;
    const { isFollowed } = work;
    const edits = mergeEdits(this.#since);
    this.#since = [];
    work.isFollowed = false;
    work.edition++;
    const facts = {
      window: identity.window,
      work: work.id,
      edition: work.edition,
      keptAt: this.#now().toISOString(),
      file: file && { path: file.path, stamp: file.stamp },
      laying,
    };
    const pictures = [...picturesOf(project), ...picturesOfEdits(edits)];
    const give = (picture: string): Promise<string | null> => place.give({ window: identity.window, picture });
    const hashes = pictures.length === 0 ? null : await this.#names.of(pictures, give);
    const wholeOf = (as: Project): WorkToKeep => ({
      ...facts,
      browser: identity.browser,
      name: project.name,
      text: projectToText(as),
    });
    const done = await place.keep({
      window: facts.window,
      work: facts.work,
      since: isFollowed ? { ...facts, edits: editsToText(hashes ? editsApart(edits, hashes) : edits) } : null,
      whole: () => wholeOf(project),
      ...(hashes && {
        apart: {
          pictures: new Map([...hashes].map(([picture, hash]) => [hash, picture])),
          whole: () => wholeOf(picturesApart(project, hashes)),
        },
      }),
    });
    work.isFollowed = done.ok;
    return done;
  }

  #drop(work: Work): Promise<Outcome<unknown>> {
    const { place, identity } = this.options;
    return place.drop({ window: identity.window, work: work.id });
  }
}

function keptAs({ work, edition }: TakenWork): Work {
  return { id: work, edition, isKept: true, isFollowed: false };
}

function look({ project, isUnsaved, file, inHand }: Session): Looked {
  return { project, isUnsaved, file, inHand };
}

function isSame(a: Looked, b: Looked): boolean {
  return a.project === b.project && a.isUnsaved === b.isUnsaved && a.file === b.file && a.inHand === b.inHand;
}
