/**
 * Opening and saving, in the order a person is asked.
 *
 * Nothing here loses work: before another project takes the table, unsaved
 * work is asked about; a failed save leaves everything as it was.
 */
import type { Host, Params, Result } from '@shared/host/index.ts';
import { outcome, problemOf, type Outcome, type Problem } from '@shared/problem/index.ts';
import type { MotifPicture } from '@shared/picture/index.ts';
import {
  changeOf,
  MOST_PROJECT_LETTERS,
  projectFromText,
  projectToText,
  sampleProject,
  setProject,
  type Project,
} from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { ImporterName } from '@shared/words/en/reading-in.ts';
import { asNew } from './as-new.ts';
import { fileNameOf } from './file-name.ts';
import { bytesOfFile, titleOf } from '../pictures/picture-file.ts';
import type { GivenPicture } from '../pictures/given.ts';
import { ownMachine } from '../session/own-machine.ts';
import type { OpenFile, Session } from '../session/session.ts';
import { latePart } from '../ui/load-part.ts';

/** Answers that only the person can give; the shell shows the dialogs. */
export interface Asking {
  /** What to do with unsaved work before it leaves the table. */
  askUnsaved(name: string): Promise<'save' | 'drop' | 'stay'>;
  /** A file to open, or null; a picture where that alone will do. */
  fileToOpen(what?: 'any' | 'picture'): Promise<string | null>;
  /** Where to save, or null. What is there already is replaced only if the person has agreed. */
  fileToSave(suggestedName: string): Promise<Result<'documents.target'> | null>;
  /** A folder to export into, or null. */
  folder(): Promise<string | null>;
  /** What becomes of files that are there under the names of new ones; null: nothing is written. */
  askAboutFiles(folder: string, names: readonly string[]): Promise<'replace' | 'keep-both' | null>;
  /** What a new project is for, and the project for it; null: none. */
  newProject(aim: 'motif' | 'piece'): Promise<NewProject | null>;
  /** Reads a picture in that way, or asks what is on it. */
  readIn(given: GivenPicture, wanted: ImporterName | null): void;
}

/** A picture file: its bytes are to be handed over, once. */
export interface ChosenPicture {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

export const EXTENSION = '.walewright';

export interface NewProject {
  readonly project: Project;
  /** The bench on which it begins. */
  readonly bench: 'motif' | 'piece';
}

/** Loaded when the first picture comes: opening the window does not wait for readers of pictures. */
const pictureDecoder = latePart(() => import('../pictures/decode.ts'));

export class Files {
  /** The save that is going on, and those that wait for it. */
  #saving: Promise<unknown> = Promise.resolve();
  /** Counts what was asked to be opened. */
  #asked = 0;
  /** The sample is open. */
  whenSampleOpens: () => void = () => undefined;
  /** Waited for before a save is told: what was kept of the work until then goes. */
  whenSaved: () => Promise<void> = async () => undefined;

  constructor(
    private readonly host: Host,
    private readonly session: Session,
    private readonly asking: Asking,
  ) {}

  /** Asks what a new project is for, first about a motif or a piece, and puts it on the table. */
  async start(aim: 'motif' | 'piece' = 'motif'): Promise<void> {
    const isWanted = this.begin();
    if (!(await this.mayLeave())) return;
    const made = await this.asking.newProject(aim);
    if (made === null || !isWanted()) return;
    this.session.replace(asNew(made.project), null, true);
    this.session.look({ bench: made.bench });
    this.session.announce(words.starting.created(made.project.name));
  }

  /** Tells, when it has come, whether something else was asked for since: what is slow does not take its place. */
  private begin(): () => boolean {
    const mine = ++this.#asked;
    return () => mine === this.#asked;
  }

  /** Resolves to whether it did: what is unsaved may be wanted. */
  async openSample(): Promise<boolean> {
    this.begin();
    if (!(await this.mayLeave())) return false;
    this.session.replace(ownMachine.given(sampleProject()), null, true);
    this.whenSampleOpens();
    this.session.announce(words.starting.sample.opened);
    return true;
  }

