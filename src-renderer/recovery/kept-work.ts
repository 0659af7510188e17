/**
 * Work that was kept and is not on the table: brought back at the start, or
 * offered until the person opens it.
 */
import type { Host, Result } from '@shared/host/index.ts';
import { outcome, type Outcome, type Problem } from '@shared/problem/index.ts';
import { layingChange, projectFromText, type Laying, type Project } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { fileNameOf } from '../files/file-name.ts';
import type { Notice, OpenFile, Session } from '../session/session.ts';
import type { TakenWork } from './keeper.ts';
import type { WindowIdentity } from './window-identity.ts';

type Found = Result<'recovery.find'>[number];

/** Kept work that can be opened. */
export interface Offer {
  readonly id: string;
  readonly work: string;
  readonly name: string;
  readonly keptAt: Date;
  readonly of: Found['of'];
}

/** Kept work, in the hands of this window alone. */
export interface Recovered {
  readonly project: Project;
  readonly file: OpenFile | null;
  readonly taken: TakenWork;
  /** What was in hand, and not laid in the project. */
  readonly laying: Laying | null;
  readonly keptAt: Date;
}

export interface KeptWork {
  /** Newest first. */
  readonly offers: readonly Offer[];
  /** What cannot be read, with the file that it stays in. */
  readonly unreadable: readonly Problem[];
}

/** What is kept for this window to take. A host that does not answer has nothing; that is said elsewhere. */
export async function findKeptWork(host: Host, identity: WindowIdentity): Promise<KeptWork> {
  const found = await host.call('recovery.find', { asking: await askingOf(identity) });
  const entries = found.ok ? found.value : [];
  return {
    offers: entries.flatMap(({ id, of, work, kept }) =>
      kept === null ? [] : [{ id, of, work, name: nameOf(kept), keptAt: new Date(kept.keptAt) }],
    ),
    unreadable: entries.flatMap(({ kept, place }) => (kept === null ? [unreadable(place)] : [])),
  };
}

/** Takes the work for this window. Null: another window was quicker. What cannot be read stays where it is. */
export async function takeKeptWork(
  host: Host,
  identity: WindowIdentity,
  { id }: Offer,
): Promise<Outcome<Recovered | null>> {
  const answer = await host.call('recovery.take', { asking: await askingOf(identity), id });
  if (!answer.ok || answer.value === null) return answer as Outcome<null>;
  const { text, file, work, edition, keptAt, laying } = answer.value;
  const project = outcome(() => projectFromText(text));
  if (!project.ok) return { ok: false, problem: { ...project.problem, where: id } };
  const taken = { work, edition };
  return { ok: true, value: { project: project.value, file, taken, laying, keptAt: new Date(keptAt) } };
}

/** Lays what was in hand where it was then: one step, so that undo gives back what it covers. */
export function layKept(session: Session, laying: Laying | null): void {
  const change = laying && layingChange(session.project, laying);
  if (change) session.change(change);
}

/**
 * What to put on the table before anything else: this window's own work, or,
 * where no file was named, the newest that a run left which has ended, or that
 * was `handed` over from the browser's storage just now. What a closed window
 * left otherwise is offered only: it may just be loading again.
 */
export function toBringBack(
  offers: readonly Offer[],
  isFileNamed: boolean,
  handed: readonly string[],
): readonly Offer[] {
  const own = offers.filter(({ of }) => of === 'own');
  if (isFileNamed) return own;
  return [...own, ...offers.filter(({ of, work }) => of === 'ended-run' || (of !== 'own' && handed.includes(work)))];
}

/** What is said once kept work is on the table. */
export function recoveredNotice({ project, keptAt }: Pick<Recovered, 'project' | 'keptAt'>): Notice {
  const { recovered, when } = words.shell.kept;
  return { kind: 'done', text: recovered(project.name, when(keptAt, new Date())) };
}

async function askingOf({ window, browser, open }: WindowIdentity) {
  return { window, browser, open: await open() };
}

function nameOf({ name, path }: NonNullable<Found['kept']>): string {
  if (name !== '') return name;
  return path === null ? words.shell.untitled : fileNameOf(path);
}

function unreadable(place: string): Problem {
  return { code: 'kept-work-unreadable', where: place, facts: {} };
}
