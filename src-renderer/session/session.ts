/**
 * What the window holds: the project with its history, and the view of it.
 *
 * Plain TypeScript; Svelte follows through one subscriber, so reading
 * `session.project` inside a component is all it takes to stay up to date.
 * The project changes only by {@link Session.change}, undo and redo.
 */
import { createSubscriber } from 'svelte/reactivity';
import type { Shows } from '@shared/bed/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import type { ChartSides } from '@shared/output/index.ts';
import { outcome, type Problem } from '@shared/problem/index.ts';
import type { Motif, MotifId } from '@shared/motif/index.ts';
import type { SizeId } from '@shared/piece/index.ts';
import {
  assertYarnsFit,
  commit,
  giveUpGesture,
  isUnsaved,
  LOOKED_AT,
  markSaved,
  projectAt,
  redo,
  redoName,
  startHistory,
  thingsTouched,
  undo,
  undoName,
  type Change,
  type ChangeName,
  type Edit,
  type History,
  type Laying,
  type PieceId,
  type Project,
  type ProjectAt,
  type Scope,
} from '@shared/project/index.ts';
import type { Theme } from '../ui/theme.ts';
import { motifToShow } from './motif-to-show.ts';
import { placeToShow } from './place-to-show.ts';

export type Bench = 'motif' | 'piece' | 'sheet';

/** Where the project stands on disk. */
export interface OpenFile {
  readonly path: string;
  readonly name: string;
  readonly stamp: string;
}

/** What the person looks at; not part of the project, not undone. */
export interface View {
  readonly bench: Bench;
  readonly theme: Theme;
  /** Palette index that the pen lays. */
  readonly colour: number;
  /** The motif on the Motif bench; the first one if there is none of that name. */
  readonly motif: MotifId;
  /** The piece on the Piece bench and on the sheet; the first one if there is none of that name. */
  readonly piece: PieceId;
  /** The size that it is looked at in; the first one if there is none of that name. */
  readonly size: SizeId;
  readonly showsFloats: boolean;
  readonly showsWraps: boolean;
  readonly showsStitches: boolean;
  /** The piece as worn, or as the knitter sees the needles. */
  readonly pieceShows: Shows;
  /** In which sizes are shown and given beside stitches and rows. */
  readonly lengthUnit: LengthUnit;
  readonly paper: 'a4' | 'letter';
  /** Which charts the sheet has. */
  readonly charts: ChartSides;
  /** Of which pieces in which sizes the sheet and the files are. */
  readonly scope: Scope;
}

/** Cells on a bench that are in hand: lifted, pasted or set in letters, and not laid in the project yet. */
export interface InHand {
  /** What laying them would change now; null: nothing. */
  laying(): Laying | null;
  lay(): void;
}

/** A message under the top bar, until it is closed or replaced. */
export type Notice =
  { readonly kind: 'problem'; readonly problem: Problem } | { readonly kind: 'done'; readonly text: string };

/** Something that is said once. */
export interface Announcement {
  readonly text: string;
}

const START_VIEW: View = {
  bench: 'motif',
  theme: 'system',
  colour: 1,
  motif: '',
  piece: '',
  size: '',
  showsFloats: true,
  showsWraps: true,
  showsStitches: false,
  pieceShows: 'needles',
  lengthUnit: 'cm',
  paper: 'a4',
  charts: 'both',
  scope: LOOKED_AT,
};

export class Session {
  #history: History;
  #view: View = START_VIEW;
  #file: OpenFile | null = null;
  #notice: Notice | null = null;
  #pointer: string = '';
  #announced: Announcement = { text: '' };
  #opened = 0;
  #inHand: InHand | null = null;
  readonly #listeners = new Set<() => void>();
  readonly #editListeners = new Set<(edits: readonly Edit[]) => void>();
  readonly #follow: () => void;

  constructor(project: Project, isSaved: boolean) {
    this.#history = startHistory(project, isSaved);
    this.#follow = createSubscriber((update) => this.subscribe(update));
  }

