/**
 * The collection as a dialog shows it.
 *
 * The folder is listed each time it is shown, so what another hand did there is
 * seen. Its files are looked at a few at a time, in the order of the list, until
 * all are or nobody looks any more; the drawing of one is had when its picture
 * comes into view.
 */
import type { Host, Params, Result } from '@shared/host/index.ts';
import type { Outcome, Problem } from '@shared/problem/index.ts';
import { liveFields, plainLive, type LiveFields, type MakeLive } from '../../ui/live.ts';
import { byFile, CollectedProjects, type Collected, type Entry, type Unusable } from './collected.ts';

/** What the dialog shows of it. */
interface Shown {
  readonly folder: Pick<Result<'collection.list'>, 'folder' | 'isOwn' | 'left'> | null;
  readonly motifs: readonly Collected[];
  readonly unusable: readonly Unusable[];
  /** How many files there are, and were looked at. */
  readonly files: number;
  readonly looked: number;
  /** Why the folder cannot be listed, or its files not be looked at. */
  readonly problem: Problem | null;
}

const NOTHING: Shown = { folder: null, motifs: [], unusable: [], files: 0, looked: 0, problem: null };

/** So many files in one question: the first are soon seen, and the host has a turn for others. */
const AT_ONCE = 12;

export class Collection {
  readonly projects: CollectedProjects;
  readonly #shown: LiveFields<Shown>;
  /** Counts how often the folder was shown: what is slow does not come into a later showing. */
  #showing = 0;

  /** `live`: what the values are made of that components follow. */
  constructor(
    private readonly host: Pick<Host, 'call'>,
    live: MakeLive = plainLive,
  ) {
    this.projects = new CollectedProjects(host);
    this.#shown = liveFields(NOTHING, live);
  }

  get now(): Shown {
    return this.#shown.now;
  }

  /** Lists the folder, and looks at its files. */
  async show(): Promise<void> {
    const mine = ++this.#showing;
    const listed = await this.host.call('collection.list', {});
    if (mine !== this.#showing) return;
    if (!listed.ok) {
      const { problem } = listed;
      // Another can be chosen where this one is gone.
      const folder = problem.where === null ? this.now.folder : { folder: problem.where, isOwn: false, left: 0 };
      this.#shown.set({ ...NOTHING, folder, problem });
      return;
    }
    const { files, ...folder } = listed.value;
    const before = [...this.now.motifs, ...this.now.unusable];
    this.#shown.set({ folder, files: files.length, looked: 0, problem: null, ...entriesOf(files, before) });
    let seen: readonly Entry[] = [];
    for (let at = 0; at < files.length; at += AT_ONCE) {
      const some = await this.host.call('collection.look', { files: files.slice(at, at + AT_ONCE) });
      if (mine !== this.#showing) return;
      if (!some.ok) {
        this.#shown.set({ files: this.now.looked, problem: some.problem });
        return;
      }
      seen = [...seen, ...some.value];
      const looked = Math.min(files.length, at + AT_ONCE);
      this.#shown.set({ looked, ...entriesOf(files, [...before, ...seen]) });
    }
  }

  /** Nobody looks any more. */
  close(): void {
    this.#showing++;
  }

  /** Another folder from now on, or with null the program's own; gives why it cannot be. */
  async choose(folder: string | null): Promise<Problem | null> {
    const chosen = await this.host.call('collection.choose', { folder });
    if (!chosen.ok) return chosen.problem;
    this.#shown.set({ motifs: [], unusable: [] });
    await this.show();
    return null;
  }

  /** Keeps the motif of a project that holds one. */
  keep(text: string, there: Params<'collection.keep'>['there']): Promise<Outcome<Result<'collection.keep'>>> {
    return this.host.call('collection.keep', { text, there });
  }
}

/**
 * What is known of these files, the last of several. So what is there still is
 * seen as it was until it is looked at again, and a list that is read does not jump.
 */
function entriesOf(files: readonly string[], known: readonly Entry[]): Pick<Shown, 'motifs' | 'unusable'> {
  const last = byFile(known);
  const entries = files.flatMap((file) => last.get(file) ?? []);
  return {
    motifs: entries.filter((entry) => entry.kind === 'motif'),
    unusable: entries.filter((entry) => entry.kind === 'unusable'),
  };
}
