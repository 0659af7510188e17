/**
 * Questions to the person, as promises.
 *
 * Where the platform has its own file dialogs they are asked for; in a browser
 * the program shows its own file panel, which lists folders through the host.
 */
import type { Host } from '@shared/host/index.ts';
import type { ReadingWayName } from '@shared/words/en/reading-in.ts';
import type { GivenPicture } from '../reading-in/given.ts';
import type { Asking } from './files.ts';

export interface FileQuestion {
  readonly kind: 'open' | 'save' | 'folder';
  readonly suggestedName: string;
  readonly answer: (path: string | null) => void;
}

export class Dialogs implements Asking {
  unsaved = $state.raw<{ name: string; answer: (answer: 'save' | 'drop' | 'stay') => void } | null>(null);
  files = $state.raw<FileQuestion | null>(null);
  /** A picture that is being read in; `wanted` is the way, or null to ask. */
  picture = $state.raw<{ given: GivenPicture; wanted: ReadingWayName | null } | null>(null);

  constructor(
    private readonly host: Host,
    private readonly hasPlatformDialogs: boolean,
  ) {}

  get isOpen(): boolean {
    return this.unsaved !== null || this.files !== null || this.picture !== null;
  }

  askUnsaved(name: string): Promise<'save' | 'drop' | 'stay'> {
    return new Promise((resolve) => {
      this.unsaved = {
        name,
        answer: (answer) => {
          this.unsaved = null;
          resolve(answer);
        },
      };
    });
  }

  readIn(given: GivenPicture, wanted: ReadingWayName | null): void {
    this.picture = { given, wanted };
  }

  async fileToOpen(): Promise<string | null> {
    return this.hasPlatformDialogs ? this.platform('dialogs.openFile') : this.panel('open', '');
  }

  async fileToSave(suggestedName: string): Promise<string | null> {
    if (!this.hasPlatformDialogs) return this.panel('save', suggestedName);
    const chosen = await this.host.call('dialogs.saveFile', { suggestedName });
    return chosen.ok ? chosen.value : null;
  }

  async folder(): Promise<string | null> {
    return this.hasPlatformDialogs ? this.platform('dialogs.chooseFolder') : this.panel('folder', '');
  }

  private async platform(method: 'dialogs.openFile' | 'dialogs.chooseFolder'): Promise<string | null> {
    const chosen = await this.host.call(method, {});
    return chosen.ok ? chosen.value : null;
  }

  private panel(kind: FileQuestion['kind'], suggestedName: string): Promise<string | null> {
    return new Promise((resolve) => {
      this.files = {
        kind,
        suggestedName,
        answer: (path) => {
          this.files = null;
          resolve(path);
        },
      };
    });
  }
}
