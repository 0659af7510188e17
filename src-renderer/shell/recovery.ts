/** Keeps unsaved work aside about a second after the last change. */
import type { Host } from '@shared/host/index.ts';
import { projectToText, type Project } from '@shared/project/index.ts';
import type { Session } from './session.ts';

const QUIET_MS = 1000;

/** Starts keeping; a failure is said once, for unsaved work is at stake. */
export function keepUnsavedWork(session: Session, host: Host): void {
  let kept: Project = session.project;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let hasFailed = false;
  const keep = async (): Promise<void> => {
    const { project, file } = session;
    if (!session.isUnsaved || project === kept) return;
    kept = project;
    const done = await host.call('recovery.keep', { text: projectToText(project), path: file?.path ?? null });
    if (!done.ok && !hasFailed) {
      hasFailed = true;
      session.notify({ kind: 'problem', problem: done.problem });
    }
    if (done.ok) hasFailed = false;
  };
  session.subscribe(() => {
    if (session.project === kept) return;
    clearTimeout(timer);
    timer = setTimeout(() => void keep(), QUIET_MS);
  });
}
