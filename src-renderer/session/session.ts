/**
 * What the window holds: the project with its history, and the view of it.
 *
 * Plain TypeScript. What it shows stands in live fields: a component that reads
 * `session.yarns` is woken when the yarns are others, and neither by the cells
 * that are painted nor by the pointer. The project changes only by
 * {@link Session.change}, undo and redo.
 */
import { outcome } from '@shared/problem/index.ts';
import type { Motif, MotifId } from '@shared/motif/index.ts';
import type { Piece } from '@shared/piece/index.ts';
import {
  assertYarnsFit,
  commit,
  giveUpGesture,
  markSaved,
  redo,
  startHistory,
  stateNow,
  statesAtHand,
  thingsTouched,
  undo,
  type Change,
  type ChangeName,
  type Edit,
  type History,
  type Project,
  type ProjectAt,
} from '@shared/project/index.ts';
import { liveFields, plainLive, type LiveFields, type MakeLive } from '../ui/live.ts';
import { motifToShow } from './motif-to-show.ts';
import { placeToShow } from './place-to-show.ts';
import { shownOf, type Beside, type InHand, type OpenFile, type Shown } from './shown.ts';
import { NOTHING_TOLD, type Announcement, type Notice, type Told } from './told.ts';
import { START_VIEW, viewOfAnother, type View } from './view.ts';

export type { InHand, OpenFile } from './shown.ts';
export type { Notice } from './told.ts';
export type { Bench, View } from './view.ts';

/** What is said belongs to what is done within this time. */
const NEW_MS = 2000;

export class Session {
  #history: History;
  #view: View = START_VIEW;
  #beside: Beside = { file: null, opened: 0, inHand: null };
  readonly #shown: LiveFields<Shown>;
  readonly #looked: LiveFields<View>;
  readonly #told: LiveFields<Told>;
  /** Runs as long as what was said last is new. */
  #newness: ReturnType<typeof setTimeout> | undefined;
  readonly #listeners = new Set<() => void>();
  readonly #editListeners = new Set<(edits: readonly Edit[]) => void>();

  /** `live`: what the values are made of that components follow, here and in the view models of the benches. */
  constructor(
    project: Project,
    isSaved: boolean,
    readonly live: MakeLive = plainLive,
  ) {
    this.#history = startHistory(project, isSaved);
    this.#shown = liveFields(this.#now(), live);
    this.#looked = liveFields(this.#view, live);
    this.#told = liveFields(NOTHING_TOLD, live);
  }

  /**
   * Calls `listener` after every change of the project, the view, the file and
   * what is in hand; returns a function that stops it. What is told in passing
   * (pointer, announcements, notices) calls nobody.
   */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Calls `listener` with the edits of every change, taken back and done again too, before other listeners are called. */
  onEdits(listener: (edits: readonly Edit[]) => void): () => void {
    this.#editListeners.add(listener);
    return () => this.#editListeners.delete(listener);
  }

  get project(): Project {
    return this.#shown.now.project;
  }

  get projectName(): string {
    return this.#shown.now.projectName;
  }

  get yarns(): Project['yarns'] {
    return this.#shown.now.yarns;
  }

  get mainYarn(): number {
    return this.#shown.now.mainYarn;
  }

  get motifs(): Project['motifs'] {
    return this.#shown.now.motifs;
  }

  get pieces(): Project['pieces'] {
    return this.#shown.now.pieces;
  }

  get motif(): Motif {
    return this.#shown.now.motif;
  }

  get motifId(): MotifId {
    return this.#shown.now.motifId;
  }

  get current(): ProjectAt {
    return this.#shown.now.current;
  }

  get piece(): Piece {
    return this.#shown.now.piece;
  }

  get view(): View {
    return this.#looked.now;
  }

  get file(): OpenFile | null {
    return this.#shown.now.file;
  }

  get isUnsaved(): boolean {
    return this.#shown.now.isUnsaved;
  }

  get undoName(): ChangeName | null {
    return this.#shown.now.undoName;
  }

  get redoName(): ChangeName | null {
    return this.#shown.now.redoName;
  }

