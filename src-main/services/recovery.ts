/**
 * Unsaved work, kept aside so that no crash takes it.
 *
 * Each work of each window of each run has a file of its own, so nobody writes
 * over what another kept. It is written whole at first, and again when what was
 * written behind that has grown long; between, only what changed is written
 * behind it (kept-journal.ts). A window that takes work over renames its file to
 * its own: only one can. What cannot be read (damaged, or kept by a newer
 * program) is told of, and neither written over nor taken away; where only what
 * stands behind the work is damaged, the file is set aside as it is, and the
 * work is offered as far as it can be read.
 */
import { createHash, randomUUID } from 'node:crypto';
import { basename, join } from 'node:path';
import type { Params, Result } from '@shared/host/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import { editsFromText } from '@shared/project/index.ts';
import type { Environment } from './environment.ts';
import { append, failureCode, readWhole, writeWhole, writingProblem } from './files/index.ts';
import { inTurn } from './in-turn.ts';
import type { Recent } from './recent.ts';
import { endOfWhole, keptFileToText } from './kept-file.ts';
import { keptWorkFromText, lineOf, type KeptWork, type Mark } from './kept-journal.ts';

type Asking = Params<'recovery.find'>['asking'];
type Found = Result<'recovery.find'>[number];
type Taken = NonNullable<Result<'recovery.take'>>;

const EXTENSION = '.backup';
const ASIDE = '.unread';

/** Of what is written behind the work before it is written whole again; that many strokes are read in no time. */
const MOST_BEHIND = 256 * 1024;

/** Whose work a file holds, as its name says: `RUN.WINDOW.WORK.backup`, and `….HASH.unread` for what is set aside. */
interface Owner {
  readonly run: string;
  readonly window: string;
  readonly work: string;
}

interface KeptPlace extends Owner {
  readonly id: string;
  readonly place: string;
  /** Null: it cannot be read. */
  readonly kept: KeptWork | null;
}

/** What can be written behind a file: it holds this edition, ends with this mark, and has so many bytes behind the work. */
interface End {
  readonly edition: number;
  readonly mark: Mark;
  readonly behind: number;
}

export interface Recovery {
  keep(work: Params<'recovery.keep'>): Promise<void>;
  /** False if it cannot be written behind what there is: then the work is to be kept whole. */
  append(work: Params<'recovery.append'>): Promise<boolean>;
  /** Newest first; what cannot be read comes last. */
  find(asking: Asking): Promise<Found[]>;
  take(asking: Asking, id: string): Promise<Taken | null>;
  drop(work: Params<'recovery.drop'>): Promise<void>;
}