  async open(): Promise<void> {
    const path = await this.asking.fileToOpen();
    if (path !== null) await this.openPath(path);
  }

  /** Chooses a picture and reads it in that way. */
  async readPicture(wanted: ImporterName): Promise<void> {
    const isWanted = this.begin();
    const chosen = await this.choosePicture();
    if (chosen === null || !isWanted()) return;
    const given = await this.pictureIn(chosen.bytes, chosen.name);
    if (given !== null && isWanted()) this.asking.readIn(given, wanted);
  }

  /** A picture file that the person chooses; null for none, or one that cannot be read, which has been said then. */
  async choosePicture(): Promise<ChosenPicture | null> {
    const read = await this.chooseFurtherPhoto();
    if (read === null || read.ok) return read?.value ?? null;
    this.fail(read.problem);
    return null;
  }

  /** A picture beside one that is being read, where it is told what is wrong with it; null where none is chosen. */
  async chooseFurtherPhoto(): Promise<Outcome<ChosenPicture> | null> {
    this.expectPicture();
    const path = await this.asking.fileToOpen('picture');
    return path === null ? null : this.host.call('documents.read', { path });
  }

  /** Opens a project, or reads a picture in. */
  async openPath(path: string): Promise<void> {
    const isWanted = this.begin();
    const read = await this.host.call('documents.read', { path });
    if (!read.ok) return this.fail(read.problem);
    const { name, stamp, bytes } = read.value;
    await this.openBytes(bytes, name, { path: read.value.path, name, stamp }, isWanted);
  }

  /** Opens what was dropped or read, which is handed over: it is not to be used again. `file` is where a project stands, or null if it has no path here. */
  private async openBytes(
    bytes: Uint8Array<ArrayBuffer>,
    name: string,
    file: OpenFile | null,
    isWanted: () => boolean,
  ): Promise<void> {
    if (!isProjectName(name)) {
      const given = await this.pictureIn(bytes, name);
      if (!isWanted()) return;
      if (given?.isPlainlyCells) await this.openCells(given);
      else if (given !== null) this.asking.readIn(given, null);
      return;
    }
    const read = projectIn(bytes, name);
    if (!read.ok) this.fail(read.problem);
    else if (isWanted()) await this.putOnTable(read.value, file);
  }

  /** A picture may be given soon: its workers come up. That they do not is told where they are needed. */
  expectPicture(): void {
    pictureDecoder().then(
      ({ getReady }) => getReady(),
      () => undefined,
    );
  }

  /** Opens a file that was dropped onto the window. */
  async openDropped(file: File): Promise<void> {
    const isWanted = this.begin();
    const bytes = await this.bytesIn(file);
    if (bytes !== null) await this.openBytes(bytes, file.name, null, isWanted);
  }

  /** Reads a picture in that was pasted: what is on it is asked always, as nobody chose to open a file. */
  async askAbout(picture: File, name: string): Promise<void> {
    const isWanted = this.begin();
    const bytes = await this.bytesIn(picture);
    const given = bytes === null ? null : await this.pictureIn(bytes, name);
    if (given !== null && isWanted()) this.asking.readIn(given, null);
  }

  /** Null for a file that is too large, which has been said then. */
  private async bytesIn(file: File): Promise<Uint8Array<ArrayBuffer> | null> {
    try {
      return await bytesOfFile(file);
    } catch (thrown) {
      this.fail(problemOf(thrown));
      return null;
    }
  }

