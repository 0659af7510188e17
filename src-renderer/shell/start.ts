/** What lies on the table when the window opens. */
import type { Host, Result } from '@shared/host/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { emptyProject, projectFromText, sampleProject } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { Session } from './session.ts';

/** A session with the way to the services. */
export interface Started {
  readonly host: Host;
  readonly session: Session;
  readonly shell: Result<'host.describe'> | null;
  /** A file named at the start; opened once the window stands. */
  readonly openAtStart: string | null;
}

/** Work kept from an earlier end comes first, then a file named at the start, then the sample. */
export async function startSession(host: Host): Promise<Started> {
  const described = await host.call('host.describe', {});
  const shell = described.ok ? described.value : null;
  const found = await host.call('recovery.find', {});
  if (found.ok && found.value !== null) {
    const kept = found.value;
    const project = outcome(() => projectFromText(kept.text));
    if (project.ok) {
      const session = new Session(project.value, false);
      if (kept.path !== null) await rejoinFile(session, host, kept.path);
      session.notify({ kind: 'done', text: words.shell.recovered(project.value.name) });
      return { host, session, shell, openAtStart: null };
    }
  }
  const isEmpty = new URLSearchParams(location.search).has('empty');
  const project = isEmpty ? emptyProject(words.shell.untitled, words.shell.untitledMotif) : sampleProject();
  const session = new Session(project, true);
  if (!described.ok) session.notify({ kind: 'problem', problem: described.problem });
  return { host, session, shell, openAtStart: shell?.openAtStart ?? null };
}

/** Lets "save" go on to the file that kept work came from, if it is still there. */
async function rejoinFile(session: Session, host: Host, path: string): Promise<void> {
  const read = await host.call('documents.read', { path });
  if (read.ok) session.standsIn({ path: read.value.path, name: read.value.name, stamp: read.value.stamp });
}