export function recoveryOf(
  { files, wait, presence, dataFolder }: Environment,
  recent: Pick<Recent, 'paths'>,
): Recovery {
  const folder = join(dataFolder, 'recovery');
  const turn = inTurn();
  const placeOf = ({ run, window, work }: Owner): string => join(folder, `${run}.${window}.${work}${EXTENSION}`);
  const ownOf = ({ window, work }: Pick<Owner, 'window' | 'work'>): Owner => ({ run: presence.instance, window, work });
  /** Places that this run has written: it knows what they hold. */
  const known = new Set<string>();
  /** Where what this run writes next can follow; a file that is not here is written whole. */
  const ends = new Map<string, End>();

  async function read(place: string): Promise<KeptWork | null> {
    const bytes = await readWhole(files, place).catch(() => null);
    return bytes === null ? null : keptWorkFromText(new TextDecoder().decode(bytes));
  }

  /** Leaves a copy of a file as it is beside it, once, and says where. */
  async function setAside({ id, place }: KeptPlace): Promise<string> {
    const bytes = await readWhole(files, place);
    const hash = createHash('sha256').update(bytes).digest('hex').slice(0, 8);
    const aside = `${id.slice(0, -EXTENSION.length)}.${hash}${ASIDE}`;
    if (!(await files.names(folder)).includes(aside)) await writeWhole(files, wait, join(folder, aside), bytes);
    return aside;
  }

  async function all(): Promise<readonly KeptPlace[]> {
    const names = await files.names(folder).catch((): readonly string[] => []);
    const found: KeptPlace[] = [];
    for (const id of names) {
      const owner = ownerOf(id);
      if (owner === null) continue;
      const place = join(folder, id);
      found.push({ ...owner, id, place, kept: id.endsWith(ASIDE) ? null : await read(place) });
    }
    return found;
  }

  /** The same work of the same window, as a run before this one left it. */
  async function earlierOf({ window, work }: Owner): Promise<readonly KeptPlace[]> {
    const same = (await all()).filter((kept) => kept.window === window && kept.work === work);
    const ended: KeptPlace[] = [];
    for (const kept of same) {
      if (kept.run !== presence.instance && !(await presence.isRunning(kept.run))) ended.push(kept);
    }
    return ended;
  }

  async function standing(kept: KeptPlace, { window, browser, open }: Asking): Promise<Found['of'] | null> {
    const isOwnWindow = kept.window === window;
    const isOfEndedRun = kept.run !== presence.instance && !(await presence.isRunning(kept.run));
    if (isOwnWindow && (isOfEndedRun || kept.run === presence.instance)) return 'own';
    // A window that outlived its host still has its work on the table.
    if (open.includes(kept.window)) return null;
    if (isOfEndedRun) return 'ended-run';
    // Windows of another browser may be open for all that can be told.
    return kept.run === presence.instance && kept.kept?.browser === browser ? 'closed-window' : null;
  }

  /** What `asking` may have, each work of a window once: as it was kept last. */
  async function offers(asking: Asking): Promise<readonly (KeptPlace & { of: Found['of'] })[]> {
    const found: (KeptPlace & { of: Found['of'] })[] = [];
    for (const kept of await all()) {
      const of = await standing(kept, asking);
      if (of === null) continue;
      if (await isSaved(kept)) await remove(kept.place).catch(() => undefined);
      else found.push({ ...kept, of });
    }
    for (const kept of [...found]) {
      if (kept.kept?.rest !== 'damaged') continue;
      const aside = await setAside(kept).catch(() => null);
      // What cannot be set aside is not taken either: it would be written over.
      if (aside === null) found[found.indexOf(kept)] = { ...kept, kept: null };
      else if (found.every(({ id }) => id !== aside)) {
        found.push({ ...kept, id: aside, place: join(folder, aside), kept: null });
      }
    }
    const isPassed = (kept: KeptPlace): boolean =>
      found.some(
        (other) =>
          other.window === kept.window &&
          other.work === kept.work &&
          kept.kept !== null &&
          (other.kept?.edition ?? 0) > kept.kept.edition,
      );
    return found
      .filter((kept) => !isPassed(kept))
      .sort((a, b) => timeOf(b).localeCompare(timeOf(a)) || a.id.localeCompare(b.id));
  }

  /**
   * True once a file holds that very text: it was saved just before the run or
   * the window ended. Work that had no file, or that was saved as another one,
   * stands in one that was saved lately. What was in hand besides stands in none.
   */
  async function isSaved({ kept }: KeptPlace): Promise<boolean> {
    if (kept === null || kept.laying !== null || kept.rest === 'damaged') return false;
    const text = Buffer.from(kept.text);
    const paths = [kept.file?.path ?? kept.cameFrom, ...(await recent.paths())];
    for (const path of new Set(paths.filter((path) => path !== null))) {
      // A larger one is another.
      const bytes = await readWhole(files, path, text.length).catch(() => null);
      if (bytes !== null && text.equals(bytes)) return true;
    }
    return false;
  }

  async function remove(place: string): Promise<void> {
    try {
      await files.unlink(place);
    } catch (error) {
      if (failureCode(error) !== 'ENOENT') throw writingProblem(error, place);
    }
  }

  /** Of work that was kept anew or let go: what cannot be read stays. */
  async function removePassed(passed: KeptPlace): Promise<void> {
    if (passed.kept?.rest === 'damaged') await setAside(passed);
    if (passed.kept !== null) await remove(passed.place);
  }

  return {
    keep: (work) =>
      turn(folder, async () => {
        const owner = ownOf(work);
        const place = placeOf(owner);
        const isNew = !known.has(place);
        if (isNew) {
          await files.makeFolder(folder).catch((error: unknown) => {
            throw writingProblem(error, folder);
          });
        }
        const earlier = isNew ? await earlierOf(owner) : [];
        const before = isNew ? [...earlier.map(({ kept }) => kept), await read(place)] : [];
        // Work that comes back from a browser's storage may be older than what a run kept since.
        if (before.some((kept) => kept !== null && kept.edition >= work.edition)) return;
        const text = keptFileToText(work);
        ends.delete(place);
        await writeWhole(files, wait, place, new TextEncoder().encode(text));
        known.add(place);
        ends.set(place, { edition: work.edition, mark: endOfWhole(text)?.mark ?? '', behind: 0 });
        for (const passed of earlier) await removePassed(passed).catch(() => undefined);
      }),

    append: (work) =>
      turn(folder, async () => {
        const place = placeOf(ownOf(work));
        const end = ends.get(place);
        if (end?.edition !== work.edition - 1 || editsFromText(work.edits) === null) return false;
        const { line, mark } = lineOf(work, end.mark);
        const bytes = new TextEncoder().encode(line);
        const behind = end.behind + bytes.length;
        if (behind > MOST_BEHIND) return false;
        // Until it is there whole, nothing can follow it.
        ends.delete(place);
        try {
          await append(files, place, bytes);
        } catch (error) {
          if (problemOf(error).code === 'file-missing') return false;
          throw error;
        }
        ends.set(place, { edition: work.edition, mark, behind });
        return true;
      }),

    find: (asking) =>
      turn(folder, async () =>
        (await offers(asking)).map(({ id, of, work, kept, place }) => ({
          id,
          of,
          work,
          place,
          kept: kept && {
            name: kept.name,
            path: kept.file?.path ?? kept.cameFrom,
            keptAt: kept.keptAt,
          },
        })),
      ),

    take: (asking, id) =>
      turn(folder, async () => {
        const wanted = (await offers(asking)).find((kept) => kept.id === id);
        if (!wanted?.kept) return null;
        const work = wanted.work === '' ? randomUUID() : wanted.work;
        const place = placeOf(ownOf({ window: asking.window, work }));
        if (place !== wanted.place) {
          // Another run that starts just now may have been quicker.
          const isTaken = await files.rename(wanted.place, place).then(
            () => true,
            () => false,
          );
          if (!isTaken) return null;
        }
        known.add(place);
        ends.delete(place);
        const { text, edition, keptAt, file, laying } = wanted.kept;
        return { work, edition, text, keptAt, laying, file: file && { ...file, name: basename(file.path) } };
      }),

    drop: (work) =>
      turn(folder, async () => {
        const owner = ownOf(work);
        const place = placeOf(owner);
        // A window that outlived its host lets go what it kept with that one.
        const earlier = known.has(place) ? [] : await earlierOf(owner);
        for (const passed of earlier) await removePassed(passed);
        await remove(place);
        known.delete(place);
        ends.delete(place);
      }),
  };
}

function timeOf({ kept }: KeptPlace): string {
  return kept?.keptAt ?? '';
}

/** Null for what is no file of kept work. Before windows had names, a run's name was all. */
function ownerOf(id: string): Owner | null {
  const [, run, window = '', work = ''] =
    /^([a-z0-9-]+)(?:\.([a-z0-9-]+)\.([a-z0-9-]+))?(?:\.[0-9a-f]{8}\.unread|\.backup)$/.exec(id) ?? [];
  return run === undefined ? null : { run, window, work };
}
