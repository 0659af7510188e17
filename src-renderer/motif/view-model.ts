/**
 * The view model of the Motif bench: the tool in hand, the cell cursor, the part
 * of the chart in view, and how cells are shown. None of it is part of the
 * project, so none of it is undone.
 */
import { createSubscriber } from 'svelte/reactivity';
import type { FinishedFace } from '@shared/bed/index.ts';
import type { Cell, Grid, Symmetry } from '@shared/grid/index.ts';
import type { MotifId, Project } from '@shared/project/index.ts';
import { cellAspect } from '@shared/piece/index.ts';
import type { Action } from '../commands/action.ts';
import type { InHand, Session } from '../session/session.ts';
import type { Viewport } from '../canvas/index.ts';
import { motifActions } from './actions.ts';
import { layingOf, type Cutting, type LiftedSelection } from './editing/cutting.ts';
import type { Following } from './editing/following.ts';
import { layLifted } from './lifted-selection.ts';
import type { Overhang } from './editing/overhang.ts';
import type { Lettering } from './lettering/lettering.ts';
import type { ToolName } from './tools/index.ts';

export interface LeftOff {
  readonly project: Project;
  readonly overhang: Overhang;
  /** The project was changed by it, so undo brings it back. */
  readonly canUndo: boolean;
}

export interface MotifViewState {
  readonly tool: ToolName;
  /** The corners of the shape that is being drawn, or null. */
  readonly span: { readonly from: Cell; readonly to: Cell } | null;
  /** The selected cells, as they were then, or null. */
  readonly selection: Cutting | null;
  readonly lifted: LiftedSelection | null;
  /** What was left off by the change that led to `project`, because it lay outside the chart. */
  readonly leftOff: LeftOff | null;
  /** What was copied last, for pasting. */
  readonly clipping: Grid | null;
  /** The dialog that is up over the bench, or null. */
  readonly dialog: 'lettering' | null;
  /** What was set in letters last, to begin from when it is to be put right; null before the first. */
  readonly lettering: Lettering | null;
  /** What the stamp lays; with null, or a motif that cannot be stamped, the first that can. */
  readonly stamp: { readonly motif: MotifId | null; readonly isFigureOnly: boolean };
  readonly isFilled: boolean;
  readonly fillsEverywhere: boolean;
  readonly symmetry: Symmetry;
  /** The copy that all others follow, or null. */
  readonly tile: Following['tile'];
  /** Where the keyboard draws. It may lie outside after the motif was made smaller; see {@link MotifViewModel.cursor}. */
  readonly cursor: Cell;
  /** Null: the whole motif, as large as it goes. */
  readonly view: Viewport | null;
  readonly showsNeighbours: boolean;
  /** The side of the fabric that is shown instead of the chart, or null. */
  readonly fabric: FinishedFace | null;
  /** Cells in the proportion of the gauge, or as wide as tall. */
  readonly cellShape: 'knitted' | 'square';
}

/** What the stage can show. */
export const SHOWINGS = ['chart', 'knit', 'purl'] as const;

/** What the stage does for commands; it alone knows its size. */
export interface StageControls {
  zoomBy(factor: number): void;
  /** Gives the keyboard to the chart. */
  focus(): void;
  /** Puts the cell cursor on a cell and brings it into view, the keyboard with it. */
  goTo(cell: Cell): void;
}

const START: MotifViewState = {
  tool: 'draw',
  span: null,
  selection: null,
  lifted: null,
  leftOff: null,
  clipping: null,
  dialog: null,
  lettering: null,
  stamp: { motif: null, isFigureOnly: true },
  isFilled: false,
  fillsEverywhere: false,
  symmetry: 'none',
  tile: null,
  cursor: { column: 0, row: 0 },
  view: null,
  showsNeighbours: true,
  fabric: null,
  cellShape: 'knitted',
};

export class MotifViewModel {
  readonly actions: readonly Action[];
  #state: MotifViewState = START;
  #stage: StageControls | null = null;
  readonly #listeners = new Set<() => void>();
  readonly #follow: () => void;

  constructor(private readonly session: Session) {
    this.#follow = createSubscriber((update) => {
      this.#listeners.add(update);
      return () => this.#listeners.delete(update);
    });
    this.actions = motifActions(session, this);
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
    this.#follow();
    return this.#state;
  }

  /** The cell cursor, on the motif. */
  get cursor(): Cell {
    this.#follow();
    const { grid } = this.session.motif;
    const { column, row } = this.#state.cursor;
    return { column: Math.min(column, grid.width - 1), row: Math.min(row, grid.height - 1) };
  }

  /** Palette index of the yarn in the pen; a yarn that undo took away leaves the pen to another. */
  get colour(): number {
    const { project, view } = this.session;
    if (view.colour < project.yarns.length) return view.colour;
    return Math.max(
      0,
      project.yarns.findIndex((_, index) => index !== this.session.motif.ground),
    );
  }

  /** How many times as wide as tall cells are shown. */
  get aspect(): number {
    this.#follow();
    return this.#state.cellShape === 'square' ? 1 : cellAspect(this.session.project.piece.gauge);
  }

  look(to: Partial<MotifViewState>): void {
    const { lifted } = this.#state;
    this.#state = { ...this.#state, ...to };
    if (this.#state.lifted !== lifted) this.session.hold(this.#inHand(this.#state.lifted));
    for (const listener of this.#listeners) listener();
  }

  /** A stamp is no work: it is laid by the stamp alone. */
  #inHand(lifted: LiftedSelection | null): InHand | null {
    if (!lifted || lifted.name === 'stamp') return null;
    return {
      laying: () => layingOf(this.session.motif, lifted),
      lay: () => void layLifted(this.session, this),
    };
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

  focusStage(): void {
    this.#stage?.focus();
  }
}

function sameSize(a: { width: number; height: number }, b: { width: number; height: number }): boolean {
  return a.width === b.width && a.height === b.height;
}