  /** Null if nothing can be made of it, which has been said then. */
  private async pictureIn(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<GivenPicture | null> {
    try {
      const { lookAtPicture } = await pictureDecoder();
      return await lookAtPicture(bytes, name);
    } catch (thrown) {
      this.fail(problemOf(thrown));
      return null;
    }
  }

  /** Opens a picture of one pixel a cell as a new project. */
  async openCells({ cells, name }: { readonly cells: MotifPicture | null; readonly name: string }): Promise<void> {
    if (cells === null) return;
    const { projectFromPicture } = await pictureDecoder();
    const title = titleOf(name);
    const names = { project: title, motif: title, yarn: words.pictures.yarn };
    await this.putOnTable(asNew(projectFromPicture(cells, names)), null);
  }

  private async putOnTable(project: Project, file: OpenFile | null): Promise<void> {
    if (!(await this.mayLeave())) return;
    this.session.replace(project, file, file !== null);
    this.session.announce(words.shell.opened(project.name));
  }

  /** True if the project now stands in its file. */
  async save(): Promise<boolean> {
    return this.afterOthers(() => {
      this.session.lay();
      const { file } = this.session;
      return file === null ? this.chooseAndWrite() : this.write(file.path, { kind: 'version', stamp: file.stamp });
    });
  }

  async saveAs(): Promise<boolean> {
    return this.afterOthers(() => {
      this.session.lay();
      return this.chooseAndWrite();
    });
  }

  /**
   * Runs saves one after another: each must see the version that the one before
   * it wrote, or it would take that for another program's. False for a project
   * that has left the table by then.
   */
  private afterOthers(job: () => Promise<boolean>): Promise<boolean> {
    const { opened } = this.session;
    const mine = this.#saving.then(() => (opened === this.session.opened ? job() : false));
    this.#saving = mine.catch(() => undefined);
    return mine;
  }

  private async chooseAndWrite(): Promise<boolean> {
    const target = await this.asking.fileToSave(`${safeFileName(this.session.project.name)}${EXTENSION}`);
    if (target === null) return false;
    const { path, there } = target;
    this.nameAfter(path);
    return this.write(path, there === null ? { kind: 'nothing' } : { kind: 'version', stamp: there });
  }

  /** A project that nobody has named is called as its file. */
  private nameAfter(path: string): void {
    if (this.session.project.name !== words.shell.untitled) return;
    const name = titleOf(fileNameOf(path))
      .slice(0, MOST_PROJECT_LETTERS)
      .replace(/[\ud800-\udbff]$/, '');
    if (name.trim() === '' || name === words.shell.untitled) return;
    this.session.change(changeOf('rename-project', setProject({ name })));
  }

  /** Asks about unsaved work, what is in hand and what is drawn while it is saved with it; true if the table may be cleared. */
  async mayLeave(): Promise<boolean> {
    this.session.lay();
    while (this.session.isUnsaved) {
      const answer = await this.asking.askUnsaved(this.session.project.name);
      if (answer === 'drop') return true;
      if (answer === 'stay' || !(await this.save())) return false;
      this.session.lay();
    }
    return true;
  }

  private async write(path: string, expect: Params<'documents.write'>['expect']): Promise<boolean> {
    const { project, opened } = this.session;
    const written = await this.host.call('documents.write', { path, text: projectToText(project), expect });
    if (!written.ok) {
      this.fail(written.problem);
      return false;
    }
    // Another project may have taken the table meanwhile: the file is not its own.
    if (opened !== this.session.opened) return true;
    this.session.saved(project, written.value);
    await this.whenSaved();
    this.session.announce(words.shell.savedAs(written.value.name));
    return true;
  }

  private fail(problem: Problem): void {
    this.session.notify({ kind: 'problem', problem });
  }
}

function isProjectName(name: string): boolean {
  return [EXTENSION, '.json'].some((ending) => name.toLowerCase().endsWith(ending));
}

/** The project in the bytes of a `.walewright` file. */
function projectIn(bytes: Uint8Array<ArrayBuffer>, name: string): Outcome<Project> {
  const read = outcome(() => projectFromText(new TextDecoder().decode(bytes)));
  return read.ok || read.problem.where !== null ? read : { ok: false, problem: { ...read.problem, where: name } };
}

/** A project's name as a file name on any platform. */
export function safeFileName(name: string): string {
  const safe = name
    .replace(/[\\/:*?"<>|\u0000-\u001f]/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[ .]+|[ .]+$/g, '');
  return safe === '' ? words.shell.untitled : safe.slice(0, 100);
}