  /** Calls `listener` after every change; returns a function that stops it. */
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
    this.#follow();
    return this.#history.project;
  }

  /** The project as it is seen from the piece and in the size that are looked at. */
  get current(): ProjectAt {
    this.#follow();
    return projectAt(this.#history.project, this.#view);
  }

  get view(): View {
    this.#follow();
    return this.#view;
  }

  /** The motif on the Motif bench. */
  get motif(): Motif {
    this.#follow();
    const { motifs } = this.#history.project;
    const motif = motifs.find(({ id }) => id === this.#view.motif) ?? motifs[0];
    if (!motif) throw new Error('A project has at least one motif');
    return motif;
  }

  get file(): OpenFile | null {
    this.#follow();
    return this.#file;
  }

  get isUnsaved(): boolean {
    this.#follow();
    return isUnsaved(this.#history);
  }

  get undoName(): ChangeName | null {
    this.#follow();
    return undoName(this.#history);
  }

  get redoName(): ChangeName | null {
    this.#follow();
    return redoName(this.#history);
  }

  /** Counts the projects put on the table, so that what is lifted over one does not come down on the next. */
  get opened(): number {
    this.#follow();
    return this.#opened;
  }

  /** What is in hand; another object whenever it moved. */
  get inHand(): InHand | null {
    this.#follow();
    return this.#inHand;
  }

  get notice(): Notice | null {
    this.#follow();
    return this.#notice;
  }

  /** What the pointer or the cell cursor is on, for the status line. */
  get pointer(): string {
    this.#follow();
    return this.#pointer;
  }

  /** What is said to assistive technology: another object each time, also where the same is said again. */
  get announcement(): Announcement {
    this.#follow();
    return this.#announced;
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
    this.#view = { ...this.#view, ...to };
    this.#emit();
  }

  /** Takes cells in hand, or with null nothing any more. */
  hold(inHand: InHand | null): void {
    if (inHand === this.#inHand) return;
    this.#inHand = inHand;
    this.#emit();
  }

  /** Lays what is in hand, so that the project is all that the person sees. */
  lay(): void {
    this.#inHand?.lay();
  }

  /** Puts another project on the table. */
  replace(project: Project, file: OpenFile | null, isSaved: boolean): void {
    this.#history = startHistory(project, isSaved);
    this.#opened++;
    this.#file = file;
    const colour = project.yarns.findIndex((_, index) => index !== project.mainYarn);
    const motif = project.motifs[0]?.id ?? '';
    this.#view = { ...this.#view, motif, piece: '', size: '', scope: LOOKED_AT, colour: Math.max(0, colour) };
    this.#notice = null;
    this.#emit();
  }

  /** The project `saved` now stands in `file`; what was changed while it was written stays unsaved. */
  saved(saved: Project, file: OpenFile): void {
    if (this.#history.project === saved) this.#history = markSaved(this.#history);
    this.#file = file;
    this.#emit();
  }

  /** Names the file that the project belongs to, without saying that it holds what is here. */
  standsIn(file: OpenFile): void {
    this.#file = file;
    this.#emit();
  }

  notify(notice: Notice | null): void {
    this.#notice = notice;
    this.#emit();
  }

  point(text: string): void {
    if (text === this.#pointer) return;
    this.#pointer = text;
    this.#emit();
  }

  announce(text: string): void {
    this.#announced = { text };
    this.#emit();
  }

  /** Goes to another state of the project, and shows a motif, a piece and a size that the step changes. */
  #travel(to: History): void {
    if (to === this.#history) return;
    const from = this.#history.project;
    const touched = to.made ? thingsTouched(to.made) : [];
    const motif = motifToShow(touched, from.motifs, to.project.motifs, this.motif.id);
    this.#view = { ...this.#view, motif, ...placeToShow(touched, from, to.project, this.current.at) };
    this.#go(to);
  }

  /** The history after a step, which leads on from the one before. */
  #go(to: History): void {
    const isStep = to !== this.#history;
    this.#history = to;
    if (isStep && to.made) for (const listener of this.#editListeners) listener(to.made.edits);
    this.#emit();
  }

  #emit(): void {
    for (const listener of this.#listeners) listener();
  }
}
