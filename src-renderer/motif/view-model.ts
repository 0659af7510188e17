/**
 * The view model of the Motif bench: the tool in hand, the cell cursor, the part
 * of the chart in view, and how cells are shown. None of it is part of the
 * project, so none of it is undone.
 */
import type { Cell } from '@shared/grid/index.ts';
import { cellAspect } from '@shared/piece/index.ts';
import { commandsOf, type Commands } from '../commands/command.ts';
import type { InHand, Session } from '../session/session.ts';
import { liveFields, type LiveFields } from '../ui/live.ts';
import { PanelMemory } from '../ui/panel-memory.ts';
import { motifActions, type MotifCommand } from './actions.ts';
import type { Doubts, ReadDoubts } from './doubts/doubts.ts';
import { layingOf, type LiftedSelection } from './editing/cutting.ts';
import { overhangOf, type Overhang } from './editing/overhang.ts';
import { layLifted } from './lifted-selection.ts';
import { Tracing } from './underlay/tracing.ts';
import { START, type LeftOff, type MotifView, type MotifViewState, type StageControls } from './view-state.ts';

export class MotifViewModel implements MotifView {
  readonly commands: Commands<MotifCommand>;
  /** The picture to trace, in hand with its tool. */
  readonly tracing: Tracing;
  readonly #shown: LiveFields<MotifViewState>;
  readonly panel: PanelMemory;
  #lifted: LiftedSelection | null = null;
  #stage: StageControls | null = null;

  constructor(
    private readonly session: Session,
    /** Asks the person for a picture file; without it none can be chosen. */
    readonly choosePicture: MotifView['choosePicture'] = () => Promise.resolve(null),
  ) {
    this.#shown = liveFields(START, session.live);
    this.panel = new PanelMemory(session.live);
    this.tracing = new Tracing(session);
    this.commands = commandsOf(motifActions(session, this));
    let motif = session.motif;
    let yarns = session.project.yarns.length;
    let { opened } = session;
    session.subscribe(() => {
      const next = session.motif;
      // Another motif, or another size of it, is looked at as a whole first.
      const isAnother = opened !== session.opened || next.id !== motif.id || !sameSize(next.grid, motif.grid);
      opened = session.opened;
      motif = next;
      const count = session.project.yarns.length;
      // With a yarn gone, what was copied may name one that is not there.
      if (count < yarns) this.look({ selection: null, lifted: null, clipping: null });
      yarns = count;
      if (isAnother) this.look({ view: null, span: null, selection: null, lifted: null, tile: null });
    });
  }

  get state(): MotifViewState {
    return this.#shown.now;
  }

  /** The cell cursor, on the motif. */
  get cursor(): Cell {
    const { grid } = this.session.motif;
    const { column, row } = this.state.cursor;
    return { column: Math.min(column, grid.width - 1), row: Math.min(row, grid.height - 1) };
  }

  /** Palette index of the yarn in the pen; a yarn that undo took away leaves the pen to another. */
  get colour(): number {
    const { yarns, view } = this.session;
    if (view.colour < yarns.length) return view.colour;
    return Math.max(
      0,
      yarns.findIndex((_, index) => index !== this.session.mainYarn),
    );
  }

  /** How many times as wide as tall cells are shown. */
  get aspect(): number {
    return this.state.cellShape === 'square' ? 1 : cellAspect(this.session.piece.gauge);
  }

  /** What of the lifted cells lies outside the chart; null for nothing. */
  get overhang(): Overhang | null {
    const { lifted } = this.state;
    return lifted && overhangOf(this.session.motif.grid, this.session.mainYarn, lifted);
  }

  /** What the last change left off; it stands until the next one, so until it is undone too. */
  get leftOff(): LeftOff | null {
    const { leftOff } = this.state;
    return leftOff?.project === this.session.project ? leftOff : null;
  }

  look(to: Partial<MotifViewState>): void {
    this.#shown.set(to);
    const { lifted = this.#lifted } = to;
    if (lifted === this.#lifted) return;
    this.#lifted = lifted;
    this.session.hold(this.#inHand(lifted));
  }

  /** A stamp is no work: it is laid by the stamp alone. */
  #inHand(lifted: LiftedSelection | null): InHand | null {
    if (!lifted || lifted.name === 'stamp') return null;
    return {
      laying: () => layingOf(this.session.motif, this.session.project.mainYarn, lifted),
      lay: () => void layLifted(this.session, this),
    };
  }

  /**
   * A motif was read, and some of its cells are in doubt. `begin` makes what keeps
   * them: it comes with the dialog, so that a page that reads no photo is not sent it.
   */
  keepDoubts(read: ReadDoubts, begin: (session: Session) => Doubts): void {
    const doubts = this.state.doubts ?? begin(this.session);
    this.look({ doubts });
    doubts.keep(read);
  }

  /** The stage comes and goes with the bench; returns a function that takes it away. */
  attach(stage: StageControls): () => void {
    this.#stage = stage;
    return () => {
      if (this.#stage === stage) this.#stage = null;
    };
  }

  zoomBy(factor: number): void {
    this.#stage?.zoomBy(factor);
  }

  /** Puts the cell cursor on a cell and brings it into view, where a stage shows it. */
  goTo(cell: Cell): void {
    if (this.#stage) this.#stage.goTo(cell);
    else this.look({ cursor: cell });
  }

  /** The same with the keyboard left where it is. */
  show(cell: Cell): void {
    if (this.#stage) this.#stage.show(cell);
    else this.look({ cursor: cell });
  }

  focusStage(): void {
    this.#stage?.focus();
  }
}

function sameSize(a: { width: number; height: number }, b: { width: number; height: number }): boolean {
  return a.width === b.width && a.height === b.height;
}
