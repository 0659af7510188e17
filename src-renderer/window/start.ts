/** What lies on the table when the window opens. */
import { machineFromSaid } from '@shared/bed/index.ts';
import { START_AIDS, type Aids, type Host, type Result } from '@shared/host/index.ts';
import type { Problem } from '@shared/problem/index.ts';
import { emptyProject, sampleProject } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { singleKeys } from '../commands/single-keys.ts';
import { lastFolders } from '../files/last-folders.ts';
import type { Connection } from '../host/index.ts';
import {
  browserPlaces,
  findKeptWork,
  handOver,
  hostOrStorage,
  hostPlace,
  layKept,
  recoveredNotice,
  storedWork,
  takeKeptWork,
  toBringBack,
  windowIdentity,
  type HandedOver,
  type KeepingPlace,
  type Offer,
  type TakenWork,
  type WindowIdentity,
} from '../recovery/index.ts';
import { ownMachine } from '../session/own-machine.ts';
import { Session } from '../session/session.ts';
import { liveRune } from '../ui/live-rune.svelte.ts';

/** A session with the way to the services. */
export interface Started {
  readonly connection: Connection;
  readonly host: Host;
  readonly session: Session;
  readonly shell: Result<'host.describe'> | null;
  readonly identity: WindowIdentity;
  /** Where unsaved work is kept. */
  readonly place: KeepingPlace;
  /** True if the browser's own storage holds work that the host could not be given. */
  readonly holdsWork: boolean;
  /** What is on the table is the sample, as nobody asked for anything else. */
  readonly isSample: boolean;
  /** Where what is on the table was kept, if it was. */
  readonly taken: TakenWork | null;
  /** Kept work that is not on the table, and what of it cannot be read. */
  readonly kept: { readonly offers: readonly Offer[]; readonly problems: readonly Problem[] };
  /** A file named at the start; opened once the window stands. */
  readonly openAtStart: string | null;
  /** What helps the person at the machine. */
  readonly aids: Aids;
}

/**
 * This window's own work comes first, then a file named at the start, then
 * work kept from an earlier end, then the sample. Other kept work is offered.
 */
export async function startSession(connection: Connection): Promise<Started> {
  const { host } = connection;
  const described = await host.call('host.describe', {});
  const shell = described.ok ? described.value : null;
  const set = await host.call('settings.read', {});
  if (set.ok) {
    singleKeys.areOn = set.value.singleKeys;
    lastFolders.begin(set.value.lastFolders);
    ownMachine.begin(set.value.machine && machineFromSaid(set.value.machine));
  }
  const named = shell?.openAtStart ?? null;
  const identity = await windowIdentity(browserPlaces());
  const { place, handed } = await placeOf(connection, identity);
  const { offers, unreadable } = await findKeptWork(host, identity);
  const aids = set.ok ? set.value.aids : START_AIDS;
  const standing = { connection, host, shell, identity, place, holdsWork: handed.isSomeLeft, aids };
  const problems = [...unreadable];
  let left = offers;
  for (const offer of toBringBack(offers, named !== null, handed.works)) {
    left = left.filter((other) => other !== offer);
    const taken = await takeKeptWork(host, identity, offer);
    if (!taken.ok) problems.push(taken.problem);
    if (!taken.ok || taken.value === null) continue;
    const { project, file, laying } = taken.value;
    const session = new Session(project, false, liveRune);
    if (file !== null) session.standsIn(file);
    layKept(session, laying);
    session.notify(recoveredNotice(taken.value));
    const kept = { offers: left, problems };
    return { ...standing, session, isSample: false, taken: taken.value.taken, kept, openAtStart: null };
  }
  const isEmpty = new URLSearchParams(location.search).has('empty');
  const project = isEmpty ? emptyProject(words.shell.untitled, words.shell.untitledMotif) : sampleProject();
  const session = new Session(ownMachine.given(project), true, liveRune);
  if (!described.ok) session.notify({ kind: 'problem', problem: described.problem });
  const kept = { offers: left, problems };
  return { ...standing, session, isSample: !isEmpty && named === null, taken: null, kept, openAtStart: named };
}

/** What an earlier page kept in the browser while it had no host is handed over first. */
async function placeOf(
  { host, storage }: Connection,
  identity: WindowIdentity,
): Promise<{ place: KeepingPlace; handed: HandedOver }> {
  if (storage === null) return { place: hostPlace(host), handed: { works: [], isSomeLeft: false } };
  const stored = storedWork(indexedDB, storage);
  const open = await identity.open();
  const isOpenElsewhere = (window: string): boolean => window !== identity.window && open.includes(window);
  // A browser may deny storage: then there is none to keep in either, and that is said when it is tried.
  const handed = await handOver(host, stored, isOpenElsewhere).catch(() => ({ works: [], isSomeLeft: true }));
  return { place: hostOrStorage(host, stored), handed };
}
