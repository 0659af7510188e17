/** Where files were chosen last, by what they were for; the next panel opens there. */
import { NO_LAST_FOLDERS, type LastFolders } from '@shared/host/index.ts';

export class Folders {
  /** Told of a folder that was chosen in, for the next run. */
  onChange: (folders: LastFolders) => void = () => undefined;
  #now: LastFolders = NO_LAST_FOLDERS;

  /** As they were kept in an earlier run. */
  begin(folders: LastFolders): void {
    this.#now = folders;
  }

  /** Pictures are looked for where projects are until one was chosen elsewhere. Null: the home folder. */
  at(of: keyof LastFolders): string | null {
    return this.#now[of] ?? (of === 'pictures' ? this.#now.projects : null);
  }

  chosen(of: keyof LastFolders, folder: string): void {
    if (this.#now[of] === folder) return;
    this.#now = { ...this.#now, [of]: folder };
    this.onChange(this.#now);
  }
}

/** Those of this window. */
export const lastFolders = new Folders();
