/** A copy of the project as a download, which needs no host. */
import type { Project } from '@shared/project/index.ts';
import { projectToText } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { Action } from '../commands/command.ts';
import { EXTENSION, safeFileName } from '../files/files.ts';
import type { Session } from '../session/session.ts';

/** The command that saves one. Nothing counts as saved by it: nobody tells the page what became of a download. */
export function saveCopyAction(session: Session): Action<'save-copy'> {
  return {
    run: () => {
      session.lay();
      session.announce(words.shell.lost.copySaved(download(session.project)));
    },
  };
}

/** Gives the file's name. */
function download(project: Project): string {
  const name = `${safeFileName(project.name)}${EXTENSION}`;
  const address = URL.createObjectURL(new Blob([projectToText(project)], { type: 'application/octet-stream' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken hold of it by the time that it next runs the page.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  return name;
}