  /** Names the state of the project in its history; it comes again by undo and redo alone. */
  get state(): number {
    return stateNow(this.#history);
  }

  /** The states that undo and redo can come to, this one among them. */
  get statesAtHand(): ReadonlySet<number> {
    return statesAtHand(this.#history);
  }

  get opened(): number {
    return this.#shown.now.opened;
  }

  get inHand(): InHand | null {
    return this.#shown.now.inHand;
  }

  get notice(): Notice | null {
    return this.#told.now.notice;
  }

  get pointer(): string {
    return this.#told.now.pointer;
  }

  get cursor(): string {
    return this.#told.now.cursor;
  }

  get isAnnouncementPast(): boolean {
    return this.#told.now.isPast;
  }

  get announcement(): Announcement {
    return this.#told.now.announcement;
  }

  get announced(): string {
    return this.announcement.text;
  }

  /**
   * Applies a change; changes of one `gesture` make one step of undo. One that
   * gives a motif too many yarns is refused, and the notice says what to do.
   */
  change(change: Change, gesture: string | null = null): void {
    const next = commit(this.#history, change, gesture);
    const fits = outcome(() => assertYarnsFit(this.#history.project, next.project));
    if (!fits.ok) {
      this.notify({ kind: 'problem', problem: fits.problem });
      return;
    }
    this.#go(next);
  }

  /** Takes back all changes of a gesture that was given up; it leaves nothing to redo. */
  giveUp(gesture: string): void {
    this.#go(giveUpGesture(this.#history, gesture));
  }

  undo(): void {
    this.#travel(undo(this.#history));
  }

  redo(): void {
    this.#travel(redo(this.#history));
  }

  look(to: Partial<View>): void {
    if (to.bench !== undefined && to.bench !== this.#view.bench) this.#outdate();
    this.#view = { ...this.#view, ...to };
    this.#show();
    this.#tell();
  }

  /** Takes cells in hand, or with null nothing any more. */
  hold(inHand: InHand | null): void {
    if (inHand !== this.#beside.inHand) this.#set({ inHand });
  }

  /** Lays what is in hand, so that the project is all that the person sees. */
  lay(): void {
    this.#beside.inHand?.lay();
  }

  /** Puts another project on the table. */
  replace(project: Project, file: OpenFile | null, isSaved: boolean): void {
    this.#history = startHistory(project, isSaved);
    this.#view = viewOfAnother(this.#view, project);
    this.notify(null);
    this.#set({ file, opened: this.#beside.opened + 1 });
  }

  /** The project `saved` now stands in `file`; what was changed while it was written stays unsaved. */
  saved(saved: Project, file: OpenFile): void {
    if (this.#history.project === saved) this.#history = markSaved(this.#history);
    this.#set({ file });
  }

  /** Names the file that the project belongs to, without saying that it holds what is here. */
  standsIn(file: OpenFile): void {
    this.#set({ file });
  }

  notify(notice: Notice | null): void {
    this.#told.set({ notice });
  }

  /** Says what the pointer is on, and the cell cursor of the keyboard where there is one. */
  point(pointer: string, cursor = ''): void {
    this.#told.set({ pointer, cursor });
  }

  announce(text: string): void {
    this.#say({ text });
  }

  /** Tells assistive technology alone, of what stands in the status line already. */
  announceQuietly(text: string): void {
    this.#say({ text, isOnlyHeard: true });
  }

  #say(announcement: Announcement): void {
    this.#told.set({ announcement, isPast: false });
    clearTimeout(this.#newness);
    this.#newness = setTimeout(() => (this.#newness = undefined), NEW_MS);
  }

  /** What was said last is of something before; but what was said just now is of what is done. */
  #outdate(): void {
    if (this.#newness === undefined) this.#told.set({ isPast: true });
  }

  /** Goes to another state of the project, and shows a motif, a piece and a size that the step changes. */
  #travel(to: History): void {
    if (to === this.#history) return;
    const { project: from } = this.#history;
    const { motif, current } = this.#now();
    const touched = to.made ? thingsTouched(to.made) : [];
    this.#view = {
      ...this.#view,
      motif: motifToShow(touched, from.motifs, to.project.motifs, motif.id),
      ...placeToShow(touched, from, to.project, current.at),
    };
    this.#go(to);
  }

  /** The history after a step, which leads on from the one before. */
  #go(to: History): void {
    const isStep = to !== this.#history;
    if (isStep) this.#outdate();
    this.#history = to;
    this.#show();
    if (isStep && to.made) for (const listener of this.#editListeners) listener(to.made.edits);
    this.#tell();
  }

  #set(beside: Partial<Beside>): void {
    this.#beside = { ...this.#beside, ...beside };
    this.#show();
    this.#tell();
  }

  #now(): Shown {
    return shownOf(this.#history, this.#view, this.#beside);
  }

  #show(): void {
    this.#looked.set(this.#view);
    this.#shown.set(this.#now());
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
