/**
 * Questions to the person, as promises.
 *
 * Where the platform has its own file dialogs they are asked for; in a browser
 * the program shows its own file panel, which lists folders through the host.
 */
import type { Host, LastFolders, Params, Result } from '@shared/host/index.ts';
import type { Outcome, Problem } from '@shared/problem/index.ts';
import type { ImporterName } from '@shared/words/en/reading-in.ts';
import type { GivenPicture } from '../pictures/given.ts';
import type { Asking, NewProject } from './files.ts';
import { lastFolders } from './last-folders.ts';

/** Where a project is to be saved, as the services have it. */
export type Target = Result<'documents.target'>;

/** What is opened: a project or a picture, or a picture alone. */
export type Wanted = Params<'dialogs.openFile'>['what'];

/** What the file panel is open for. It begins in `folder`; null is the home folder. */
export type FileQuestion = {
  readonly folder: string | null;
  /** Told of the folder in which something was chosen. */
  readonly chosenIn: (folder: string) => void;
} & (
  | { readonly kind: 'open'; readonly wanted: Wanted; readonly answer: (path: string | null) => void }
  | { readonly kind: 'folder'; readonly answer: (path: string | null) => void }
  | { readonly kind: 'save'; readonly suggestedName: string; readonly answer: (target: Target | null) => void }
);

/** Files that are there already, in one folder. */
export interface ReplaceQuestion {
  readonly folder: string;
  readonly names: readonly string[];
  /** True where the new ones may stand beside them, with a number. */
  readonly canKeepBoth: boolean;
  readonly answer: (given: 'replace' | 'keep-both' | null) => void;
}

export class Dialogs implements Asking {
  unsaved = $state.raw<{ name: string; answer: (answer: 'save' | 'drop' | 'stay') => void } | null>(null);
  files = $state.raw<FileQuestion | null>(null);
  replace = $state.raw<ReplaceQuestion | null>(null);
  /** What a new project is for is being asked. */
  fresh = $state.raw<{ aim: NewProject['bench']; answer: (made: NewProject | null) => void } | null>(null);
  /** A picture that is being read in; `wanted` is the way, or null to ask. */
  picture = $state.raw<{ given: GivenPicture; wanted: ImporterName | null } | null>(null);
  /** The yarns in several versions are looked at. */
  showsColourways = $state(false);
  /** The question about files that is up, and those that wait for its answer. */
  #asked: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly host: Host,
    readonly hasPlatformDialogs: boolean,
    /** Told what kept the platform's dialog from an answer. */
    private readonly tell: (problem: Problem) => void,
  ) {}

  get isOpen(): boolean {
    return (
      this.unsaved !== null ||
      this.fresh !== null ||
      this.files !== null ||
      this.replace !== null ||
      this.picture !== null ||
      this.showsColourways
    );
  }

  newProject(aim: NewProject['bench']): Promise<NewProject | null> {
    this.fresh?.answer(null);
    return new Promise((resolve) => {
      this.fresh = {
        aim,
        answer: (made) => {
          this.fresh = null;
          resolve(made);
        },
      };
    });
  }

  /** One that comes while another is up takes its place: that one is answered with "stay". */
  askUnsaved(name: string): Promise<'save' | 'drop' | 'stay'> {
    this.unsaved?.answer('stay');
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

  readIn(given: GivenPicture, wanted: ImporterName | null): void {
    this.picture = { given, wanted };
  }

  async fileToOpen(what: Wanted = 'any'): Promise<string | null> {
    if (this.hasPlatformDialogs) return this.platform(await this.host.call('dialogs.openFile', { what }));
    const place = placeIn(what === 'picture' ? 'pictures' : 'projects');
    return this.inTurn(
      (answer) => (this.files = { kind: 'open', wanted: what, ...place(), answer }),
      () => (this.files = null),
    );
  }

  /** Who would rather not replace the file that is there may choose again. */
  async fileToSave(suggestedName: string): Promise<Target | null> {
    let target = await this.target(suggestedName, null);
    while (target?.mustAsk === true) {
      const { path, name } = target;
      const folder = path.slice(0, -name.length);
      if ((await this.ask(folder, [name], false)) === 'replace') return target;
      target = await this.target(name, folder);
    }
    return target;
  }

  async folder(): Promise<string | null> {
    if (this.hasPlatformDialogs) return this.platform(await this.host.call('dialogs.chooseFolder', {}));
    const place = placeIn('exports');
    return this.inTurn(
      (answer) => (this.files = { kind: 'folder', ...place(), answer }),
      () => (this.files = null),
    );
  }

  askAboutFiles(folder: string, names: readonly string[]): Promise<'replace' | 'keep-both' | null> {
    return this.ask(folder, names, true);
  }

  private ask(folder: string, names: readonly string[], canKeepBoth: boolean): Promise<'replace' | 'keep-both' | null> {
    return this.inTurn(
      (answer) => (this.replace = { folder, names, canKeepBoth, answer }),
      () => (this.replace = null),
    );
  }

  private async target(suggestedName: string, folder: string | null): Promise<Target | null> {
    if (this.hasPlatformDialogs) {
      const chosen = await this.host.call('dialogs.saveFile', { suggestedName });
      if (!chosen.ok) this.tell(chosen.problem);
      return chosen.ok ? chosen.value : null;
    }
    return this.inTurn(
      (answer) => (this.files = { kind: 'save', ...placeIn('projects')(folder), suggestedName, answer }),
      () => (this.files = null),
    );
  }

  /**
   * Shows a question once those before it are answered. One in the place of
   * another would be pressed by who meant the other, which never had its answer.
   */
  private inTurn<Answer>(show: (answer: (given: Answer) => void) => void, hide: () => void): Promise<Answer> {
    const ask = (): Promise<Answer> =>
      new Promise((resolve) => {
        let isUp = true;
        show((given) => {
          if (isUp) hide();
          isUp = false;
          resolve(given);
        });
      });
    const mine = this.#asked.then(ask);
    this.#asked = mine;
    return mine;
  }

  /** What the platform's dialog answered. */
  private platform(chosen: Outcome<string | null>): string | null {
    if (!chosen.ok) this.tell(chosen.problem);
    return chosen.ok ? chosen.value : null;
  }
}

/** Where a panel for that opens, once it does, and who is told of the folder that is chosen in. */
function placeIn(of: keyof LastFolders): (folder?: string | null) => Pick<FileQuestion, 'folder' | 'chosenIn'> {
  return (folder = null) => ({
    folder: folder ?? lastFolders.at(of),
    chosenIn: (chosen) => lastFolders.chosen(of, chosen),
  });
}
