/** The view model of the Piece bench, what it shows besides the project: the view, the stitch looked at, the band in the form. */
import { createSubscriber } from 'svelte/reactivity';
import { commandsOf, type Commands } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import type { Viewport } from '../canvas/index.ts';
import { pieceActions, type PieceCommand, type PieceView } from './actions.ts';
import type { GroupSpot } from './moving/actions.ts';
import type { Reading } from './moving/reading.ts';
import type { StitchSpot } from './stitch-spot.ts';

/** What the stage does for commands; it alone knows its size. */
export interface StageControls {
  zoomBy(factor: number): void;
  fit(): void;
}

export class PieceViewModel implements PieceView {
  readonly commands: Commands<PieceCommand>;
  #view: Viewport | null = null;
  #spot: StitchSpot | null = null;
  #band = 0;
  #allOver = 0;
  #group: GroupSpot | null = null;
  #dragged: Reading | null = null;
  #isClosed = false;
  #showsSizes = false;
  #stage: StageControls | null = null;
  readonly #listeners = new Set<() => void>();
  readonly #follow: () => void;

  constructor(session: Session) {
    this.#follow = createSubscriber((update) => {
      this.#listeners.add(update);
      return () => this.#listeners.delete(update);
    });
    let looked = lookedAt(session);
    session.subscribe(() => {
      const now = lookedAt(session);
      if (now !== looked) this.#forget();
      looked = now;
    });
    this.commands = commandsOf(pieceActions(session, this));
  }

  /** Null: the whole piece, as large as it goes. */
  get view(): Viewport | null {
    this.#follow();
    return this.#view;
  }

  set view(view: Viewport | null) {
    this.#view = view;
    this.#emit();
  }

  /** The stitch under the keyboard's cursor. */
  get spot(): StitchSpot | null {
    this.#follow();
    return this.#spot;
  }

  set spot(spot: StitchSpot | null) {
    this.#spot = spot;
    this.#emit();
  }

  /** Number of the band whose groups the form describes. */
  get band(): number {
    this.#follow();
    return this.#band;
  }

  set band(band: number) {
    this.#band = band;
    this.#group = null;
    this.#emit();
  }

  /** Number of the all-over in the form; it may be gone. */
  get allOver(): number {
    this.#follow();
    return this.#allOver;
  }

  set allOver(number: number) {
    this.#allOver = number;
    this.#emit();
  }

  /** The group that the commands move; choosing it brings its band into the form. */
  get group(): GroupSpot | null {
    this.#follow();
    return this.#group;
  }

  set group(group: GroupSpot | null) {
    this.#group = group;
    if (group) this.#band = group.band;
    this.#emit();
  }

  /** A group that is in the hand, as it would stand. */
  get dragged(): Reading | null {
    this.#follow();
    return this.#dragged;
  }

  set dragged(dragged: Reading | null) {
    this.#dragged = dragged;
    this.#emit();
  }

  /** The piece is looked at joined into its tube, not flat. */
  get isClosed(): boolean {
    this.#follow();
    return this.#isClosed;
  }

  set isClosed(isClosed: boolean) {
    this.#isClosed = isClosed;
    this.#emit();
  }

  /** The table of sizes is up over the bench. */
  get showsSizes(): boolean {
    this.#follow();
    return this.#showsSizes;
  }

  set showsSizes(showsSizes: boolean) {
    this.#showsSizes = showsSizes;
    this.#emit();
  }

  /** The stage comes and goes with the bench. */
  attach(stage: StageControls): () => void {
    this.#stage = stage;
    return () => {
      if (this.#stage === stage) this.#stage = null;
    };
  }

  zoomBy(factor: number): void {
    this.#stage?.zoomBy(factor);
  }

  fit(): void {
    this.#stage?.fit();
  }

  #forget(): void {
    this.#view = null;
    this.#spot = null;
    this.#band = 0;
    this.#allOver = 0;
    this.#group = null;
    this.#dragged = null;
    this.#isClosed = false;
    this.#emit();
  }

  #emit(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** Names the project on the table and the piece of it that is looked at; its sizes are looked at in the same way. */
export function lookedAt({ opened, current }: Session): string {
  return `${opened} ${current.at.piece}`;
}
