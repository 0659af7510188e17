/** Keeps unsaved work aside about a second after the last change, and drops it when there is none. */
import type { Host } from '@shared/host/index.ts';
import { projectToText, type Project } from '@shared/project/index.ts';
import type { Session } from './session.ts';

const QUIET_MS = 1000;

/** Starts keeping; a failure is said once, for unsaved work is at stake. */
export function keepUnsavedWork(session: Session, host: Host): void {
  let looked: Project = session.project;
  let isKept = session.isUnsaved;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let hasFailed = false;
  const keep = async (): Promise<void> => {
    const { project, file } = session;
    if (!session.isUnsaved) {
      // Undone back to what stands in the file: a later start must not offer the work that was undone.
      if (isKept) await host.call('recovery.drop', {});
      isKept = false;
      return;
    }
    const done = await host.call('recovery.keep', { text: projectToText(project), path: file?.path ?? null });
    isKept ||= done.ok;
    if (!done.ok && !hasFailed) session.notify({ kind: 'problem', problem: done.problem });
    hasFailed = !done.ok;
  };
  session.subscribe(() => {
    if (session.project === looked) return;
    looked = session.project;
    clearTimeout(timer);
    timer = setTimeout(() => void keep(), QUIET_MS);
  });
}
